package play

import (
	"cmp"
	"context"
	"fmt"
	"runtime"
	"slices"
	"strings"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring/evidence"
)

// An Own is somebody's own car, measured with the printed sheet or without: what
// is known of it, and what was read. The nearest of the library's cars stands in
// for it, so an answer is about a car like it, never about the car itself.
type Own struct {
	Car      string   // id of the library's car that is nearest
	ClockKm  float64  // [km] on the clock
	PadsKm   float64  // [km] since the pads were fitted; 0: not known
	RoomC    float64  // [°C] of the air; used when it is known
	RoomTold bool     //
	Readings []string // "lining_outer_upper@front_left=4", "pedal_feel=soft"
}

// An OwnAnswer says which causes would give such readings.
type OwnAnswer struct {
	Lines []OwnLine
	Fits  bool     // some cause of the catalogue gives such readings
	Next  []string // what would tell most, in words
}

// An OwnLine is one cause at one place, or two at once.
type OwnLine struct {
	Cause, Place, Explain string
	Percent               float64
}

const (
	ownLines  = 6    // shown
	ownLeast  = 1.0  // [%] below which a line is not shown
	ownNext   = 3    // checks named
	ownSettle = 0.95 // belief above which nothing more is advised
)

// OwnChecks lists what can be read on a car, in the order of the catalogue: id,
// name, what is written down, which is a figure with its ends and steps or a word.
func (d *Desk) OwnChecks() [][3]string {
	s := Session{words: d.words, desk: d}
	var out [][3]string
	for _, c := range inspect.All() {
		id := string(c.ID)
		if c.PerWheel {
			id += "@front_left"
		}
		m := &c.Meter
		unit := strings.Join(m.Words, ", ")
		if len(m.Words) == 0 {
			unit = d.words.Say("own.figure", "lo", plain(m.Lo), "hi", plain(m.Hi), "step", plain(m.Resolution), "unit", s.sayUnit(m.Unit))
		}
		out = append(out, [3]string{id, d.words.Say("check." + string(c.ID)), unit})
	}
	return out
}

// Own says which causes of the catalogue would give somebody's readings. The
// error is a sentence about the first reading that cannot be one.
func (d *Desk) Own(ctx context.Context, own Own, progress func(share float64)) (*OwnAnswer, error) {
	car := d.lib.Car(own.Car)
	if car == nil {
		return nil, fmt.Errorf("unknown car %q", short(own.Car))
	}
	driven := scenarios.Driven{Km: own.ClockKm, PadsKm: own.PadsKm, RoomC: own.RoomC}
	driven.Known[0], driven.Known[3] = own.PadsKm > 0, own.RoomTold
	readings, err := d.ownReadings(own.Readings)
	if err != nil {
		return nil, err
	}
	t, err := d.table(&scenarios.Job{Car: car, Driven: driven})
	if err != nil {
		return nil, err
	}
	if err := t.await(ctx, runtime.GOMAXPROCS(0), func(p evidence.Progress) { progress(float64(p.Done+p.Failed) / float64(p.Total)) }); err != nil {
		return nil, err
	}
	post, err := t.Posterior(readings)
	if err != nil {
		return nil, err
	}
	s := Session{words: d.words, desk: d}
	a := &OwnAnswer{Fits: post.Surprise() > 0}
	classes := post.Classes()
	slices.SortStableFunc(classes, func(a, b evidence.Belief) int { return cmp.Compare(b.P, a.P) })
	for _, b := range classes {
		if 100*b.P < ownLeast || len(a.Lines) == ownLines {
			break
		}
		l := OwnLine{Percent: 100 * b.P}
		l.Cause, l.Place = s.sayRow(b.ID)
		if id, _, _ := strings.Cut(b.ID, "@"); !strings.Contains(b.ID, evidence.And) {
			l.Explain = explain(d.lib, d.words, d.lib.Cause(id))
		}
		a.Lines = append(a.Lines, l)
	}
	if classes[0].P > ownSettle {
		return a, nil
	}
	worth := post.All()
	slices.SortStableFunc(worth, func(a, b evidence.Worth) int { return cmp.Compare(b.Bits, a.Bits) })
	named := map[inspect.ID]bool{} // one wheel of each: the others are much the same
	for _, w := range worth {
		if len(a.Next) == ownNext || w.Bits < 0.05 {
			break
		}
		if w.Check.Proper() == w.Check && !named[w.Check.Check] && !slices.ContainsFunc(readings, func(r evidence.Reading) bool { return r.Check == w.Check }) {
			named[w.Check.Check] = true
			a.Next = append(a.Next, s.sayCheck(w.Check))
		}
	}
	return a, nil
}

// ownReadings parses "check@wheel=figure or word".
func (d *Desk) ownReadings(texts []string) ([]evidence.Reading, error) {
	var out []evidence.Reading
	for _, text := range texts {
		name, value, ok := strings.Cut(text, "=")
		if !ok {
			return nil, fmt.Errorf("%q: a reading is CHECK=FIGURE or CHECK=WORD, such as reservoir_level=40", short(text))
		}
		inst, err := inspect.ParseInstance(strings.TrimSpace(name))
		if err != nil {
			var known []string
			for _, c := range inspect.All() {
				known = append(known, string(c.ID))
			}
			id, _, _ := strings.Cut(strings.TrimSpace(name), "@")
			if slices.Contains(known, id) {
				return nil, err // it tells the wheels
			}
			return nil, fmt.Errorf("%w; %s", err, scenarios.NearestWords(id, known))
		}
		c, _ := inspect.Find(inst.Check)
		if len(c.Meter.Words) > 0 { // "no crack" means no_crack
			value = strings.ReplaceAll(strings.TrimSpace(value), " ", "_")
		}
		display, err := c.Meter.Parse(value)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", strings.TrimSpace(name), err)
		}
		if slices.ContainsFunc(out, func(r evidence.Reading) bool { return r.Check == inst }) {
			return nil, fmt.Errorf("%s stands twice", inst)
		}
		out = append(out, evidence.Reading{Check: inst, Display: display})
	}
	return out, nil
}
