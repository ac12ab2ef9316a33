package scene

import (
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/physics"
)

// benchCar is a bench for drawing tests: the demo front caliper of the physics,
// settled at a pressure by the same solver as the car's, with the pedal's
// figures of the same foot worked out by hand from the pedal's equations.
type benchCar struct{ view play.BenchView }

func (b *benchCar) Advance(int64)           {}
func (b *benchCar) Numbers(*play.BenchView) {}
func (b *benchCar) Do(play.Act) error       { return nil }
func (b *benchCar) View() *play.BenchView   { return &b.view }

var demoFront = physics.CornerSpec{
	PistonDiameter: 54 * physics.Millimetre, K1: 60e6, K3: 2.5e15, Bridge: 120e6,
	SealRate: 0.9e6, SealFriction: 120, SealGrip: 55e-6,
	PinRate: 8e6, PinFriction: 15, PinOffset: 65 * physics.Millimetre, PadOffset: 28 * physics.Millimetre,
	TiltShare: 0.30, Boot: 300, TiltRate: 50, Gap: [2]float64{0.12 * physics.Millimetre, 0.12 * physics.Millimetre},
	EarRate: 20e6, EffectiveRadius: 104 * physics.Millimetre, Mu: 0.38,
}

// caliper settles a wheel's caliper at mpa and says where it stands.
func caliper(t testing.TB, cond physics.WheelCondition, pins [2]string, mpa float64) (play.CaliperView, []play.BenchSample, [2]float64) {
	t.Helper()
	const lining = 11.0
	spec := &demoFront
	c := physics.NewCorner(spec, &cond, "front_left")
	var s physics.CornerState
	var f physics.CornerForces
	var err error
	var plot []play.BenchSample
	const steps = 290
	for i := range steps + 1 {
		// The foot rises over 1.2 s from 0.7 s on.
		share := min(max((float64(i)/100-0.7)/1.2, 0), 1)
		p := mpa * share * share * (3 - 2*share)
		if s, f, err = c.Settle(s, &physics.CornerLoad{Pressure: p * physics.Megapascal}); err != nil {
			t.Fatal(err)
		}
		plot = append(plot, play.BenchSample{Time: float64(i) / 100, Pressure: p, Inner: f.Inner() / 1e3, Outer: f.Outer() / 1e3})
	}
	v := play.CaliperView{Pressure: mpa, Piston: s.X * 1e3, Body: s.Y * 1e3, Tilt: s.Tilt * 1e3, Bridge: s.Bridge * 1e3, DiscThickness: 22,
		Pins: pins, Seal: f.Seal / 1e3, PistonStuck: cond.SealFriction > 1000}
	for j := range 2 {
		sign := 1 - 2*float64(j)
		in := s.X - (s.Y + sign*spec.TiltShare*spec.PadOffset*s.Tilt) - spec.Gap[0] - cond.Wear[0][j]
		out := s.Y + sign*spec.PadOffset*s.Tilt - s.Bridge - spec.Gap[1] - cond.Wear[1][j]
		v.Gap[0][j], v.Gap[1][j] = -in*1e3, -out*1e3
		for i := range 2 {
			v.Lining[i][j] = lining - cond.Wear[i][j]*1e3
			v.Half[i][j] = f.Half[i][j] / 1e3
		}
		v.Pin[j] = f.Pin[j] / 1e3
	}
	ends := [2]float64{(s.Y + spec.PinOffset*s.Tilt) * 1e3, (s.Y - spec.PinOffset*s.Tilt) * 1e3}
	return v, plot, ends
}

func words(t testing.TB) *assets.Words {
	t.Helper()
	w, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	return w
}

func testApp(t testing.TB, slate bool) *App {
	t.Helper()
	fonts, err := assets.LoadFonts()
	if err != nil {
		t.Fatal(err)
	}
	return NewApp(Options{Words: words(t), Fonts: fonts, Slate: slate})
}

// at puts a caliper on the bench under a foot [N] that gives mpa.
func (b *benchCar) at(t testing.TB, cond physics.WheelCondition, pins [2]string, foot, mpa float64) *benchCar {
	v := &b.view
	*v = play.BenchView{Wheel: "front_left", Ratio: 3.8, Disc: 256, Piston: 54, PinAt: 65, PadAt: 28, Vented: true, Foot: foot, Wanted: foot, Down: foot > 0, Slow: 1, Level: 0.8}
	v.Title = play.Title{Car: "compact hatchback", Km: 61400, Seed: 4117}
	v.Now, v.Plot, v.BodyEnds = caliper(t, cond, pins, mpa)
	if mpa == 0 {
		v.Plot = nil
	} else {
		v.Time = v.Plot[len(v.Plot)-1].Time
	}
	if pins != [2]string{"free", "free"} || v.Now.PistonStuck {
		g, _, _ := caliper(t, physics.WheelCondition{}, [2]string{"free", "free"}, mpa)
		v.Ghost = &g
	}
	v.Rod = 3.8 * foot
	v.Booster = 4 * max(v.Rod-40, 0)
	v.Chamber = [2]float64{mpa, mpa}
	v.Stroke = [2]float64{1.2 + mpa*0.9, 1.0 + mpa*0.7}
	if mpa == 0 {
		v.Stroke = [2]float64{}
	}
	v.Pedal = 3.8 * (v.Stroke[0] + v.Stroke[1] + 1.5*min(foot, 1))
	sum := v.Now.Half[1][0] + v.Now.Half[1][1]
	v.Balance = [4]float64{v.Now.Half[0][0] + v.Now.Half[0][1], sum, v.Now.Pin[0], v.Now.Pin[1]}
	v.Axial = 1
	for _, k := range [...]float64{80, 40, 20, 10} {
		ok := true
		for i := range 2 {
			for j := range 2 {
				ok = ok && -v.Now.Gap[i][j]*k <= 0.4*v.Now.Lining[i][j]
			}
		}
		if ok {
			v.Axial = k
			break
		}
	}
	v.Predict = play.PredictView{Said: -1, Computed: -1, Open: foot == 0,
		Question: words(t).Say("bench.question.none", "force", foot)}
	return b
}
