package playtest

import (
	"fmt"
	"strings"

	"evenwear/game/play"
	"evenwear/physics/inspect"
)

// A Player is what an inspector plays on: a session, or a face that passes its
// acts on.
type Player interface {
	View() *play.View
	Do(play.Act) error
}

// A Plan is what one inspector looks at and calls.
type Plan struct {
	Job      string
	Bonnet   []string // checks and preparations under the bonnet, after the level
	Wheels   []string // taken off and measured
	Row      string   // "cause@place" with 15 counters
	Second   string   // with 5
	Remedies []string
	Release  string
}

// Plans are a sensible call for each of the eight jobs.
var Plans = []Plan{
	{Job: "just_bought", Wheels: []string{"front_left"}, Row: "honestly_worn@car", Second: "pins_dry@front_left", Release: "release.use"},
	{Job: "like_a_sponge", Wheels: []string{"front_right"}, Row: "air_in_caliper@front_right", Second: "air_in_caliper@front_left", Remedies: []string{"bleed_wheel@front_right"}, Release: "release.use"},
	{Job: "morning_lamp", Wheels: nil, Row: "joint_weeping@rear_left", Second: "fluid_low_wear@car", Remedies: []string{"renew_joint@rear_left"}, Release: "release.use"},
	{Job: "spring_service", Wheels: []string{"front_right"}, Row: "pin_seized@front_right.lower_pin", Second: "pin_seized@front_right.upper_pin", Remedies: []string{"renew_pins@front_right"}, Release: "release.use"},
	{Job: "thirsty", Wheels: []string{"rear_right"}, Row: "piston_corroded@rear_right", Second: "pins_dry@rear_right", Remedies: []string{"refer@car"}, Release: "release.trip"},
	{Job: "to_the_kerb", Bonnet: everyVessel, Wheels: []string{"front_right"}, Row: "pins_seized@front_right", Second: "pins_dry@front_right", Remedies: []string{"renew_pins@front_right"}, Release: "release.use"},
	{Job: "warm_wheel", Wheels: []string{"front_left"}, Row: "pins_dry@front_left", Second: "pin_seized@front_left.upper_pin", Remedies: []string{"clean_pins_silicone@front_left"}, Release: "release.use"},
	{Job: "yearly_look", Bonnet: everyVessel[hasty:], Wheels: []string{"front_left"}, Row: "honestly_worn@car", Second: "fluid_low_wear@car", Release: "release.use"},
}

// everyVessel looks at all there is under the bonnet; first at the oil in haste,
// which a car that stood overnight does not allow.
var everyVessel = []string{"oil_level", "roll_level", "run_back", "oil_level", "coolant_level", "steering_level", "washer_level",
	"cap_vent", "fluid_water", "fluid_boil", "fluid_layers", "cap_rubber"}

// hasty is how many things are done in haste.
const hasty = 3

// PlanOf is the plan of a job; a job without one gives a plan that fails.
func PlanOf(job string) Plan {
	for _, p := range Plans {
		if p.Job == job {
			return p
		}
	}
	return Plan{Job: job}
}

// An Inspector plays a plan and keeps its acts.
type Inspector struct {
	Player
	Acts []play.Act
	See  func(check, perception string) string // the word for what is seen
	err  error
}

// Play plays a job from its first sheet to the hand-over. The first act that is
// refused ends it with an error.
func Play(p Player, plan Plan, see func(check, perception string) string) ([]play.Act, error) {
	i := &Inspector{Player: p, See: see}
	i.inspect(plan)
	i.call(plan)
	i.hand(plan)
	return i.Acts, i.err
}

func (i *Inspector) do(a play.Act) {
	if i.err != nil {
		return
	}
	if err := i.Do(a); err != nil {
		i.err = fmt.Errorf("%s %s: %w", a.Do, a.What, err)
		return
	}
	i.Acts = append(i.Acts, a)
}

func (i *Inspector) walk(place string) { i.do(play.Act{Do: play.Go, What: place}) }

