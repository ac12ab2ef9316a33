package play

import "evenwear/physics"

const (
	perMm = 1 / physics.Millimetre
	perKN = 1e-3
)

// caliper is where a caliper's parts sit, for drawing.
func caliper(m *physics.Model, s *physics.State, w physics.Wheel) CaliperView {
	spec, cond := m.Spec().Corner(w), m.Condition()
	wc := &cond.Wheels[w]
	cs, f := &s.Corners[w], &s.Forces[w]
	v := CaliperView{
		Pressure: s.Pressure[w] / physics.Megapascal,
		Piston:   cs.X * perMm, Body: cs.Y * perMm, Tilt: cs.Tilt * 1000, Bridge: cs.Bridge * perMm,
		DiscThickness: (spec.DiscThickness - wc.DiscWear[0] - wc.DiscWear[1]) * perMm,
		Seal:          f.Seal * perKN,
		PistonStuck:   wc.SealFriction > spec.SealFriction, // more rust than seal
	}
	for j := range 2 {
		side := 1.0
		if j == physics.Lower {
			side = -1
		}
		tilt := side * spec.PadOffset * cs.Tilt
		wear := wc.Wear
		in := cs.X - (cs.Y + spec.TiltShare*tilt) - (spec.Gap[0] - wc.PlateProud[0] + wear[0][j] + wc.DiscWear[0])
		out := (cs.Y + tilt) - cs.Bridge - (spec.Gap[1] - wc.PlateProud[1] + wear[1][j] + wc.DiscWear[1])
		v.Gap[0][j], v.Gap[1][j] = -in*perMm, -out*perMm
		for i := range 2 {
			v.Lining[i][j] = (spec.LiningNew - wear[i][j]) * perMm
			v.Half[i][j] = f.Half[i][j] * perKN
		}
		v.Pin[j] = f.Pin[j] * perKN
		v.Pins[j] = pinState(wc, j, wc.PinGrip(j))
	}
	return v
}

// pinState names what a pin's added grip [N] means on the drawing: dry from 60 N,
// seized from 1500 N, so that the severities of the catalogue (100–400 N and from
// 2000 N) fall well inside; bent or tight in its bush where that is what grips.
func pinState(c *physics.WheelCondition, pin int, grip float64) string {
	switch {
	case grip >= 1500:
		return "stuck"
	case grip < 60:
		return "free"
	case c.PinBend[pin] > 0:
		return "bent"
	case physics.BushGrip(c.PinPinch[pin]) >= 60:
		return "tight"
	}
	return "dry"
}
