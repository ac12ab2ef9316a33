package scene

import (
	"errors"
	"testing"
	"time"

	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
	"evenwear/game/practice"
	"evenwear/scenarios"
	kept "evenwear/scoring/record"
)

// fakeCheck is a self-check whose view is set by a test.
type fakeCheck struct {
	view            play.CheckView
	opened          []int
	awaits, stops   int
	renewed, sealed bool
	err             error
	game            oneView
}

func (c *fakeCheck) View() *play.CheckView { v := c.view; return &v }
func (c *fakeCheck) Await()                { c.awaits++ }
func (c *fakeCheck) Cancel()               { c.stops++ }
func (c *fakeCheck) Renew() error          { c.renewed = true; return c.err }
func (c *fakeCheck) Open(a *App, n int, back func()) (Scene, error) {
	c.opened = append(c.opened, n)
	if c.err != nil {
		return nil, c.err
	}
	return NewJobOf(a, &c.game, nil, back, c.sealed), nil
}

// checkView is a self-check of ten of which so many cars are handed over and so
// many marked, put into words by its own room.
func checkView(t testing.TB, handed, marked int, hash string) play.CheckView {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	now := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	c, err := practice.Draw(lib, "ab", nil, now, 5)
	if err != nil {
		t.Fatal(err)
	}
	c.Name = "selfcheck-1"
	round := practice.Follow(c, nil, nil)
	var sessions []kept.Entry
	var results []kept.Result
	for i, car := range c.Cars[:min(handed+1, len(c.Cars))] {
		e := kept.Entry{Name: car.Job, Acts: 1, Last: []byte(`{"do":"handover"}`), Header: kept.Header{Job: car.Job, Seed: car.Seed, For: round.Begin(i + 1)}}
		if i == handed {
			e.Last = []byte(`{"do":"go"}`)
		}
		sessions = append(sessions, e)
		if i >= marked {
			continue
		}
		r := kept.Result{When: now, Session: car.Job, Job: car.Job, Seed: car.Seed, For: round.Begin(i + 1), Truth: []string{lib.Causes[5*i].ID}, Total: 96 - float64(7*i), Model: &kept.Model{Minutes: 31, Bits: 5.7}}
		if i == 3 {
			r.Truth = append(r.Truth, lib.Causes[11].ID)
			r.Total = -4
		}
		for k, id := range []string{"diagnosis", "decision", "evidence", "consistency", "reading", "safety", "proof", "minutes"} {
			r.Marks = append(r.Marks, kept.Figure{ID: id, N: float64((97 * (i + 1) * (k + 3)) % 101)})
		}
		r.Marks[0].N -= 60
		results = append(results, r)
	}
	return *practice.Follow(c, sessions, results).View(lib, hash, words(t))
}

func TestCheckPictures(t *testing.T) {
	for _, x := range []struct {
		name           string
		handed, marked int
		hash           string
		slate, touch   bool
		wait           *play.WaitView
	}{
		{"check-begun", 3, 2, "ab", false, true, nil},
		{"check-marking", 10, 6, "ab", true, false, &play.WaitView{Share: 0.37, Going: true, Text: words(t).Say("check.marking")}},
		{"check-complete", 10, 10, "ab", false, false, nil},
		{"check-stale", 10, 8, "other", false, false, nil},
	} {
		t.Run(x.name, func(t *testing.T) {
			a := testApp(t, x.slate)
			a.Touch = x.touch
			c := &fakeCheck{view: checkView(t, x.handed, x.marked, x.hash)}
			c.view.Waiting = x.wait
			a.Show(NewCheck(a, c))
			img, _ := a.Draw()
			drawtest.Golden(t, x.name, img)
		})
	}
}

