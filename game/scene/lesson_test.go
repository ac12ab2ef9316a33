package scene

import (
	"strings"
	"testing"

	"evenwear/game/draw"
	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/widget"
)

// aLesson opens a lesson of the library and gives a hand that presses letters.
func aLesson(t *testing.T, id string) (a *App, src *play.Lesson, press func(keys ...string)) {
	t.Helper()
	desk, words := playtest.Desk(t)
	src, err := play.NewLesson(desk.Library(), words, id)
	if err != nil {
		t.Fatal(err)
	}
	a = testApp(t, false)
	a.Show(newLesson(a, src))
	a.Draw()
	return a, src, func(keys ...string) {
		for _, k := range keys {
			a.Handle(key(k))
			if len(k) == 1 && (k[0] >= '0' && k[0] <= '9' || k == "." || k == "-") {
				a.Handle(widget.Event{Kind: widget.TextIn, Rune: rune(k[0])})
			}
		}
		for range 400 {
			if !src.Running() {
				break
			}
			a.Advance(50)
		}
		a.Advance(50)
	}
}

// TestLessonPictures: a step before it is answered, a number after it was seen, a
// choice, a curve, a figure refused, and a driven car before it may be seen.
func TestLessonPictures(t *testing.T) {
	for _, tc := range []struct {
		name, id string
		keys     []string
	}{
		{"lesson-ask", "one_piston_two_pads", []string{"5", "0"}},
		{"lesson-seen", "a_pin_that_does_not_slide", []string{"9", "5", "Enter", "P"}},
		{"lesson-choice", "one_piston_two_pads", []string{"5", "0", "Enter", "P", "N", "4", "P"}},
		{"lesson-refused", "one_piston_two_pads", []string{"5", "-", "5", "Enter"}},
		{"lesson-hidden", "where_the_fluid_stands", []string{"5", "0", "Enter", "P", "N"}},
		{"lesson-points", "one_piston_two_pads", []string{"5", "0", "Enter", "P", "N", "3", "P", "N", "1", "Enter"}},
		{"lesson-curve", "one_piston_two_pads", []string{"5", "0", "Enter", "P", "N", "3", "P", "N", "1", "Enter", "3", "Enter", "6", "Enter", "9", "Enter", "P"}},
	} {
		t.Run(tc.name, func(t *testing.T) {
			a, _, press := aLesson(t, tc.id)
			for _, k := range tc.keys {
				press(k)
			}
			img, _ := a.Draw()
			drawtest.Golden(t, tc.name, img)
		})
	}
}

// TestLessonByPointer: a whole lesson by finger alone and by mouse alone: what is
// asked can be set, written down, seen and gone on from.
func TestLessonByPointer(t *testing.T) {
	for _, touch := range []bool{false, true} {
		a, src, wait := aLesson(t, "one_piston_two_pads")
		tap := func(stop string) {
			t.Helper()
			for _, p := range a.Pressables() {
				if p.Stop == stop && !p.Off {
					if touch && (p.Rect.W < 44 || p.Rect.H < 40) && stop != idScale {
						t.Errorf("%s is %g × %g", stop, p.Rect.W, p.Rect.H)
					}
					point(a, p.Rect.Centre(), touch)
					wait()
					return
				}
			}
			t.Fatalf("touch %v, step %d: %s cannot be pressed", touch, src.View().Lesson.Step, stop)
		}
		for range src.View().Lesson.Steps {
			x := src.View().Lesson
			switch {
			case x.Kind == "choice":
				tap("choice2")
			default:
				for range max(1, len(x.At)) {
					tap(idScale)
					tap(idWrite)
				}
			}
			tap(idRun)
			x = src.View().Lesson
			if x.Look == "" {
				t.Fatalf("step %d was not seen", x.Step)
			}
			if x.CanNext {
				tap(idNext)
			}
		}
		if x := src.View().Lesson; x.Step != x.Steps {
			t.Errorf("ended at step %d", x.Step)
		}
	}
}

// TestLessonRoom: every step of every lesson has room for what it says, before
// and after.
func TestLessonRoom(t *testing.T) {
	desk, words := playtest.Desk(t)
	for _, x := range desk.Library().Lessons {
		src, err := play.NewLesson(desk.Library(), words, x.ID)
		if err != nil {
			t.Fatal(err)
		}
		a := testApp(t, false)
		l := newLesson(a, src)
		a.Show(l)
		a.Draw()
		fits := func(when string) {
			t.Helper()
			l.look()
			v := l.x()
			foot := l.asked() + 116 // scale and key, or what was said and computed
			switch v.Kind {
			case "choice":
				foot = l.asked() + 50*float64(len(v.Choices))
				for i := range l.keys {
					if k := &l.keys[i].Key; l.keys[i].cell == predictCell && a.sheet.Measure(draw.KeyText.At(13), k.Label) > k.Rect.W-45 {
						t.Errorf("%s, step %d: %q is cut", x.ID, v.Step, k.Label)
					}
				}
			case "curve":
				foot = l.asked() + 165
			}
			most := 630.0
			if v.Undriven {
				most = undrivenTop
			}
			if v.End != "" {
				n := len(l.lines(a.sheet, v.End, endStyle, 292))
				if room := endLines(l.refusal(a.sheet, v)); n > room {
					t.Errorf("%s: its end takes %d lines, there is room for %d", x.ID, n, room)
				}
			}
			if (v.End != "") != (when == "after" && v.Step == v.Steps) {
				t.Errorf("%s, step %d, %s: the lesson ends with %q", x.ID, v.Step, when, v.End)
			}
			if foot > most {
				t.Errorf("%s, step %d, %s: reaches %.0f", x.ID, v.Step, when, foot)
			}
		}
		for {
			fits("before")
			for range max(1, len(l.x().At)) {
				l.act(play.Act{Do: play.Answer, N: max(1, l.x().Lo)})
			}
			l.act(play.Act{Do: play.Run})
			for range 4000 {
				if !src.Running() {
					break
				}
				a.Advance(50)
			}
			fits("after")
			if !l.x().CanNext {
				break
			}
			l.act(play.Act{Do: play.Next})
		}
	}
}

// TestLessonOddFigures: what is no figure is refused with a sentence beside the
// field, stays to be mended, and is not made a figure of.
func TestLessonOddFigures(t *testing.T) {
	for _, tc := range []struct{ text, says string }{
		{"7,5,3-2", "one point or comma"}, {"1.2.3", "one point or comma"}, {"5-5", "a minus in front only"}, {"-", "no number"}, {"400", "A number from 0 to 150"},
		{"7,5", ""}, {"7.5", ""},
	} {
		a, src, _ := aLesson(t, "one_piston_two_pads")
		l := a.scene.(*lesson)
		typed(a, tc.text)
		before, _ := a.Draw()
		panel := a.sheet.Pixels(lessonArea)
		was := string(pixels(before, panel))
		a.Handle(key("Enter"))
		said := src.View().Lesson.Said
		if tc.says == "" {
			if len(said) != 1 || said[0] != 7.5 || l.typed.Text != "" {
				t.Errorf("%q: %v was written down, the field holds %q", tc.text, said, l.typed.Text)
			}
			continue
		}
		if len(said) > 0 || !strings.Contains(l.notice(), tc.says) || l.typed.Text != tc.text {
			t.Errorf("%q: %v was written down, %q is answered, the field holds %q", tc.text, said, l.notice(), l.typed.Text)
		}
		if after, _ := a.Draw(); string(pixels(after, panel)) == was {
			t.Errorf("%q: nothing beside the field says why it is refused", tc.text)
		}
	}
}
