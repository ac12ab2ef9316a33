package play

import (
	"context"
	"errors"
	"reflect"
	"slices"
	"testing"

	"evenwear/scoring"
)

// TestOutlooks: worked out side by side they are what they are one by one, and
// what leaves the same car is worked out once.
func TestOutlooks(t *testing.T) {
	lib, words := shelf(t)
	s, err := NewDesk(lib, words).Open("warm_wheel", 7)
	if err != nil {
		t.Fatal(err)
	}
	bleed := []string{"bleed_wheel@front_left"}
	sets := [][]string{nil, bleed, {"clean_pins_silicone@front_left"}, {"leave@car"}, bleed}
	all := s.outlooks()
	if err := all.prepare(t.Context(), sets); err != nil {
		t.Fatal(err)
	}
	distinct := len(all.known)
	for _, set := range sets[:3] {
		got, err := all.of(set)
		if err != nil {
			t.Fatal(err)
		}
		cond, err := s.desk.repaired(s.job.Car, s.found.Model.Condition(), set)
		if err != nil {
			t.Fatal(err)
		}
		want, err := scoring.Look(&s.job.Car.Spec, cond, s.job.Driven.Duty())
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%v: side by side\n%+v\nby itself\n%+v", set, got, want)
		}
	}
	if distinct != 3 || len(all.known) != distinct {
		t.Errorf("%d outlooks, then %d; want 3, because to leave a thing changes nothing", distinct, len(all.known))
	}
	stopped, cancel := context.WithCancel(t.Context())
	cancel()
	if err := s.outlooks().prepare(stopped, sets); !errors.Is(err, context.Canceled) {
		t.Errorf("told to stop it returns %v", err)
	}
}

// TestConsider: the choice that is found by passing over what cannot win is the
// one found among all, and most are passed over.
func TestConsider(t *testing.T) {
	if testing.Short() {
		t.Skip("the outlook of every set of remedies")
	}
	lib, words := shelf(t)
	for _, job := range []string{"warm_wheel", "yearly_look"} {
		s, err := NewDesk(lib, words).Open(job, 7)
		if err != nil {
			t.Fatal(err)
		}
		sets := s.candidates()
		sound := len(s.job.Faults) == 0
		work, done := s.cheapestMending(sets)
		all := s.outlooks()
		few, err := s.consider(t.Context(), all, sets, done, work, sound)
		if err != nil {
			t.Fatal(err)
		}
		looked := len(all.known)
		decide := func(list []considered) (best considered, release string, loss float64) {
			var choices []scoring.Choice
			var of []considered
			for i := range list {
				if list[i].look == nil {
					continue
				}
				for _, c := range s.choices(&list[i], sound) {
					choices, of = append(choices, c), append(of, list[i])
				}
			}
			i, loss := scoring.Decide(choices)
			return of[i], choices[i].Release, loss
		}
		got, release, loss := decide(few)
		if err := all.prepare(t.Context(), sets); err != nil {
			t.Fatal(err)
		}
		every := slices.Clone(few)
		for i := range every {
			if look, err := all.of(every[i].set); err == nil {
				every[i].look = &look
			}
		}
		want, wantRelease, wantLoss := decide(every)
		if !slices.Equal(got.set, want.set) || release != wantRelease || loss != wantLoss {
			t.Errorf("%s: %v, %s, loses %.3f; among all %v, %s, %.3f", job, got.set, release, loss, want.set, wantRelease, wantLoss)
		}
		t.Logf("%s: %v, %s, loses %.1f; %d cars driven on of %d after %d sets", job, want.set, release, loss, looked, len(all.known), len(sets))
		if 2*looked > len(all.known) {
			t.Errorf("%s: %d of %d cars were driven on: hardly any was passed over", job, looked, len(all.known))
		}
	}
}
