package play_test

import (
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
	for _, x := range lib.Lessons {
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
