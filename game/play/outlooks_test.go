package play

import (
	"context"
	"errors"
	"reflect"
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
