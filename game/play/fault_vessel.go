package play

import (
	"evenwear/physics"
	"evenwear/scenarios"
)

// vesselOf says what is meant in place of the brake reservoir: the organ that is
// wrong, or the vessel that was filled wrongly, with the level as it was found
// and as it is without the fault, both as the check reads them that is made as it
// should be.
func (s *Session) vesselOf(f *FaultView, x *scenarios.Fault) error {
	now := s.found.Model.Condition()
	good := now
	if err := x.MakeGood(&s.job.Car.Spec, &good); err != nil {
		return err
	}
	f.Organ = organOf(&now, &good)
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

// organOf is what a fault has changed between foot and pipes: now beside the
// same car without it.
func organOf(now, good *physics.Condition) string {
	switch {
	case now.MineralOil != good.MineralOil: // what it swells is not where it is
		return ""
	case now.LampLost != good.LampLost:
		return "lamp"
	case now.BoosterLoss != good.BoosterLoss, now.VacuumLeak != good.VacuumLeak, now.DiaphragmLeak != good.DiaphragmLeak:
		return "booster"
	case now.CupBypass != good.CupBypass, now.PortCover != good.PortCover, now.ChamberAir != good.ChamberAir:
		return "master_cylinder"
	}
	return ""
}
