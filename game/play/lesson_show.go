package play

import (
	"math"
	"slices"
	"strings"
)

// A LessonView is what a lesson asks and tells, beside the bench it stands on.
type LessonView struct {
	Title       string
	Step, Steps int    // from 1
	Tell        string // what is set and why
	Question    string
	Kind        string // "number", "choice" or "curve"
	Unit        string
	Lo, Hi      float64   // what can be said
	Choices     []string  // of a choice
	At          []float64 // [N] of a curve: the feet a figure is wanted for
	Said        []float64 // answers so far; of a choice, its number from 1
	Lettered    []string  // the same as it is written down
	Computed    []float64 // after it was seen; of a choice, the figure
	Right       int       // of a choice, the number of the right one from 1; 0: not seen yet
	Comment     string    // what was said against what was computed
	Look        string    // what to look at, after it was seen
	End         string    // what the lesson has shown and what to practise, after its last step was seen
	Undriven    bool      // the car is drawn as it was before it was driven, for the answer would be seen
	LevelHidden bool      // so would it be from the level in the reservoir
	Running     bool
	CanAnswer   bool
	CanRun      bool
	CanNext     bool
	CanBefore   bool
}

// View is the lesson with its bench, in numbers and in words.
func (l *Lesson) View() *BenchView {
	v := &BenchView{}
	l.Numbers(v)
	v.Title = Title{Sheet: l.words.Say("sheet.lesson"), Car: l.car.Name, Job: l.lesson.Title, Place: l.words.Say("place." + v.Wheel)}
	v.Lesson = l.show()
	l.lessonNodes(v)
	return v
}

// show is the lesson without its bench.
func (l *Lesson) show() *LessonView {
	s, q := l.step(), l.quantity()
	v := &LessonView{
		Title: l.lesson.Title, Step: l.at + 1, Steps: len(l.lesson.Steps), Tell: s.Tell,
		Question: s.Ask.Text, Kind: s.Ask.Kind, Unit: q.Unit, Lo: q.Lo, Hi: q.Hi, Choices: s.Ask.Choices, Said: l.said,
		Undriven: l.undriven(), LevelHidden: s.Ask.Of == "level_percent" && l.stage != shown,
		Running: l.stage == running, CanAnswer: l.stage == asking, CanBefore: l.at > 0 && l.stage != running,
	}
	if s.Ask.Kind == "curve" {
		v.At = s.Press
	}
	for _, n := range l.said {
		v.Lettered = append(v.Lettered, l.lettered(n))
	}
	v.CanRun = l.stage == asking && len(l.said) == l.answers()
	if l.stage != shown {
		return v
	}
	v.Computed, v.Look = l.got, s.Look
	v.CanNext = l.at+1 < len(l.lesson.Steps)
	v.Right, v.Comment = l.judge()
	if !v.CanNext {
		v.End = l.farewell()
	}
	return v
}

// farewell says at the end of a lesson what it has shown and what comes next.
func (l *Lesson) farewell() string {
	next := l.words.Say("lesson.none_after")
	all := l.lib.Lessons // in the order they are offered
	if i := slices.Index(all, l.lesson); i+1 < len(all) {
		next = l.words.Say("lesson.then", "title", all[i+1].Title)
	}
	return strings.TrimSpace(l.lesson.End + " " + next)
}

// lettered is an answer as it is written down.
func (l *Lesson) lettered(n float64) string {
	if q := l.step().Ask; q.Kind == "choice" {
		return q.Choices[int(n)-1]
	}
	return fixed(n, l.quantity().Digits)
}

