package inspect

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"evenwear/physics"
)

// TestCatalogue holds what every check must have.
func TestCatalogue(t *testing.T) {
	if len(All()) < 55 {
		t.Errorf("%d checks, want at least 55", len(All()))
	}
	seen := map[ID]bool{}
	for i := range all {
		c := &all[i]
		m := &c.Meter
		switch {
		case seen[c.ID]:
			t.Errorf("%s stands twice", c.ID)
		case c.ID == "" || c.Station == "" || c.Measure == nil || !(c.Minutes > 0):
			t.Errorf("%s: id, station, experiment or minutes missing", c.ID)
		case m.Instrument == "" || m.Unit == "" || !(m.PerUnit > 0) || !(m.Resolution > 0) || !(m.Division > 0) || !(m.Sigma > 0) || !(m.Bias >= 0) || !(m.Slip > 0 && m.Slip < 0.1) || !(m.Lo < m.Hi):
			t.Errorf("%s: meter incomplete: %+v", c.ID, *m)
		case (m.Unit == "word") != (len(m.Words) > 0) || len(m.Words) > 0 && len(m.Cuts) != len(m.Words)-1:
			t.Errorf("%s: %d words, %d cuts", c.ID, len(m.Words), len(m.Cuts))
		case (c.Station == WheelOn || c.Station == WheelOff) != c.PerWheel && c.ID != "temperature":
			t.Errorf("%s: station %s, a wheel each %t", c.ID, c.Station, c.PerWheel)
		case (c.Station == WheelOn || c.Station == WheelOff) != slices.Contains(Parts(), c.Part):
			t.Errorf("%s: station %s, part %q", c.ID, c.Station, c.Part)
		case c.BareToo != (c.ID == "wetness" || c.ID == "hose_bulge"):
			t.Errorf("%s: made with the wheel off too %t", c.ID, c.BareToo)
		case (c.Station == Road) != (c.Harmful == HarmRoad):
			t.Errorf("%s: station %s, harmful when %q", c.ID, c.Station, c.Harmful)
		}
		seen[c.ID] = true
		for j, cut := range m.Cuts {
			if j > 0 && cut <= m.Cuts[j-1] || cut <= m.Lo || cut >= m.Hi {
				t.Errorf("%s: cuts %v do not rise within %g to %g", c.ID, m.Cuts, m.Lo, m.Hi)
			}
		}
		for _, end := range []float64{m.Lo, m.Hi} {
			if steps := end / m.Resolution; len(m.Words) == 0 && math.Abs(steps-math.Round(steps)) > 1e-6 {
				t.Errorf("%s: the end %g is no whole step of %g", c.ID, end, m.Resolution)
			}
		}
	}
	for _, group := range RoadNeeds() {
		for _, id := range group {
			if _, ok := Find(id); !ok {
				t.Errorf("road needs the check %s, which does not exist", id)
			}
		}
	}
}

// TestInstruments: checks that share an instrument share its bias, so its bias
// must be one number.
func TestInstruments(t *testing.T) {
	bias := map[string]Meter{}
	for i := range all {
		m := all[i].Meter
		if o, ok := bias[m.Instrument]; ok && (o.Bias != m.Bias || o.Unit != m.Unit || o.PerUnit != m.PerUnit) {
			t.Errorf("%s: instrument %s has bias %g %s here and %g %s elsewhere", all[i].ID, m.Instrument, m.Bias, m.Unit, o.Bias, o.Unit)
		}
		bias[m.Instrument] = m
	}
}

func TestInstanceNames(t *testing.T) {
	list := Instances()
	if a, b := list[0].String(), Instances()[0].String(); a != b {
		t.Errorf("order differs: %s, %s", a, b)
	}
	seen := map[string]bool{}
	for _, i := range list {
		if seen[i.String()] {
			t.Errorf("%s twice", i)
		}
		seen[i.String()] = true
		if back, err := ParseInstance(i.String()); err != nil || back != i {
			t.Errorf("%s comes back as %v, %v", i, back, err)
		}
		for _, n := range i.Needs() {
			if _, err := ParseWork(n); err != nil {
				t.Errorf("%s needs %v", i, err)
			}
		}
	}
	if i, _ := ParseInstance("spin@rear_left"); i.Needs()[0] != "lift_rear" || i.Needs()[1] != "stand@rear_left" {
		t.Errorf("spin@rear_left needs %v", i.Needs())
	}
	for name, id := range map[string]string{
		"": UnknownCheck, "nothing": UnknownCheck, "nothing@front_left": UnknownCheck, "@": UnknownCheck,
		"runout": MissingPlace, "runout@": UnknownPlace, "runout@front": UnknownPlace, "runout@front_left@front_left": UnknownPlace,
		"pedal_travel@front_left": NeedlessAt, "pedal_travel@": NeedlessAt,
	} {
		var ue *UnknownError
		if _, err := ParseInstance(name); !errors.As(err, &ue) || ue.ID != id {
			t.Errorf("ParseInstance(%q): %v, want %s", name, err, id)
		}
	}
}

func TestPreparations(t *testing.T) {
	seen := map[string]bool{}
	for i := range Preparations() {
		p := &Preparations()[i]
		if seen[p.ID] || !(p.Minutes > 0) || p.Safety && len(p.Cautions) == 0 {
			t.Errorf("%s: twice, without minutes, or for safety without a caution", p.ID)
		}
		seen[p.ID] = true
		for w := range physics.Wheel(physics.NumWheels) {
			if w > 0 && !p.PerWheel {
				break
			}
			work := Work{p, w}
			if back, err := ParseWork(work.String()); err != nil || back.String() != work.String() {
				t.Errorf("%s comes back as %v, %v", work, back, err)
			}
			for _, n := range append(work.Needs(), work.Undoes()...) {
				if _, err := ParseWork(n); err != nil {
					t.Errorf("%s: %v", p.ID, err)
				}
				if strings.HasSuffix(n, "@end") || strings.HasSuffix(n, "@wheel") {
					t.Errorf("%s: %s is not filled in", p.ID, n)
				}
			}
		}
	}
	impossible, unsafe := OnWheels()
	for _, n := range append(append(Standing(), impossible...), unsafe...) {
		if _, err := ParseWork(n); err != nil {
			t.Error(err)
		}
	}
	// Cautions stand at the act, so each must stand at one.
	have := strings.Join(CautionIDs(), " ")
	for _, c := range []string{"hot_disc", "dust_damp", "fluid_skin_paint", "stand_before_wheel", "chock_rear", "chock_front",
		"piston_not_forced", "reservoir_overflow", "road_clear", "nuts_torque", "cap_stays_on", "not_under_jack", "handbrake"} {
		if !strings.Contains(have, "caution."+c) {
			t.Errorf("no check or preparation carries caution.%s", c)
		}
	}
}
