package scoring

import (
	"slices"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

func look(t *testing.T, change func(*physics.Condition)) Outlook {
	t.Helper()
	var cond physics.Condition
	if change != nil {
		change(&cond)
	}
	o, err := Look(physicstest.Hatchback(), cond, physics.MixedDuty())
	if err != nil {
		t.Fatal(err)
	}
	return o
}

func has(all []Finding, id string) bool {
	return slices.ContainsFunc(all, func(f Finding) bool { return f.ID == id })
}

// TestLookSound: a new car is within every limit and lasts 12 000 km.
func TestLookSound(t *testing.T) {
	o := look(t, nil)
	t.Logf("decel %.2f m/s², travel %.1f %%, sink %.3f mm, level %.0f %%, assist %.0f %%, descent %.0f °C fluid, way %.1f %%, drag %.0f W, soon %.2f mm, lasts %.0f km",
		o.Decel, o.Travel, o.Sink*1e3, o.Level, o.Assist, o.FluidPeak, o.DescentWay, o.DragPower, o.Soon*1e3, o.Lasts/1e3)
	for _, s := range o.Stops {
		t.Logf("%s: %.1f m, %.2f m/s²", s.ID, s.Distance, s.MFDD)
	}
	if f := o.Findings(false); len(f) != 0 {
		t.Errorf("a new car is unsafe: %+v", f)
	}
	if len(o.Stops) != 9 || o.Lasts != 12000*physics.Kilometre || o.Worn {
		t.Errorf("%d stops, lasts %g m, worn %t", len(o.Stops), o.Lasts, o.Worn)
	}
	// OC-50: 49 CFR 571.135 S7.5, at most 70 m from 100 km/h with at most 500 N.
	if d := o.Stops[6].Distance; o.Stops[6].ID != "stop.100.cold" || d > 70 || d < 45 {
		t.Errorf("%s takes %.1f m", o.Stops[6].ID, d)
	}
	if o.Stops[8].Distance < 1.1*o.Stops[6].Distance {
		t.Errorf("wet %.1f m, dry %.1f m: the road must matter", o.Stops[8].Distance, o.Stops[6].Distance)
	}
}

// TestLookUnsafe: what is put into the condition comes out of the physics as its finding.
func TestLookUnsafe(t *testing.T) {
	for id, change := range map[string]func(*physics.Condition){
		UnsafeLeak:   func(c *physics.Condition) { c.Wheels[0].Leak = 1e-10 },
		UnsafeLevel:  func(c *physics.Condition) { c.Fluid = -140e-6 },
		UnsafeAssist: func(c *physics.Condition) { c.BoosterLoss = 1 },
		UnsafeSink:   func(c *physics.Condition) { c.CupBypass[0] = 2e-14 },
		UnsafeLining: func(c *physics.Condition) { c.Wheels[1].Wear[1] = [2]float64{9.7e-3, 9.2e-3} },
		UnsafeCrack:  func(c *physics.Condition) { c.Wheels[0].DiscCrack = 20e-3 },
		UnsafeHose:   func(c *physics.Condition) { c.Wheels[2].HoseSwell = 0.04e-12 },
		UnsafeImbalance: func(c *physics.Condition) {
			c.Wheels[0].MuLoss = [2][2]float64{{0.6, 0.6}, {0.6, 0.6}}
		},
	} {
		o := look(t, change)
		if f := o.Findings(false); !has(f, id) {
			t.Errorf("%s is not among %+v; travel %.1f %%, sink %.2f mm", id, f, o.Travel, o.Sink*1e3)
		}
	}
}

// TestLookWorse: a dragging wheel costs fuel and lining, a spongy pedal its way.
func TestLookWorse(t *testing.T) {
	sound := look(t, nil)
	dry := look(t, func(c *physics.Condition) { c.Wheels[0].PinFriction = [2]float64{250, 250} })
	if dry.DragFuel < 1.2*sound.DragFuel {
		t.Errorf("dry pins lose %.2f l, sound %.2f l", dry.DragFuel*1e3, sound.DragFuel*1e3)
	}
	if a, b := dry.Left[0][physics.Outer][0], sound.Left[0][physics.Outer][0]; a > b-0.5e-3 {
		t.Errorf("outer lining after 12 000 km: dry pins %.2f mm, sound %.2f mm", a*1e3, b*1e3)
	}
	air := look(t, func(c *physics.Condition) { c.Wheels[0].Air = 4e-6 })
	if air.Travel < sound.Travel+5 {
		t.Errorf("air: travel %.1f %%, sound %.1f %%", air.Travel, sound.Travel)
	}
}

// TestPedalUsed: a bubble that breaks no limit still costs the pedal's way, so
// that bleeding it (35 minutes' worth, as the catalogue has it) beats leaving
// it; a new car loses nothing, nor do worn linings, whose room is filled with fluid.
func TestPedalUsed(t *testing.T) {
	const bleed = 35
	of := func(change func(*physics.Condition)) (Outlook, float64) {
		o := look(t, change)
		leave := Choice{Release: ReleaseUse, Findings: o.Findings(true), Lasts: o.Lasts, DragFuel: o.DragFuel, Pedal: o.PedalUsed()}
		return o, leave.Loss()
	}
	sound, least := of(nil)
	if u := sound.PedalUsed(); u != 0 {
		t.Errorf("a new car has lost %.3f of its pedal's way", u)
	}
	worn, _ := of(func(c *physics.Condition) {
		for w := range c.Wheels {
			c.Wheels[w].Wear = [2][2]float64{{5e-3, 5e-3}, {5e-3, 5e-3}}
		}
	})
	if u := worn.PedalUsed(); u > 0.02 {
		t.Errorf("worn linings lose %.3f of the pedal's way", u)
	}
	was := least
	for _, cm3 := range []float64{0.5, 1, 2} {
		o, loss := of(func(c *physics.Condition) { c.Wheels[0].Air = cm3 * physics.CubicCentimetre })
		if f := o.Findings(true); len(f) != 0 {
			t.Fatalf("%g cm³ of air break a limit, so the test shows nothing: %+v", cm3, f)
		}
		t.Logf("%g cm³: travel %.1f %%, of the way lost %.3f, loss %.1f (sound %.1f)", cm3, o.Travel, o.PedalUsed(), loss, least)
		if loss < was+5 {
			t.Errorf("%g cm³ of air lose %.1f, less air %.1f", cm3, loss, was)
		}
		was = loss
	}
	if was < least+bleed {
		t.Errorf("leaving 2 cm³ of air loses %.1f, bleeding it %.1f", was, least+bleed)
	}
}

// TestDescentBoilsOldFluid: what a long descent does to fluid full of water is
// unsafe, and nothing to fresh fluid. The heat comes through after the car has
// stopped.
func TestDescentBoilsOldFluid(t *testing.T) {
	for water, bad := range map[float64]bool{0: false, 0.01: false, 0.045: true} {
		o := look(t, func(c *physics.Condition) { c.Water = water })
		t.Logf("%.1f %% water: fluid %.0f °C, pedal at %.0f %%", 100*water, o.FluidPeak, o.DescentWay)
		if has(o.Findings(false), UnsafeVapour) != bad {
			t.Errorf("%.1f %% water: lost to vapour %v, want %v", 100*water, !bad, bad)
		}
	}
}

// TestDescentBurnsWithoutFreePlay: a car whose pedal has lost its free play has an
// outlook, and it is unsafe: fluid that is shut in presses the pads on as it warms.
func TestDescentBurnsWithoutFreePlay(t *testing.T) {
	for circuit := range 2 {
		o := look(t, func(c *physics.Condition) { c.PortCover[circuit] = 2e-3 })
		t.Logf("circuit %d: brakes %.0f °C, fluid %.0f °C", circuit, o.BrakePeak, o.FluidPeak)
		if !has(o.Findings(true), UnsafeBurnt) {
			t.Errorf("circuit %d: a brake of %.0f °C is not found unsafe", circuit, o.BrakePeak)
		}
	}
	if o := look(t, func(*physics.Condition) {}); has(o.Findings(true), UnsafeBurnt) {
		t.Errorf("a sound car burns its brakes: %.0f °C", o.BrakePeak)
	}
}

// TestLookCarThatDoesNotStop: a car whose brakes are gone when hot has an outlook
// too: as far as it went, with next to no deceleration.
func TestLookCarThatDoesNotStop(t *testing.T) {
	o := look(t, func(c *physics.Condition) {
		for w := range c.Wheels {
			c.Wheels[w].MuLoss = [2][2]float64{{0.95, 0.95}, {0.95, 0.95}}
		}
	})
	for _, s := range o.Stops {
		t.Logf("%s: %.0f m, %.2f m/s²", s.ID, s.Distance, s.MFDD)
		if !(s.Distance > 0 && s.MFDD > 0) {
			t.Errorf("%s: %g m, %g m/s²", s.ID, s.Distance, s.MFDD)
		}
	}
	if !has(o.Findings(false), UnsafeDecel) {
		t.Error("a car that hardly brakes is not found unsafe")
	}
}
