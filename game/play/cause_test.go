package play

import (
	"math"
	"testing"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// used is a car in the middle of its pads' life.
var used = scenarios.Driven{Km: 60000, PadsKm: 16000, PadsThinnerMm: 0.3, Harshness: 1, RoomC: 18}

// A sign is a reading that shows a cause: the check, the way it goes against the
// same car honestly worn, and why.
type sign struct {
	cause string
	place scenarios.Place
	check string
	way   int // 1 up, −1 down, 0 stays within a division
	why   string
}

// signs has at least one for every cause of the catalogue. A sign that stays
// tells the cause from the one a beginner would think of.
var signs = []sign{
	{"pins_dry", "front_left", "slide_body@front_left", 1, "hands feel both pins' dry friction"},
	{"pins_dry", "front_left", "temperature@front_left", 1, "the outer pad is not let go"},
	{"pin_seized", "front_left.upper_pin", "pin_upper@front_left", 1, "rust holds this pin"},
	{"pin_seized", "front_left.upper_pin", "pin_lower@front_left", 0, "the other pin slides"},
	{"pins_seized", "front_left", "slow_stop", 1, "the outer pad starves, so the right brakes more"},
	{"pin_bent", "front_left.upper_pin", "pin_upper@front_left", 1, "a bent pin springs against the hand once the lining has worn"},
	{"pin_bent", "front_right.lower_pin", "spin@front_right", 1, "the spring keeps a pad on the disc"},
	{"pins_petroleum", "front_left", "slide_body@front_left", 1, "swollen rubber grips both pins"},
	{"pins_petroleum", "front_left", "spin@front_left", 1, "the outer pad is not let go"},
	{"boots_torn", "rear_right", "slide_body@rear_right", 1, "rust has grown on both pins for months"},
	{"bush_tight", "front_left", "pin_upper@front_left", 1, "the narrow bush grips this pin"},
	{"bush_tight", "front_left", "pin_lower@front_left", 0, "the other bush is as wide as it should be"},
	{"piston_corroded", "rear_left", "spin@rear_left", 1, "no roll-back: both pads touch"},
	{"piston_corroded", "front_left", "slide_body@front_left", 0, "the pins are free"},
	{"piston_boot_torn", "front_left", "push_piston@front_left", 1, "rust has grown on the piston for months"},
	{"seal_hardened", "front_left", "spin@front_left", 1, "a hard seal rolls back less than the pads' clearance"},
	{"seal_hardened", "front_left", "push_piston@front_left", 0, "the piston itself is free"},
	{"seal_weeping", "rear_left", "hold_sink", 1, "fluid runs past the seal"},
	{"seal_weeping", "rear_left", "reservoir_level", -1, "it is lost"},
	{"ears_rusted", "front_left", "spin@front_left", 1, "held pads do not come off the disc"},
	{"ears_rusted", "front_left", "slide_body@front_left", 0, "the pins are free"},
	{"pads_worn_front", "front_axle", "lining_inner_upper@front_right", -1, "little lining is left"},
	{"pads_worn_front", "front_axle", "lining_inner_upper@rear_right", 0, "the other axle is as it was"},
	{"pads_worn_rear", "rear_axle", "lining_outer_lower@rear_left", -1, "little lining is left"},
	{"pads_worn_rear", "rear_axle", "reservoir_level", -1, "the pistons have followed, and fluid with them"},
	{"pads_glazed", "front_axle", "stop_distance", 1, "less friction for the same foot"},
	{"pads_glazed", "rear_axle", "temperature@rear_left", -1, "the rear axle does less of the work"},
	{"pads_glazed", "front_axle", "pull", 0, "both sides alike"},
	{"pads_soaked", "front_left", "pull", 1, "its mate brakes more (OC-96)"},
	{"pads_soaked", "front_left", "temperature@front_left", -1, "it does less of the work"},
	{"pads_mixed", "front_left", "pull", 1, "its mate has the better grade"},
	{"pads_mixed", "rear_right", "braked_force@rear_right", -1, "it brakes less under the same foot"},
	{"pads_mixed", "front_left", "face_outer@front_left", 0, "its face is as dull as any"},
	{"disc_runout", "front_left", "runout@front_left", 1, "the disc stands askew"},
	{"disc_variation", "rear_right", "thickness_variation@rear_right", 1, "thick and thin places"},
	{"disc_variation", "front_left", "pulsation", 1, "the thick place pushes the piston back"},
	{"disc_variation", "front_left", "runout@front_left", 0, "the disc runs true"},
	{"disc_thin", "front_axle", "disc_thickness@front_left", -1, "worn"},
	{"disc_thin", "rear_axle", "stop_distance", 0, "a thin disc brakes as well on a cool day"},
	{"one_side_renewed", "front_left", "lining_outer_upper@front_left", 1, "thick here"},
	{"one_side_renewed", "front_left", "lining_outer_upper@front_right", 0, "worn there"},
	{"air_in_caliper", "front_right", "pedal_travel", 1, "a bubble is squeezed before there is pressure"},
	{"air_in_circuit", "primary_circuit", "pedal_travel", 1, "the same in the master cylinder"},
	{"air_in_circuit", "secondary_circuit", "pedal_feel", 1, "gas gives way"},
	{"air_in_circuit", "primary_circuit", "bleed_bubbles@front_left", 0, "no wheel gives up a bubble"},
	{"air_in_circuit", "primary_circuit", "pump_running", 1, "pumping fills the room of the gas for a moment"},
	{"pin_bent", "front_left.upper_pin", "temperature@front_left", 1, "the inner pad goes on rubbing"},
	{"valve_stuck", "rear_left", "lining_outer_upper@rear_left", 0, "its linings do not wear faster"},
	{"hose_collapsed", "front_left", "trapped_pressure@front_left", 1, "the flap keeps fluid back"},
	{"hose_collapsed", "rear_left", "spin@rear_left", 1, "trapped pressure presses the pads"},
	{"hose_bulging", "front_left", "hose_bulge@front_left", 1, "the wall gives way"},
	{"hose_bulging", "rear_right", "pedal_travel", 1, "fluid fills the swelling"},
	{"hose_bulging", "front_left", "pump_running", 0, "it swells again at every stroke"},
	{"joint_weeping", "rear_left", "wetness@rear_left", 1, "fluid comes out"},
	{"joint_weeping", "rear_left", "reservoir_level", -1, "and is gone"},
	{"screw_weeping", "front_left", "reservoir_level", -1, "fluid seeps out at the screw"},
	{"screw_weeping", "front_left", "hold_sink", 1, "the piston follows what is lost"},
	{"cup_passing", "primary_circuit", "hold_sink", 1, "fluid slips past the cup"},
	{"cup_passing", "secondary_circuit", "reservoir_level", 0, "back to the reservoir: none is lost"},
	{"port_covered", "primary_circuit", "temperature@front_left", 1, "shut-in fluid grows with heat and presses"},
	{"port_covered", "secondary_circuit", "temperature@front_right", 1, "the other circuit's wheels"},
	{"port_covered", "primary_circuit", "pedal_travel", -1, "its way to the port is gone"},
	{"circuit_lost", "front_left", "pedal_travel", 1, "one piston runs to its stop"},
	{"circuit_lost", "rear_right", "wetness@rear_right", 1, "that is where the pipe burst"},
	{"fluid_old", "car", "fluid_water", 1, "the tester shows it"},
	{"fluid_old", "car", "pedal_travel", 0, "cold, wet fluid is as stiff as dry"},
	{"mineral_oil", "car", "push_piston@rear_left", 1, "swollen seals grip"},
	{"mineral_oil", "car", "spin@front_right", 1, "no piston goes back"},
	{"vent_shut", "car", "pedal_travel", 1, "the vacuum over the fluid pulls the pistons back"},
	{"valve_stuck", "rear_left", "temperature@rear_left", -1, "its wheel hardly brakes"},
	{"fluid_low_wear", "car", "reservoir_level", -1, "the pistons stand further out"},
	{"fluid_topped_up", "car", "lining_inner_lower@rear_left", -1, "worn as far"},
	{"fluid_topped_up", "car", "reservoir_level", 1, "but full"},
	{"no_assistance", "car", "assist", -1, "the pedal does not sink when the engine starts (OC-92)"},
	{"no_assistance", "car", "stop_distance", 1, "the leg alone brakes"},
	{"valve_passing", "car", "assist_reserve", -1, "the vacuum is gone a minute after the engine"},
	{"valve_passing", "car", "stop_distance", 0, "with the engine running it helps as ever"},
	{"diaphragm_leaking", "car", "pedal_travel", -1, "less help even with the engine running"},
	{"diaphragm_leaking", "car", "assist_reserve", -1, "and none in store"},
	{"hub_loose", "front_left", "hub_play@front_left", 1, "the hub tips"},
	{"hub_loose", "front_left", "bleed_bubbles@front_left", 0, "there is no air"},
	{"lining_parting", "front_left", "bond_inner@front_left", 1, "a crack runs along the edge of the plate"},
	{"lining_parting", "front_left", "lining_inner_upper@front_left", 0, "the lining is as thick as ever"},
	{"disc_scored", "front_left", "groove_outer@front_left", 1, "a fingernail catches"},
	{"disc_scored", "front_left", "disc_thickness@front_left", -1, "a disc is as thick as its thinnest place"},
	{"disc_cracked", "front_right", "disc_crack@front_right", 1, "a dark line runs in from the rim"},
	{"disc_cracked", "front_right", "stop_distance", 0, "it brakes as ever until it bursts"},
	{"rust_lip", "front_axle", "disc_rim@front_left", 1, "jaws across the rim measure the lip"},
	{"rust_lip", "rear_axle", "disc_thickness@rear_left", 0, "pointed jaws measure the track"},
	{"lamp_dead", "car", "warning_lamp", -1, "not even the key lights it"},
	{"plate_proud", "front_left", "plate_outer@front_left", 1, "blades go under its plate"},
	{"boots_torn", "front_left", "pin_boots@front_left", 1, "the tear is seen"},
	{"pins_petroleum", "front_left", "pin_boots@front_left", 1, "the boots have swollen"},
	{"pins_dry", "front_left", "pin_boots@front_left", 0, "its boots are sound"},
	{"piston_boot_torn", "front_left", "piston_boot@front_left", 1, "the tear is seen"},
	{"piston_corroded", "front_left", "clearance@front_left", -1, "nothing is left between pads and disc"},
	{"seal_weeping", "rear_left", "wet_piston@rear_left", 1, "it stands behind the dust boot"},
	{"seal_weeping", "rear_left", "wetness@rear_left", 0, "the joint is dry"},
	{"screw_weeping", "front_left", "wet_screw@front_left", 1, "it comes out under the screw's cap"},
	{"joint_weeping", "rear_left", "wet_piston@rear_left", 0, "the seal is dry"},
	{"ears_rusted", "front_left", "ear_inner@front_left", 1, "rust holds the pad in its carrier"},
	{"pads_soaked", "front_left", "face_outer@front_left", 1, "the face is stained"},
	{"pads_glazed", "front_axle", "face_inner@front_right", 1, "the face shines"},
	{"air_in_caliper", "front_right", "bleed_bubbles@front_right", 1, "the bubbles come out"},
	{"rust_film", "car", "disc_film@rear_left", 1, "brown faces"},
	{"fluid_low_grade", "car", "fluid_boil", -1, "it boils at a lower heat"},
	{"fluid_low_grade", "car", "fluid_water", 0, "though it is dry"},
	{"fluid_old", "car", "fluid_boil", -1, "water boils out of it first"},
	{"vent_shut", "car", "cap_vent", -1, "the cap draws air in as it is turned"},
	{"mineral_oil", "car", "fluid_layers", 1, "oil floats on a sample that has stood"},
	{"mineral_oil", "car", "cap_rubber", 1, "the cap's diaphragm has swollen too"},
	{"oil_low", "car", "oil_level", -1, "it has been used up"},
	{"oil_overfilled", "car", "oil_level", 1, "a litre too much was poured in"},
	{"coolant_leak", "car", "coolant_level", -1, "it has leaked out"},
	{"coolant_overfilled", "car", "coolant_level", 1, "it was filled up cold"},
	{"steering_low", "car", "steering_level", -1, "it has leaked or was drawn off"},
	{"washer_empty", "car", "washer_level", -1, "it has been used up"},
	{"new_healthy", "car", "lining_outer_upper@rear_right", 1, "thick linings"},
	{"rust_film", "car", "stop_distance", -1, "a film of rust grips harder"},
}

// TestEverySignShows: every cause, at every severity, moves the readings that
// should show it by more than a division, or to another word; and leaves alone
// what should tell it from another.
func TestEverySignShows(t *testing.T) {
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	car := lib.Car("compact_hatchback")
	sound, err := buildWorld(car, used, nil)
	if err != nil {
		t.Fatal(err)
	}
	shown := map[string]bool{}
	for _, s := range signs {
		shown[s.cause] = shown[s.cause] || s.way != 0
	}
	for _, c := range lib.Causes {
		if !shown[c.ID] && c.Changes() {
			t.Errorf("no sign shows %s", c.ID)
		}
	}
	type key struct {
		cause, severity string
		place           scenarios.Place
	}
	worlds := map[key]*inspect.World{}
	world := func(c *scenarios.Cause, at scenarios.Place, v scenarios.Severity) (*inspect.World, error) {
		k := key{c.ID, v.ID, at}
		if w := worlds[k]; w != nil {
			return w, nil
		}
		w, err := buildWorld(car, used, []scenarios.Fault{{Cause: c, Place: at, Severity: v, SinceKm: since(c, used, nil)}})
		worlds[k] = w
		return w, err
	}
	for _, s := range signs {
		c := lib.Cause(s.cause)
		if c == nil {
			t.Errorf("no cause %q", s.cause)
			continue
		}
		inst, err := inspect.ParseInstance(s.check)
		if err != nil {
			t.Error(err)
			continue
		}
		check, _ := inspect.Find(inst.Check)
		m := &check.Meter
		was, err := sound.Measure(inst)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range c.Severities {
			w, err := world(c, s.place, v)
			if err != nil {
				t.Fatalf("%s@%s#%s: %v", s.cause, s.place, v.ID, err)
			}
			is, err := w.Measure(inst)
			if err != nil {
				t.Fatal(err)
			}
			steps := (is - was) / m.PerUnit / m.Division
			if len(m.Words) > 0 {
				steps = 2 * float64(m.Show(is/m.PerUnit)-m.Show(was/m.PerUnit))
			}
			if ok := s.way == 0 && math.Abs(steps) <= 1 || float64(s.way)*steps > 1; !ok {
				t.Errorf("%s@%s#%s: %s goes from %.4g to %.4g %s (%+.2f divisions), want %+d: %s",
					s.cause, s.place, v.ID, s.check, was/m.PerUnit, is/m.PerUnit, m.Unit, steps, s.way, s.why)
			}
		}
	}
}