// TestCheckByHand: every key of the sheet by letter, by Tab and Enter, by mouse
// and by finger.
func TestCheckByHand(t *testing.T) {
	for _, how := range []string{"letter", "tab", "mouse", "touch"} {
		t.Run(how, func(t *testing.T) {
			a := testApp(t, false)
			c := &fakeCheck{view: checkView(t, 10, 10, "ab"), err: errors.New("not there any more")}
			a.Show(NewCheck(a, c))
			a.Draw()
			press := func(stop string) {
				t.Helper()
				for _, p := range a.Pressables() {
					if p.Stop != stop {
						continue
					}
					switch how {
					case "letter":
						keys(a, p.Letter)
					case "tab":
						for range len(a.Pressables()) + 1 {
							for _, q := range a.Pressables() {
								if q.Stop == stop && q.Ringed {
									keys(a, "Enter")
									return
								}
							}
							keys(a, "Tab")
						}
						t.Fatalf("Tab never comes to %s", stop)
					default:
						point(a, p.Rect.Centre(), how == "touch")
					}
					return
				}
				t.Fatalf("there is no %s", stop)
			}
			press("car2")
			press("car10")
			press("new")
			if len(c.opened) != 2 || c.opened[0] != 2 || c.opened[1] != 10 || !c.renewed {
				t.Errorf("opened %v, renewed %t", c.opened, c.renewed)
			}
			if s := a.scene.(*check); s.says() != c.err.Error() {
				t.Errorf("the sheet says %q", s.says())
			}
			press("leave")
			if _, left := a.scene.(*cover); !left || c.stops == 0 {
				t.Errorf("left for %T, stopped %d times", a.scene, c.stops)
			}
		})
	}
}

// TestSealedJobOpensNoDebrief: a car of a self-check leads back to its sheet when
// it is handed over and when it is left; a debrief is opened when it may be.
func TestSealedJobOpensNoDebrief(t *testing.T) {
	a := testApp(t, false)
	c := &fakeCheck{view: checkView(t, 3, 0, "ab"), sealed: true}
	c.game.view = play.View{Stage: play.Inspecting, Plan: &play.PlanView{}}
	sheet := NewCheck(a, c)
	a.Show(sheet)
	a.Draw()
	keys(a, "N")
	j, ok := a.scene.(*Job)
	if !ok || c.opened[0] != 4 {
		t.Fatalf("N shows %T, opened %v", a.scene, c.opened)
	}
	a.Draw()
	c.game.view.Stage = play.Debriefed
	before := c.awaits
	j.do(play.Act{Do: play.HandOver})
	if a.scene != sheet || c.awaits == before {
		t.Errorf("handed over, %T is shown; marks are waited for: %t", a.scene, c.awaits > before)
	}
	c.sealed = false
	keys(a, "N")
	if j, ok := a.scene.(*Job); !ok || j.kind != debriefSheet {
		t.Fatalf("unsealed, %T is shown", a.scene)
	}
	keys(a, "Esc")
	if a.scene != sheet {
		t.Errorf("a debrief is left for %T", a.scene)
	}
}

// TestCheckWaits: while marks are worked out they are asked for again, can be
// stopped, and gone on with.
func TestCheckWaits(t *testing.T) {
	a := testApp(t, false)
	c := &fakeCheck{view: checkView(t, 10, 4, "ab")}
	c.view.Waiting = &play.WaitView{Going: true}
	a.Show(NewCheck(a, c))
	a.Draw()
	c.view.Waiting = &play.WaitView{Going: true, Share: 0.5}
	a.Advance(600)
	if _, dirty := a.Draw(); len(dirty) == 0 {
		t.Error("progress is not drawn")
	}
	keys(a, "C")
	c.view.Waiting = &play.WaitView{Share: 0.5, Error: "a car cannot be computed"}
	a.scene.(*check).refresh()
	before := c.awaits
	a.Draw()
	keys(a, "M")
	if c.stops != 1 || c.awaits != before+1 {
		t.Errorf("stopped %d times, gone on with %d times", c.stops, c.awaits-before)
	}
}
