package play_test

import (
	"slices"
	"testing"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

// handing is a plan's job as it stands when the work is done, with other rows
// called in place of the plan's own.
func handing(t *testing.T, job string, rows ...play.Act) *play.Session {
	t.Helper()
	i := slices.IndexFunc(playtest.Plans, func(p playtest.Plan) bool { return p.Job == job })
	s, err := desk(t).Open(job, 7)
	if err != nil {
		t.Fatal(err)
	}
	acts, err := playtest.Play(s, playtest.Plans[i], see(t))
	if err != nil {
		t.Fatal(err)
	}
	var done []play.Act
	for _, a := range acts {
		switch {
		case a.Do == play.Row || a.Do == play.Counter:
			continue
		case a.Do == play.Seal:
			done = append(done, rows...)
		}
		done = append(done, a)
		if a.Do == play.Work {
			break
		}
	}
	again, err := desk(t).Replay(job, 7, done)
	if err != nil {
		t.Fatal(err)
	}
	if v := again.View(); v.Work == nil {
		t.Fatalf("no hand-over: %s", v.Notice)
	}
	return again
}

func call(row string, n float64) []play.Act {
	return []play.Act{{Do: play.Row, What: row}, {Do: play.Counter, What: row, N: n}}
}

// TestAdvisedLooks: pump, level, leaks, the reading that first showed what was
// called, a slow stop; in this order, before every other reading. Which reading
// it is follows from the call, not from the car.
func TestAdvisedLooks(t *testing.T) {
	for _, x := range []struct {
		name string
		rows []play.Act
		want string // the reading that showed it
	}{
		{"pins seized", call("pins_seized@front_right", 11), "slide_body@front_right"},
		{"no reading bears it", call("piston_corroded@rear_left", 20), ""},
		{"nothing called", nil, ""},
		{"sound", call("honestly_worn@car", 20), ""},
	} {
		t.Run(x.name, func(t *testing.T) {
			v := handing(t, "to_the_kerb", x.rows...).View()
			var advised []string
			rest := false
			for _, l := range v.Work.Looks {
				if rest && l.Advised {
					t.Errorf("%s is advised, but stands after what is not", l.Name)
				}
				if rest = !l.Advised; !rest {
					advised = append(advised, l.Action.Act.What)
				}
			}
			want := []string{"pump_running", "reservoir_level", "wetness@front_left", "wetness@front_right"}
			if x.want != "" {
				want = append(want, x.want)
			}
			if want = append(want, "slow_stop"); !slices.Equal(advised, want) {
				t.Errorf("advised %v, want %v", advised, want)
			}
		})
	}
}

// TestChocksStood: a chock that was there when the work began is told of after it.
func TestChocksStood(t *testing.T) {
	if v := handing(t, "to_the_kerb").View(); !v.Plan.Stood[1] || v.Plan.Stood[0] || v.Plan.Chocked[1] {
		t.Errorf("chocks stood %v, stand %v: want the rear axle's to have stood and none to stand", v.Plan.Stood, v.Plan.Chocked)
	}
}

// TestPumpFirst: who drives the repaired car before its pedal was pumped is told
// so; who pumps first is not. A look is taken at its own place, on a car that
// stands as it was parked.
func TestPumpFirst(t *testing.T) {
	for _, pumped := range []bool{false, true} {
		s := handing(t, "to_the_kerb", call("pins_seized@front_right", 11)...)
		looks := []string{"slow_stop"}
		if pumped {
			looks = []string{"pump_running", "slow_stop"}
		}
		for i, what := range looks {
			if err := s.Do(play.Act{Do: play.Check, What: what}); err != nil {
				t.Fatal(err)
			}
			v := s.View()
			if told := v.Notice != ""; told != !pumped {
				t.Errorf("pumped %v, %s: the notice is %q", pumped, what, v.Notice)
			}
			if here := v.Plan.Places[map[string]int{"pump_running": 1, "slow_stop": 6}[what]]; !here.Here {
				t.Errorf("%s is taken elsewhere than at %s", what, here.ID)
			}
			if !v.Plan.Handbrake || v.Plan.DiscHot != [4]bool{} || v.Plan.WheelOff != [4]bool{} {
				t.Errorf("look %d: the repaired car stands with handbrake %v, hot discs %v, wheels off %v", i, v.Plan.Handbrake, v.Plan.DiscHot, v.Plan.WheelOff)
			}
			if err := s.Do(play.Act{Do: play.Skip}); err != nil {
				t.Fatal(err)
			}
		}
	}
}
