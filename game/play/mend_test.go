package play

import (
	"testing"

	"evenwear/scenarios"
)

// An attempt is work and whether it mends a cause for good.
type attempt struct {
	cause    string
	place    scenarios.Place
	remedies []string
	mends    bool
}

// attempts has one that mends every cause, and what people really do instead.
var attempts = []attempt{
	{"pins_dry", "front_left", []string{"clean_pins_silicone@front_left"}, true},
	{"pins_dry", "front_left", []string{"clean_pins_petroleum@front_left"}, false},
	{"pins_dry", "front_left", []string{"renew_pads@front_axle"}, false},
	{"pin_seized", "front_left.upper_pin", []string{"renew_pins@front_left"}, true},
	{"pin_seized", "front_left.upper_pin", []string{"clean_pins_silicone@front_left"}, false},
	{"pins_seized", "rear_left", []string{"renew_pins@rear_left"}, true},
	{"pins_seized", "rear_left", []string{"renew_pins@rear_right"}, false},
	{"pin_bent", "front_left.upper_pin", []string{"renew_pins@front_left"}, true},
	{"pin_bent", "front_left.upper_pin", []string{"renew_boots@front_left"}, false},
	{"pins_petroleum", "front_left", []string{"renew_boots@front_left"}, true},
	{"pins_petroleum", "front_left", []string{"clean_pins_silicone@front_left"}, false},
	{"boots_torn", "front_left", []string{"renew_pins@front_left"}, true},
	{"boots_torn", "front_left", []string{"clean_pins_silicone@front_left"}, false},
	{"bush_tight", "front_left", []string{"renew_pins@front_left"}, true},
	{"bush_tight", "front_left", []string{"clean_pins_silicone@front_left"}, false}, // a clean bush is as narrow
	{"bush_tight", "front_left", []string{"clean_pins_petroleum@front_left"}, false},
	{"bush_tight", "front_left", []string{"renew_boots@front_left"}, false},
	{"piston_corroded", "front_left", []string{"renew_caliper@front_left"}, true},
	{"piston_corroded", "front_left", []string{"free_piston@front_left"}, false},
	{"piston_boot_torn", "front_left", []string{"renew_caliper@front_left"}, true},
	{"piston_boot_torn", "front_left", []string{"renew_seal@front_left"}, true},
	{"piston_boot_torn", "front_left", []string{"free_piston@front_left"}, false},
	{"seal_hardened", "front_left", []string{"renew_seal@front_left"}, true},
	{"seal_hardened", "front_left", []string{"renew_pads@front_axle"}, false},
	{"seal_weeping", "front_left", []string{"renew_seal@front_left"}, true},
	{"seal_weeping", "front_left", []string{"renew_joint@front_left"}, false},
	{"seal_weeping", "front_left", []string{"top_up@car"}, false},
	{"ears_rusted", "front_left", []string{"clean_carrier@front_left"}, true},
	{"ears_rusted", "front_left", []string{"renew_pads@front_axle"}, false},
	{"ears_rusted", "front_left", []string{"clean_pins_silicone@front_left"}, false},
	{"pads_worn_front", "front_axle", []string{"renew_pads@front_axle"}, true},
	{"pads_worn_front", "front_axle", []string{"renew_pads@rear_axle"}, false},
	{"pads_worn_front", "front_axle", []string{"top_up@car"}, false},
	{"pads_worn_rear", "rear_axle", []string{"renew_pads@rear_axle"}, true},
	{"pads_glazed", "front_axle", []string{"renew_pads@front_axle"}, true},
	{"pads_glazed", "front_axle", []string{"roughen_pads@front_left", "roughen_pads@front_right"}, false},
	{"pads_soaked", "front_left", []string{"renew_pads@front_axle"}, true},
	{"pads_soaked", "front_left", []string{"roughen_pads@front_left"}, false},
	{"pads_mixed", "front_left", []string{"renew_pads@front_axle"}, true},
	{"disc_runout", "front_left", []string{"renew_discs@front_axle"}, true},
	{"disc_variation", "front_left", []string{"turn_discs@front_axle"}, true},
	{"disc_variation", "front_left", []string{"clean_hub@front_left"}, false},
	{"disc_thin", "front_axle", []string{"renew_discs@front_axle"}, true},
	{"disc_thin", "front_axle", []string{"turn_discs@front_axle"}, false},
	{"disc_thin", "front_axle", []string{"renew_pads@front_axle"}, false},
	{"one_side_renewed", "front_left", nil, true}, // both sides work; it is said, and nothing is renewed for it
	{"air_in_caliper", "front_right", []string{"bleed_wheel@front_right"}, true},
	{"air_in_caliper", "front_right", []string{"top_up@car"}, false},
	{"air_in_circuit", "primary_circuit", []string{"bleed_circuit@primary_circuit"}, true},
	{"air_in_circuit", "primary_circuit", []string{"bleed_wheel@front_left"}, false},
	{"hose_collapsed", "front_left", []string{"renew_hose@front_left"}, true},
	{"hose_collapsed", "front_left", []string{"bleed_wheel@front_left"}, false},
	{"hose_collapsed", "front_left", []string{"renew_caliper@front_left"}, false},
	{"hose_bulging", "front_left", []string{"renew_hose@front_left"}, true},
	{"hose_bulging", "front_left", []string{"bleed_wheel@front_left"}, false},
	{"joint_weeping", "rear_left", []string{"renew_joint@rear_left"}, true},
	{"joint_weeping", "rear_left", []string{"top_up@car"}, false},
	{"screw_weeping", "rear_left", []string{"renew_screw@rear_left"}, true},
	{"screw_weeping", "rear_left", []string{"bleed_wheel@rear_left"}, false},
	{"cup_passing", "primary_circuit", []string{"renew_master@car"}, true},
	{"cup_passing", "primary_circuit", []string{"bleed_circuit@primary_circuit"}, false},
	{"port_covered", "secondary_circuit", []string{"adjust_free_play@car"}, true},
	{"port_covered", "secondary_circuit", []string{"bleed_circuit@secondary_circuit"}, false},
	{"circuit_lost", "front_left", []string{"renew_joint@front_left"}, true},
	{"circuit_lost", "front_left", []string{"top_up@car"}, false},
	{"fluid_old", "car", []string{"renew_fluid@car"}, true},
	{"fluid_old", "car", []string{"top_up@car"}, false},
	{"mineral_oil", "car", []string{"renew_rubber@car"}, true},
	{"mineral_oil", "car", []string{"renew_fluid@car"}, false},
	{"vent_shut", "car", []string{"clean_vent@car"}, true},
	{"valve_stuck", "rear_left", []string{"renew_valve@rear_left"}, true},
	{"valve_stuck", "rear_left", []string{"renew_pads@rear_axle"}, false},
	{"fluid_low_wear", "car", []string{"renew_pads@front_axle", "renew_pads@rear_axle"}, true},
	{"fluid_topped_up", "car", []string{"renew_pads@front_axle", "renew_pads@rear_axle"}, true},
	{"fluid_low_wear", "car", []string{"top_up@car"}, false},
	{"no_assistance", "car", []string{"renew_vacuum_hose@car"}, true},
	{"no_assistance", "car", []string{"renew_check_valve@car"}, false},
	{"valve_passing", "car", []string{"renew_check_valve@car"}, true},
	{"diaphragm_leaking", "car", []string{"renew_booster@car"}, true},
	{"diaphragm_leaking", "car", []string{"renew_vacuum_hose@car"}, false},
	{"fluid_low_grade", "car", []string{"renew_fluid@car"}, true},
	{"fluid_low_grade", "car", []string{"top_up@car"}, false},
	{"oil_low", "car", []string{"fill_oil@car"}, true},
	{"oil_low", "car", []string{"fill_coolant@car"}, false},
	{"oil_overfilled", "car", []string{"draw_oil@car"}, true},
	{"oil_overfilled", "car", []string{"fill_oil@car"}, false},
	{"coolant_leak", "car", []string{"mend_coolant_leak@car"}, true},
	{"coolant_leak", "car", []string{"fill_coolant@car"}, false},
	{"coolant_overfilled", "car", []string{"draw_coolant@car"}, true},
	{"coolant_overfilled", "car", []string{"fill_coolant@car"}, false},
	{"steering_low", "car", []string{"fill_steering@car"}, true},
	{"washer_empty", "car", []string{"fill_washer@car"}, true},
	{"lining_parting", "front_left", []string{"renew_pads@front_axle"}, true},
	{"lining_parting", "front_left", []string{"clean_carrier@front_left"}, false},
	{"disc_scored", "front_left", []string{"renew_discs@front_axle"}, true},
	{"disc_scored", "front_left", []string{"renew_pads@front_axle"}, false},
	{"disc_cracked", "front_left", []string{"renew_discs@front_axle"}, true},
	{"disc_cracked", "front_left", []string{"turn_discs@front_axle"}, false},
	{"rust_lip", "front_axle", []string{"knock_off_lip@front_axle"}, true},
	{"lamp_dead", "car", []string{"renew_lamp@car"}, true},
	{"lamp_dead", "car", []string{"top_up@car"}, false},
	{"plate_proud", "front_left", []string{"renew_pads@front_axle"}, true},
	{"plate_proud", "front_left", []string{"clean_pins_silicone@front_left"}, false},
	{"hub_loose", "front_left", []string{"renew_bearing@front_left"}, true},
	{"hub_loose", "front_left", []string{"bleed_wheel@front_left"}, false},
}

