package scenarios

import (
	"testing"

	"evenwear/tests/published"
)

// defects are the kinds that brake defects of annual tests are counted in, with
// their share of all [%] and the causes of the catalogue that fail a car so. The
// tests know fewer causes than we do: what only wears, ages or stands under the
// bonnet has no share.
var defects = []struct {
	kind   string
	share  float64
	causes []string
}{
	{"lining below 1.5 mm", 32, []string{"pads_worn_front", "pads_worn_rear", "fluid_low_wear", "fluid_topped_up"}},
	{"binding", 15, []string{"pins_dry", "pin_seized", "pins_seized", "pin_bent", "pins_petroleum", "boots_torn", "bush_tight", "piston_corroded",
		"piston_boot_torn", "seal_hardened", "ears_rusted", "hose_collapsed", "port_covered", "mineral_oil"}},
	{"pipe", 12, []string{"joint_weeping", "hose_bulging", "screw_weeping", "seal_weeping", "circuit_lost", "air_in_caliper"}},
	{"disc worn", 10, []string{"disc_thin", "disc_scored", "rust_lip"}},
	{"imbalance", 9, []string{"pads_soaked", "pads_mixed", "valve_stuck", "one_side_renewed", "lining_parting"}},
	{"fluctuation", 5, []string{"disc_runout", "disc_variation"}},
	{"disc weak", 4, []string{"disc_cracked"}},
	{"efficiency", 3, []string{"no_assistance", "pads_glazed", "diaphragm_leaking", "valve_passing"}},
}

// TestOutsidePriors: the catalogue's weights stand in the order in which annual
// tests find such defects, each within a factor of two (OC-107: DVSA test-results
// open data, a tally that holds drums too; quoted).
func TestOutsidePriors(t *testing.T) {
	lib := library(t)
	shares, total := 0.0, 0.0
	weights := make([]float64, len(defects))
	for i, d := range defects {
		for _, id := range d.causes {
			c := lib.Cause(id)
			if c == nil {
				t.Fatalf("no cause %q", id)
			}
			weights[i] += c.Prior
		}
		shares += d.share
		total += weights[i]
	}
	for i, d := range defects {
		got := weights[i] / total
		slip := 10 * got // a weight's point in the wrong place
		published.Bracket{ID: "OC-107 " + d.kind + ", of all", Source: "DVSA test-results open data", Got: got, Lo: d.share / shares / 2, Hi: d.share / shares * 2, Wrong: slip}.Check(t)
		if i > 0 && weights[i] > weights[i-1] {
			t.Errorf("%s has %.1f, %s %.1f: not in the order of %g and %g %%", d.kind, weights[i], defects[i-1].kind, weights[i-1], d.share, defects[i-1].share)
		}
	}
}