// judge compares what was said with what came. right is the number of the right
// choice.
func (l *Lesson) judge() (right int, comment string) {
	ask, q := l.step().Ask, l.quantity()
	got := fixed(l.got[0], q.Digits)
	switch ask.Kind {
	case "choice":
		right = 1
		for _, from := range ask.Cuts {
			if l.got[0] >= from {
				right++
			}
		}
		id := "lesson.chose_right"
		if int(l.said[0]) != right {
			id = "lesson.chose_wrong"
		}
		return right, l.words.Say(id, "computed", got, "unit", q.Unit, "right", ask.Choices[right-1])
	case "curve":
		near := 0
		for i, x := range l.got {
			if math.Abs(l.said[i]-x) <= max(q.Near, 0.15*math.Abs(x)) {
				near++
			}
		}
		return 0, l.words.Say("lesson.curve", "near", near, "all", len(l.got))
	}
	off := math.Abs(l.said[0] - l.got[0])
	id := "lesson.near"
	switch {
	case off <= q.Near:
	case l.said[0] > l.got[0]:
		id = "lesson.too_high"
	default:
		id = "lesson.too_low"
	}
	return 0, l.words.Say(id, "computed", got, "unit", q.Unit, "off", fixed(off, q.Digits))
}

// lessonNodes are the lesson in words with all that can be done.
func (l *Lesson) lessonNodes(v *BenchView) {
	say, x := l.words.Say, v.Lesson
	v.Nodes = append(v.Nodes,
		Node{ID: "lesson", Role: "heading", Name: say("lesson.step", "title", x.Title, "step", x.Step, "steps", x.Steps)},
		Node{ID: "tell", Role: "text", Name: x.Tell})
	ask := Node{ID: "ask", Role: "field", Name: x.Question}
	switch {
	case x.Kind == "choice":
		ask.Role = "choice"
		for i, c := range x.Choices {
			ask.Actions = append(ask.Actions, Action{Label: c, Act: Act{Do: Answer, N: float64(i + 1)}, Enabled: x.CanAnswer, Why: say("lesson.seen"),
				Chosen: len(x.Said) > 0 && int(x.Said[0]) == i+1})
		}
	default:
		label := say("lesson.number", "unit", x.Unit)
		if x.Kind == "curve" {
			label = say("lesson.point", "foot", whole(x.At[len(x.Said)%len(x.At)]), "unit", x.Unit)
		}
		ask.Actions = []Action{{Key: "S", Label: label, Act: Act{Do: Answer}, Enabled: x.CanAnswer, Why: say("lesson.seen")}}
		if len(x.Lettered) > 0 {
			ask.Value = say("lesson.said", "list", Joined(l.words, x.Lettered))
		}
	}
	v.Nodes = append(v.Nodes, ask)
	if x.Look != "" {
		var got []string
		for _, c := range x.Computed {
			got = append(got, fixed(c, l.quantity().Digits))
		}
		v.Nodes = append(v.Nodes,
			Node{ID: "computed", Role: "reading", Name: say("lesson.computed"), Value: say("bench.value", "value", Joined(l.words, got), "unit", x.Unit)},
			Node{ID: "comment", Role: "text", Name: x.Comment}, Node{ID: "look", Role: "text", Name: x.Look})
		if x.End != "" {
			v.Nodes = append(v.Nodes, Node{ID: "over", Role: "text", Name: say("lesson.over"), Value: x.End})
		}
		l.facts(v)
	}
	runs, nexts := "lesson.answer_first", "lesson.see_first"
	if x.Look != "" {
		runs, nexts = "lesson.seen", "lesson.last"
	}
	v.Nodes = append(v.Nodes, Node{ID: "go_on", Role: "key", Name: say("lesson.go_on"), Actions: []Action{
		{Key: "P", Label: say("lesson.run"), Act: Act{Do: Run}, Enabled: x.CanRun, Why: say(runs)},
		{Key: "N", Label: say("lesson.next"), Act: Act{Do: Next}, Enabled: x.CanNext, Why: say(nexts)},
		{Key: "B", Label: say("lesson.before"), Act: Act{Do: Before}, Enabled: x.CanBefore, Why: say("lesson.first")}}})
}