// TestAttempts: for every cause there is work that mends it, and what mends only
// what is seen, or comes back within half a year, is not called mended.
func TestAttempts(t *testing.T) {
	lib, words := shelf(t)
	mended := map[string]bool{}
	for _, c := range attempts {
		cause := lib.Cause(c.cause)
		if cause == nil {
			t.Errorf("no cause %q", c.cause)
			continue
		}
		mended[c.cause] = mended[c.cause] || c.mends
		worst := cause.Severities[len(cause.Severities)-1]
		job := *lib.Job("just_bought")
		job.Faults = []scenarios.Fault{{Cause: cause, Place: c.place, Severity: worst, SinceKm: since(cause, job.Driven, nil)}}
		found, err := buildWorld(job.Car, job.Driven, job.Faults)
		if err != nil {
			t.Fatalf("%s@%s#%s: %v", c.cause, c.place, worst.ID, err)
		}
		s := &Session{desk: NewDesk(lib, words), words: words, job: &job, found: found, catalog: newCatalog(lib)}
		for _, r := range c.remedies {
			if _, _, ok := s.desk.findRemedy(r); !ok {
				t.Errorf("no remedy %s", r)
			}
		}
		if got, err := s.mended(c.remedies); err != nil || got != c.mends {
			t.Errorf("%s@%s#%s after %v: mended %t (%v), want %t", c.cause, c.place, worst.ID, c.remedies, got, err, c.mends)
		}
		if left, err := s.mended(nil); left && len(c.remedies) > 0 {
			t.Errorf("%s@%s#%s left as it is counts as mended (%v)", c.cause, c.place, worst.ID, err)
		}
	}
	for _, c := range lib.Causes {
		if !c.Healthy && !mended[c.ID] {
			t.Errorf("nothing mends %s", c.ID)
		}
	}
}
