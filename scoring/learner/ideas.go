package learner

import "evenwear/physics/inspect"

// Groups of causes and checks of the catalogue that ideas are about. A cause
// that a library lacks is passed by.
var (
	leaks   = []string{"joint_weeping", "screw_weeping", "seal_weeping", "circuit_lost"}
	pins    = []string{"pins_dry", "pin_seized", "pins_seized", "pin_bent", "pins_petroleum", "boots_torn", "bush_tight"}
	pistons = []string{"piston_corroded", "seal_hardened", "piston_boot_torn"}
	air     = []string{"air_in_caliper", "air_in_circuit"}
	linings = []inspect.ID{"lining_inner_upper", "lining_inner_lower", "lining_outer_upper", "lining_outer_lower"}
	// pads against each other: inner and outer, in pairs.
	sides = []inspect.ID{"lining_inner_upper", "lining_outer_upper", "lining_inner_lower", "lining_outer_lower", "opening_inner", "opening_outer"}
)

// Misconceptions are wrong ideas that are heard in workshops and on driveways;
// common practice, no source. Figures are chosen so that the idea shows.
var Misconceptions = []Misconception{
	{"low_is_a_leak", []Rule{{Way: Only, Checks: []inspect.ID{"reservoir_level", "warning_lamp"}, Causes: leaks}}},
	{"uneven_is_the_pins", []Rule{{Way: Only, Checks: append(append([]inspect.ID{}, linings...), "opening_inner", "opening_outer"), Causes: pins}}},
	{"pulls_to_the_bad_side", []Rule{{Way: Turned, Checks: []inspect.ID{"pull", "slow_stop"}}}},
	{"hot_is_the_piston", []Rule{{Way: Only, Checks: []inspect.ID{"temperature", "spin"}, Causes: pistons}}},
	{"full_is_cured", []Rule{{Way: Shows, Checks: []inspect.ID{"reservoir_level"}, By: -50}}},
	{"thick_is_good", []Rule{{Way: Shows, Checks: linings, By: -4}}},
	{"long_is_air", []Rule{{Way: Only, Checks: []inspect.ID{"pedal_travel", "pedal_feel", "pump_off"}, Causes: air}}},
	{"cool_is_good", []Rule{{Way: Shows, Checks: []inspect.ID{"temperature"}, By: 60}}},
	{"turns_is_good", []Rule{{Way: Shows, Checks: []inspect.ID{"spin"}, By: 40}}},
	{"pins_wear_the_inner", []Rule{{Way: Swaps, Checks: sides}}},
	{"wear_is_use", []Rule{{Way: Never, Checks: append(append([]inspect.ID{}, linings...), "opening_inner", "opening_outer")}}},
	{"stiff_body_is_the_piston", []Rule{
		{Way: Never, Checks: []inspect.ID{"slide_body", "pin_upper", "pin_lower"}, Causes: pins},
		{Way: Shows, Checks: []inspect.ID{"slide_body"}, Causes: pistons, By: 300}}},
	{"air_comes_by_a_leak", []Rule{{Way: Shows, Checks: []inspect.ID{"wetness"}, Causes: air, By: 1}}},
	{"wear_does_not_lower", []Rule{{Way: Never, Checks: []inspect.ID{"reservoir_level", "warning_lamp"}, Causes: []string{"fluid_low_wear", "pads_worn_front", "pads_worn_rear"}}}},
	{"stops_well_is_good", []Rule{{Way: Shows, Checks: []inspect.ID{"stop_distance"}, By: 8}}},
}

// Misconceived finds a misconception by its id.
func Misconceived(id string) (*Misconception, bool) {
	for i := range Misconceptions {
		if Misconceptions[i].ID == id {
			return &Misconceptions[i], true
		}
	}
	return nil, false
}
