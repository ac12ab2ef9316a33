package main

import (
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"evenwear/game/play/playtest"
	"evenwear/game/practice"
	"evenwear/game/term"
	"evenwear/scenarios"
	"evenwear/scoring/learner"
	"evenwear/scoring/record"
)

// TestNextCar: practice begins gently in an empty folder, tells of a damaged line
// once, and does not give again a car that was begun here.
func TestNextCar(t *testing.T) {
	desk, words := playtest.Desk(t)
	dir := t.TempDir()
	next := func() (c practice.Choice, notice string) {
		t.Helper()
		p, err := readPractice(desk, words, dir)
		if err != nil {
			t.Fatal(err)
		}
		if c, err = p.next(); err != nil {
			t.Fatal(err)
		}
		return c, p.View().Notice
	}
	c, notice := next()
	if _, ease, ok := scenarios.ParseDrawn(c.Job); !ok || ease != scenarios.Gentle || notice != "" {
		t.Fatalf("%+v, told %q", c, notice)
	}
	for i := range 3 {
		if err := record.KeepResult(dir, record.Result{When: time.Now(), Session: string(rune('a' + i)), Job: "warm_wheel", Truth: []string{"honestly_worn"}}); err != nil {
			t.Fatal(err)
		}
	}
	f, err := os.OpenFile(record.ResultsFile(dir), os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	f.WriteString("not a line of ours\n")
	f.Close()
	for i := range 2 {
		if c, notice = next(); (notice != "") != (i == 0) {
			t.Fatalf("%+v, told %q", c, notice)
		}
		if _, ease, _ := scenarios.ParseDrawn(c.Job); ease != scenarios.Noted {
			t.Errorf("after three debriefs %+v", c)
		}
	}
	log, _, err := record.Create(dir, record.Header{Job: c.Job, Seed: 1, For: &c.For})
	if err != nil {
		t.Fatal(err)
	}
	log.Close()
	if played, err := playedHere(dir, silent); err != nil || !played[c.Job] {
		t.Errorf("played here are %v, %v", played, err)
	}
}

// shown are results in which an idea explains what was said by so much [nat] better
// than slips do.
func shown(t *testing.T, dir, idea string, better ...float64) {
	t.Helper()
	for i, d := range better {
		slips, held := make([]float64, learner.Points), make([]float64, learner.Points)
		for g := range slips {
			slips[g], held[g] = -30, -30+d
		}
		err := record.KeepResult(dir, record.Result{When: time.Date(2026, 3, 1, 9+i, 0, 0, 0, time.UTC), Session: string(rune('a' + i)),
			Job: scenarios.DrawnID(uint64(20000+i), scenarios.Fair), Truth: []string{"pads_worn_front"},
			Said:  []record.Figure{{ID: "joint_weeping", N: 0.85}, {ID: "pads_worn_front", N: 0.15}},
			Marks: []record.Figure{{ID: "diagnosis", N: 20}}, Ideas: []record.Idea{{LnP: slips}, {ID: idea, LnP: held}}})
		if err != nil {
			t.Fatal(err)
		}
	}
}

// TestPractiseTellsTheIdea: before the next car the terminal names the idea in a
// sentence, what is so, the two cars that show it most, and how to begin the lesson;
// the car is drawn to confront it and its debrief can say so.
func TestPractiseTellsTheIdea(t *testing.T) {
	desk, words := playtest.Desk(t)
	dir := t.TempDir()
	shown(t, dir, "low_is_a_leak", 0.5, 4, 0.2, 3)
	cmd := &termCmd{Job: practiseWord}
	k, err := cmd.open(desk, words, dir)
	if err != nil {
		t.Fatal(err)
	}
	defer k.Close()
	var out strings.Builder
	if err := term.Tell(cmd.told(&cli{}, dir), "", words, &out, term.Options{}); err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(out.String()), " ")
	for _, want := range []string{words.Say("idea.low_is_a_leak"), words.Say("but.low_is_a_leak"), desk.Title("unseen_fair_20001"), desk.Title("unseen_fair_20003"),
		"85 % sure of", "game term --lesson where_the_fluid_stands", words.Say("practise.confront")} {
		if !strings.Contains(said, want) {
			t.Errorf("%q is not in:\n%s", want, out.String())
		}
	}
	if d := k.Drawn(); d.Why != practice.Confronted || d.Idea != "low_is_a_leak" || len(d.Causes) == 0 {
		t.Errorf("drawn for %+v", d)
	}
	kept, err := record.List(dir)
	if err != nil || len(kept) != 1 || kept[0].For == nil || kept[0].For.Idea != "low_is_a_leak" || !slices.Equal(kept[0].For.Causes, k.Drawn().Causes) {
		t.Errorf("kept %+v, %v", kept, err)
	}
}
