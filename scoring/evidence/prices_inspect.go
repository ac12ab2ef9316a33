package evidence

import (
	"math"

	"evenwear/physics"
	"evenwear/physics/inspect"
)

// InspectPrices are the prices of a problem whose checks are those of the
// catalogue: every preparation a check needs or wants with what that needs in
// turn, safety included, and the way back to four wheels, which is due with or
// without a drive. A form of a check made in spite of what it wants is not for sale.
// The car stands as one that was just driven in.
func InspectPrices(problem *Problem) Prices { return InspectPricesOf(problem, inspect.Standing()) }

// InspectPricesOf is [InspectPrices] for a car of which these preparations stand.
func InspectPricesOf(problem *Problem, standing []string) Prices {
	b := pricer{problem: problem}
	for _, name := range standing {
		b.work(name)
	}
	for _, inst := range problem.Checks {
		b.check(inst)
	}
	// What a drive must not find is known only when every preparation is listed.
	for c := range b.prices.Checks {
		if b.moved[c] {
			b.ground(c)
		}
	}
	// Listing what a preparation undoes lists more than what stands.
	b.prices.Standing = make([]bool, len(b.prices.Preparations))
	for _, name := range standing {
		b.prices.Standing[b.work(name)] = true
	}
	return b.prices
}

type pricer struct {
	problem *Problem
	prices  Prices
	moved   []bool // by check: the car must be driven or rolled
}

// work returns the index of a preparation by its name; −1 when there is none.
func (b *pricer) work(name string) int {
	for i := range b.prices.Preparations {
		if b.prices.Preparations[i].ID == name {
			return i
		}
	}
	w, err := inspect.ParseWork(name)
	if err != nil {
		return -1
	}
	at := len(b.prices.Preparations)
	b.prices.Preparations = append(b.prices.Preparations, Preparation{ID: name, Minutes: w.Minutes})
	switch back, must := putBack(w); {
	case must:
		b.prices.Preparations[at].Minutes += back.Minutes
	case back.Preparation != nil:
		b.prices.Preparations[at].Back = back.Minutes
	}
	var undoes []int
	for _, u := range append(w.Undoes(), otherEnd(w)...) {
		if i := b.work(u); i >= 0 {
			undoes = append(undoes, i)
		}
	}
	b.prices.Preparations[at].Undoes = undoes
	return at
}

// putBack is the preparation that takes w back; none when nothing does. must tells
// that it is due whatever is looked at: no car is handed over without a wheel, on
// a jack or with loose nuts, so that it is paid for with w.
func putBack(w inspect.Work) (back inspect.Work, must bool) {
	id := ""
	switch w.ID {
	case "lift_front", "lift_rear":
		id = "lower" + w.ID[len("lift"):]
	case "wheel_off":
		id = "wheel_on"
	case "slacken_nuts":
		id = "torque_nuts"
	case "engine_cold":
		id = "drive" // warms it again
	}
	p, ok := inspect.FindPreparation(id)
	if !ok {
		return inspect.Work{}, false
	}
	return inspect.Work{Preparation: p, Wheel: w.Wheel}, id != "drive"
}

// otherEnd names what does not stand when w lifts an end of the car: one end is up
// at a time, and before the other is lowered its wheels are put on.
func otherEnd(w inspect.Work) []string {
	other := map[string]string{"lift_front": "lift_rear", "lift_rear": "lift_front"}[w.ID]
	if other == "" {
		return nil
	}
	return down(other)
}

// down names what does not stand when an end has been lowered on its wheels.
func down(lift string) []string {
	names := []string{lift}
	for wheel := range physics.Wheel(physics.NumWheels) {
		if wheel.Front() == (lift == "lift_front") {
			for _, p := range []string{"stand", "wheel_off", "wipe_dust"} {
				names = append(names, p+"@"+wheel.String())
			}
		}
	}
	return names
}

// check appends the price of one check.
func (b *pricer) check(inst inspect.Instance) {
	price, road, rolled := Price{}, false, false
	if c, ok := inspect.Find(inst.Check); ok {
		price.Minutes = c.Minutes
		if c.Of != "" {
			price.Minutes = math.Inf(1)
		}
		road = b.needs(inst.Needs(), &price.Needs) || c.Harmful == inspect.HarmRoad || c.Station == inspect.Road
		b.needs(c.Wants, &price.Needs)
		rolled = find(c.Wants, "roll_level") >= 0
		for _, name := range c.Spoils {
			price.Clears = append(price.Clears, b.work(name))
		}
		for _, name := range inst.Undoes() {
			price.Undoes = append(price.Undoes, b.work(name))
		}
	}
	if road {
		for _, group := range inspect.RoadNeeds() {
			var all []int
			for i, other := range b.problem.Checks {
				if find(group, other.Check) >= 0 {
					all = append(all, i)
				}
			}
			if len(all) > 0 {
				price.After = append(price.After, all)
			}
		}
	}
	b.prices.Checks = append(b.prices.Checks, price)
	b.moved = append(b.moved, road || rolled)
}

// needs appends works with all they need, in the order in which they are done,
// and reports whether one of them drives the car.
func (b *pricer) needs(names []string, to *[]int) (road bool) {
	for _, name := range names {
		w, err := inspect.ParseWork(name)
		if err != nil {
			continue
		}
		road = b.needs(w.Needs(), to) || w.Preparation.Harmful == inspect.HarmRoad || road
		if i := b.work(name); find(*to, i) < 0 {
			*to = append(*to, i)
		}
	}
	return road
}

// ground adds what must not stand when the car is moved.
func (b *pricer) ground(c int) {
	_, nuts := inspect.OnWheels()
	for _, list := range [][]string{down("lift_front"), down("lift_rear"), nuts} {
		for i := range b.prices.Preparations {
			if find(list, b.prices.Preparations[i].ID) >= 0 {
				b.prices.Checks[c].Clears = append(b.prices.Checks[c].Clears, i)
			}
		}
	}
}
