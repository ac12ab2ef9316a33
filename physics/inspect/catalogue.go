package inspect

import "evenwear/physics"

// all is every check in its fixed order; stations keep together.
var all = gather()

// amiss are the forms of checks made in spite of what they want.
var amiss = gatherForms()

func gatherForms() []Check {
	var list []Check
	for i := range all {
		if all[i].level != nil {
			list = append(list, forms(&all[i])...)
		}
	}
	return list
}

func gather() []Check {
	var list []Check
	list = append(list, bonnetChecks()...)
	list = append(list, seatChecks()...)
	list = append(list, wheelOnChecks()...)
	list = append(list, wheelOffChecks()...)
	list = append(list, discChecks()...)
	list = append(list, padChecks()...)
	list = append(list, screwChecks()...)
	list = append(list, roadChecks()...)
	list = append(list, rollingChecks()...)
	return list
}

// All lists every check in a fixed order. The list must not be changed.
func All() []Check { return all }

// Forms lists, in a fixed order, every check as it is made in spite of what it
// wants. The list must not be changed.
func Forms() []Check { return amiss }

// Find returns a check, or a form of one, by its id. It must not be changed.
func Find(id ID) (*Check, bool) {
	for _, list := range [2][]Check{all, amiss} {
		for i := range list {
			if list[i].ID == id {
				return &list[i], true
			}
		}
	}
	return nil, false
}

// Instances lists every check at every place it can be made, in the order of
// [All], wheels in the order of the physics.
func Instances() []Instance {
	var list []Instance
	for i := range all {
		c := &all[i]
		if !c.PerWheel {
			list = append(list, Instance{Check: c.ID})
			continue
		}
		for w := range physics.Wheel(physics.NumWheels) {
			list = append(list, Instance{Check: c.ID, Wheel: w, PerWheel: true})
		}
	}
	return list
}

// FormInstances lists the forms of checks as [Instances] lists the checks.
func FormInstances() []Instance {
	var list []Instance
	for i := range amiss {
		list = append(list, Instance{Check: amiss[i].ID})
	}
	return list
}

// CautionIDs lists the ids of all cautions that checks and preparations name, each once.
func CautionIDs() []string {
	var list []string
	for i := range all {
		list = addNew(list, all[i].Cautions)
	}
	for i := range preparations {
		list = addNew(list, preparations[i].Cautions)
	}
	return list
}

func addNew(list, more []string) []string {
	for _, m := range more {
		known := false
		for _, l := range list {
			known = known || l == m
		}
		if !known {
			list = append(list, m)
		}
	}
	return list
}
