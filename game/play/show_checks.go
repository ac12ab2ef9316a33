package play

import (
	"slices"

	"evenwear/physics/inspect"
)

// checkNodes are the checks of the place where the learner stands and the
// cautions at them. A place with many lists them by the part they look at; these
// have no letters of their own, because there are more of them than letters.
func (s *Session) checkNodes() (nodes, cautions []Node) {
	nodes = []Node{{ID: "checks", Role: "choice", Name: s.say("view.check")}}
	for _, p := range inspect.Parts() {
		name := s.say("part." + string(p))
		nodes = append(nodes, Node{ID: "checks_" + string(p), Role: "choice", Name: s.words.Say("view.check_part", "part", name), Part: string(p)})
	}
	for _, inst := range inspect.Instances() {
		c, _ := inspect.Find(inst.Check)
		if placeOf(inst, c) != s.place {
			continue
		}
		label := s.say("check." + string(inst.Check))
		if c.Station == inspect.Road && inst.PerWheel {
			label = s.sayCheck(inst)
		}
		n := &nodes[slices.Index(inspect.Parts(), c.Part)+1] // −1 where it has none
		letter := ""
		if c.Part == "" {
			letter = key(checkKeys, len(n.Actions))
		}
		a := s.act(letter, label, Act{Do: Check, What: inst.String()})
		a.Minutes = c.Minutes
		n.Actions = append(n.Actions, a)
		for _, id := range c.Cautions {
			cautions = stands(cautions, id, string(c.Part))
		}
	}
	nodes = slices.DeleteFunc(nodes, func(n Node) bool { return len(n.Actions) == 0 })
	return nodes, cautions
}

// stands adds to cautions that one stands at the checks of a part, or where part
// is empty at the whole place.
func stands(cautions []Node, id, part string) []Node {
	i := slices.IndexFunc(cautions, func(n Node) bool { return n.ID == id })
	if i < 0 {
		i = len(cautions)
		cautions = append(cautions, Node{ID: id, At: []string{}})
	}
	n := &cautions[i]
	switch {
	case n.At == nil: // it stands at the whole place already
	case part == "":
		n.At = nil
	default:
		n.At = addNew(n.At, part)
	}
	return cautions
}
