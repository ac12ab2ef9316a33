package inspect

import (
	"math"
	"testing"

	"evenwear/physics"
)

// TestRollOutIsARoll: the way worked out from what four hands feel is the way a
// car goes that is stepped until it stands, within a third of a division.
func TestRollOutIsARoll(t *testing.T) {
	conds := conditions()
	for _, name := range []string{"healthy", "dry", "corroded", "hose_holds", "ear_rusted"} {
		w := world(t, conds[name])
		s, err := w.release()
		if err != nil {
			t.Fatal(err)
		}
		from := s.Distance
		s.Speed = rollSpeed
		for n := 0; s.Speed > 0; n++ {
			if s, err = w.Model.Step(s, physics.Input{Engine: true}, short); err != nil || n > 20000 {
				t.Fatal("the car does not come to rest", err)
			}
		}
		if got, want := measure(t, w, "roll_out"), s.Distance-from; math.Abs(got-want) > 1.0/3 {
			t.Errorf("%s: rolls out %.2f m, stepped %.2f m", name, got, want)
		}
	}
}

// TestLightPullIsAStop: the pull of one turn at walking pace is that of a whole
// stop with the same foot, within a third of a division.
func TestLightPullIsAStop(t *testing.T) {
	conds := conditions()
	for _, name := range []string{"healthy", "seized", "corroded", "oily", "dry"} {
		w := world(t, conds[name])
		r, err := w.Model.Stop(w.Rest, physics.StopPlan{Speed: 40 * physics.KmPerHour, Foot: creepFoot})
		if err != nil {
			t.Fatal(err)
		}
		if got := measure(t, w, "pull_light"); math.Abs(got-r.Pull) > 0.02/3 {
			t.Errorf("%s: pulls %+.4f m/s² at walking pace, %+.4f in a stop", name, got, r.Pull)
		}
	}
}

// TestSharedTurn: what is felt at a turned wheel is one experiment, however many
// checks look at it.
func TestSharedTurn(t *testing.T) {
	w := world(t, conditions()["hose_holds"])
	drag := measure(t, w, "spin@front_left")
	if r := w.Model.Spec().Body.TyreRadius; measure(t, w, "turning_force@front_left") != drag/r {
		t.Error("hand and gauge turn different wheels")
	}
	if lost := measure(t, w, "hose_release@front_left"); !(lost > 0.95*drag && lost <= drag) {
		t.Errorf("with the screw open %.1f of %.1f N·m are lost, want nearly all", lost, drag)
	}
}
