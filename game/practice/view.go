package practice

import (
	"time"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// dueShown is how many causes are told that come back next.
const dueShown = 3

// View puts into words what a learner's debriefs say of them: a misconception with
// the two cars that show it, the pair mixed up most, what comes back. What the next
// car is drawn for stands in it only where a misconception is put to the test.
// title names a job.
func View(lib *scenarios.Library, history []record.Result, title func(job string) string, words play.Words) *play.PractiseView {
	v := &play.PractiseView{Cars: len(history), All: len(lib.Causes), Summary: words.Say("practise.none")}
	if v.Cars > 0 {
		v.Summary = words.Say("practise.summary", "n", v.Cars)
	}
	part := func(id string, lines ...string) {
		v.Parts = append(v.Parts, play.PractisePart{ID: id, Heading: words.Say("practise." + id + "_heading"), Lines: lines})
	}
	part("idea", ideaLines(v, lib, history, title, words)...)
	known := func(cause string) bool { return lib.Cause(cause) != nil }
	table := Confused(history)
	mixed := words.Say("practise.not_mixed")
	if p, ok := table.Worst(known); ok {
		mixed = words.Say("practise.mixed", "cause", lib.Cause(p.True).Name, "other", lib.Cause(p.Said).Name, "n", assets.Figure(100*p.Belief, 0))
	}
	part("mixed", mixed)
	var due []string
	for _, c := range soonest(lib, history) {
		if v.Met++; len(due) < dueShown {
			due = append(due, words.Say("practise.due", "cause", lib.Cause(c.Cause).Name, "date", c.Due.Format(time.DateOnly)))
		}
	}
	if len(due) == 0 {
		due = []string{words.Say("practise.none_due")}
	}
	part("due", due...)
	part("met", words.Say("practise.met", "n", v.Met, "all", v.All))
	v.Next = &play.Action{Key: "N", Label: words.Say("practise.next"), Act: play.Act{Do: play.NextCar}, Enabled: true}
	v.Nodes = append(v.Nodes, play.Node{ID: "practise", Role: "heading", Name: words.Say("practise.name"), Value: v.Summary})
	for _, p := range v.Parts {
		v.Nodes = append(v.Nodes, play.Node{ID: p.ID, Role: "heading", Name: p.Heading})
		for _, l := range p.Lines {
			v.Nodes = append(v.Nodes, play.Node{ID: p.ID + "_line", Role: "text", Name: l})
		}
	}
	return v
}

// ideaLines is the misconception that is named, the two cars that show it, and what
// is so instead; the lesson that confronts it goes into v.
func ideaLines(v *play.PractiseView, lib *scenarios.Library, history []record.Result, title func(string) string, words play.Words) []string {
	cars, _, _, _ := explanations(history)
	if len(cars) < 2 {
		return []string{words.Say("practise.too_few")}
	}
	n, ok := Named(history)
	if !ok {
		return []string{words.Say("practise.no_idea", "n", len(cars))}
	}
	lines := []string{words.Say("practise.idea", "n", len(cars), "idea", words.Say("idea."+n.Idea))}
	name := func(cause string) string {
		if c := lib.Cause(cause); c != nil {
			return c.Name
		}
		return cause
	}
	for i := range n.Shows {
		r := &n.Shows[i]
		var truth []string
		for _, id := range r.Truth {
			truth = append(truth, name(id))
		}
		said := surest(r)
		lines = append(lines, words.Say("practise.shows", "job", title(r.Job), "truth", play.Joined(words, truth), "said", name(said.ID), "n", assets.Figure(100*said.N, 0)))
	}
	lines = append(lines, words.Say("but."+n.Idea))
	if len(confronting(lib, n)) > 0 {
		lines = append(lines, words.Say("practise.confront"))
	}
	c, _ := confront(n.Idea)
	if l := lib.Lesson(c.lesson); l != nil {
		v.Lesson = &play.Action{Key: "L", Label: words.Say("practise.lesson", "title", l.Title), Act: play.Act{Do: play.OpenLesson, What: l.ID}, Enabled: true}
	}
	return lines
}

// surest is what was believed most of a car.
func surest(r *record.Result) (most record.Figure) {
	for _, f := range r.Said {
		if f.N > most.N {
			most = f
		}
	}
	return most
}
