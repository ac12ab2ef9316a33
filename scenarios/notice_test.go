package scenarios

import (
	"regexp"
	"strings"
	"testing"
)

// TestClaimsTrue: what the owners of our jobs say is what the physics give.
func TestClaimsTrue(t *testing.T) {
	lib, err := Embedded()
	if err != nil {
		t.Fatal(err)
	}
	for _, j := range lib.Jobs {
		if err := j.Verify(); err != nil {
			t.Errorf("%s: %v", j.ID, err)
		}
	}
}

// TestClaimsFalse: each false claim is refused where it stands, with the figure
// computed and with what would be so of the car.
func TestClaimsFalse(t *testing.T) {
	for _, row := range []struct{ say, words, want string }{
		{"hotter: front_right", "hot", "jobs/x.yaml:5:13: notices[0].hotter: not so: its hub is ☆ K cooler than the other"},
		{"pull: right", "pulls", "jobs/x.yaml:5:11: notices[0].pull: not so: the car pulls 0.01 m/s² to the right"},
		{"pull: left", "pulls", "jobs/x.yaml:5:11: notices[0].pull: not so: the car pulls 0.01 m/s² to the right"},
		{"pedal: long", "pedal", "jobs/x.yaml:5:12: notices[0].pedal: not so: the pedal goes ☆ mm less far than a new car's"},
		{"pedal: soft", "soft", "notices[0].pedal: not so: pumping raises the pedal by"},
		{"pedal: sinks", "sinks", "notices[0].pedal: not so: the pedal sinks 0.0 mm"},
		{"pedal: pulses", "pulses", "notices[0].pedal: not so: the pedal moves 0.1"},
		{"lamp: level", "lamp", "notices[0].lamp: not so: the fluid stands at "},
		{"wet: front_left", "wet", "notices[0].wet: not so: 0.000 cm³"},
		{"rolls: badly", "rolls", "notices[0].rolls: not so: the brakes hold the rolling car with 7"},
		{"scrapes: front", "scrapes", "notices[0].scrapes: not so: ☆ mm of lining are left at the front before steel rubs, and rust covers 0 %"},
		{"scrapes: rear", "grates", "notices[0].scrapes: not so: ☆ mm of lining are left at the rear before steel rubs"},
		{"none: service", "well", "notices[0].none: not so: the owner would notice hotter front_left: its hub is 8"},
	} {
		text := strings.Replace(soundJob, "hotter: front_left", row.say, 1)
		text = strings.Replace(text, "The left one was hot.", "It "+row.words+".", 1)
		lib, err := Load(with(t, "jobs/x.yaml", text))
		if err != nil {
			t.Fatalf("%s: %v", row.say, err)
		}
		// ☆ stands for a figure without a minus.
		want := regexp.MustCompile(strings.ReplaceAll(regexp.QuoteMeta(row.want), "☆", `[0-9.]+`))
		if err := lib.Job("x").Verify(); err == nil || !want.MatchString(err.Error()) || !strings.HasSuffix(err.Error(), "; of this car is noticed hotter: front_left") {
			t.Errorf("%s: got %v, want … %s …", row.say, err, row.want)
		}
	}
}
