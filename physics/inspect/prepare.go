package inspect

import (
	"strings"

	"evenwear/physics"
)

// A Preparation is work done before checks, once for all of them: what stands
// behind one preparation is cheap together.
//
// Needs may end in "@wheel" (the same wheel) or "@end" (the end of the car that
// the wheel, or the preparation, is at: "lift@end" is lift_front at a front
// wheel). A missing need that is a Safety preparation is a broken caution; any
// other missing need makes the work impossible.
type Preparation struct {
	ID       string
	Minutes  float64  // [min] common practice, no source
	Needs    []string // preparations that should stand when this one is done
	Undoes   []string // preparations that do not stand any more after it
	Safety   bool     // only for safety: work goes on without it, and a caution is broken
	PerWheel bool
	End      string   // "front" or "rear": the end of the car it is done at; empty: neither, or the wheel's
	Cautions []string // ids; the first is the one that is broken when a Safety preparation is left out
	// Harmful is the id of the rule that makes it harmful when broken; see [RoadNeeds].
	Harmful string
	// Brings are preparations that stand with it: an engine that has gone cold has
	// had the time for its oil to run back.
	Brings []string
}

// The rule broken by driving a car before pedal, hold, leak and lining were
// looked at; see [RoadNeeds].
const HarmRoad = "harm.road_too_soon"

var preparations = []Preparation{
	{ID: "chock_rear", Minutes: 0.5, Safety: true, End: "rear", Cautions: []string{"caution.chock_rear"}},
	{ID: "chock_front", Minutes: 0.5, Safety: true, End: "front", Cautions: []string{"caution.chock_front"}},
	{ID: "handbrake_on", Minutes: 0.2, Undoes: []string{"handbrake_off"}, Safety: true, Cautions: []string{"caution.handbrake"}},
	{ID: "handbrake_off", Minutes: 0.2, Undoes: []string{"handbrake_on"}, Safety: true, Cautions: []string{"caution.handbrake"}},
	{ID: "slacken_nuts", Minutes: 1, Safety: true, PerWheel: true, Undoes: []string{"torque_nuts@wheel"}, Cautions: []string{"caution.nuts_ground"}},
	{ID: "lift_front", Minutes: 3, End: "front", Needs: []string{"handbrake_on", "chock_rear"}, Cautions: []string{"caution.level_ground", "caution.not_under_jack"}},
	{ID: "lift_rear", Minutes: 3, End: "rear", Needs: []string{"handbrake_off", "chock_front"}, Cautions: []string{"caution.level_ground", "caution.not_under_jack"}},
	{ID: "stand", Minutes: 1, Safety: true, PerWheel: true, Needs: []string{"lift@end"}, Cautions: []string{"caution.stand_before_wheel"}},
	{ID: "cool_disc", Minutes: 5, Safety: true, PerWheel: true, Cautions: []string{"caution.hot_disc"}},
	{ID: "wheel_off", Minutes: 3, PerWheel: true, Needs: []string{"lift@end", "slacken_nuts@wheel", "stand@wheel", "cool_disc@wheel"}, Undoes: []string{"wheel_on@wheel"}, Cautions: []string{"caution.hot_disc", "caution.dust_damp"}},
	{ID: "wipe_dust", Minutes: 1, Safety: true, PerWheel: true, Needs: []string{"wheel_off@wheel"}, Cautions: []string{"caution.dust_damp"}},
	{ID: "wheel_on", Minutes: 3, PerWheel: true, Needs: []string{"lift@end"}, Undoes: []string{"wheel_off@wheel", "wipe_dust@wheel"}},
	{ID: "lower_front", Minutes: 2, End: "front", Undoes: []string{"lift_front", "stand@front_left", "stand@front_right"}},
	{ID: "lower_rear", Minutes: 2, End: "rear", Undoes: []string{"lift_rear", "stand@rear_left", "stand@rear_right"}},
	{ID: "torque_nuts", Minutes: 1, Safety: true, PerWheel: true, Undoes: []string{"slacken_nuts@wheel"}, Cautions: []string{"caution.nuts_torque"}},
	{ID: "clear_road", Minutes: 1, Safety: true, Undoes: []string{"chock_rear", "chock_front"}, Cautions: []string{"caution.road_clear"}},
	{ID: "drive", Minutes: 20, Needs: []string{"clear_road"}, Undoes: append([]string{goneCold}, onTheRoad...), Cautions: []string{"caution.road_clear"}, Harmful: HarmRoad},
	{ID: "stop_50", Minutes: 3, Needs: []string{"clear_road"}, Undoes: onTheRoad, Cautions: []string{"caution.road_clear"}, Harmful: HarmRoad},
	{ID: flat, Minutes: 4, Undoes: []string{"chock_rear", "chock_front"}},
	{ID: rested, Minutes: runBack / 60},
	{ID: goneCold, Minutes: stoodCold / 60, Brings: []string{rested}},
}

