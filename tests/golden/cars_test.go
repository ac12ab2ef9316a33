package golden

import (
	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// cars is one stage for each car of the library, sound and with a worn wheel:
// pressed, stopped, down a hill, driven, and looked at with every check.
func cars() []stage {
	lib, err := scenarios.Embedded()
	if err != nil {
		return []stage{{"cars", func(s *sum) { s.t.Fatal(err) }}}
	}
	var list []stage
	for _, c := range lib.Cars {
		spec := &c.Spec
		list = append(list, stage{"car " + c.ID, func(s *sum) {
			for _, cond := range []func() physics.Condition{healthy, worn, leaking} {
				w := must[*inspect.World](s)(inspect.NewWorld(spec, cond()))
				m, st := w.Model, w.Rest
				for i := range 120 {
					in, ms := normal(i, &st)
					st = must[physics.State](s)(m.Step(st, in, ms))
					s.put(st, m.PedalTravel(&st), m.Level(&st))
				}
				s.put(must[physics.StopResult](s)(m.Stop(w.Rest, physics.StopPlan{Speed: 28, Foot: 500, Surface: [physics.NumWheels]float64{0.7, 0, 0.7, 0}})))
				s.put(must[physics.DescentResult](s)(m.Descend(w.Rest, 0.09, 2000, 12)))
				s.put(must[physics.Condition](s)(physics.Drive(spec, cond(), physics.MixedDuty(), 9000)))
				for _, inst := range inspect.Instances() {
					s.put(must[float64](s)(w.Measure(inst)))
				}
			}
		}})
	}
	return list
}
