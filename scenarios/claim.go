package scenarios

import (
	"fmt"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"
)

var wheelNames = []string{"front_left", "front_right", "rear_left", "rear_right"}

// claimKinds is every claim an owner can make with its values, and the
// beginnings of words that speak of it in a complaint.
var claimKinds = []struct {
	id     string
	values []string
	words  []string
}{
	{"pull", []string{"left", "right"}, []string{"pull", "veer", "drift", "swerv", "sideways", "tug"}},
	{"hotter", wheelNames, []string{"hot", "smell", "smok", "warm", "heat", "burn", "scorch"}},
	{"pedal", []string{"long", "soft", "sinks", "pulses", "hard"}, []string{"pedal", "spong", "sink", "soft", "puls", "shudder", "judder", "shak", "floor", "pump", "stiff"}},
	{"lamp", []string{"level"}, []string{"lamp", "light", "warning"}},
	{"scrapes", []string{"front", "rear"}, []string{"scrap", "grind", "grat", "squeal", "squeak", "nois"}},
	{"wet", wheelNames, []string{"wet", "drip", "leak", "puddle", "damp", "stain"}},
	{"rolls", []string{"badly"}, []string{"roll", "drag", "fuel", "thirst", "sluggish", "holding"}},
	{"washer", []string{"dry"}, []string{"washer", "windscreen", "wiper"}},
	{"none", []string{"service", "bought", "journey", "advice"}, nil},
}

// unheard are words of things the physics does not compute, so no owner of
// ours can speak of them.
var unheard = []string{"rattl", "knock", "click", "hum"}

// ClaimIDs names every kind of claim.
func ClaimIDs() []string {
	out := make([]string, len(claimKinds))
	for i, k := range claimKinds {
		out[i] = k.id
	}
	return out
}

// everyClaim lists all that an owner can notice, in the order of the kinds.
func everyClaim() (all []Claim) {
	for _, k := range claimKinds {
		for _, v := range k.values {
			if k.id != "none" {
				all = append(all, Claim{ID: k.id, Value: v})
			}
		}
	}
	return all
}

// claim reads one item of notices: a single key with its value.
func claim(r *reader, it item) (Claim, bool) {
	o := r.object(it.node, it.path)
	if o.bad {
		return Claim{}, false
	}
	if !o.lone() {
		r.fail(it.node, it.path, fmt.Sprintf("%d keys stand in one notice", len(o.keys)), "one: "+strings.Join(ClaimIDs(), ", "))
		return Claim{}, false
	}
	var c Claim
	known := false
	for _, k := range claimKinds {
		n := o.get(k.id)
		if n == nil {
			continue
		}
		known = true
		at := o.at(k.id)
		if i, ok := r.name(n, at, "value of "+k.id, k.values); ok {
			c = Claim{ID: k.id, Value: k.values[i], at: Problem{File: r.file, Line: n.Line, Col: n.Column, Path: at}}
		}
	}
	if !known {
		r.fail(o.keys[0], o.at(clip(o.keys[0].Value)), "unknown notice", "known are "+strings.Join(ClaimIDs(), ", "))
	}
	return c, c.ID != ""
}

// claimsFit refuses notices that cannot stand together.
func claimsFit(r *reader, n *yaml.Node, claims []Claim) {
	for i, c := range claims {
		for _, d := range claims[:i] {
			switch {
			case c.ID == d.ID && c.Value == d.Value:
				c.at.What, c.at.Allowed = "the notice stands twice", "once"
			case c.ID == "none" || d.ID == "none":
				c.at.What, c.at.Allowed = "who notices something does not notice nothing", "none alone, or the others without it"
			case c.ID == "pull" && d.ID == "pull":
				c.at.What, c.at.Allowed = "a car pulls to one side", "left or right"
			default:
				continue
			}
			*r.probs = append(*r.probs, c.at)
			break
		}
	}
}

// A spoken is a word of a complaint that needs a claim.
type spoken struct{ word, claim string }

// undeclared lists the words of a complaint that speak of something its claims
// do not list: prose may colour what was noticed, not add to it.
func undeclared(complaint string, claims []Claim) []spoken {
	var out []spoken
	for _, w := range strings.FieldsFunc(strings.ToLower(complaint), func(c rune) bool { return !unicode.IsLetter(c) }) {
		for _, u := range unheard {
			if strings.HasPrefix(w, u) {
				out = append(out, spoken{w, "something that is computed"})
			}
		}
		for _, k := range claimKinds {
			for _, stem := range k.words {
				if strings.HasPrefix(w, stem) && !declared(claims, k.id) {
					out = append(out, spoken{w, k.id})
				}
			}
		}
	}
	return out
}

func declared(claims []Claim, id string) bool {
	for _, c := range claims {
		if c.ID == id {
			return true
		}
	}
	return false
}