// onTheRoad: whoever drives takes the chocks away first and parks on the yard, oil
// thrown up, and whoever has braked has made every disc hot again. A cold engine is
// hot after the loop, not yet after one stop.
var onTheRoad = []string{flat, rested, "chock_rear", "chock_front", "cool_disc@front_left", "cool_disc@front_right", "cool_disc@rear_left", "cool_disc@rear_right"}

// Preparations lists every preparation in a fixed order. It must not be changed.
func Preparations() []Preparation { return preparations }

// FindPreparation returns a preparation by its id.
func FindPreparation(id string) (*Preparation, bool) {
	for i := range preparations {
		if preparations[i].ID == id {
			return &preparations[i], true
		}
	}
	return nil, false
}

// A Work is one preparation at one place.
type Work struct {
	*Preparation
	Wheel physics.Wheel // only where PerWheel
}

// String is the work's name in records: "stand@front_left", "chock_rear".
func (w Work) String() string {
	if !w.PerWheel {
		return w.ID
	}
	return w.ID + "@" + w.Wheel.String()
}

// ParseWork is the inverse of [Work.String]. The error is an *[UnknownError].
func ParseWork(name string) (Work, error) {
	id, at, hasWheel := strings.Cut(name, "@")
	p, ok := FindPreparation(id)
	if !ok {
		return Work{}, &UnknownError{name, UnknownWork}
	}
	w, problem := place(p.PerWheel, at, hasWheel)
	if problem != "" {
		return Work{}, &UnknownError{name, problem}
	}
	return Work{p, w}, nil
}

// Needs names what should stand when this work is done: "stand@front_left".
func (w Work) Needs() []string { return fillIn(w.Preparation.Needs, w.Wheel) }

// Undoes names what does not stand any more after this work.
func (w Work) Undoes() []string { return fillIn(w.Preparation.Undoes, w.Wheel) }

// Needs names the preparations that should stand when a check is made here.
func (i Instance) Needs() []string {
	c, ok := Find(i.Check)
	if !ok {
		return nil
	}
	return fillIn(c.Needs, i.Wheel)
}

func fillIn(names []string, wheel physics.Wheel) []string {
	end := "_rear"
	if wheel.Front() {
		end = "_front"
	}
	list := make([]string, len(names))
	for i, n := range names {
		n = strings.Replace(n, "@end", end, 1)
		if b, ok := strings.CutSuffix(n, "@wheel"); ok {
			n = b + "@" + wheel.String()
		}
		list[i] = n
	}
	return list
}

// OnWheels names what must not stand when the car is driven: a lifted end, a
// wheel off, nuts slackened. The car cannot move with the first two; with
// slackened nuts it can, and a caution is broken.
func OnWheels() (impossible, unsafe []string) {
	impossible = []string{"lift_front", "lift_rear"}
	for w := range physics.Wheel(physics.NumWheels) {
		impossible = append(impossible, "wheel_off@"+w.String())
		unsafe = append(unsafe, "slacken_nuts@"+w.String())
	}
	return impossible, unsafe
}

// RoadNeeds are groups of checks: before a car is driven, at least one instance
// of each group must have been made, and none may have shown a car that should
// not move. Otherwise the drive is refused and counts as harmful ([HarmRoad]).
func RoadNeeds() [][]ID {
	return [][]ID{
		{"pedal_travel"},
		{"hold_sink"},
		{"wetness"},
		{"opening_inner", "opening_outer", "lining_inner_upper", "lining_inner_lower", "lining_outer_upper", "lining_outer_lower"},
	}
}

// StoodOvernight names what stands when an inspector comes to a car that was left
// overnight on a workshop's floor.
func StoodOvernight() []string { return append(Standing(), flat, rested, goneCold) }

// Standing names what stands when an inspector comes to a parked car.
func Standing() []string {
	list := []string{"handbrake_on"}
	for _, p := range []string{"torque_nuts", "wheel_on", "cool_disc"} {
		for w := range physics.Wheel(physics.NumWheels) {
			list = append(list, p+"@"+w.String())
		}
	}
	return list
}
