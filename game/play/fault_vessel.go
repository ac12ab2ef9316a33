package play

import (
	"evenwear/physics"
	"evenwear/scenarios"
)

// vesselOf draws the vessel that a fault has filled wrongly, in place of the
// brake reservoir: the level as it was found and as it is without the fault.
func (s *Session) vesselOf(f *FaultView, x *scenarios.Fault) error {
	now := s.found.Model.Condition()
	good := now
	if err := x.MakeGood(&s.job.Car.Spec, &good); err != nil {
		return err
	}
	v := &s.job.Car.Spec.Vessels
	for _, vessel := range [...]struct {
		id                string
		now, sound, marks float64 // [m³]
	}{
		{"oil", now.Vessels.Oil, good.Vessels.Oil, v.Oil.MinToMax},
		{"coolant", now.Vessels.Coolant, good.Vessels.Coolant, v.Coolant.MinToMax},
		{"steering", now.Vessels.Steering, good.Vessels.Steering, v.Steering.MinToMax},
		{"washer", now.Vessels.Washer, good.Vessels.Washer, v.Washer.MinToMax},
	} {
		if vessel.now == vessel.sound {
			continue
		}
		share := func(added float64) float64 { return 1 + added/max(vessel.marks, physics.CubicCentimetre) }
		f.Vessel, f.Level = vessel.id, [2]float64{share(vessel.sound), share(vessel.now)}
		f.Labels = append([]FaultLabel{{Part: "level", Text: s.words.Say("fault."+vessel.id,
			"now", whole(100*f.Level[1]), "sound", whole(100*f.Level[0]))}}, f.Labels...)
	}
	return nil
}
