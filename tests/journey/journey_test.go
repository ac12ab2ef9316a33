// Package journey plays the eight jobs from their complaint to their debrief,
// each in play, in a terminal on a pipe and by a hand on the window's sheets.
package journey

import (
	"flag"
	"os"
	"reflect"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/scene/scenetest"
)

// seed is the luck of every session here.
const seed = 7

var debriefs = flag.String("debriefs", "", `jobs whose debrief is worked out, with commas between, or "all"`)

// worked are the jobs whose debrief is worked out in this run, and why these: a
// debrief needs a table of evidence, which is dear.
func worked() (jobs []string, why string) {
	var all []string
	for _, p := range playtest.Plans {
		all = append(all, p.Job)
	}
	switch {
	case *debriefs != "" && *debriefs != "all":
		return strings.Split(*debriefs, ","), "as asked for"
	case *debriefs == "all" || os.Getenv("CI") == "true":
		return all, "all of them"
	case testing.Short():
		return nil, "none in a short run"
	}
	// Two a day, so that each has its turn twice a week.
	n := 2 * (time.Now().YearDay() % (len(all) / 2))
	return all[n : n+2], "today's two; CI=true or -debriefs all works all of them out"
}

// ways gives every way of a hand to two of the eight jobs.
var ways = []scenetest.Way{scenetest.Letters, scenetest.Tabs, scenetest.Mouse, scenetest.Finger}

// TestJobs plays each job on three faces. The same seed and the same acts must
// come of each, and the same debrief to the last bit.
func TestJobs(t *testing.T) {
	jobs, why := worked()
	t.Logf("debriefs worked out: %s (%s)", strings.Join(jobs, ", "), why)
	for i, plan := range playtest.Plans {
		t.Run(plan.Job, func(t *testing.T) {
			w := newWorld(t)
			whole := slices.Contains(jobs, plan.Job)
			var ends []*play.Session
			for _, face := range []struct {
				name string
				play func(t *testing.T, w *world, plan playtest.Plan, whole bool) *play.Session
			}{{"play", inPlay}, {"term", inTerminal}, {"window", func(t *testing.T, w *world, plan playtest.Plan, whole bool) *play.Session {
				return inWindow(t, w, plan, whole, ways[i%len(ways)])
			}}} {
				t.Run(face.name, func(t *testing.T) {
					begin := time.Now()
					s := face.play(t, w, plan, whole)
					if s.Stage() != play.Debriefed {
						t.Fatalf("the job ended %s", s.Stage())
					}
					if whole && s.View().Debrief == nil {
						t.Fatalf("no debrief: %+v", s.View().Waiting)
					}
					t.Logf("%d acts, %.1f s", len(s.Acts()), time.Since(begin).Seconds())
					ends = append(ends, s)
				})
			}
			if t.Failed() {
				return
			}
			if whole {
				debriefed(t, w, ends[0])
			}
			for _, s := range ends[1:] {
				if !slices.Equal(s.Acts(), ends[0].Acts()) {
					t.Errorf("the acts differ:\n%v\n%v", ends[0].Acts(), s.Acts())
				}
				a, b := ends[0].View(), s.View()
				if !whole { // how far the debrief is waited for differs
					a.Waiting, b.Waiting, a.Nodes, b.Nodes = nil, nil, nil, nil
				}
				if !reflect.DeepEqual(a, b) {
					t.Errorf("the ends differ:\n%+v\n%+v", a.Debrief, b.Debrief)
				}
			}
		})
		runtime.GC() // a table is let go of before the next is filled
	}
}

// debriefed holds a debrief to the job: it names what was put in, in whole
// words, with eight marks, and the inspector's counters lie on the truth where
// all that can be measured points at it.
func debriefed(t *testing.T, w *world, s *play.Session) {
	t.Helper()
	v := s.View()
	d := v.Debrief
	job := w.desk.Library().Job(s.Job())
	var causes []string
	for _, f := range job.Faults {
		causes = append(causes, f.Cause.Name)
	}
	if len(causes) == 0 {
		causes = append(causes, w.desk.Library().Worn().Name)
	}
	for _, c := range causes {
		if !strings.Contains(strings.ToLower(d.Truth), strings.ToLower(c)) {
			t.Errorf("the truth is told as %q, want %q in it", d.Truth, c)
		}
	}
	if len(d.Marks) != 8 {
		t.Errorf("%d marks, want 8", len(d.Marks))
	}
	for _, n := range v.Nodes {
		if strings.Contains(n.Name+n.Value, "‹") {
			t.Errorf("no words: %s: %s", n.Name, n.Value)
		}
		if n.Role == "mark" {
			t.Log(n.Name, n.Value)
		}
	}
	var counters int
	var said, support, every float64
	for _, b := range d.Beliefs {
		if b.True {
			counters += b.Counters
			said, support, every = said+b.Said, support+b.Support, every+b.Every
		}
	}
	if every >= 50 && counters <= 10 {
		t.Errorf("%d of 20 counters on the truth, where all checks together put %.0f %% on it", counters, every)
	}
	t.Logf("on the truth: said %.0f %%, the inspector's readings %.1f %%, all checks %.1f %%", said, support, every)
	if d.Capped {
		t.Errorf("a careful inspector's total is capped: %s", d.Cap)
	}
}
