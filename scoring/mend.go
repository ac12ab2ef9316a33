package scoring

import (
	"math"

	"evenwear/physics"
	"evenwear/physics/exact"
)

// What a part may still do worse than one that is as good as new and be called
// mended. Assumed: less than any check of an inspector tells apart.
const (
	mendPress  = 3 * physics.Megapascal // [Pa] a firm stop
	mendForce  = 0.05                   // [1] of what each pad presses
	mendDrag   = 10.0                   // [N] left on half a pad once the pedal is free and the disc has turned
	mendTravel = 3 * physics.Millimetre // [m] of the pedal at travelFoot
	mendMonths = 6                      // [months] for which it must last: what swells or rusts shows by then
)

// Mended tells whether a car will work half a year on as well as it would with
// its faulty numbers made good: the same pads' forces pressed and released, the
// pedal as high, and no more than a trace of what no force tells. now and good
// differ in those numbers only.
func Mended(spec *physics.Spec, now, good physics.Condition) (bool, error) {
	now.Age(mendMonths)
	good.Age(mendMonths)
	for _, t := range traces(spec, &now, &good) {
		if t.left > t.most {
			return false, nil
		}
	}
	for w := range now.Wheels {
		a, b := &now.Wheels[w], &good.Wheels[w]
		if *a == *b {
			continue
		}
		name := physics.Wheel(w).String()
		was, err := pressAndFree(spec.Corner(physics.Wheel(w)), a, name)
		if err != nil {
			return false, err
		}
		should, err := pressAndFree(spec.Corner(physics.Wheel(w)), b, name)
		if err != nil {
			return false, err
		}
		for pad := range 2 {
			for half := range 2 {
				off := math.Abs(was.pressed[pad][half] - should.pressed[pad][half])
				if off > mendForce*should.pressed[physics.Inner][physics.Upper] || was.free[pad][half]-should.free[pad][half] > mendDrag {
					return false, nil
				}
			}
		}
	}
	if now == good {
		return true, nil
	}
	travel, err := travelOf(spec, now)
	if err != nil {
		return false, err
	}
	should, err := travelOf(spec, good)
	return travel-should <= mendTravel, err
}

// grips are the forces [N] of the four half pads, pressed and let go.
type grips struct{ pressed, free [2][2]float64 }

// pressAndFree presses a caliper, lets it go and turns its disc once.
func pressAndFree(spec *physics.CornerSpec, cond *physics.WheelCondition, name string) (g grips, err error) {
	c := physics.NewCorner(spec, cond, name)
	s, err := physics.Released(spec, cond, name)
	if err != nil {
		return g, err
	}
	const steps = 6
	var f physics.CornerForces
	for i := range 2 * steps {
		p := mendPress * float64(min(i+1, 2*steps-1-i)) / steps
		if s, f, err = c.Settle(s, &physics.CornerLoad{Pressure: p}); err != nil {
			return g, err
		}
		if i == steps-1 {
			g.pressed = f.Half
		}
	}
	const spokes = 12
	for i := range 2 * spokes {
		load := physics.CornerLoad{}
		load.DiscIn, load.DiscOut = c.Faces(exact.CosTurn(float64(i) / spokes))
		if s, f, err = c.Settle(s, &load); err != nil {
			return g, err
		}
		if i >= spokes {
			for pad := range 2 {
				for half := range 2 {
					g.free[pad][half] += f.Half[pad][half] / spokes
				}
			}
		}
	}
	return g, nil
}

// travelOf is the pedal's travel [m] at travelFoot from rest.
func travelOf(spec *physics.Spec, cond physics.Condition) (float64, error) {
	m, err := physics.New(spec, cond)
	if err != nil {
		return 0, err
	}
	s, err := m.Rest()
	if err != nil {
		return 0, err
	}
	if s, err = press(m, s, travelFoot); err != nil {
		return 0, err
	}
	return m.PedalTravel(&s), nil
}
