package practice

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"time"

	"evenwear/scenarios"
	"evenwear/scoring/learner"
	"evenwear/scoring/record"
)

// Why a car was drawn.
const (
	Gentle     = "gentle" // little is known of the learner: a car that is plain to find
	Confronted = "idea"   // of a cause that shows a misconception to be wrong
	Paired     = "pair"   // of the two causes mixed up most
	Due        = "due"    // of a cause that comes back by the schedule
	New        = "new"    // of a cause not met yet
	OnPaper    = "notes"  // of which only notes are there: what is said of them shows what readings are taken to prove
	Any        = "any"    // as cars come
)

const (
	gentleCars = 3     // a learner's first cars are gentle
	mostSeeds  = 20000 // tried for one wish; the rarest cause is met once in some 600
	mostBuilt  = 20    // cars built for one wish
)

// Seeds are five figures, to be read out loud: the least, and how many there are.
const (
	SeedLeast = 10000
	Seeds     = 90000
)

// A Choice is the car to be played next.
type Choice struct {
	Job string // id of a drawn car
	For record.Purpose
}

// a wish is causes one of which is to be the truth; none: any.
type wish struct {
	why    string
	ease   scenarios.Ease // empty: as it is the learner's turn
	causes []string
	n      float64 // the figure that told so
	idea   string  // misconception to be confronted
}

// ErrNoCar says that no car is left that was never played here.
var ErrNoCar = errors.New("no car is left to draw that was not played here; forget some sessions, as game list shows them")

// Next chooses the next car of a library from what a learner's debriefs came to:
// their first three are gentle; after that, while they show a misconception, a car
// that confronts it; else every other one is a car of which only notes are there,
// until ten of these have put every misconception to the test; of the others a third
// each begins with the pair mixed up most, with what is longest due, and with what was
// not met yet, and takes the next of these where one has nothing. Causes that the
// library does not have are passed over. played are ids of jobs that must not come again,
// beside those of the history. The same arguments give the same car.
func Next(lib *scenarios.Library, history []record.Result, played map[string]bool, now time.Time, luck uint64) (Choice, error) {
	rng := rand.New(rand.NewPCG(luck, uint64(len(history))))
	ease := scenarios.Fair
	var wishes []wish
	if len(history) < gentleCars {
		ease = scenarios.Gentle
		wishes = []wish{{why: Gentle}}
	} else {
		wishes = wanted(lib, history, now)
	}
	taken := func(id string) bool {
		return played[id] || slices.ContainsFunc(history, func(r record.Result) bool { return r.Job == id })
	}
	for _, w := range append(wishes, wish{why: Any}) {
		if c, ok := find(lib, w, ease, taken, rng); ok {
			return c, nil
		}
	}
	return Choice{}, ErrNoCar
}

// wanted is what a learner with a history should meet, the first first.
func wanted(lib *scenarios.Library, history []record.Result, now time.Time) []wish {
	known := func(cause string) bool { return lib.Cause(cause) != nil }
	var turns [3][]wish
	table := Confused(history)
	if p, ok := table.Worst(known); ok {
		turns[0] = []wish{{why: Paired, causes: []string{p.True, p.Said}, n: 100 * p.Belief}}
	}
	cards := soonest(lib, history)
	met := map[string]bool{}
	for _, c := range cards {
		met[c.Cause] = true
	}
	if len(cards) > 0 && !cards[0].Due.After(now) {
		days := now.Sub(cards[0].Met).Hours() / 24
		turns[1] = []wish{{why: Due, causes: []string{cards[0].Cause}, n: float64(int(days + 0.5))}}
	}
	var fresh []string
	for _, c := range lib.Causes {
		if !met[c.ID] {
			fresh = append(fresh, c.ID)
		}
	}
	if len(fresh) > 0 {
		turns[2] = []wish{{why: New, causes: fresh}}
	}
	whole := 0 // cars that were there
	for i := range history {
		if !noted(&history[i]) {
			whole++
		}
	}
	first := whole % len(turns)
	var idea []wish
	if n, ok := Named(history); ok {
		idea = confronting(lib, n)
	}
	return slices.Concat(idea, onPaper(lib, history), turns[first], turns[(first+1)%3], turns[(first+2)%3])
}

