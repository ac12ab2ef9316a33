package main

import (
	"errors"
	"fmt"
	"math"
	"os"
	"strings"
	"testing"
	"time"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/term"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// aCheck is a self-check of so many cars in a folder of its own.
func aCheck(t *testing.T, cars int) *selfCheck {
	t.Helper()
	desk, words := playtest.Desk(t)
	dir := t.TempDir()
	c := record.Check{Began: time.Now(), Library: desk.Hash()}
	for i := range cars {
		c.Cars = append(c.Cars, record.CheckCar{Job: scenarios.DrawnID(20000+uint64(i), scenarios.Fair), Seed: 5})
	}
	if _, err := record.CreateCheck(dir, c); err != nil {
		t.Fatal(err)
	}
	s, err := openCheck(desk, words, dir)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// handOver plays a car to its end as somebody who looks once and leaves it.
func handOver(t *testing.T, c *selfCheck, n int) {
	t.Helper()
	k, err := c.Car(n)
	if err != nil {
		t.Fatal(err)
	}
	defer k.Close()
	for _, a := range []play.Act{
		{Do: play.Go, What: "seat"}, {Do: play.Check, What: "hold_sink"}, {Do: play.Write, Text: "0"},
		{Do: play.OpenCall}, {Do: play.Row, What: "honestly_worn@car"}, {Do: play.Counter, What: "honestly_worn@car", N: 9},
		{Do: play.Seal}, {Do: play.Remedy, What: "leave@car"}, {Do: play.Work}, {Do: play.Release, What: "release.use"}, {Do: play.HandOver},
	} {
		if err := k.Do(a); err != nil {
			t.Fatal(a, err)
		}
	}
}

// TestSelfCheckIsKept: killed between any two acts it goes on where it was; its
// cars are no session to go on with by another way, and open no debrief.
func TestSelfCheckIsKept(t *testing.T) {
	c := aCheck(t, 3)
	k, err := c.Car(1)
	if err != nil {
		t.Fatal(err)
	}
	if err := k.Do(play.Act{Do: play.Go, What: "seat"}); err != nil {
		t.Fatal(err)
	}
	name := k.Name
	k.Close() // as a kill does
	again, err := openCheck(c.desk, c.words, c.dir)
	if err != nil || again.round.Name != c.round.Name {
		t.Fatalf("%+v, %v", again, err)
	}
	if v := again.View(); v.Next == nil || v.Next.Act.N != 1 || v.Handed != 0 {
		t.Errorf("one begun: %+v", v)
	}
	if k, err = again.Car(1); err != nil || k.Name != name || len(k.Acts()) != 1 {
		t.Fatalf("gone on with %v, %v", k, err)
	}
	k.Close()
	handOver(t, again, 1)
	if v := again.View(); v.Handed != 1 || v.Next.Act.N != 2 || v.Over || v.Mark != nil {
		t.Errorf("one handed over: %+v", v)
	}
	if _, err := (&termCmd{Resume: name}).open(c.desk, c.words, c.dir); err == nil || !strings.Contains(err.Error(), c.round.Name) {
		t.Errorf("opened by its name: %v", err)
	}
	if _, err := again.Car(4); err == nil {
		t.Error("there is a fourth car of three")
	}
	list, err := record.List(c.dir)
	if err != nil {
		t.Fatal(err)
	}
	if left, _ := lastLeft(list, nil); left != "" {
		t.Errorf("the cover goes on with %s", left)
	}
}

// TestSelfCheckOfAnotherLibrary: begun with other cars it says so and offers
// another; a damaged one is told of and another begun.
func TestSelfCheckOfAnotherLibrary(t *testing.T) {
	c := aCheck(t, 2)
	if _, err := record.CreateCheck(c.dir, record.Check{Began: time.Now().Add(time.Hour), Library: "other", Cars: []record.CheckCar{{Job: "no_such_job", Seed: 1}}}); err != nil {
		t.Fatal(err)
	}
	s, err := openCheck(c.desk, c.words, c.dir)
	if err != nil {
		t.Fatal(err)
	}
	if v := s.View(); v.Stale == "" || v.Next != nil || v.Renew == nil {
		t.Errorf("%+v", v)
	}
	if _, err := s.Car(1); !errors.Is(err, play.ErrNoJob) {
		t.Errorf("a job that no longer exists: %v", err)
	}
	if err := s.Renew(); err != nil || len(s.round.Cars) != 10 || s.View().Stale != "" {
		t.Errorf("renewed: %v, %+v", err, s.View())
	}
	for _, f := range []string{"selfcheck-1", "selfcheck-2", "selfcheck-3"} {
		if err := os.WriteFile(fmt.Sprintf("%s/%s.selfcheck", c.dir, f), []byte("{"), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if s, err = openCheck(c.desk, c.words, c.dir); err != nil || len(s.round.Cars) != 10 || !strings.Contains(s.View().Notice, "selfcheck-1") {
		t.Errorf("all damaged: %v, %+v", err, s)
	}
}

// TestSelfCheckToItsEnd: the marks are worked out with progress, kept, and told;
// then the debrief opens. It is played in a terminal on a pipe.
func TestSelfCheckToItsEnd(t *testing.T) {
	if testing.Short() {
		t.Skip("works two debriefs out")
	}
	c := aCheck(t, 1)
	handOver(t, c, 1)
	var out strings.Builder
	if err := term.RunCheck(t.Context(), termCheck{c}, c.words, strings.NewReader("m\n1\nquit\n"), &out, term.Options{}); err != nil {
		t.Fatal(err, out.String())
	}
	list, damaged, err := record.Results(c.dir)
	if err != nil || damaged != nil || len(list) != 1 || list[0].For == nil || list[0].For.Check != c.round.Name {
		t.Fatalf("kept %+v, %v, %v", list, damaged, err)
	}
	said := strings.Join(strings.Fields(out.String()), " ")
	for _, want := range []string{c.words.Say("check.marking"), "1 car: mean", c.words.Say("debrief.trail"), c.words.Say("check.done")} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in:\n%s", want, out.String())
		}
	}
}

// TestSelfCheckOfTen: somebody plays all ten cars in a terminal, in two sittings, the
// first cut off in the middle of the fifth car. Nothing of what a car came to is
// printed before the end; then all marks are waited for, and whenever it is opened
// again there are ten totals, their mean and its standard error.
func TestSelfCheckOfTen(t *testing.T) {
	if testing.Short() {
		t.Skip("works ten debriefs out")
	}
	desk, words := playtest.Few(t, "honestly_worn", "pads_worn_front", "fluid_low_wear", "lamp_dead", "washer_empty", "joint_weeping")
	dir := t.TempDir()
	c, err := openCheck(desk, words, dir)
	if err != nil {
		t.Fatal(err)
	}
	plan := playtest.Plan{Wheels: []string{"front_left"}, Row: "honestly_worn@car", Second: "pads_worn_front@front_axle", Release: "release.use"}
	var cars [10][]string // lines of each
	for i, car := range c.round.Cars {
		s, err := desk.Open(car.Job, car.Seed)
		if err != nil {
			t.Fatal(err)
		}
		var lines strings.Builder
		if _, err := playtest.Play(playtest.Typist{Player: s, Lines: &lines}, plan, playtest.See(words)); err != nil {
			t.Fatalf("car %d: %v", i+1, err)
		}
		cars[i] = strings.SplitAfter(lines.String(), "\n")
	}
	sitting := func(want error, lines ...string) string {
		t.Helper()
		c, err := openCheck(desk, words, dir)
		if err != nil {
			t.Fatal(err)
		}
		var out strings.Builder
		if err := term.RunCheck(t.Context(), termCheck{c}, words, strings.NewReader(strings.Join(lines, "")), &out, term.Options{}); !errors.Is(err, want) {
			t.Fatalf("%v, want %v\n%s", err, want, out.String())
		}
		return strings.Join(strings.Fields(out.String()), " ")
	}
	var first, second []string
	for i, lines := range cars {
		half := 0
		if i == 4 {
			half = len(lines) / 2
			first = append(append(first, "n\n"), lines[:half]...)
		}
		if i < 4 {
			first = append(append(first, "n\n"), lines...)
		} else {
			second = append(append(second, "n\n"), lines[half:]...)
		}
	}
	sealed := []string{words.Say("check.total", "what", "", "total", ""), ": mean ", words.Say("debrief.truth"), words.Say("debrief.trail")}
	for n, said := range []string{sitting(term.ErrLeft, first...), sitting(nil, append(second, "m\n")...)} {
		if n == 1 { // all are handed over at its end
			var marked string
			said, marked, _ = strings.Cut(said, words.Say("check.handed_over", "n", 10))
			if !strings.Contains(marked, "10 cars: mean") {
				t.Errorf("the marks were not waited for:\n%s", marked)
			}
		}
		for _, no := range sealed {
			if strings.Contains(said, no) {
				t.Errorf("sitting %d says %q before the end", n+1, no)
			}
		}
		for at := range 10 {
			told := strings.Contains(said, words.Say("check.handed_over", "n", at+1))
			if want := at < 4 == (n == 0) && at < 9; told != want {
				t.Errorf("sitting %d: car %d handed over: %t", n+1, at+1, told)
			}
		}
	}
	said := sitting(nil, "quit\n")
	list, damaged, err := record.Results(dir)
	if err != nil || damaged != nil || len(list) != 10 {
		t.Fatalf("%d results, %v, %v", len(list), damaged, err)
	}
	sum, square := 0.0, 0.0
	for _, r := range list {
		if r.Model == nil || r.Model.Minutes <= 0 || len(r.Ideas) == 0 || len(r.Marks) != 8 {
			t.Errorf("kept of a car: %+v", r)
		}
		sum += r.Total
		square += r.Total * r.Total
	}
	mean := sum / 10
	off := math.Sqrt((square/10 - mean*mean) / 9)
	for _, want := range []string{fmt.Sprintf("10 cars: mean %.1f of 100, standard error %.1f", mean, off), words.Say("check.done"), "The model inspector took"} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in:\n%s", want, said)
		}
	}
	if n := strings.Count(said, sealed[0]); n != 10 {
		t.Errorf("%d totals are told", n)
	}
}
