package evidence

import (
	"strings"
	"testing"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/physics/physicstest"
)

// TestHastyReadings: the same figure tells of lost oil when it was read as it
// should be and of nothing when it was read at once on a slope, because both are
// judged by what a sound car shows then; and the hasty reading tells less.
func TestHastyReadings(t *testing.T) {
	p := &Problem{}
	for _, inst := range append(inspect.Instances(), inspect.FormInstances()...) {
		if id := string(inst.Check); strings.HasPrefix(id, "oil_level") || strings.HasPrefix(id, "coolant_level") {
			p.Checks = append(p.Checks, inst)
		}
	}
	lost := map[string]physics.VesselsCondition{"sound": {}, "oil lost": {Oil: -0.25e-3}, "coolant lost": {Coolant: -0.2e-3}}
	for _, id := range []string{"sound", "oil lost", "coolant lost"} {
		p.Hypotheses = append(p.Hypotheses, Hypothesis{ID: id, Row: id, Cause: id, Place: "car", Prior: 1.0 / 3})
	}
	p.Background = make([]Background, 1)
	p.Build = func(h int, _ []float64) (*inspect.World, error) {
		return inspect.NewWorld(physicstest.Hatchback(), physics.Condition{Vessels: lost[p.Hypotheses[h].ID]})
	}
	table, err := NewTable(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := table.Fill(t.Context(), 2, nil); err != nil {
		t.Fatal(err)
	}
	for _, tc := range []struct {
		check   string
		percent int64
		row     string // that is believed then
	}{
		{"oil_level", 100, "sound"}, {"oil_level", 75, "oil lost"},
		{"oil_level~roll_level~run_back", 75, "sound"}, {"oil_level~roll_level~run_back", 50, "oil lost"},
		{"coolant_level", 100, "sound"}, {"coolant_level", 35, "coolant lost"},
		{"coolant_level~engine_cold", 170, "sound"}, {"coolant_level~engine_cold", 100, "coolant lost"},
	} {
		inst, err := inspect.ParseInstance(tc.check)
		if err != nil {
			t.Fatal(err)
		}
		post, err := table.Posterior([]Reading{{Check: inst, Display: tc.percent / 5}})
		if err != nil {
			t.Fatal(err)
		}
		// One reading leaves the vessel that was not looked at open.
		if p := post.Row(tc.row); p < 0.3 || tc.row != "sound" && p < 0.9 || tc.row == "sound" && post.Row(strings.TrimSuffix(string(inst.Proper().Check), "_level")+" lost") > 0.1 {
			t.Errorf("%s %d %%: %s is believed with %.2f", tc.check, tc.percent, tc.row, p)
		}
	}
	prior, err := table.Posterior(nil)
	if err != nil {
		t.Fatal(err)
	}
	bits := map[string]float64{}
	for _, w := range prior.All() {
		bits[w.Check.String()] = w.Bits
	}
	if worst, good := bits["oil_level~roll_level~run_back~engine_cold"], bits["oil_level"]; !(worst > 0 && worst < 0.8*good) {
		t.Errorf("a cold stick drawn at once on the yard tells %.2f bits, a sound reading %.2f", worst, good)
	}
}
