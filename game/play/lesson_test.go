package play_test

import (
	"math"
	"strings"
	"testing"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

// workOut answers a step somehow and works the pedal.
func workOut(t *testing.T, l *play.Lesson) *play.LessonView {
	t.Helper()
	x := l.View().Lesson
	for range max(1, len(x.At)) {
		if err := l.Do(play.Act{Do: play.Answer, N: max(1, x.Lo)}); err != nil {
			t.Fatal(err)
		}
	}
	if err := l.Do(play.Act{Do: play.Run}); err != nil {
		t.Fatal(err)
	}
	for range 60 {
		if !l.Running() {
			break
		}
		l.Advance(1000)
	}
	v := l.View()
	if !v.Lesson.CanNext && v.Lesson.Step < v.Lesson.Steps || v.Lesson.Look == "" {
		t.Fatalf("step %d of %q has not come to its end: %q", v.Lesson.Step, v.Lesson.Title, v.Notice)
	}
	return v.Lesson
}

// TestLessons: every step of every lesson computes an answer that what it tells
// agrees with. What an answer should be is reasoned beside it; the figures are
// the physics' own.
func TestLessons(t *testing.T) {
	desk, words := playtest.Desk(t)
	lib := desk.Library()
	if len(lib.Lessons) < 6 {
		t.Errorf("%d lessons, want six", len(lib.Lessons))
	}
	got := map[string][]*play.LessonView{}
	for i, x := range lib.Lessons {
		l, err := play.NewLesson(lib, words, x.ID)
		if err != nil {
			t.Fatal(err)
		}
		for {
			v := workOut(t, l)
			t.Logf("%s %d: %s = %v %s, choice %d", x.ID, v.Step, x.Steps[v.Step-1].Ask.Of, v.Computed, v.Unit, v.Right)
			got[x.ID] = append(got[x.ID], v)
			if !v.CanNext {
				break
			}
			if err := l.Do(play.Act{Do: play.Next}); err != nil {
				t.Fatal(err)
			}
		}
		next := words.Say("lesson.none_after")
		if i+1 < len(lib.Lessons) {
			next = words.Say("lesson.then", "title", lib.Lessons[i+1].Title)
		}
		if end := l.View().Lesson.End; x.End == "" || end != x.End+" "+next {
			t.Errorf("%s ends with %q, want what it has shown, then %q", x.ID, end, next)
		}
		if strings.Contains(l.View().Lesson.Comment, "‹") {
			t.Errorf("%s: a sentence is missing", x.ID)
		}
	}
	between := func(id string, step int, lo, hi float64) {
		t.Helper()
		if v := got[id][step-1].Computed; v[len(v)-1] < lo || v[len(v)-1] > hi {
			t.Errorf("%s, step %d: %v, want %g to %g", id, step, v, lo, hi)
		}
	}
	right := func(id string, step, want int) {
		t.Helper()
		if r := got[id][step-1].Right; r != want {
			t.Errorf("%s, step %d: answer %d is right, the lesson tells of %d", id, step, r, want)
		}
	}
	between("one_piston_two_pads", 1, 97, 100)      // two pins of 15 N out of some kN
	right("one_piston_two_pads", 2, 3)              // the outer gap is a tenth of a millimetre
	between("a_pin_that_does_not_slide", 1, 55, 90) // physics.md, bench picture: 69 %
	right("a_pin_that_does_not_slide", 2, 3)        // the end at the stuck pin is pressed less
	right("a_pin_that_does_not_slide", 3, 1)        // and the inner the other way round
	right("why_a_pad_drags", 1, 1)                  // the seal's roll-back
	between("why_a_pad_drags", 2, 30, 300)          // two pins' slide force, both faces' friction
	right("why_a_pad_drags", 3, 1)                  // a pin that never slides springs back
	between("where_the_fluid_stands", 1, 20, 90)    // 0.18 mm a thousand kilometres
	between("where_the_fluid_stands", 2, 2, 4)      // of 11 mm after 43 000 km
	right("where_the_fluid_stands", 3, 3)           // topped up
	right("where_the_fluid_stands", 4, 3)           // and pushed back
	between("air_in_the_pipe", 1, 20, 60)           // a third of its reserve
	between("what_the_servo_adds", 1, 7.0, 7.6)     // physics.md §8: 7.34 MPa
	between("what_the_servo_adds", 2, 1.2, 1.5)     // 1.34 MPa
	between("what_the_servo_adds", 3, 4.8, 5.4)     // 5.1 MPa at 500 N
	if soft, firm := got["air_in_the_pipe"][1].Computed[0], got["air_in_the_pipe"][0].Computed[0]; soft < firm+10 {
		t.Errorf("the pedal goes %.0f mm with air and %.0f without", soft, firm)
	}
	right("air_in_the_pipe", 3, 2)
}

// TestLessonInOrder: a learner says first, sees then, and can go back.
func TestLessonInOrder(t *testing.T) {
	desk, words := playtest.Desk(t)
	if _, err := play.NewLesson(desk.Library(), words, "no_such"); err == nil || !strings.Contains(err.Error(), "there is no such lesson") {
		t.Error(err)
	}
	l, err := play.NewLesson(desk.Library(), words, "one_piston_two_pads")
	if err != nil {
		t.Fatal(err)
	}
	refused := func(a play.Act, id string) {
		t.Helper()
		if err := l.Do(a); err == nil || err.Error() != words.Say(id) {
			t.Errorf("%v: %v, want %q", a, err, words.Say(id))
		}
	}
	refused(play.Act{Do: play.Run}, "lesson.answer_first")
	refused(play.Act{Do: play.Next}, "lesson.see_first")
	refused(play.Act{Do: play.Before}, "lesson.first")
	if err := l.Do(play.Act{Do: play.Answer, N: 900}); err == nil {
		t.Error("900 % was taken")
	}
	if v := l.View(); v.Lesson.Look != "" || len(v.Lesson.Computed) > 0 {
		t.Error("what comes is told before the learner has said anything")
	}
	workOut(t, l)
	refused(play.Act{Do: play.Answer, N: 50}, "lesson.seen")
	if err := l.Do(play.Act{Do: play.Next}); err != nil {
		t.Fatal(err)
	}
	if err := l.Do(play.Act{Do: play.Before}); err != nil || l.View().Lesson.Step != 1 || !l.View().Lesson.CanAnswer {
		t.Errorf("back a step: %v, %+v", err, l.View().Lesson)
	}
}

// drawn is what the drawing shows of a quantity that can be seen on it at rest.
func drawn(v *play.BenchView, of string) (mm float64, ok bool) {
	pad := 0
	if strings.Contains(of, "outer") {
		pad = 1
	}
	upper, lower := v.Now.Lining[pad][0], v.Now.Lining[pad][1]
	switch {
	case strings.HasPrefix(of, "lining_"):
		return (upper + lower) / 2, true
	case strings.HasSuffix(of, "_taper_mm"):
		return upper - lower, true
	}
	return 0, false
}

// TestLessonHidesWhatTheDriveDid: while a lesson asks, the drawing shows neither
// the wear nor the level that it asks for, also when the step before has shown
// them and when the learner comes back.
func TestLessonHidesWhatTheDriveDid(t *testing.T) {
	desk, words := playtest.Desk(t)
	worn, levels := 0, 0
	for _, x := range desk.Library().Lessons {
		l, err := play.NewLesson(desk.Library(), words, x.ID)
		if err != nil {
			t.Fatal(err)
		}
		do := func(v play.Verb) {
			t.Helper()
			if err := l.Do(play.Act{Do: v}); err != nil {
				t.Fatal(err)
			}
		}
		// one looks at the drawing, answers, and looks again.
		one := func(of string) *play.LessonView {
			t.Helper()
			asking := l.View()
			done := workOut(t, l)
			at := func(v *play.BenchView) float64 { mm, _ := drawn(v, of); return mm }
			if of == "level_percent" {
				levels++
				if !asking.Lesson.LevelHidden || done.LevelHidden {
					t.Errorf("%s, step %d: the level is hidden %v before it is said, %v after", x.ID, done.Step, asking.Lesson.LevelHidden, done.LevelHidden)
				}
			}
			if _, ok := drawn(asking, of); !ok {
				return done
			}
			worn++
			if now := at(l.View()); math.Abs(now-done.Computed[0]) > 1e-9 {
				t.Errorf("%s, step %d: when it is seen the drawing shows %.3f mm, computed %.3f", x.ID, done.Step, now, done.Computed[0])
			}
			if math.Abs(at(asking)-done.Computed[0]) < 0.02 { // [mm] less than a drawing shows
				t.Errorf("%s, step %d: before it is said the drawing shows %.2f mm, the answer", x.ID, done.Step, at(asking))
			}
			return done
		}
		for i := range x.Steps {
			one(x.Steps[i].Ask.Of)
			if i > 0 {
				do(play.Before)
				one(x.Steps[i-1].Ask.Of)
				do(play.Next)
				one(x.Steps[i].Ask.Of)
			}
			if i+1 < len(x.Steps) {
				do(play.Next)
			}
		}
	}
	if worn < 3 || levels < 3 {
		t.Errorf("wear was asked for %d times and levels %d times, want 3 of each", worn, levels)
	}
}
