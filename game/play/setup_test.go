package play_test

import (
	"slices"
	"strings"
	"testing"

	"evenwear/game/play"
)

// acted plays acts that are all allowed.
func acted(t *testing.T, acts ...play.Act) *play.Session {
	t.Helper()
	s, err := desk(t).Open("warm_wheel", 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range acts {
		if err := s.Do(a); err != nil {
			t.Fatalf("%+v: %v", a, err)
		}
	}
	return s
}

// TestWheelTakenOffHasSlackNuts: whoever takes a wheel off without slackening its
// nuts on the ground breaks a caution, and has nuts to tighten all the same.
func TestWheelTakenOffHasSlackNuts(t *testing.T) {
	s := acted(t, play.Act{Do: play.Prepare, What: "lift_front"}, play.Act{Do: play.Go, What: "front_left"}, play.Act{Do: play.Prepare, What: "wheel_off@front_left"})
	if v := s.View(); !v.Plan.NutsSlack[0] || !strings.Contains(v.Notice, "Nuts are slackened while the wheel is on the ground") {
		t.Errorf("nuts slack %v, notice %q", v.Plan.NutsSlack, v.Notice)
	}
	for _, a := range []play.Act{{Do: play.Prepare, What: "wheel_on@front_left"}, {Do: play.Go, What: "ground"}, {Do: play.Prepare, What: "lower_front"},
		{Do: play.Go, What: "front_left"}, {Do: play.Prepare, What: "torque_nuts@front_left"}} {
		if err := s.Do(a); err != nil {
			t.Fatalf("%+v: %v", a, err)
		}
	}
	if v := s.View(); slices.Contains(v.Plan.NutsSlack[:], true) {
		t.Errorf("after tightening the nuts are slack: %v", v.Plan.NutsSlack)
	}
}

// TestLiftedCarIsNotDriven: a check that moves the car is refused while it does
// not stand on four wheels, and with slack nuts it breaks their caution.
func TestLiftedCarIsNotDriven(t *testing.T) {
	looked := []play.Act{{Do: play.Go, What: "seat"}, {Do: play.Check, What: "pedal_travel"}, {Do: play.Write, Text: "50"},
		{Do: play.Check, What: "hold_sink"}, {Do: play.Write, Text: "0"}, {Do: play.Go, What: "front_left"},
		{Do: play.Check, What: "wetness@front_left"}, {Do: play.Write, Text: "dry"},
		{Do: play.Check, What: "opening_outer@front_left"}, {Do: play.Write, Text: "plenty"}}
	road := []play.Act{{Do: play.Go, What: "road"}, {Do: play.Prepare, What: "clear_road"}}
	stop := play.Act{Do: play.Check, What: "slow_stop"}

	s := acted(t, slices.Concat(looked, []play.Act{{Do: play.Go, What: "ground"}, {Do: play.Prepare, What: "chock_rear"}, {Do: play.Prepare, What: "lift_front"}}, road[:1])...)
	for _, a := range road[1:] {
		if err := s.Do(a); err == nil || !strings.Contains(s.View().Notice, "four wheels") {
			t.Errorf("the road is cleared, and the chocks taken away, with the front lifted: error %v, notice %q", err, s.View().Notice)
		}
	}
	if err := s.Do(stop); err == nil || !strings.Contains(s.View().Notice, "four wheels") {
		t.Errorf("a slow stop with the front lifted: error %v, notice %q", err, s.View().Notice)
	}
	s = acted(t, slices.Concat(looked, []play.Act{{Do: play.Prepare, What: "slacken_nuts@front_left"}}, road, []play.Act{stop})...)
	if v := s.View(); v.Instrument == nil || !strings.Contains(v.Notice, "Nuts to the handbook") {
		t.Errorf("a slow stop with slack nuts: notice %q, want the caution", v.Notice)
	}
	s = acted(t, slices.Concat(looked, []play.Act{{Do: play.Go, What: "ground"}, {Do: play.Prepare, What: "chock_rear"}}, road, []play.Act{stop})...)
	if v := s.View(); v.Plan.Chocked[1] {
		t.Errorf("driven with the wheels chocked: %v", v.Plan.Chocked)
	}
	s = acted(t, slices.Concat(looked, road, []play.Act{stop})...)
	if v := s.View(); v.Instrument == nil || strings.Contains(v.Notice, "caution") {
		t.Errorf("a slow stop on four wheels: notice %q", v.Notice)
	}
}

// TestHoseWithWheelOff: what a hand and an eye find at the hose is found with the
// wheel off too, in the same minutes; what is found of the wheel is not.
func TestHoseWithWheelOff(t *testing.T) {
	s := acted(t, play.Act{Do: play.Go, What: "ground"}, play.Act{Do: play.Prepare, What: "lift_front"}, play.Act{Do: play.Go, What: "front_left"},
		play.Act{Do: play.Prepare, What: "stand@front_left"}, play.Act{Do: play.Prepare, What: "wheel_off@front_left"})
	for _, x := range []struct {
		check, word string
		minutes     float64
	}{{"wetness", "dry", 1.5}, {"hose_bulge", "sound", 1}} {
		before := s.View().Title.Minutes
		for _, a := range []play.Act{{Do: play.Check, What: x.check + "@front_left"}, {Do: play.Write, Text: x.word}} {
			if err := s.Do(a); err != nil {
				t.Fatalf("%+v: %v", a, err)
			}
		}
		if took := s.View().Title.Minutes - before; took != x.minutes {
			t.Errorf("%s took %g min, want %g", x.check, took, x.minutes)
		}
	}
	for _, check := range []string{"spin", "turning_force", "braked_force", "hub_play", "opening_outer"} {
		if err := s.Do(play.Act{Do: play.Check, What: check + "@front_left"}); err == nil || !strings.Contains(s.View().Notice, "The wheel is off") {
			t.Errorf("%s with the wheel off: error %v, notice %q", check, err, s.View().Notice)
		}
	}
}

// TestWheelLeftOffIsPaidFor: whoever comes to the call with a wheel off is told
// so, and what sealing puts back takes the minutes that it takes by hand; the
// caution of the nuts is broken only where they were left.
func TestWheelLeftOffIsPaidFor(t *testing.T) {
	on := func(names ...string) (list []play.Act) {
		for _, n := range names {
			list = append(list, play.Act{Do: play.Prepare, What: n})
		}
		return list
	}
	walk := func(to string) []play.Act { return []play.Act{{Do: play.Go, What: to}} }
	off := slices.Concat(on("chock_rear"), walk("front_left"), on("slacken_nuts@front_left"), walk("ground"), on("lift_front"),
		walk("front_left"), on("stand@front_left", "wheel_off@front_left", "wipe_dust@front_left"))
	back := slices.Concat(on("wheel_on@front_left"), walk("ground"), on("lower_front"), walk("front_left"), on("torque_nuts@front_left"))
	call, seal := play.Act{Do: play.OpenCall}, play.Act{Do: play.Seal}

	tidy := acted(t, append(slices.Concat(off, back), call)...)
	if v := tidy.View(); v.Notice != "" {
		t.Errorf("a car on its wheels comes to the call with the notice %q", v.Notice)
	}
	left := acted(t, append(slices.Clone(off), call)...)
	if v := left.View(); !strings.Contains(v.Notice, "Put the wheel on, front left; Lower the front; Nuts to the handbook's figure, front left") || !strings.Contains(v.Notice, "6 min") || !v.Warns {
		t.Errorf("a car with a wheel off comes to the call with the notice %q", v.Notice)
	}
	for _, s := range []*play.Session{tidy, left} {
		if err := s.Do(seal); err != nil {
			t.Fatal(err)
		}
		if v := s.View(); v.Plan.WheelOff[0] || v.Plan.Lifted[0] || v.Plan.NutsSlack[0] {
			t.Errorf("sealed with %+v", v.Plan)
		}
	}
	if a, b := tidy.View().Title.Minutes, left.View().Title.Minutes; a != b {
		t.Errorf("put back by hand it took %g min, by sealing %g", a, b)
	}
	if kept, has := caution(tidy, "caution.nuts_torque"); !has || !kept {
		t.Errorf("nuts brought to their figure: due %t, kept %t", has, kept)
	}
	if kept, has := caution(left, "caution.nuts_torque"); !has || kept {
		t.Errorf("nuts left loose: due %t, kept %t", has, kept)
	}
	if v := left.View(); !strings.Contains(v.Notice, "Put the wheel on") {
		t.Errorf("sealed with a wheel off: notice %q", v.Notice)
	}
}

func caution(s *play.Session, id string) (kept, has bool) {
	for _, c := range s.Due() {
		if c.ID == id {
			return c.Kept, true
		}
	}
	return false, false
}
