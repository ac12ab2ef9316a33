package play

import (
	"slices"
	"strings"

	"evenwear/physics"
	"evenwear/physics/inspect"
)

// A setup is what has been made ready for looking at the car: the names of the
// preparations that stand, in the order in which they were done.
type setup []string

func (u setup) stands(name string) bool { return slices.Contains(u, name) }

// after is the setup when this work has been done as well. u is not changed. A
// wheel that is off has its nuts off, slackened before or not.
func (u setup) after(w inspect.Work) setup {
	gone := w.Undoes()
	next := make(setup, 0, len(u)+2)
	if nuts := (inspect.Work{Preparation: slackenNuts, Wheel: w.Wheel}); w.ID == "wheel_off" && !u.stands(nuts.String()) {
		u = u.after(nuts)
	}
	for _, b := range w.Brings {
		if brought, err := inspect.ParseWork(b); err == nil && !u.stands(b) {
			u = u.after(brought)
		}
	}
	for _, n := range u {
		if n != w.String() && !slices.Contains(gone, n) {
			next = append(next, n)
		}
	}
	return append(next, w.String())
}

// without is the setup when these do not stand any more. u is not changed.
func (u setup) without(names []string) setup {
	return slices.DeleteFunc(slices.Clone(u), func(n string) bool { return slices.Contains(names, n) })
}

var slackenNuts, _ = inspect.FindPreparation("slacken_nuts")

// onWheels reports whether the car stands on its four wheels, and which cautions
// driving it as it stands would break.
func (u setup) onWheels() (stands bool, cautions []string) {
	impossible, unsafe := inspect.OnWheels()
	for _, n := range impossible {
		if u.stands(n) {
			return false, nil
		}
	}
	for _, n := range unsafe {
		if u.stands(n) {
			return true, []string{"caution.nuts_torque"}
		}
	}
	return true, nil
}

// back is the work that is left before the car stands on four tight wheels, in the
// order in which it is done.
func (u setup) back() (list []inspect.Work) {
	undone := func(stands, back string) {
		w, err := inspect.ParseWork(back)
		if err == nil && u.stands(stands) {
			list = append(list, w)
		}
	}
	each := func(stands, back string) {
		for w := range physics.Wheel(physics.NumWheels) {
			undone(stands+"@"+w.String(), back+"@"+w.String())
		}
	}
	each("wheel_off", "wheel_on")
	undone("lift_front", "lower_front")
	undone("lift_rear", "lower_rear")
	each("slacken_nuts", "torque_nuts")
	return list
}

// missing splits what is needed and does not stand: what makes the work
// impossible, and the cautions that are broken by going on without.
func (u setup) missing(needs []string) (impossible, cautions []string) {
	for _, n := range needs {
		if u.stands(n) {
			continue
		}
		w, err := inspect.ParseWork(n)
		switch {
		case err != nil || !w.Safety:
			impossible = append(impossible, n)
		default:
			cautions = append(cautions, w.Cautions[0])
		}
	}
	return impossible, cautions
}

func lifted(w physics.Wheel) string {
	if w.Front() {
		return "lift_front"
	}
	return "lift_rear"
}

// refuseWork says why a preparation cannot be done now.
func (u setup) refuseWork(w inspect.Work, say func(string) string) no {
	if impossible, _ := u.missing(w.Needs()); len(impossible) > 0 {
		return because("no.needs", "what", say(impossible[0]))
	}
	up := u.stands("lift_front") || u.stands("lift_rear")
	at := "@" + w.Wheel.String()
	switch w.ID {
	case "lift_front", "lift_rear":
		if up {
			return because("no.one_end")
		}
	case "lower_front", "lower_rear":
		lift := strings.Replace(w.ID, "lower", "lift", 1)
		if !u.stands(lift) {
			return because("no.not_lifted")
		}
		for c := range physics.Wheel(physics.NumWheels) {
			if lifted(c) == lift && u.stands("wheel_off@"+c.String()) {
				return because("no.wheel_is_off")
			}
		}
	case "wheel_on":
		if !u.stands("wheel_off" + at) {
			return because("no.wheel_is_on")
		}
	case "slacken_nuts", "torque_nuts":
		switch {
		case u.stands("wheel_off" + at):
			return because("no.wheel_is_off")
		case w.ID == "torque_nuts" && u.stands(lifted(w.Wheel)):
			return because("no.torque_on_ground")
		case w.ID == "torque_nuts" && !u.stands("slacken_nuts"+at):
			return because("no.nuts_are_tight")
		}
	case "cool_disc":
		if u.stands(w.String()) {
			return because("no.is_cool")
		}
	case "chock_front", "chock_rear":
		if u.stands(strings.Replace(w.ID, "chock", "lift", 1)) {
			return because("no.end_is_lifted")
		}
	case "roll_level":
		if stands, _ := u.onWheels(); !stands {
			return because("no.not_on_wheels")
		}
	case "clear_road", "drive", "stop_50":
		stands, _ := u.onWheels()
		return unless(stands, "no.not_on_wheels") // may be done again
	}
	if u.stands(w.String()) {
		return because("no.is_so")
	}
	return no{}
}

// breaks names the cautions that doing this work now would break.
func (u setup) breaks(w inspect.Work) []string {
	_, list := u.missing(w.Needs())
	switch w.ID {
	case "slacken_nuts":
		if u.stands(lifted(w.Wheel)) {
			list = append(list, w.Cautions[0])
		}
	case "drive", "stop_50", "roll_level":
		_, nuts := u.onWheels()
		list = append(list, nuts...)
	}
	return list
}

func wheelNamed(name string) (physics.Wheel, bool) {
	for w := range physics.Wheel(physics.NumWheels) {
		if w.String() == name {
			return w, true
		}
	}
	return 0, false
}
