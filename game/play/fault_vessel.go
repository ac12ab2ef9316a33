package play

import (
	"evenwear/physics"
	"evenwear/scenarios"
)

// vesselOf draws the vessel that a fault has filled wrongly, in place of the
// brake reservoir: the level as it was found and as it is without the fault, both
// as the check reads them that is made as it should be.
func (s *Session) vesselOf(f *FaultView, x *scenarios.Fault) error {
	now := s.found.Model.Condition()
	good := now
	if err := x.MakeGood(&s.job.Car.Spec, &good); err != nil {
		return err
	}
	for i := range vessels {
		v := &vessels[i]
		if v.added(&now.Vessels) == v.added(&good.Vessels) {
			continue
		}
		f.Vessel = v.id
		for k, cond := range [2]physics.Condition{good, now} {
			level, err := v.stands(&s.job.Car.Spec, cond)
			if err != nil {
				return err
			}
			f.Level[k] = level
		}
		f.Labels = append([]FaultLabel{{Part: "level", Text: s.words.Say("fault."+v.id,
			"now", whole(100*f.Level[1]), "sound", whole(100*f.Level[0]))}}, f.Labels...)
	}
	return nil
}
