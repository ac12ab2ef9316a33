package scene

import (
	"errors"
	"testing"
	"time"

	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
	"evenwear/game/practice"
	"evenwear/scenarios"
	"evenwear/scoring/learner"
	kept "evenwear/scoring/record"
)

// fakePractice shows a view and counts what is pressed.
type fakePractice struct {
	view    *play.PractiseView
	begun   int
	lessons []string
	err     error
}

func (p *fakePractice) View() *play.PractiseView { return p.view }

func (p *fakePractice) Begin(a *App) (Scene, error) {
	p.begun++
	return NewJob(a, &oneView{}, nil), p.err
}

func (p *fakePractice) Lesson(a *App, id string) (Scene, error) {
	p.lessons = append(p.lessons, id)
	return NewJob(a, &oneView{}, nil), p.err
}

// practiceView is that of somebody whose cars show an idea; empty: none.
func practiceView(t testing.TB, cars int, idea string) *play.PractiseView {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	var history []kept.Result
	titles := map[string]string{"job0": "It smells hot after the drive to work", "job1": "The lamp is on and I do not know why"}
	for i := range cars {
		r := kept.Result{When: time.Date(2026, 3, 1+i, 9, 0, 0, 0, time.UTC), Session: "s", Job: "job" + string(rune('0'+i)), Truth: []string{lib.Causes[7*i].ID},
			Said: []kept.Figure{{ID: lib.Causes[7*i+3].ID, N: 0.85}, {ID: lib.Causes[7*i].ID, N: 0.15}}, Marks: []kept.Figure{{ID: "diagnosis", N: 30}}}
		slips, held := make([]float64, learner.Points), make([]float64, learner.Points)
		for g := range slips {
			slips[g], held[g] = -40, -38+float64(min(i, 2))
		}
		if r.Ideas = []kept.Idea{{LnP: slips}}; idea != "" {
			r.Ideas = append(r.Ideas, kept.Idea{ID: idea, LnP: held})
		}
		history = append(history, r)
	}
	return practice.View(lib, history, func(job string) string {
		if s := titles[job]; s != "" {
			return s
		}
		return "It pulls to the right when I brake"
	}, words(t))
}

func TestPractisePictures(t *testing.T) {
	for _, x := range []struct {
		name         string
		cars         int
		idea         string
		slate, touch bool
	}{
		{"practise-idea", 5, "stiff_body_is_the_piston", false, false},
		{"practise-none-slate", 0, "", true, true},
	} {
		t.Run(x.name, func(t *testing.T) {
			a := testApp(t, x.slate)
			a.Touch = x.touch
			a.Show(NewPractise(a, &fakePractice{view: practiceView(t, x.cars, x.idea)}))
			img, _ := a.Draw()
			drawtest.Golden(t, x.name, img)
		})
	}
}

// TestPractiseRoom: whichever idea is named, all of it stands on the sheet.
func TestPractiseRoom(t *testing.T) {
	for i := range learner.Misconceptions {
		a := testApp(t, false)
		s := NewPractise(a, &fakePractice{view: practiceView(t, 5, learner.Misconceptions[i].ID)}).(*practise)
		a.Show(s)
		a.Draw()
		if end := s.end; end > 626 {
			t.Errorf("%s: the last line ends at %.0f, room to 626", learner.Misconceptions[i].ID, end)
		}
	}
}

// TestPractiseByHand: the next car and the lesson by letter, by mouse, by Tab and
// Enter; what is wrong is told; Esc leads back.
func TestPractiseByHand(t *testing.T) {
	for _, how := range []string{"letter", "mouse", "touch"} {
		a := testApp(t, false)
		p := &fakePractice{view: practiceView(t, 5, "low_is_a_leak"), err: errors.New("no car is left")}
		a.Show(NewPractise(a, p))
		a.Draw()
		for _, stop := range []string{"lesson", "next", "leave"} {
			for _, k := range a.Pressables() {
				switch {
				case k.Stop != stop:
				case how == "letter":
					keys(a, k.Letter)
				default:
					point(a, k.Rect.Centre(), how == "touch")
				}
			}
			if s, here := a.scene.(*practise); here && s.notice != p.err.Error() {
				t.Errorf("%s: the sheet says %q", how, s.notice)
			}
		}
		if _, left := a.scene.(*cover); !left || p.begun != 1 || len(p.lessons) != 1 || p.lessons[0] != "where_the_fluid_stands" {
			t.Errorf("%s: left for %T, begun %d, lessons %v", how, a.scene, p.begun, p.lessons)
		}
	}
	a := testApp(t, false)
	p := &fakePractice{view: practiceView(t, 5, "")}
	a.Show(NewPractise(a, p))
	a.Draw()
	keys(a, "L")
	keys(a, "Tab", "Tab", "Enter")
	if _, job := a.scene.(*Job); !job || p.begun != 1 || p.lessons != nil {
		t.Errorf("without an idea %T is shown, begun %d, lessons %v", a.scene, p.begun, p.lessons)
	}
}
