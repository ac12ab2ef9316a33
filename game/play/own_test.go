package play_test

import (
	"context"
	"os"
	"strings"
	"testing"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

func TestBadOwnReadings(t *testing.T) {
	desk, _ := playtest.Desk(t)
	for reading, want := range map[string]string{
		"reservoir_level":                   `"reservoir_level": a reading is CHECK=FIGURE or CHECK=WORD, such as reservoir_level=40`,
		"lining_outer=4":                    `"lining_outer": no check has this name; the nearest known are`,
		"lining_outer_upper=4":              `"lining_outer_upper": this is done at a wheel; add @front_left`,
		"reservoir_level=43":                "reservoir_level: 43 is between the steps 40 and 45 percent",
		"reservoir_level=400":               "reservoir_level: 400 is outside the instrument",
		"pedal_feel=mushy":                  `pedal_feel: "mushy" is none of: firm, springy, soft`,
		"pedal_feel=":                       "pedal_feel: nothing was written",
		"lining_outer_upper@front_left=NaN": `lining_outer_upper@front_left: "NaN" is not a number`,
	} {
		_, err := desk.Own(context.Background(), play.Own{Car: "compact_hatchback", ClockKm: 60000, Readings: []string{reading}}, func(float64) {})
		if err == nil || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("%s: %v, want %s", reading, err, want)
		}
	}
	if _, err := desk.Own(context.Background(), play.Own{Car: "compact_hatchback", ClockKm: 60000, Readings: []string{"lining_outer_upper=4"}}, func(float64) {}); strings.Contains(err.Error(), "nearest") {
		t.Errorf("of a check that is known others are named: %v", err)
	}
	spaced := []string{"disc_crack@front_left=no crack", "pedal_feel="} // the words are understood, the second is the first mistake
	if _, err := desk.Own(context.Background(), play.Own{Car: "compact_hatchback", ClockKm: 60000, Readings: spaced}, func(float64) {}); err == nil || !strings.HasPrefix(err.Error(), "pedal_feel") {
		t.Error(err)
	}
	twice := []string{"pedal_feel=firm", "pedal_feel=soft"}
	if _, err := desk.Own(context.Background(), play.Own{Car: "compact_hatchback", ClockKm: 60000, Readings: twice}, func(float64) {}); err == nil || !strings.Contains(err.Error(), "pedal_feel stands twice") {
		t.Error(err)
	}
}

// TestOwn: an outer lining far thinner than the inner, measured by somebody, is
// what dry guide pins give; readings that no cause gives are said to fit none.
func TestOwn(t *testing.T) {
	if os.Getenv("CI") != "true" {
		t.Skip("a whole table is worked out; it runs with CI=true")
	}
	desk, _ := playtest.Desk(t)
	ask := func(readings ...string) *play.OwnAnswer {
		t.Helper()
		a, err := desk.Own(context.Background(), play.Own{Car: "compact_hatchback", ClockKm: 68000, PadsKm: 17000, Readings: readings}, func(float64) {})
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	a := ask("lining_outer_upper@front_left=4", "lining_outer_lower@front_left=4", "lining_inner_upper@front_left=7", "lining_inner_lower@front_left=7")
	if !a.Fits || !strings.HasPrefix(a.Lines[0].Cause, "Guide pins dry") || a.Lines[0].Place != "front left" || a.Lines[0].Percent < 50 {
		t.Errorf("%+v", a)
	}
	a = ask("lining_outer_upper@front_left=12", "lining_outer_lower@front_left=2", "reservoir_level=-30", "pedal_travel=5", "disc_thickness@front_left=3.00")
	if a.Fits {
		t.Errorf("nonsense fits %+v", a.Lines)
	}
}
