package scenarios

import (
	"strings"
	"testing"
)

const soundPairs = `cars_share: 0.1
pairs:
  - {causes: [pins_dry, fluid_topped_up]}
  - {causes: [pins_seized, piston_corroded], across: yes, weight_ratio: 3}
`

func TestBadPairs(t *testing.T) {
	lib, err := Load(with(t, "pairs.yaml", soundPairs))
	if err != nil {
		t.Fatal(err)
	}
	share, n := 0.0, 0
	for _, c := range lib.Couples() {
		share += c.Share
		n++
		if w, _ := c.Faults[0].Place.Wheel(); c.Faults[0].Cause.ID == "pins_seized" && c.Faults[1].Place != Place(w.Mate().String()) {
			t.Errorf("across: %s and %s", c.Faults[0].Place, c.Faults[1].Place)
		}
	}
	if share < 1-1e-9 || share > 1+1e-9 || n != 8 {
		t.Errorf("%d couples with shares that sum to %g", n, share)
	}
	for _, row := range []struct{ old, new, want string }{
		{"fluid_topped_up", "fluid_toped_up", `pairs.yaml:3:25: pairs[0].causes[1]: unknown cause "fluid_toped_up"; the nearest known are fluid_topped_up`},
		{"[pins_dry, fluid_topped_up]", "[pins_dry]", "pairs.yaml:3:5: pairs[0]: 1 causes stand in a pair; two"},
		{"[pins_dry, fluid_topped_up]", "[pins_dry, honestly_worn]", "pairs.yaml:3:25: pairs[0].causes[1]: honestly_worn is no fault; two causes that are"},
		{"[pins_dry, fluid_topped_up]", "[pins_dry, pins_dry]", "pairs.yaml:3:5: pairs[0]: a cause is paired with itself; two that differ"},
		{"  - {causes: [pins_seized", "  - {causes: [pins_dry, fluid_topped_up]}\n  - {causes: [pins_seized", "pairs.yaml:4:5: pairs[1]: the pair stands twice; once"},
		{"cars_share: 0.1", "cars_share: 0.9", "pairs.yaml:1:13: cars_share: 0.9 is out of range; a number from 0 to 0.5 of 1"},
		{"weight_ratio: 3", "weight: 3", "pairs.yaml:4:59: pairs[1].weight: the key lacks its unit; write weight_ratio"},
	} {
		text := strings.Replace(soundPairs, row.old, row.new, 1)
		if text == soundPairs {
			t.Fatalf("%q does not occur", row.old)
		}
		_, err := Load(with(t, "pairs.yaml", text))
		if err == nil || !strings.HasPrefix(err.Error(), row.want) {
			t.Errorf("%s\ngot  %v\nwant %s", row.new, err, row.want)
		}
	}
}

// TestBadTwoFaults: a job's two faults must be thinkable.
func TestBadTwoFaults(t *testing.T) {
	fault := "\n  - {cause: %, place: @, severity: #, since_km: 3000}"
	add := func(cause, place, severity string) string {
		return strings.Replace(soundJob, "since_km: 7000", "since_km: 7000"+strings.NewReplacer("%", cause, "@", place, "#", severity).Replace(fault), 1)
	}
	if _, err := Load(with(t, "jobs/x.yaml", add("fluid_topped_up", "car", "worn"))); err != nil {
		t.Errorf("a pair of the library: %v", err)
	}
	for _, row := range []struct{ cause, place, severity, want string }{
		{"air_in_caliper", "front_left", "pocket", "jobs/x.yaml:10:3: faults: pins_dry at front_left and air_in_caliper at front_left cannot be together; a pair of pairs.yaml, at places it allows"},
		{"disc_runout", "front_right", "slight", "jobs/x.yaml:10:3: faults: pins_dry at front_left and disc_runout at front_right cannot be together; a pair of pairs.yaml, at places it allows"},
	} {
		_, err := Load(with(t, "jobs/x.yaml", add(row.cause, row.place, row.severity)))
		if err == nil || err.Error() != row.want {
			t.Errorf("got  %v\nwant %s", err, row.want)
		}
	}
}
