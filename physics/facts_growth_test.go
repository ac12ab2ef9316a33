package physics

import (
	"math"
	"strings"
	"testing"
)

// swelling is a front left wheel whose pins were greased: with petroleum-based
// grease the rubber will take up oil until it grips each pin with so much more.
func swelling(newtons float64) Condition {
	return frontLeft(WheelCondition{PinSwelling: [2]float64{newtons, newtons}})
}

// TestFactPetroleumGrease: petroleum-based grease makes pins slide like new on the
// day; within weeks the rubber has swollen and they are dry pins: the outer pad
// drags and wears. Silicone-based grease swells nothing, and nothing comes of it.
func TestFactPetroleumGrease(t *testing.T) {
	spec := hatchback()
	if a, b := drag(t, spec, swelling(300)), drag(t, spec, Condition{}); a != b {
		t.Errorf("on the day it drags %.1f N, with silicone-based grease %.1f", a, b)
	}
	last := 0.0
	for _, weeks := range []float64{1, 2, 4, 8} {
		km := weeks / 52 * 12 * monthlyWay
		petrol, silicone := driven(t, swelling(300), km, 1), driven(t, Condition{}, km, 1)
		f, d := petrol.Wheels[FrontLeft].PinFriction[Upper], drag(t, spec, petrol)
		t.Logf("after %.0f weeks: %.0f N more a pin, drags %.0f N; silicone %.0f N", weeks, f, d, drag(t, spec, silicone))
		if f <= last || weeks == 4 && (f < 200 || d < 250) || weeks == 8 && f < 270 {
			t.Errorf("after %.0f weeks %.0f N more a pin, drags %.0f N", weeks, f, d)
		}
		if g := silicone.Wheels[FrontLeft].PinFriction[Upper]; g != 0 || drag(t, spec, silicone) > 30 {
			t.Errorf("silicone-based grease adds %.1f N after %.0f weeks", g, weeks)
		}
		last = f
	}
	petrol, silicone := driven(t, swelling(300), 6000, 1), driven(t, Condition{}, 6000, 1)
	share := pad(petrol, FrontLeft, Outer) / pad(silicone, FrontLeft, Outer)
	t.Logf("six months: outer pad wears %.2f of the other's", share)
	if inner := pad(petrol, FrontLeft, Inner) / pad(silicone, FrontLeft, Inner); share < 1.5 || math.Abs(inner-1) > 0.05 {
		t.Errorf("six months: outer pad wears %.2f of one with silicone-based grease, inner %.2f", share, inner)
	}
}

// TestFactTornBoot: under a torn boot pins first go dry, then seize and keep their place.
func TestFactTornBoot(t *testing.T) {
	cond := frontLeft(WheelCondition{PinRusting: [2]float64{200, 200}})
	dry, seized := driven(t, cond, 2000, 1), driven(t, cond, 14000, 1)
	if f := dry.Wheels[FrontLeft].PinFriction[Lower]; math.Abs(f-400) > 1e-6 || dry.Wheels[FrontLeft].PinAnchorSet[Lower] {
		t.Errorf("two months of 200 N make %.9g N", f)
	}
	if f := seized.Wheels[FrontLeft].PinFriction[Lower]; math.Abs(f-2800) > 1e-6 || !seized.Wheels[FrontLeft].PinAnchorSet[Lower] {
		t.Errorf("fourteen months of 200 N make %.9g N, place kept: %v", f, seized.Wheels[FrontLeft].PinAnchorSet)
	}
	if d := drag(t, hatchback(), dry); d < 300 {
		t.Errorf("after two months it drags %.0f N only", d)
	}
}

// TestWaterGrows: fluid takes up water by the month, whatever is driven in it, and
// boils the earlier.
func TestWaterGrows(t *testing.T) {
	cond := Condition{WaterUptake: 0.0015}
	duty := MixedDuty()
	for _, monthly := range []float64{500, 2000} {
		duty.Monthly = monthly
		c, err := Drive(hatchback(), cond, duty, 24*monthly)
		if err != nil || math.Abs(c.Water-0.036) > 1e-12 {
			t.Errorf("24 months at %.0f km: %.4f of water (%v), want 0.036", monthly, c.Water, err)
		}
	}
	duty.Monthly = 10
	if c, err := Drive(hatchback(), cond, duty, 10000); err != nil || c.Water != waterMost {
		t.Errorf("83 years: %.3f of water (%v), want at most %.1f", c.Water, err, waterMost)
	}
}

// TestAgeingConverges: steps half as long change no lining by more than 1 %, and
// two trips are as one.
func TestAgeingConverges(t *testing.T) {
	cond := frontLeft(WheelCondition{PinSwelling: [2]float64{300, 300}, PinRusting: [2]float64{20, 0}})
	once, fine := driven(t, cond, 6000, 1), driven(t, cond, 6000, 2)
	twice := driven(t, driven(t, cond, 2500, 1), 3500, 1)
	for p := range 2 {
		a, b, c := pad(once, FrontLeft, p), pad(fine, FrontLeft, p), pad(twice, FrontLeft, p)
		t.Logf("pad %d: %.4f mm, in half steps %.4f, in two trips %.4f", p, a*1e3, b*1e3, c*1e3)
		if math.Abs(a-b) > 0.01*b || math.Abs(a-c) > 0.01*c {
			t.Errorf("pad %d: %.4f mm, in half steps %.4f, in two trips %.4f", p, a*1e3, b*1e3, c*1e3)
		}
	}
	if a, b := once.Wheels[FrontLeft].PinFriction[Upper], twice.Wheels[FrontLeft].PinFriction[Upper]; math.Abs(a-b) > 1e-9*a {
		t.Errorf("pins grip with %.12g N after one trip, %.12g after two", a, b)
	}
}

// TestGrowthRefuses: bad rates are a sentence.
func TestGrowthRefuses(t *testing.T) {
	duty := MixedDuty()
	for _, monthly := range []float64{-1, 1e-9, 1e9, math.NaN()} {
		duty.Monthly = monthly
		if _, err := Drive(hatchback(), Condition{}, duty, 1000); err == nil || !strings.Contains(err.Error(), "a month") {
			t.Errorf("%g km a month: %v", monthly, err)
		}
	}
	for want, c := range map[string]Condition{
		"pin_swelling": swelling(-1),
		"pin_rusting":  frontLeft(WheelCondition{PinRusting: [2]float64{0, math.NaN()}}),
		"water_uptake": {WaterUptake: -1},
	} {
		if err := c.check(hatchback()); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("want a sentence with %q, got %v", want, err)
		}
	}
}
