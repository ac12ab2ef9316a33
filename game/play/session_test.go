package play_test

import (
	"fmt"
	"math"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

func desk(t testing.TB) *play.Desk {
	t.Helper()
	d, _ := playtest.Desk(t)
	return d
}

// see is an inspector's eye.
func see(t testing.TB) func(check, perception string) string {
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	return playtest.See(words)
}

// key is what a learner presses: no two things share one on any sheet. Checks at
// a part are opened by it, or numbered.
func TestKeysAreUnique(t *testing.T) {
	s, err := desk(t).Open("thirsty", 3)
	if err != nil {
		t.Fatal(err)
	}
	for _, place := range []string{"bonnet", "seat", "rear_right", "road", "ground"} {
		if err := s.Do(play.Act{Do: play.Go, What: place}); err != nil {
			t.Fatal(err)
		}
		seen := map[string]string{}
		for _, n := range s.View().Nodes {
			for _, a := range n.Actions {
				if old, twice := seen[a.Key]; twice && a.Key != "" {
					t.Errorf("%s: key %s is both %q and %q", place, a.Key, old, a.Label)
				}
				seen[a.Key] = a.Label
				if (a.Key == "") != (n.Part != "") {
					t.Errorf("%s: %q at part %q has the key %q", place, a.Label, n.Part, a.Key)
				}
			}
		}
	}
}

// TestRefusalChangesNothing: an act that cannot be done leaves the sheet as it
// was but for the notice; every act a view offers can be done.
func TestRefusalChangesNothing(t *testing.T) {
	d := desk(t)
	s, err := d.Open("thirsty", 3)
	if err != nil {
		t.Fatal(err)
	}
	bad := []play.Act{{Do: "dance"}, {Do: play.Go, What: "roof"}, {Do: play.Check, What: "lining_inner_upper@rear_right"},
		{Do: play.Check, What: "nonsense"}, {Do: play.Prepare, What: "wheel_off@rear_right"}, {Do: play.Write, Text: "8"},
		{Do: play.Strike, N: 1}, {Do: play.Seal}, {Do: play.Remedy, What: "leave@car"}, {Do: play.HandOver},
		{Do: play.Counter, What: "honestly_worn@car", N: math.NaN()}, {Do: play.Foot, N: math.Inf(1)}}
	for _, a := range bad {
		before := s.View()
		err := s.Do(a)
		after := s.View()
		if err == nil || after.Notice != err.Error() || strings.Contains(err.Error(), "‹") {
			t.Errorf("%+v: error %v, notice %q", a, err, after.Notice)
		}
		before.Notice, after.Notice = "", ""
		if !reflect.DeepEqual(before, after) {
			t.Errorf("%+v changed the sheet", a)
		}
	}
	for _, n := range s.View().Nodes {
		for _, a := range n.Actions {
			if a.Enabled == (s.Refuses(a.Act) != nil) {
				t.Errorf("%s offered %v but Refuses says %v", a.Label, a.Enabled, s.Refuses(a.Act))
			}
		}
	}
}

// figures are the ways in which a number could give itself away.
func figures(x float64) []string {
	return []string{strconv.FormatFloat(x, 'f', 1, 64), strconv.FormatFloat(x, 'f', 2, 64), strconv.FormatFloat(x, 'f', 3, 64), strconv.FormatFloat(x, 'g', -1, 64)}
}

// TestNothingIsGivenAway: no string of a view holds what the instrument shows
// before the learner has written it. Steps of a feeler are its marks, a digital
// display stands in Digits only.
func TestNothingIsGivenAway(t *testing.T) {
	d := desk(t)
	tried := 0
	for _, job := range []string{"warm_wheel", "like_a_sponge"} {
		s, err := d.Open(job, 11)
		if err != nil {
			t.Fatal(err)
		}
		var acts []play.Act
		probe := &prober{Session: s, t: t, tried: &tried}
		for _, p := range playtest.Plans {
			if p.Job == job {
				acts, err = playtest.Play(probe, p, see(t))
			}
		}
		if err != nil || len(acts) == 0 {
			t.Fatal(err)
		}
	}
	if tried < 30 {
		t.Fatalf("only %d figures looked for", tried)
	}
}

// A prober looks for the figure about to be written in the view before it is.
type prober struct {
	*play.Session
	t     *testing.T
	tried *int
}

func (p *prober) Do(a play.Act) error {
	v := p.View()
	if a.Do == play.Write && v.Instrument != nil && len(v.Instrument.Words) == 0 {
		x, err := strconv.ParseFloat(a.Text, 64)
		if err != nil {
			p.t.Fatal(err)
		}
		kind := v.Instrument.Kind
		v.Instrument.Digits = ""
		for _, n := range v.Nodes {
			if n.ID == "digits" || kind == "stepped_feeler" && n.ID == "instrument" {
				continue
			}
			for _, f := range figures(x) {
				// A count of marks may be the same small whole number; a figure with its unit may not.
				if !strings.ContainsAny(f, ".e") {
					f += " " + v.Instrument.Unit
				}
				said, _, _ := strings.Cut(n.Name+" "+n.Value, "Long marks") // the scale says its own divisions
				said = strings.Replace(said, "(100 %)", "", 1)              // and MAX its own figure
				if regexp.MustCompile(`(^|[^0-9.])`+regexp.QuoteMeta(f)+`($|[^0-9])`).MatchString(said) && x != 0 {
					p.t.Errorf("%s: %q is given away in %q", v.Instrument.Check, f, n.Name+" "+n.Value)
				}
				*p.tried++
			}
		}
	}
	return p.Session.Do(a)
}

// TestReplay: the same job, seed and acts give the same session.
func TestReplay(t *testing.T) {
	d := desk(t)
	s, err := d.Open("warm_wheel", 21)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range playtest.Plans {
		if p.Job == "warm_wheel" {
			if _, err := playtest.Play(s, p, see(t)); err != nil {
				t.Fatal(err)
			}
		}
	}
	again, err := d.Replay("warm_wheel", 21, s.Acts())
	if err != nil {
		t.Fatal(err)
	}
	if a, b := fmt.Sprintf("%+v", s.View().Notebook), fmt.Sprintf("%+v", again.View().Notebook); a != b {
		t.Errorf("notebooks differ:\n%s\n%s", a, b)
	}
	other, err := d.Open("warm_wheel", 22)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range playtest.Plans {
		if p.Job == "warm_wheel" {
			if _, err := playtest.Play(other, p, see(t)); err != nil {
				t.Fatal(err)
			}
		}
	}
	if reflect.DeepEqual(other.Acts(), s.Acts()) {
		t.Error("another seed gave the same readings: luck is not used")
	}
}

// TestRoadTooSoon: asking for the road before the car was looked at is counted.
func TestRoadTooSoon(t *testing.T) {
	s, err := desk(t).Open("warm_wheel", 2)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range []play.Act{{Do: play.Go, What: "road"}, {Do: play.Prepare, What: "clear_road"}, {Do: play.Prepare, What: "stop_50"}} {
		if err := s.Do(a); err != nil {
			t.Fatal(err)
		}
	}
	v := s.View()
	if !strings.Contains(v.Notice, "harmful") || v.Title.Minutes != 1 {
		t.Errorf("notice %q, %g minutes spent; want a warning and the one minute of clearing the road", v.Notice, v.Title.Minutes)
	}
	if err := s.Do(play.Act{Do: play.Check, What: "pull"}); err == nil {
		t.Error("the pull was measured in a stop that was not made")
	}
}

// TestUnfitStays: whatever was written down that says that a car should not move
// keeps it where it is, wherever it was read; the first sign of the same does not.
func TestUnfitStays(t *testing.T) {
	for _, tc := range []struct {
		check, word string
		stays       bool
	}{
		{"wet_screw", "damp", true}, {"wet_piston", "wet", true}, {"disc_crack", "crack", true}, {"bond_inner", "parted", true},
		{"wet_screw", "dry", false}, {"disc_crack", "hairline", false}, {"bond_outer", "cracked", false}, {"groove_inner", "scored", false},
	} {
		s, err := desk(t).Open("warm_wheel", 2)
		if err != nil {
			t.Fatal(err)
		}
		at := "@front_left"
		for _, a := range []play.Act{
			{Do: play.Go, What: "seat"}, {Do: play.Check, What: "pedal_travel"}, {Do: play.Write, Text: "50"}, {Do: play.Check, What: "hold_sink"}, {Do: play.Write, Text: "0"},
			{Do: play.Go, What: "front_left"}, {Do: play.Check, What: "wetness" + at}, {Do: play.Write, Text: "dry"}, {Do: play.Check, What: "opening_outer" + at}, {Do: play.Write, Text: "plenty"},
			{Do: play.Go, What: "ground"}, {Do: play.Prepare, What: "chock_rear"}, {Do: play.Prepare, What: "lift_front"},
			{Do: play.Go, What: "front_left"}, {Do: play.Prepare, What: "stand" + at}, {Do: play.Prepare, What: "wheel_off" + at},
			{Do: play.Check, What: tc.check + at}, {Do: play.Write, Text: tc.word}, {Do: play.Prepare, What: "wheel_on" + at},
			{Do: play.Go, What: "ground"}, {Do: play.Prepare, What: "lower_front"}, {Do: play.Go, What: "road"}, {Do: play.Prepare, What: "clear_road"},
			{Do: play.Prepare, What: "stop_50"},
		} {
			if err := s.Do(a); err != nil {
				t.Fatal(tc.check, a, err)
			}
		}
		if stays := strings.Contains(s.View().Notice, "should not move"); stays != tc.stays {
			t.Errorf("%s %s: the car stays %t, want %t; the sheet says %q", tc.check, tc.word, stays, tc.stays, s.View().Notice)
		}
	}
}

// TestResume: a kept session goes on where it was cut off.
func TestResume(t *testing.T) {
	d, dir := desk(t), t.TempDir()
	s, err := d.Open("warm_wheel", 5)
	if err != nil {
		t.Fatal(err)
	}
	k, err := s.Keep(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range []play.Act{{Do: play.Go, What: "bonnet"}, {Do: play.Check, What: "reservoir_level"}} {
		if err := k.Do(a); err != nil {
			t.Fatal(err)
		}
	}
	if err := k.Close(); err != nil { // as a kill does
		t.Fatal(err)
	}
	r, err := d.Resume(dir, k.Name)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	if a, b := k.View(), r.View(); a.Instrument == nil || !reflect.DeepEqual(a.Instrument, b.Instrument) {
		t.Errorf("resumed before another instrument: %+v, %+v", a.Instrument, b.Instrument)
	}
}

// TestTruthDoesNotShow: two cars whose readings come out alike give the same
// view, catalogue, places, remedies and looks included.
func TestTruthDoesNotShow(t *testing.T) {
	d := desk(t)
	a, err := d.Open("just_bought", 4)
	if err != nil {
		t.Fatal(err)
	}
	b, err := d.Open("warm_wheel", 4)
	if err != nil {
		t.Fatal(err)
	}
	play.Disguise(b, a) // the job's own words and clock; the car under them stays faulty
	for _, act := range []play.Act{
		{Do: play.Go, What: "seat"}, {Do: play.Check, What: "hold_sink"}, {Do: play.Write, Text: "0"},
		{Do: play.Check, What: "warning_lamp"}, {Do: play.Skip}, {Do: play.Go, What: "front_right"}, {Do: play.Check, What: "wetness@front_right"},
		{Do: play.Write, Text: "dry"}, {Do: play.OpenCall}, {Do: play.Row, What: "honestly_worn@car"}, {Do: play.Counter, What: "honestly_worn@car", N: 9},
		{Do: play.Seal}, {Do: play.Remedy, What: "leave@car"}, {Do: play.Work}, {Do: play.Release, What: "release.use"},
	} {
		for _, s := range []*play.Session{a, b} {
			if err := s.Do(act); err != nil {
				t.Fatal(err)
			}
		}
		if !reflect.DeepEqual(a.View(), b.View()) {
			t.Fatalf("after %+v the views differ:\n%+v\n%+v", act, a.View(), b.View())
		}
	}
}