func (i *Inspector) prepare(works ...string) {
	for _, w := range works {
		i.do(play.Act{Do: play.Prepare, What: w})
	}
}

// check makes checks and writes down what their marks say.
func (i *Inspector) check(checks ...string) {
	for _, c := range checks {
		i.do(play.Act{Do: play.Check, What: c})
		if i.err != nil {
			return
		}
		v := i.View().Instrument
		if v == nil {
			continue // a drive that came too soon shows nothing
		}
		id, _, _ := strings.Cut(c, "@")
		text, err := Read(v, func(perception string) string { return i.See(id, perception) })
		if err != nil {
			i.err = fmt.Errorf("%s: %w", c, err)
			return
		}
		i.do(play.Act{Do: play.Write, What: v.Check, Text: text})
	}
}

// inspect looks at bonnet, seat, four wheels and the wheels of the plan; the
// road when what was read allows it.
func (i *Inspector) inspect(plan Plan) {
	i.walk("bonnet")
	i.check("reservoir_level")
	for _, name := range plan.Bonnet {
		if _, err := inspect.ParseWork(name); err == nil {
			i.prepare(name)
		} else {
			i.check(name)
		}
	}
	i.walk("seat")
	i.check("pedal_travel", "hold_sink", "pump_running")
	wet := false
	for _, w := range []string{"front_left", "front_right", "rear_left", "rear_right"} {
		i.walk(w)
		i.check("wetness@"+w, "opening_outer@"+w)
	}
	if i.err == nil {
		for _, n := range i.View().Notebook {
			wet = wet || strings.HasPrefix(n.Check, "wetness") && n.Written != "dry"
			wet = wet || strings.HasPrefix(n.Check, "hold_sink") && n.Written != "0" && n.Written != "1"
		}
	}
	if !wet {
		i.walk("road")
		i.prepare("clear_road", "stop_50")
		i.check("pull")
	}
	for _, w := range plan.Wheels {
		end, other := "front", "rear"
		hand := "handbrake_on"
		if strings.HasPrefix(w, "rear") {
			end, other, hand = "rear", "front", "handbrake_off"
		}
		i.walk("ground")
		i.prepare("chock_" + other)
		if hand == "handbrake_off" {
			i.prepare(hand)
		}
		i.walk(w)
		i.prepare("slacken_nuts@" + w)
		i.walk("ground")
		i.prepare("lift_" + end)
		i.walk(w)
		i.prepare("stand@" + w)
		if !wet {
			i.prepare("cool_disc@" + w) // after the stop the disc is hot
		}
		i.prepare("wheel_off@"+w, "wipe_dust@"+w)
		i.check("lining_inner_upper@"+w, "lining_inner_lower@"+w, "lining_outer_upper@"+w, "lining_outer_lower@"+w, "slide_body@"+w)
		i.prepare("wheel_on@" + w)
		i.walk("ground")
		i.prepare("lower_" + end)
		i.walk(w)
		i.prepare("torque_nuts@" + w)
	}
}

func (i *Inspector) call(plan Plan) {
	i.do(play.Act{Do: play.OpenCall})
	for n, row := range []string{plan.Row, plan.Second} {
		i.do(play.Act{Do: play.Row, What: row})
		for c := range []int{15, 5}[n] { // one by one, as a hand threads them
			i.do(play.Act{Do: play.Counter, What: row, N: float64(c + 1)})
		}
	}
	i.do(play.Act{Do: play.Seal})
	for _, r := range plan.Remedies {
		i.do(play.Act{Do: play.Remedy, What: r})
	}
	i.do(play.Act{Do: play.Work})
}

func (i *Inspector) hand(plan Plan) {
	if i.err != nil {
		return
	}
	for _, l := range i.View().Work.Looks {
		i.check(l.Action.Act.What)
	}
	i.do(play.Act{Do: play.Release, What: plan.Release})
	i.do(play.Act{Do: play.Tell, Text: "What was found stands in the notebook."})
	i.do(play.Act{Do: play.HandOver})
}
