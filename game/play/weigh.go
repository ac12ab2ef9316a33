package play

import (
	"context"
	"math"
	"slices"

	"evenwear/physics"
	"evenwear/scenarios"
	"evenwear/scoring"
)

// known tells that the learner put most counters on what is true: then a low
// level has a cause that is known.
func (s *Session) known() bool {
	n := 0
	for _, t := range s.trueRows() {
		if r := s.row(t); r != nil {
			n += r.counters
		}
	}
	return n > Counters/2
}

// after is the car's condition after these remedies.
func (s *Session) after(chosen []string) (physics.Condition, error) {
	return s.desk.repaired(s.job.Car, s.found.Model.Condition(), chosen)
}

// mended tells whether these remedies leave no part faulty.
func (s *Session) mended(chosen []string) (bool, error) { return s.mends(chosen, s.job.Faults) }

// mends tells whether these remedies leave nothing of these faults.
func (s *Session) mends(chosen []string, faults []scenarios.Fault) (bool, error) {
	now, err := s.after(chosen)
	if err != nil {
		return false, err
	}
	good := now
	for i := range faults {
		if err := faults[i].MakeGood(&s.job.Car.Spec, &good); err != nil {
			return false, err
		}
	}
	return scoring.Mended(&s.job.Car.Spec, now, good)
}

// needed tells whether one of these remedies mends a fault that the others leave,
// whether or not the brakes show it, or fills a vessel that stands low without it.
func (s *Session) needed(chosen []string, remedy int) (bool, error) {
	for i := range s.job.Faults {
		fault := s.job.Faults[i : i+1]
		with, err := s.mends(chosen, fault)
		if err != nil {
			return false, err
		}
		if !with {
			continue
		}
		if left, err := s.mends(without(chosen, remedy), fault); err != nil || !left {
			return err == nil, err
		}
	}
	return s.fillsLow(chosen, remedy)
}

// choice is a set of remedies with a release, and the car it leaves.
func (s *Session) choice(chosen []string, release string, o *scoring.Outlook, sound, known bool) scoring.Choice {
	c := scoring.Choice{Release: release, Sound: sound, Findings: o.Findings(known), Lasts: o.Lasts, DragFuel: o.DragFuel, Pedal: o.PedalUsed()}
	c.Minutes, c.Parts, c.Refers = s.price(chosen)
	return c
}

// price is what remedies take in minutes and in parts [min worth], and whether
// one of them hands the car to a mechanic.
func (s *Session) price(chosen []string) (minutes, parts float64, refers bool) {
	for _, id := range chosen {
		r, _, _ := s.desk.findRemedy(id)
		minutes += r.Minutes
		parts += r.PartsCost
		refers = refers || r.Refers
	}
	return minutes, parts, refers
}

// same tells that leaving a remedy out would have changed nothing that counts:
// no danger, no thousand kilometres, no tenth of a litre, no hundredth of the
// pedal's way.
func same(a, b *scoring.Outlook) bool {
	fa, fb := a.Findings(false), b.Findings(false)
	return slices.EqualFunc(fa, fb, func(x, y scoring.Finding) bool { return x.ID == y.ID && x.Wheel == y.Wheel }) &&
		a.Lasts == b.Lasts && math.Abs(a.DragFuel-b.DragFuel) < 1e-4 && math.Abs(a.Travel-b.Travel) < 1
}

// scales are what every decision about one car is weighed on: what becomes of it
// after each set of remedies, and the one that loses least.
type scales struct {
	s     *Session
	all   *outlooks
	found scoring.Outlook // as it came
	sound bool
	work  float64 // [min worth] of the cheapest mending
	best  scoring.Choice
	set   []string // remedies of the best
	name  string   // of the best
}

// scales drives the car on as it came and as those candidates would leave it that
// may be the best; extra is one more set that will be asked for.
func (s *Session) scales(ctx context.Context, extra []string) (*scales, error) {
	w, sets := &scales{s: s, all: s.outlooks()}, s.candidates()
	first := [][]string{nil, extra}
	for i := range extra {
		first = append(first, without(extra, i))
	}
	err := w.all.prepare(ctx, first)
	if err != nil {
		return nil, err
	}
	if w.found, err = w.all.of(nil); err != nil {
		return nil, err
	}
	w.sound = s.job.Sound() && len(w.found.Findings(true)) == 0
	var done []bool
	w.work, done = s.cheapestMending(sets)
	var choices []scoring.Choice
	var chosen [][]string
	list, err := s.consider(ctx, w.all, sets, done, w.work, w.sound)
	if err != nil {
		return nil, err
	}
	for i := range list {
		if list[i].look == nil {
			continue
		}
		for _, c := range s.choices(&list[i], w.sound) {
			choices, chosen = append(choices, c), append(chosen, list[i].set)
		}
	}
	if best, _ := scoring.Decide(choices); best >= 0 {
		w.best, w.set = choices[best], chosen[best]
		w.name = choiceID(w.set, w.best.Release)
	}
	return w, nil
}

