package scene

import (
	"slices"
	"strings"
	"testing"

	"evenwear/game/draw"
	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// waitingGame is a session whose debrief is being worked out.
type waitingGame struct {
	oneView
	awaits, cancels int
}

func (g *waitingGame) Await() {
	g.awaits++
	g.view.Waiting.Going, g.view.Waiting.Error = true, ""
}

func (g *waitingGame) Cancel() {
	g.cancels++
	g.view.Waiting.Going = false
}

func waitingSheet(t testing.TB, slate bool, w play.WaitView) (*App, *waitingGame) {
	t.Helper()
	a := testApp(t, slate)
	v := play.View{Stage: play.Debriefed, Title: recordedView(t, played).Title, Waiting: &w}
	g := &waitingGame{oneView: oneView{view: v}}
	a.Show(NewJob(a, g, nil))
	return a, g
}

func TestDebriefWaitingPictures(t *testing.T) {
	a, g := waitingSheet(t, false, play.WaitView{Share: 0.37, Text: a11yWaiting})
	g.view.Waiting.Share = 0.42
	a.Advance(300)
	img, _ := a.Draw()
	drawtest.Golden(t, "debrief-waiting", img)

	a, g = waitingSheet(t, true, play.WaitView{Share: 0.8, Text: "Not worked out to its end. What is done is kept."})
	g.view.Waiting.Going, g.view.Waiting.Error = false, "a car of the catalogue cannot be computed: "+strings.Repeat("front left: the caliper's balance was not found within forty rounds; ", 3)
	a.Advance(300)
	img, _ = a.Draw()
	drawtest.Golden(t, "debrief-failed-slate", img)
}

const a11yWaiting = "Working out what every possible fault would have shown"

// TestDebriefWaitsAndStops: it begins by itself, is stopped and gone on with by
// key, by pointer and by touch, and tells every step on the sheet.
func TestDebriefWaitsAndStops(t *testing.T) {
	a, g := waitingSheet(t, false, play.WaitView{Text: a11yWaiting})
	if g.awaits != 1 {
		t.Fatalf("the sheet began the debrief %d times", g.awaits)
	}
	s := a.scene.(*Job).sheet.(*debrief)
	press := func(how string) {
		id := "halt"
		if !g.view.Waiting.Going {
			id = "on"
		}
		x, ok := s.targets.Find(id)
		if !ok {
			t.Fatalf("%s: nothing to press for %s", how, id)
		}
		switch how {
		case "key":
			keys(a, x.Key)
		default:
			a.Handle(widget.Event{Kind: widget.PointerDown, At: x.Rect.Centre(), Touch: how == "touch"})
			a.Handle(widget.Event{Kind: widget.PointerUp, At: x.Rect.Centre(), Touch: how == "touch"})
		}
	}
	for i, how := range []string{"key", "pointer", "touch"} {
		a.Draw()
		press(how)
		if g.cancels != i+1 || g.view.Waiting.Going {
			t.Fatalf("%s: stopped %d times", how, g.cancels)
		}
		if _, dirty := a.Draw(); len(dirty) == 0 {
			t.Errorf("%s: stopping changes nothing on the sheet", how)
		}
		press(how)
		if g.awaits != i+2 || !g.view.Waiting.Going {
			t.Fatalf("%s: gone on %d times", how, g.awaits-1)
		}
	}
	// When it is done the sheet turns to the debrief by itself.
	g.view = *recordedView(t, played)
	a.Advance(300)
	a.Draw()
	if s.v() == nil || s.job.view.Waiting != nil {
		t.Error("the sheet does not show the debrief that is done")
	}
	if _, ok := s.targets.Find("trail"); !ok {
		t.Error("the keys of the debrief are missing")
	}
}

// TestDebriefByHand goes over the sheet with keys alone, a pointer alone and
// touch alone: papers, stops, scrolling, leaving.
func TestDebriefByHand(t *testing.T) {
	for _, how := range []string{"keys", "pointer", "touch"} {
		t.Run(how, func(t *testing.T) {
			a, s, _ := shownDebrief(t, played, false)
			a.Draw()
			press := func(id string) {
				t.Helper()
				x, ok := s.targets.Find(id)
				if !ok {
					t.Fatalf("nothing to press for %s", id)
				}
				if how == "keys" {
					keys(a, x.Key)
				} else {
					at := x.Rect.Centre()
					a.Handle(widget.Event{Kind: widget.PointerDown, At: at, Touch: how == "touch"})
					a.Handle(widget.Event{Kind: widget.PointerUp, At: at, Touch: how == "touch"})
				}
				if _, dirty := a.Draw(); len(dirty) == 0 {
					t.Errorf("%s changes nothing on the sheet", id)
				}
			}
			n := len(s.stops())
			for i := range n {
				if s.stop != i {
					t.Errorf("stop %d is shown, want %d", s.stop, i)
				}
				press("stop")
			}
			if s.stop != 0 {
				t.Errorf("after all stops %d is shown", s.stop)
			}
			press("words")
			r := &s.sheets[0]
			for i := 0; i < 400; i++ {
				was := r.first
				switch how {
				case "keys":
					keys(a, "Down")
				case "pointer":
					a.Handle(widget.Event{Kind: widget.Wheel, At: r.area.Centre(), Turn: 1})
				default:
					at := r.area.Centre()
					a.Handle(widget.Event{Kind: widget.PointerDown, At: at, Touch: true})
					a.Handle(widget.Event{Kind: widget.PointerMove, At: at.Sub(draw.Pt{Y: 25}), Touch: true})
					a.Handle(widget.Event{Kind: widget.PointerUp, At: at.Sub(draw.Pt{Y: 25}), Touch: true})
				}
				if r.first == was {
					break
				}
			}
			if _, to := r.shown(); to != len(r.items) {
				t.Errorf("scrolled to %d of %d lines", to, len(r.items))
			}
			press("trail")
			if s.paper != trailPaper {
				t.Error("the trail is not out")
			}
			press("trail")
			if s.paper != noPaper {
				t.Error("the trail is still out")
			}
			press("trail")
			press("leave")
			if s.paper != noPaper || a.scene == Scene(a.cover) {
				t.Error("leaving takes the paper away first")
			}
			press("leave")
			if a.scene != Scene(a.cover) {
				t.Error("the cover is not back")
			}
		})
	}
}

// TestDebriefTabs: Tab reaches everything that can be pressed.
func TestDebriefTabs(t *testing.T) {
	a, s, _ := shownDebrief(t, played, false)
	a.Draw()
	var met []string
	for range 20 {
		keys(a, "Tab")
		if !slices.Contains(met, s.targets.Focus) {
			met = append(met, s.targets.Focus)
		}
	}
	for _, x := range s.targets.InOrder() {
		if x.Enabled && !slices.Contains(met, x.ID) {
			t.Errorf("Tab never reaches %s; it met %v", x.ID, met)
		}
	}
	if first := s.targets.InOrder()[0].ID; first != "leave" {
		t.Errorf("the first in reading order is %s", first)
	}
}

// TestDebriefTargets: every target is 44 high and wide for a finger, or is
// reached from as far.
func TestDebriefTargets(t *testing.T) {
	_, s, _ := shownDebrief(t, played, false)
	for _, x := range s.targets.InOrder() {
		edge := draw.Pt{X: x.Rect.X + x.Rect.W/2, Y: x.Rect.Y + x.Rect.H/2 - 21}
		if got, ok := s.targets.Hit(edge, true); !ok || got.ID != x.ID {
			t.Errorf("%s (%v) is not reached by a finger at %v: %s", x.ID, x.Rect, edge, got.ID)
		}
	}
}

// TestDebriefSaysAll: whatever the words of the view say can be brought on the
// sheet: every line of the paper of words comes from them, none is left out.
func TestDebriefSaysAll(t *testing.T) {
	for name := range recorded {
		a, s, _ := shownDebrief(t, name, false)
		a.Draw()
		keys(a, "W")
		a.Draw()
		lines := 0
		for _, n := range s.job.view.Nodes {
			text := n.Name
			if n.Value != "" && text != "" {
				text += ": "
			}
			st := draw.SentenceText.At(14)
			if n.Role == "heading" {
				st = draw.StrongText
			}
			lines += len(a.still.Wrap(st, text+n.Value, s.sheets[0].area.W-rollRail-4))
		}
		if len(s.sheets[0].items) != lines {
			t.Errorf("%s: %d lines on the paper, %d in the words", name, len(s.sheets[0].items), lines)
		}
	}
}

// TestDebriefStrange: nothing a file may hold makes the sheet panic: long
// texts, two faults, no beliefs, a diagnosis of −100, nothing at all.
func TestDebriefStrange(t *testing.T) {
	long := strings.Repeat("a very long sentence that says much about a caliper ", 12)
	for name, change := range map[string]func(v *play.View){
		"long": func(v *play.View) {
			d := v.Debrief
			d.Truth, d.Cap, d.Worth, d.Lasts, d.Capped = long, long, long, long, true
			for i := range d.Marks {
				d.Marks[i].Reason, d.Marks[i].Name = long, long
			}
			for i := range d.Beliefs {
				d.Beliefs[i].Cause, d.Beliefs[i].Place = long, long
			}
			for i := range d.Faults[0].Labels {
				d.Faults[0].Labels[i].Text = long
			}
			d.Trail = append(d.Trail, long, strings.Repeat("x", 900))
			v.Notebook[0].Written, v.Notebook[0].Struck = long, true
		},
		"two faults": func(v *play.View) {
			v.Debrief.Faults = append(v.Debrief.Faults, v.Debrief.Faults[0])
			v.Debrief.Faults[1].Kind, v.Debrief.Faults[1].Level = "fluid", [2]float64{0.9, -0.4}
		},
		"no beliefs": func(v *play.View) { v.Debrief.Beliefs = nil },
		"negative": func(v *play.View) {
			for i := range v.Debrief.Marks {
				v.Debrief.Marks[i].Value = -100
			}
			v.Debrief.Total = -62
		},
		"many": func(v *play.View) {
			for range 40 {
				v.Debrief.Beliefs = append(v.Debrief.Beliefs, v.Debrief.Beliefs...)
				if len(v.Debrief.Beliefs) > 100 {
					break
				}
			}
		},
		"aside": func(v *play.View) {
			for i := range v.Debrief.Next {
				v.Debrief.Next[i].Aside = -1e9
				v.Debrief.Next[i].Distance = 1e9
			}
		},
		"nothing": func(v *play.View) { v.Debrief, v.Notebook = &play.DebriefView{}, nil },
	} {
		t.Run(name, func(t *testing.T) {
			v := recordedView(t, played)
			change(v)
			a := testApp(t, false)
			j := NewJob(a, &oneView{view: *v}, nil)
			a.Show(j)
			a.Draw()
			for _, k := range []string{"S", "Left", "Right", "F", "T", "Down", "End", "PageUp", "Home", "T", "W", "End", "Up", "Tab", "Tab", "Down", "W", "F", "Enter", "Tab", "End", "x"} {
				keys(a, k)
				a.Draw()
			}
			for _, to := range []draw.Pt{{X: 400, Y: 200}, {X: 500, Y: 500}, {X: 1000, Y: 300}} {
				for _, kind := range []widget.Kind{widget.PointerDown, widget.PointerMove, widget.PointerUp, widget.Wheel} {
					a.Handle(widget.Event{Kind: kind, At: to, Touch: true, Turn: -1})
					a.Draw()
				}
			}
		})
	}
}

// TestDebriefRedraws: after every act of a hand the sheet is what it would be
// drawn afresh, and at rest nothing is drawn.
func TestDebriefRedraws(t *testing.T) {
	a, _, _ := shownDebrief(t, played, true)
	a.Draw()
	for _, k := range []string{"S", "Right", "Tab", "Tab", "T", "Down", "PageDown", "W", "End", "Esc", "Tab", themeKey} {
		keys(a, k)
		sameAsWhole(t, a, k)
		if _, dirty := a.Draw(); len(dirty) != 0 {
			t.Errorf("after %s at rest %v is drawn", k, dirty)
		}
	}
}
