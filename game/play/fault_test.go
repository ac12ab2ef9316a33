package play

import (
	"cmp"
	"slices"
	"strings"
	"testing"

	"evenwear/physics"
	"evenwear/scenarios"
	"evenwear/scoring"
)

// sick is a session whose car has a cause of the catalogue at its first place,
// as bad as it comes, and the fault as the debrief draws it.
func sick(t *testing.T, lib *scenarios.Library, words Words, cause *scenarios.Cause) []FaultView {
	t.Helper()
	job := *lib.Job("just_bought")
	if !cause.Healthy {
		job.Faults = []scenarios.Fault{{Cause: cause, Place: cause.Places[0], Severity: cause.Severities[len(cause.Severities)-1], SinceKm: 3000}}
	}
	found, err := buildWorld(job.Car, job.Driven, job.Faults)
	if err != nil {
		t.Fatal(err)
	}
	s := &Session{desk: NewDesk(lib, words), words: words, job: &job, found: found, catalog: newCatalog(lib)}
	o, err := scoring.Look(&job.Car.Spec, found.Model.Condition(), job.Driven.Duty())
	if err != nil {
		t.Fatal(err)
	}
	all, err := s.faults(&o)
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// TestFaultsShow: every cause of the catalogue differs from the sound car
// somewhere in the figures of its drawing, and is drawn at the moment that
// shows it.
func TestFaultsShow(t *testing.T) {
	lib, words := shelf(t)
	press := func(v *CaliperView, pad int) float64 { return v.Half[pad][0] + v.Half[pad][1] }
	for _, c := range lib.Causes {
		t.Run(c.ID, func(t *testing.T) {
			all := sick(t, lib, words, c)
			if len(all) != 1 {
				t.Fatalf("%d faults are drawn", len(all))
			}
			f := &all[0]
			var parts []string
			for _, l := range f.Labels {
				parts = append(parts, l.Part)
				if l.Text == "" || strings.ContainsAny(l.Text, "‹{") {
					t.Errorf("%s: no words: %q", l.Part, l.Text)
				}
			}
			if c.Healthy {
				if f.Kind != "sound" || f.Cause != "" || f.Level[0] != f.Level[1] || f.Healthy != f.Faulty {
					t.Errorf("a sound car is drawn as %+v", f)
				}
				return
			}
			told := slices.DeleteFunc(slices.Clone(parts), func(p string) bool { return p == "force" })
			if len(told) == 0 {
				t.Errorf("nothing but forces is told: %v", f.Labels)
			}
			has := func(part string) {
				if !slices.Contains(parts, part) {
					t.Errorf("nothing is told of %s, only of %v", part, parts)
				}
			}
			switch c.ID {
			case "pins_dry":
				has("outer_lining")
				if !f.Released || press(&f.Faulty, 1) < press(&f.Healthy, 1)+0.1 {
					t.Errorf("dry pins: released %t, outer pad %.3f kN, sound %.3f", f.Released, press(&f.Faulty, 1), press(&f.Healthy, 1))
				}
			case "pins_seized":
				has("upper_pin")
				has("lower_pin")
				if f.Released || press(&f.Faulty, 1) > 0.6*press(&f.Healthy, 1) || f.Faulty.Pressure != DebriefPressure/physics.Megapascal {
					t.Errorf("seized pins: released %t, outer pad %.2f kN of %.2f at %g MPa", f.Released, press(&f.Faulty, 1), press(&f.Healthy, 1), f.Faulty.Pressure)
				}
			case "pin_seized":
				has("upper_pin")
				if f.Faulty.Tilt == 0 {
					t.Error("one seized pin, and the body does not lean")
				}
			case "piston_corroded":
				has("piston")
				if !f.Released || press(&f.Faulty, 0) < press(&f.Healthy, 0)+0.05 {
					t.Errorf("corroded piston: released %t, inner pad %.3f kN, sound %.3f", f.Released, press(&f.Faulty, 0), press(&f.Healthy, 0))
				}
			case "air_in_caliper":
				has("air")
				has("pedal")
				if f.Air < 1 {
					t.Errorf("%g cm³ of air", f.Air)
				}
			case "joint_weeping":
				has("joint")
				has("level")
			case "fluid_low_wear":
				has("level")
				has("linings")
				if f.Kind != "fluid" || f.Level[1] > f.Level[0]-0.1 {
					t.Errorf("drawn as %s, level %.2f, sound %.2f", f.Kind, f.Level[1], f.Level[0])
				}
			case "oil_low", "oil_overfilled", "coolant_leak", "coolant_overfilled", "steering_low", "washer_empty":
				vessel, _, _ := strings.Cut(c.ID, "_")
				high := strings.HasSuffix(c.ID, "overfilled")
				if f.Vessel != vessel || high && f.Level[1] <= 1 || !high && f.Level[1] > 0.1 || f.Level[0] < 0.1 || f.Level[0] > 1 {
					t.Errorf("drawn as %q, level %.2f, sound %.2f", f.Vessel, f.Level[1], f.Level[0])
				}
			case "no_assistance", "valve_passing", "diaphragm_leaking", "lamp_dead", "cup_passing", "port_covered", "air_in_circuit":
				organ := map[string]string{"lamp_dead": "lamp", "cup_passing": "master_cylinder", "port_covered": "master_cylinder", "air_in_circuit": "master_cylinder"}[c.ID]
				if f.Vessel != "" || f.Organ != cmp.Or(organ, "booster") || f.Kind != "fluid" {
					t.Errorf("drawn as %s, the vessel %q and the organ %q", f.Kind, f.Vessel, f.Organ)
				}
			case "fluid_old", "fluid_low_grade", "mineral_oil", "vent_shut":
				if f.Organ != "" || f.Kind != "fluid" {
					t.Errorf("drawn as %s, the organ %q", f.Kind, f.Organ)
				}
			case "disc_runout":
				has("disc")
			}
		})
	}
}

// TestGentleStopShowsPull: seized pins at the right draw the car to the left in
// the gentle stop of the debrief, and stop it later; a hard one hides both.
func TestGentleStopShowsPull(t *testing.T) {
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	job := lib.Job("to_the_kerb")
	var stops [2]scoring.Road
	for i, faults := range [2][]scenarios.Fault{nil, job.Faults} {
		w, err := buildWorld(job.Car, job.Driven, faults)
		if err != nil {
			t.Fatal(err)
		}
		if stops[i], err = gentleStop(w.Model); err != nil {
			t.Fatal(err)
		}
	}
	sound, sick := stops[0], stops[1]
	if sick.Distance < sound.Distance+1 || sick.Pull > -0.1 || sound.Pull < -0.01 {
		t.Errorf("found %.1f m and %.3f m/s², sound %.1f m and %.3f m/s²", sick.Distance, sick.Pull, sound.Distance, sound.Pull)
	}
}
