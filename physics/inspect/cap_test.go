package inspect

import (
	"testing"

	"evenwear/physics"
)

// TestUnderTheCap: oil, a shut vent over a fallen level and swollen rubber each
// change the word they should and no other, and a sound car gives the sound words.
func TestUnderTheCap(t *testing.T) {
	worn := physics.Condition{VentShut: 1}
	for w := range worn.Wheels {
		worn.Wheels[w].Wear = [2][2]float64{{4e-3, 4e-3}, {4e-3, 4e-3}}
	}
	open := worn
	open.VentShut = 0
	for name, tc := range map[string]struct {
		cond                physics.Condition
		vent, glass, rubber string
	}{
		"sound":             {physics.Condition{}, "quiet", "clear", "folds"},
		"worn":              {open, "quiet", "clear", "folds"},
		"shut vent, worn":   {worn, "draws", "clear", "folds"},
		"shut vent, filled": {physics.Condition{VentShut: 1}, "quiet", "clear", "folds"},
		"over-filled":       {physics.Condition{VentShut: 1, Fluid: 10e-6}, "blows", "clear", "folds"},
		"1 % of oil":        {physics.Condition{MineralOil: 0.01}, "quiet", "cloudy", "folds"},
		"5 % of oil":        {physics.Condition{MineralOil: 0.05}, "quiet", "layered", "folds"},
		"oil, months ago":   {physics.Condition{MineralOil: 0.05, RubberSwollen: 0.5}, "quiet", "layered", "puffed"},
		"water":             {physics.Condition{Water: 0.05}, "quiet", "clear", "folds"},
	} {
		w := world(t, tc.cond)
		for id, want := range map[ID]string{"cap_vent": tc.vent, "fluid_layers": tc.glass, "cap_rubber": tc.rubber} {
			c, _ := Find(id)
			v := made(t, w, id)
			if got := c.Meter.Words[c.Meter.Show(v)]; got != want {
				t.Errorf("%s: %s shows %q (%.2f), want %q", name, id, got, v, want)
			}
		}
	}
	for _, id := range capOpeners {
		if _, ok := Find(id); !ok {
			t.Errorf("there is no check %s", id)
		}
	}
	if (Instance{Check: "reservoir_level"}).OpensCap() || (Instance{Check: "oil_level"}).OpensCap() {
		t.Error("a level read through the wall, or another vessel's, opens the cap")
	}
	// A lower grade boils lower, as water does.
	fresh, poor := made(t, world(t, physics.Condition{}), "fluid_boil"), made(t, world(t, physics.Condition{LowGrade: 0.5}), "fluid_boil")
	if poor > fresh-10 {
		t.Errorf("half of the lowest grade boils at %.0f °C, fresh fluid at %.0f", poor, fresh)
	}
}