// choice is one set of remedies with a release on the scales, and what becomes of
// the car. known tells that what was wrong is known.
func (w *scales) choice(chosen []string, release string, known bool) (c scoring.Choice, leaves scoring.Outlook, err error) {
	if leaves, err = w.all.of(chosen); err != nil {
		return c, leaves, err
	}
	c = w.s.choice(chosen, release, &leaves, w.sound, known)
	for i, id := range chosen {
		r, _, _ := w.s.desk.findRemedy(id)
		if r.PartsCost == 0 || r.Refers {
			continue
		}
		without, err := w.all.of(without(chosen, i))
		if err != nil {
			return c, leaves, err
		}
		if !same(&without, &leaves) {
			continue
		}
		needed, err := w.s.needed(chosen, i)
		if err != nil {
			return c, leaves, err
		}
		if !needed {
			c.Needless++
		}
	}
	ok, err := w.s.mended(chosen)
	if !ok {
		c.Again = w.work
	}
	return c, leaves, err
}

// without is a set but for one remedy.
func without(chosen []string, i int) []string { return slices.Delete(slices.Clone(chosen), i, i+1) }

// decide fills a decision into a play; of equals the learner's own is the best.
func (w *scales) decide(p *scoring.Play, mine scoring.Choice, name string) {
	best, loss := scoring.Decide([]scoring.Choice{mine, w.best})
	p.BestLoss, p.BestChoice = loss, []string{name, w.name}[best]
	p.Loss, p.Needless = mine.Loss(), mine.Needless
	p.Unsafe = scoring.Danger(mine.Findings, mine.Release)
}

// weigh drives the car on as it came, as it leaves and as the best remedies
// would leave it, and fills the decision in.
func (s *Session) weigh(ctx context.Context, p *scoring.Play, o *outcome) error {
	w, err := s.scales(ctx, s.chosen)
	if err != nil {
		return err
	}
	var mine scoring.Choice
	if mine, o.Leaves, err = w.choice(s.chosen, s.release, s.known()); err != nil {
		return err
	}
	o.Found = w.found
	w.decide(p, mine, choiceID(s.chosen, s.release))
	return nil
}

// cheapestMending is the least work [min worth] among these sets that leaves no
// part faulty, a referral's when none does, and which of them do.
func (s *Session) cheapestMending(sets [][]string) (work float64, done []bool) {
	done = make([]bool, len(sets))
	refer := 0.0
	for i, set := range sets {
		minutes, parts, refers := s.price(set)
		minutes += parts
		if refers && (refer == 0 || minutes < refer) {
			refer = minutes
		}
		ok, err := s.mended(set)
		if done[i] = ok && err == nil; done[i] && (work == 0 || minutes < work) {
			work = minutes
		}
	}
	if work == 0 {
		work = refer
	}
	return work, done
}

// candidates are the sets of remedies the best is looked for in: none, each
// one that touches a faulty place, each of those with new pads or discs on the same
// axle, and what mends two faults one by one.
func (s *Session) candidates() [][]string {
	spec := &s.job.Car.Spec
	touches := func(p scenarios.Place) bool {
		for _, f := range s.job.Faults {
			for _, a := range f.Place.Wheels(spec) {
				if slices.Contains(p.Wheels(spec), a) {
					return true
				}
			}
		}
		return s.job.Sound()
	}
	sets := [][]string{nil}
	var single, axle []string
	for _, r := range s.desk.lib.Remedies {
		for _, p := range r.Places {
			if r.Harmful != "" || !touches(p) {
				continue
			}
			id := r.ID + "@" + string(p)
			if s.job.Sound() && r.PartsCost > 0 && p != "car" && p != "front_axle" && p != "rear_axle" {
				continue // at a sound car only what serves an axle or the whole of it
			}
			sets = append(sets, []string{id})
			single = append(single, id)
			if p == "front_axle" || p == "rear_axle" {
				axle = append(axle, id)
			}
		}
	}
	for _, a := range axle {
		for _, b := range single {
			if a != b {
				sets = append(sets, []string{b, a})
			}
		}
	}
	return append(sets, s.bothCured(single)...)
}

// bothCured are the sets that mend two faults by one remedy each.
func (s *Session) bothCured(single []string) (sets [][]string) {
	if len(s.job.Faults) != 2 {
		return nil
	}
	var cures [2][]string
	for k := range cures {
		for _, id := range single {
			if ok, err := s.mends([]string{id}, s.job.Faults[k:k+1]); err == nil && ok {
				cures[k] = append(cures[k], id)
			}
		}
	}
	for _, a := range cures[0] {
		for _, b := range cures[1] {
			if a != b && !slices.Contains(cures[1], a) && !slices.Contains(cures[0], b) {
				sets = append(sets, []string{a, b})
			}
		}
	}
	return sets
}