// onPaper is a wish for the next car of which only notes are there; none: the last one
// was such a car, or all have been read.
func onPaper(lib *scenarios.Library, history []record.Result) []wish {
	if n := len(history); n > 0 && noted(&history[n-1]) {
		return nil
	}
	cause := nextNotes(lib, history)
	if cause == "" {
		return nil
	}
	return []wish{{why: OnPaper, ease: scenarios.Noted, causes: []string{cause}}}
}

// nextNotes is the cause of the next car of which only notes are there: one that puts
// an idea to the test again that one car alone has shown, else the next that was not
// read; empty: all have been.
func nextNotes(lib *scenarios.Library, history []record.Result) string {
	if _, named := Named(history); !named {
		if ideas := Ideas(history); len(ideas) > 0 && ideas[0].N >= learner.NameAt {
			best, least := "", math.MaxInt
			for _, c := range lib.Causes { // the one that was read least
				if n := timesRead(history, c.ID); n < least && slices.Contains(confronted(c), ideas[0].ID) {
					best, least = c.ID, n
				}
			}
			return best
		}
	}
	for _, id := range Confronting(lib, Notes) {
		if timesRead(history, id) == 0 {
			return id
		}
	}
	return ""
}

// timesRead is of how many cars with a cause only notes were read.
func timesRead(history []record.Result, cause string) (n int) {
	for i := range history {
		if noted(&history[i]) && slices.Contains(history[i].Truth, cause) {
			n++
		}
	}
	return n
}

// noted tells that only notes of a car were there.
func noted(r *record.Result) bool {
	_, ease, ok := scenarios.ParseDrawn(r.Job)
	return ok && ease == scenarios.Noted
}

// confronting is a wish for a car that shows a misconception to be wrong; none: the
// library has no such cause.
func confronting(lib *scenarios.Library, n Naming) []wish {
	c, _ := confront(n.Idea)
	w := wish{why: Confronted, idea: n.Idea, n: math.Round(10*n.Better) / 10}
	for _, id := range c.causes {
		if lib.Cause(id) != nil {
			w.causes = append(w.causes, id)
		}
	}
	if len(w.causes) == 0 {
		return nil
	}
	return []wish{w}
}

// find tries seeds, without building their cars, until the truth is as wished.
func find(lib *scenarios.Library, w wish, ease scenarios.Ease, taken func(string) bool, rng *rand.Rand) (Choice, bool) {
	if w.ease != "" {
		ease = w.ease
	}
	fits := func(truth []string) bool {
		return len(w.causes) == 0 || slices.ContainsFunc(truth, func(c string) bool { return slices.Contains(w.causes, c) })
	}
	built := 0
	for range mostSeeds {
		seed := SeedLeast + rng.Uint64N(Seeds)
		id := scenarios.DrawnID(seed, ease)
		if taken(id) {
			continue
		}
		if j := lib.Sketch(seed, scenarios.Wish{Ease: ease}); j == nil || !fits(lib.Truth(j)) {
			continue
		}
		if built++; built > mostBuilt {
			break
		}
		job, err := lib.Draw(seed, scenarios.Wish{Ease: ease})
		if err != nil {
			continue
		}
		truth := lib.Truth(job) // another, when the first car was thrown away
		if !fits(truth) {
			continue
		}
		p := record.Purpose{Why: w.why, Causes: w.causes, N: w.n, Idea: w.idea}
		if w.why == New || w.why == Confronted {
			p.Causes = slices.DeleteFunc(truth, func(c string) bool { return !slices.Contains(w.causes, c) })
		}
		return Choice{Job: id, For: p}, true
	}
	return Choice{}, false
}
