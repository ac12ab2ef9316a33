package scene

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

var record = flag.Bool("record", false, "play the jobs whose debriefs are drawn again; some minutes")

// recorded are the jobs whose debriefs are drawn, and how they are played.
var recorded = map[string]playtest.Plan{
	"debrief-dry": plan("warm_wheel"),
	// Surely the wrong wheel, nothing mended, handed over for use: unsafe, and
	// worse than saying nothing.
	"debrief-unsafe": {Job: "to_the_kerb", Wheels: []string{"front_left"}, Row: "piston_corroded@front_left", Second: "disc_runout@front_left", Release: "release.use"},
	"debrief-leak":   plan("morning_lamp"),
	"debrief-air":    plan("like_a_sponge"),
	"debrief-sound":  plan("just_bought"),
	"debrief-pin":    plan("spring_service"),
	"debrief-piston": plan("thirsty"),
}

func plan(job string) playtest.Plan {
	for _, p := range playtest.Plans {
		if p.Job == job {
			return p
		}
	}
	panic("no plan for " + job)
}

// TestRecord plays jobs to their end, as a learner would, and keeps their views.
// Without -record it asks only that what was kept can be read.
func TestRecord(t *testing.T) {
	if !*record {
		for name := range recorded {
			recordedView(t, name)
		}
		return
	}
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	for name, plan := range recorded {
		t.Run(name, func(t *testing.T) {
			s, err := play.NewDesk(lib, words).Open(plan.Job, 7)
			if err != nil {
				t.Fatal(err)
			}
			see := func(check, perception string) string {
				c, _ := inspect.Find(inspect.ID(check))
				for _, w := range c.Meter.Words {
					if words.Say("see."+check+"."+w) == perception {
						return words.Say("word." + w)
					}
				}
				t.Fatalf("%s: nothing is described by %q", check, perception)
				return ""
			}
			if _, err := playtest.Play(s, plan, see); err != nil {
				t.Fatal(err)
			}
			if err := s.Settle(t.Context(), nil); err != nil {
				t.Fatal(err)
			}
			raw, err := json.MarshalIndent(s.View(), "", " ")
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(filepath.Join("testdata", name+".json"), append(raw, '\n'), 0o644); err != nil {
				t.Fatal(err)
			}
		})
	}
}

// recordedView is the view of a job that was really played.
func recordedView(t testing.TB, name string) *play.View {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("testdata", name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	v := new(play.View)
	if err := json.Unmarshal(raw, v); err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if v.Debrief == nil || len(v.Debrief.Faults) == 0 {
		t.Fatalf("%s holds no debrief", name)
	}
	return v
}
