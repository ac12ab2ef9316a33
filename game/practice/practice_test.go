package practice

import (
	"reflect"
	"slices"
	"testing"
	"time"

	"evenwear/scenarios"
	"evenwear/scoring/record"
)

var monday = time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)

func library(t testing.TB) *scenarios.Library {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

// came is a made-up debrief: a cause was true, so much belief was put on others.
func came(when time.Time, truth string, mark float64, said ...record.Figure) record.Result {
	return record.Result{When: when, Job: "job_" + truth + when.Format("150405.000"), Session: "s", Truth: []string{truth}, Said: said, Marks: []record.Figure{{ID: diagnosis, N: mark}}}
}

// mixed is somebody who says a seized pin when the piston is corroded.
func mixed() []record.Result {
	return []record.Result{
		came(monday, "piston_corroded", 10, record.Figure{ID: "pin_seized", N: 0.7}, record.Figure{ID: "piston_corroded", N: 0.3}),
		came(monday.Add(time.Hour), "honestly_worn", 95, record.Figure{ID: "honestly_worn", N: 0.9}, record.Figure{ID: "pins_dry", N: 0.1}),
		came(monday.Add(2*time.Hour), "piston_corroded", 20, record.Figure{ID: "pin_seized", N: 0.5}, record.Figure{ID: "pins_dry", N: 0.2}),
	}
}

// TestConfused: the table holds means of the last three cars of each cause,
// whatever order the history is in; belief on a second fault is not confusion.
func TestConfused(t *testing.T) {
	h := mixed()
	slices.Reverse(h)
	c := Confused(h)
	p, ok := c.Worst(func(string) bool { return true })
	if !ok || p.True != "piston_corroded" || p.Said != "pin_seized" || p.Belief < 0.5999 || p.Belief > 0.6001 {
		t.Fatalf("the worst pair is %+v", p)
	}
	if p, ok = c.Worst(func(id string) bool { return id != "pin_seized" }); ok {
		t.Errorf("without seized pins %+v is mixed up; 0.1 is too little", p)
	}
	for i := range 3 { // learnt since
		h = append(h, came(monday.AddDate(0, 0, 1+i), "piston_corroded", 95, record.Figure{ID: "piston_corroded", N: 1}))
	}
	c = Confused(h)
	if p, ok := c.Worst(func(string) bool { return true }); ok {
		t.Errorf("three right cars later %+v is still mixed up", p)
	}
	two := came(monday, "pins_dry", 90, record.Figure{ID: "pins_dry", N: 0.5}, record.Figure{ID: "boots_torn", N: 0.5})
	two.Truth = append(two.Truth, "boots_torn")
	c = Confused([]record.Result{two})
	if p, ok := c.Worst(func(string) bool { return true }); ok {
		t.Errorf("of a car with both, %+v counts as mixed up", p)
	}
	if c = Confused(nil); len(c.Causes) != 0 {
		t.Errorf("no history gives %v", c.Causes)
	}
}

// TestCards: what was known comes back later than what was not, and the later the
// oftener it was known; a clock that was put back is no error.
func TestCards(t *testing.T) {
	days := func(h ...record.Result) float64 {
		list := Cards(h)
		if len(list) != 1 {
			t.Fatalf("cards %v", list)
		}
		return list[0].Due.Sub(list[0].Met).Hours() / 24
	}
	bad, good := days(came(monday, "pins_dry", 0)), days(came(monday, "pins_dry", 95))
	again := days(came(monday, "pins_dry", 95), came(monday.AddDate(0, 0, int(good)), "pins_dry", 95))
	if bad > 1 || good < 4 || again < 2*good {
		t.Errorf("due after %g days when missed, %g when known, %g when known twice", bad, good, again)
	}
	if back := days(came(monday, "pins_dry", 95), came(monday.AddDate(-1, 0, 0), "pins_dry", 95)); back < 1 {
		t.Errorf("with a clock put back due after %g days", back)
	}
}

// truth is what is in a drawn car.
func truth(t *testing.T, lib *scenarios.Library, id string) []string {
	t.Helper()
	seed, ease, ok := scenarios.ParseDrawn(id)
	if !ok {
		t.Fatalf("%q is no drawn car", id)
	}
	j, err := lib.Draw(seed, scenarios.Wish{Ease: ease})
	if err != nil {
		t.Fatal(err)
	}
	return lib.Truth(j)
}

// TestFirstCarsAreGentle: nobody begins with a hard car, and luck decides which.
func TestFirstCarsAreGentle(t *testing.T) {
	lib := library(t)
	seen := map[string]bool{}
	for luck := range uint64(3) {
		c, err := Next(lib, nil, nil, monday, luck)
		if err != nil {
			t.Fatal(err)
		}
		if _, ease, _ := scenarios.ParseDrawn(c.Job); ease != scenarios.Gentle || c.For.Why != Gentle {
			t.Errorf("the first car is %+v", c)
		}
		seen[c.Job] = true
		if again, _ := Next(lib, nil, nil, monday, luck); !reflect.DeepEqual(again, c) {
			t.Errorf("chosen again: %+v, was %+v", again, c)
		}
	}
	if len(seen) != 3 {
		t.Errorf("three lucks give %d cars", len(seen))
	}
}

// read is a debrief of a car of which only notes were there.
func read(when time.Time) record.Result {
	r := came(when, "pads_soaked", 95, record.Figure{ID: "pads_soaked", N: 1})
	r.Job = scenarios.DrawnID(SeedLeast, scenarios.Noted)
	return r
}

// TestWorstPairComesUp: who mixes two causes up gets a car of one of them.
func TestWorstPairComesUp(t *testing.T) {
	lib := library(t)
	both := map[string]bool{}
	for luck := range uint64(6) {
		c, err := Next(lib, append(mixed(), read(monday.Add(150*time.Minute))), nil, monday.Add(3*time.Hour), luck)
		if err != nil || c.For.Why != Paired || c.For.N != 60 {
			t.Fatalf("%+v, %v", c, err)
		}
		got := truth(t, lib, c.Job)
		if !slices.Contains(got, "piston_corroded") && !slices.Contains(got, "pin_seized") {
			t.Errorf("luck %d: drawn for %v, it is %v", luck, c.For.Causes, got)
		}
		both[got[0]] = true
	}
	t.Logf("truths: %v", both)
}

// TestMasteredComesBack: what was known is left alone until it is due, and then
// comes; what the library does not have any more is passed over.
func TestMasteredComesBack(t *testing.T) {
	lib := library(t)
	var h []record.Result
	for i, cause := range []string{"honestly_worn", "no_such_cause", "pads_worn_front", "air_in_circuit"} { // the second turn of three
		h = append(h, came(monday.Add(time.Duration(i)*time.Minute), cause, 95, record.Figure{ID: cause, N: 1}))
	}
	h = append(h, read(monday.Add(time.Hour)))
	soon, err := Next(lib, h, nil, monday.AddDate(0, 0, 2), 1)
	if err != nil || soon.For.Why != New {
		t.Fatalf("two days on: %+v, %v", soon, err)
	}
	if got := truth(t, lib, soon.Job); len(soon.For.Causes) == 0 || !slices.Contains(got, soon.For.Causes[0]) || slices.Contains(soon.For.Causes, "honestly_worn") {
		t.Errorf("drawn as new: %+v, it is %v", soon.For, got)
	}
	c, err := Next(lib, h, nil, monday.AddDate(0, 0, 30), 1)
	if err != nil || c.For.Why != Due || c.For.N != 30 || !slices.Contains(truth(t, lib, c.Job), "honestly_worn") {
		t.Fatalf("a month on: %+v, %v", c, err)
	}
}

// TestNoCarTwice: in an hour of play, right and wrong, no car comes twice.
func TestNoCarTwice(t *testing.T) {
	lib := library(t)
	played := map[string]bool{}
	var h []record.Result
	why := map[string]int{}
	for n := range 12 {
		now := monday.Add(time.Duration(n) * 5 * time.Minute)
		c, err := Next(lib, h, played, now, 7) // the same luck, as a bad clock would give
		if err != nil {
			t.Fatal(err)
		}
		if played[c.Job] {
			t.Fatalf("%s comes twice", c.Job)
		}
		played[c.Job] = true
		why[c.For.Why]++
		got := truth(t, lib, c.Job)
		r := came(now, got[0], []float64{20, 95}[n%2], record.Figure{ID: got[0], N: 0.4}, record.Figure{ID: lib.Causes[n].ID, N: 0.6})
		if n%3 > 0 {
			r.Job = c.Job // the others were left before their debrief
			h = append(h, r)
		}
	}
	t.Log(why)
	if why[Paired] == 0 || why[New] == 0 || why[OnPaper] == 0 {
		t.Errorf("drawn for %v", why)
	}
}

// TestNoCarLeft: when all were played that can be, it is said.
func TestNoCarLeft(t *testing.T) {
	played := map[string]bool{}
	for seed := range Seeds {
		played[scenarios.DrawnID(SeedLeast+uint64(seed), scenarios.Gentle)] = true
	}
	if c, err := Next(library(t), nil, played, monday, 1); err != ErrNoCar {
		t.Errorf("%+v, %v", c, err)
	}
}

func BenchmarkNext(b *testing.B) {
	lib := library(b)
	h := mixed()
	for i := range b.N {
		if _, err := Next(lib, h, nil, monday.Add(3*time.Hour), uint64(i)); err != nil {
			b.Fatal(err)
		}
	}
}

// TestConfronting: the notes on cars of ten causes, each once, put every misconception
// to the test; a library without such causes has none, and practice draws them in turn.
func TestConfronting(t *testing.T) {
	lib := library(t)
	causes := Confronting(lib, 10)
	if len(causes) != 10 {
		t.Fatalf("%d causes: %v", len(causes), causes)
	}
	for i, c := range confrontations {
		if !slices.ContainsFunc(causes, func(id string) bool { return slices.Contains(confronted(lib.Cause(id)), c.idea) }) {
			t.Errorf("nothing puts %s to the test in %v", c.idea, causes)
		}
		if slices.Contains(causes[i%10+1:], causes[i%10]) {
			t.Errorf("%s stands twice in %v", causes[i%10], causes)
		}
	}
	none := *lib
	none.Causes = []*scenarios.Cause{lib.Worn()}
	if got := Confronting(&none, 10); len(got) != 0 {
		t.Errorf("a library of sound cars confronts by %v", got)
	}
	var h []record.Result
	for n := range 2*len(causes) + 2 { // every other car, until all have been read
		now := monday.Add(time.Duration(n) * time.Hour)
		c, err := Next(lib, append(mixed(), h...), nil, now, 7)
		if err != nil {
			t.Fatal(err)
		}
		if want := n%2 == 0 && n < 2*len(causes); (c.For.Why == OnPaper) != want {
			t.Fatalf("car %d is for %+v", n+1, c.For)
		}
		got := truth(t, lib, c.Job)
		if c.For.Why == OnPaper && !slices.Equal(got, causes[n/2:n/2+1]) {
			t.Errorf("car %d of which only notes are there has %v, want %s", n+1, got, causes[n/2])
		}
		r := came(now, got[0], 95, record.Figure{ID: got[0], N: 1})
		r.Job, r.Truth = c.Job, got
		h = append(h, r)
	}
}
