package practice

import (
	"slices"

	"evenwear/scenarios"
	"evenwear/scoring/learner"
)

// A confrontation is what is done about a misconception.
type confrontation struct {
	idea   string
	lesson string   // id; empty: no lesson is about it
	causes []string // whose cars show otherwise
}

// confrontations has every misconception. That whoever holds it goes wrong at cars
// of these causes is tested against the physics.
var confrontations = []confrontation{
	{"low_is_a_leak", "where_the_fluid_stands", []string{"pads_worn_front", "fluid_low_wear"}},
	{"uneven_is_the_pins", "a_pin_that_does_not_slide", []string{"piston_corroded", "one_side_renewed"}},
	{"pulls_to_the_bad_side", "", []string{"circuit_lost"}},
	{"hot_is_the_piston", "why_a_pad_drags", []string{"pins_dry", "hose_collapsed"}},
	{"full_is_cured", "where_the_fluid_stands", []string{"fluid_topped_up"}},
	{"thick_is_good", "a_pin_that_does_not_slide", []string{"pins_seized", "one_side_renewed"}},
	{"long_is_air", "air_in_the_pipe", []string{"hub_loose", "hose_bulging"}},
	{"cool_is_good", "why_a_pad_drags", []string{"pins_seized", "pins_dry"}},
	{"turns_is_good", "why_a_pad_drags", []string{"pin_seized", "pads_soaked", "pins_dry", "piston_corroded"}},
	{"pins_wear_the_inner", "why_a_pad_drags", []string{"pins_seized", "pins_dry"}},
	{"wear_is_use", "a_pin_that_does_not_slide", []string{"piston_corroded", "pins_seized", "one_side_renewed"}},
	{"stiff_body_is_the_piston", "one_piston_two_pads", []string{"pins_dry", "pin_seized", "boots_torn"}},
	{"air_comes_by_a_leak", "air_in_the_pipe", []string{"air_in_caliper"}},
	{"wear_does_not_lower", "where_the_fluid_stands", []string{"pads_worn_front", "fluid_low_wear"}},
	{"stops_well_is_good", "air_in_the_pipe", []string{"air_in_caliper", "pads_worn_front"}},
}

// confront finds what is done about a misconception.
func confront(idea string) (c confrontation, ok bool) {
	for _, c := range confrontations {
		if c.idea == idea {
			return c, true
		}
	}
	return c, false
}

// Confronting lists up to n causes of a library the notes on whose cars put every
// misconception to the test: each is the one, not yet listed, that confronts most
// ideas, where one that was confronted before counts for a quarter, and each time for a
// quarter of that.
func Confronting(lib *scenarios.Library, n int) (causes []string) {
	times := map[string]int{} // confronted so far, by idea
	for len(causes) < n {
		best, most := "", 0.0
		for _, c := range lib.Causes {
			gain := 0.0
			for _, idea := range confronted(c) {
				gain += 1 / float64(int(1)<<(2*times[idea]))
			}
			if gain > most && !slices.Contains(causes, c.ID) {
				best, most = c.ID, gain
			}
		}
		if best == "" {
			break
		}
		for _, idea := range confronted(lib.Cause(best)) {
			times[idea]++
		}
		causes = append(causes, best)
	}
	return causes
}

// confronted are the misconceptions that cars of a cause show to be wrong and that its
// notes are about.
func confronted(cause *scenarios.Cause) (ideas []string) {
	fault := scenarios.Fault{Cause: cause, Place: cause.Places[0]}
	notes, err := fault.Notes()
	if err != nil {
		return nil // the loader refuses such notes
	}
	for _, c := range confrontations {
		if !slices.Contains(c.causes, cause.ID) {
			continue
		}
		m, _ := learner.Misconceived(c.idea)
		for _, n := range notes {
			if m.About(n.Check) {
				ideas = append(ideas, c.idea)
				break
			}
		}
	}
	return ideas
}
