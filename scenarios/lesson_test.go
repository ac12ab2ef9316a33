package scenarios

import (
	"slices"
	"strings"
	"testing"
)

const soundLesson = `title: A try
about: Something to try.
car: compact_hatchback
wheel: front_left
steps:
  - tell: A new car.
    fresh: yes
    press_n: [20, 40]
    ask: {kind: curve, of: outer_kn, text: "How much?"}
    look: See.
  - tell: The same.
    set: {wheel.pin_friction_n: 200}
    press_n: [40]
    ask:
      kind: choice
      of: drag_n
      text: More?
      choices: [{say: little}, {say: much, from: 40}]
    look: See.
`

func TestBadLessons(t *testing.T) {
	if _, err := Load(with(t, "lessons/x.yaml", soundLesson)); err != nil {
		t.Fatalf("the sound lesson: %v", err)
	}
	const at = "lessons/x.yaml:"
	for _, row := range []struct{ old, new, want string }{
		{"title: A try", "order: first\ntitle: A try", at + `1:8: order: "first" is not a number; a number from 1 to 1000`},
		{"title: A try", "order: 0\ntitle: A try", at + `1:8: order: 0 is out of range; a number from 1 to 1000`},
		{"wheel: front_left", "wheel: front_left\nend: [1]", at + `5:6: end: a list stands where text belongs`},
		{"wheel: front_left", "wheel: front", at + `4:8: wheel: unknown wheel "front"; known are front_left, front_right, rear_left, rear_right`},
		{"press_n: [20, 40]", "press_n: [20]", at + `9:10: steps[0].ask: a curve of 1 points; at least two forces under press_n`},
		{"press_n: [40]", "press_n: [4000]", at + `13:15: steps[1].press_n[0]: 4000 is out of range; a number from 1 to 500 N`},
		{"kind: choice", "kind: number", at + `18:16: steps[1].ask.choices: choices of a question that is no choice; leave them out, or write kind: choice`},
		{"      choices: [{say: little}, {say: much, from: 40}]\n", "", at + `15:7: steps[1].ask.choices: missing; two to five answers, each with from, where it begins; the first has none`},
		{"{say: little}, ", "", at + `18:16: steps[1].ask.choices: 1 answers; two to five` + "\n" + at + `18:35: steps[1].ask.choices[0].from: the first answer begins nowhere; leave from out`},
		{"{say: little}", "{say: little, from: 10}", at + `18:37: steps[1].ask.choices[0].from: the first answer begins nowhere; leave from out`},
		{"{say: much, from: 40}", "{say: much}", at + `18:32: steps[1].ask.choices[1].from: missing; the least figure this answer holds for`},
		{"{say: much, from: 40}", "{say: much, from: 40}, {say: more, from: 30}", at + `18:16: steps[1].ask.choices: the answers do not rise; each from greater than the one before`},
		{"of: drag_n", "of: drag", at + `16:11: steps[1].ask.of: unknown quantity "drag"; the nearest known are drag_n`},
		{"wheel.pin_friction_n: 200", "wheel.pin_friction_n: -200", at + `12:33: steps[1].set.wheel.pin_friction_n: -200 is out of range; a number from 0 to 50000 N`},
		{"    look: See.\n  - tell: The same", "    looks: See.\n  - tell: The same", at + `6:5: steps[0].look: missing; text is needed here` + "\n" + at + `10:5: steps[0].looks: unknown key; the nearest known are look`},
	} {
		text := strings.Replace(soundLesson, row.old, row.new, 1)
		if text == soundLesson {
			t.Fatalf("%q does not occur", row.old)
		}
		_, err := Load(with(t, "lessons/x.yaml", text))
		if err == nil || !strings.HasPrefix(err.Error(), row.want) {
			t.Errorf("%s\ngot  %v\nwant %s", row.new, err, row.want)
		}
	}
}

// TestLessonOrder: lessons are offered from the simple to the complex; one that
// does not say where it stands comes last.
func TestLessonOrder(t *testing.T) {
	lib, err := Load(with(t, "lessons/a_try.yaml", soundLesson))
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, l := range lib.Lessons {
		got = append(got, l.ID)
	}
	want := []string{"one_piston_two_pads", "what_the_servo_adds", "air_in_the_pipe", "where_the_fluid_stands", "a_pin_that_does_not_slide", "why_a_pad_drags", "a_try"}
	if !slices.Equal(got, want) {
		t.Errorf("the lessons stand in the order\n%q, want\n%q", got, want)
	}
}
