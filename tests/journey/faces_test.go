package journey

import (
	"bytes"
	"context"
	"errors"
	"image/png"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/scene"
	"evenwear/game/scene/scenetest"
	"evenwear/game/term"
)

// A world is one desk, so that the faces of a job share its table of evidence,
// and what was typed for it.
type world struct {
	desk  *play.Desk
	words *assets.Words
	lines bytes.Buffer
}

func newWorld(t *testing.T) *world {
	t.Helper()
	desk, words := playtest.Desk(t)
	return &world{desk: desk, words: words}
}

func (w *world) open(t *testing.T, job string) *play.Session {
	t.Helper()
	s, err := w.desk.Open(job, seed)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// inPlay plays a job without a face, and notes what would be typed for it.
func inPlay(t *testing.T, w *world, plan playtest.Plan, whole bool) *play.Session {
	s := w.open(t, plan.Job)
	if _, err := playtest.Play(playtest.Typist{Player: s, Lines: &w.lines}, plan, playtest.See(w.words)); err != nil {
		t.Fatal(err)
	}
	if whole {
		if err := s.Settle(t.Context(), nil); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

// unsettled is a session whose debrief is not waited for.
type unsettled struct{ *play.Session }

var errUnsettled = errors.New("the debrief is not waited for")

// Settle stops the terminal where it would wait for the debrief.
func (unsettled) Settle(context.Context, func(float64)) error { return errUnsettled }

// inTerminal plays a job in a terminal of 40 columns by the lines on a pipe.
func inTerminal(t *testing.T, w *world, plan playtest.Plan, whole bool) *play.Session {
	s := w.open(t, plan.Job)
	var g term.Game = s
	if !whole {
		g = unsettled{s}
	}
	r, typed := io.Pipe()
	go func() {
		io.Copy(typed, bytes.NewReader(w.lines.Bytes()))
		typed.Close()
	}()
	defer r.Close()
	var out bytes.Buffer
	if err := term.Run(t.Context(), g, w.words, r, &out, term.Options{Width: func() int { return 40 }}); err != nil && (whole || !errors.Is(err, errUnsettled)) {
		t.Fatal(err)
	}
	for i, l := range strings.Split(out.String(), "\n") {
		if n := utf8.RuneCountInString(l); n > 40 {
			t.Fatalf("line %d has %d characters: %q", i+1, n, l)
		}
	}
	if whole {
		said := strings.Join(strings.Fields(out.String()), " ")
		if d := s.View().Debrief; d == nil || !strings.Contains(said, strings.Join(strings.Fields(d.Truth), " ")) {
			t.Error("the terminal does not name the truth")
		}
	}
	return s
}

// inWindow plays a job from the cover on by events, as the window passes them.
func inWindow(t *testing.T, w *world, plan playtest.Plan, whole bool, way scenetest.Way) *play.Session {
	fonts, err := assets.LoadFonts()
	if err != nil {
		t.Fatal(err)
	}
	s := w.open(t, plan.Job)
	var offers []scene.Offer
	for _, j := range w.desk.Library().Jobs {
		offers = append(offers, scene.Offer{Name: j.Title, Open: func(a *scene.App) (scene.Scene, error) {
			if j.ID != plan.Job {
				return nil, errors.New("another job was pressed: " + j.ID)
			}
			return scene.NewJob(a, s, nil), nil
		}})
	}
	app := scene.NewApp(scene.Options{Words: w.words, Fonts: fonts, Touch: way == scenetest.Finger, Cover: scene.Cover{Jobs: offers}})
	t.Cleanup(s.Cancel)
	h := &scenetest.Hand{App: app, Session: s, Way: way}
	if err := h.Open(w.desk.Library().Job(plan.Job).Title); err != nil {
		t.Fatal(err)
	}
	if _, err := playtest.Play(h, plan, playtest.See(w.words)); err != nil {
		t.Fatal(err)
	}
	if !whole {
		s.Cancel()
		return s
	}
	for v := s.View(); v.Debrief == nil; v = s.View() { // one look a turn: between two the debrief may come
		if wait := v.Waiting; wait == nil || wait.Error != "" {
			t.Fatalf("the window waits for nothing: %+v", wait)
		}
		time.Sleep(50 * time.Millisecond)
		app.Advance(200)
		app.Draw()
	}
	app.Advance(200)
	app.Draw()
	shot(t, app, plan.Job)
	return s
}

// shot keeps the picture of a sheet.
func shot(t *testing.T, app *scene.App, name string) {
	t.Helper()
	img, _ := app.Draw()
	f, err := os.Create(filepath.Join(t.ArtifactDir(), name+".png"))
	if err != nil {
		t.Fatal(err)
	}
	if err := errors.Join(png.Encode(f, img), f.Close()); err != nil {
		t.Fatal(err)
	}
}
