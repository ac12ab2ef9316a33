package play

import (
	"slices"

	"evenwear/physics/inspect"
)

// unfit says from a learner's own reading that the car should not move. The
// figures are common practice, no source, but for the sinking pedal: 49 CFR
// 570.55(b)(1) holds 556 N for 10 s.
func unfit(n note) bool {
	v := n.check.Meter.Value(n.written)
	switch n.inst.Check {
	case "pedal_travel":
		return v > 120 // [mm] near the floor
	case "hold_sink":
		return v > n.check.Meter.Division
	case "wetness", "wet_piston", "wet_screw":
		return n.written > 0
	case "disc_crack", "bond_inner", "bond_outer": // more than the first sign
		return n.written > 1
	case "opening_inner", "opening_outer", "lining_inner_upper", "lining_inner_lower", "lining_outer_upper", "lining_outer_lower":
		return len(n.check.Meter.Words) == 0 && v < 2 // [mm] the last limit
	}
	return false
}

// roadMissing says why the car may not be driven yet: a reading that forbids it,
// or a group of checks that nobody has made. Empty: it may.
func (s *Session) roadMissing() string {
	var looked []inspect.ID
	for _, n := range s.notes {
		if n.skipped || n.struck || n.again {
			continue
		}
		if unfit(n) {
			return s.words.Say("play.road_unfit", "reading", s.sayCheck(n.inst))
		}
		looked = append(looked, n.inst.Check)
	}
	var missing []string
	for _, group := range inspect.RoadNeeds() {
		if !slices.ContainsFunc(group, func(id inspect.ID) bool { return slices.Contains(looked, id) }) {
			missing = append(missing, s.say("check."+string(group[0])))
		}
	}
	if missing == nil {
		return ""
	}
	return s.words.Say("play.road_missing", "checks", Joined(s.words, missing))
}
