package scenarios

import (
	"fmt"
	"hash/fnv"
	"io"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"

	"evenwear/physics"
	"evenwear/physics/exact"
)

// An Ease is how hard a drawn car is made.
type Ease string

// The eases. Fair cars are drawn as the catalogue believes cars to be; the
// others have faults far gone and told of, or slight and hardly told of.
const (
	Gentle Ease = "gentle"
	Fair   Ease = "fair"
	Hard   Ease = "hard"
)

// Eases lists them, the easiest first.
var Eases = []Ease{Gentle, Fair, Hard}

// A Wish is what kind of car is to be drawn. The zero Wish is a fair car of any
// cause.
type Wish struct {
	Ease   Ease
	Car    string   // id; empty: any
	Causes []string // ids that may be the truth; empty: all
}

// allows tells that a cause may be the truth.
func (w *Wish) allows(c *Cause) bool {
	return (len(w.Causes) == 0 || slices.Contains(w.Causes, c.ID)) && (w.Ease != Noted || len(c.Notes) > 0 && !c.Healthy)
}

// A DrawError says why no car could be drawn.
type DrawError struct {
	Seed    uint64
	Reasons []string // of each try
}

func (e *DrawError) Error() string {
	return fmt.Sprintf("no car can be drawn from number %d: %s", e.Seed, e.Reasons[len(e.Reasons)-1])
}

// DrawnMinutes is what is allowed for every drawn car [min], whatever its owner
// tells: to be sure of a sound one takes that, and allowed minutes must tell nothing.
const DrawnMinutes = 150

const (
	drawTries  = 12        // cars that are thrown away before a seed is given up
	drawnName  = "unseen_" // how the ids of drawn jobs begin
	soundLeast = 3.0       // [mm] of lining below which a car is not called sound; common practice, no source
	mostTold   = 3         // things an owner tells at most
	clockLeast = 18000.0   // [km] assumed, as is the greatest
	clockMost  = 140000.0  // [km]
	roundKm    = 100.0     // [km] to which ways are rounded
)

// Draw makes up a car that nobody wrote down: its use, its truth by the
// catalogue's own weights, and its owner's story, which holds only what the
// physics let that owner notice. The same library, seed and wish give the same
// job on every machine. A car that cannot stand is thrown away and the next one
// of the same seed tried; the error is a *[DrawError].
func (l *Library) Draw(seed uint64, w Wish) (*Job, error) {
	j, thrown := l.DrawTelling(seed, w)
	if j == nil {
		return nil, &DrawError{seed, thrown}
	}
	return j, nil
}

// DrawTelling is [Library.Draw] that tells why cars were thrown away; there is no
// job when all were.
func (l *Library) DrawTelling(seed uint64, w Wish) (j *Job, thrown []string) {
	if w.Ease == "" {
		w.Ease = Fair
	}
	if why := l.cannot(w); why != "" {
		return nil, []string{why}
	}
	for try := range uint64(drawTries) {
		rng := rand.New(rand.NewPCG(seed, w.number()+try))
		j, why := l.one(w, rng)
		if why == "" {
			j.ID = DrawnID(seed, w.Ease)
			return j, thrown
		}
		thrown = append(thrown, why)
	}
	return nil, thrown
}

// number tells wishes apart.
func (w *Wish) number() uint64 {
	h := fnv.New64a()
	fmt.Fprintf(h, "%s %s %s", w.Ease, w.Car, strings.Join(w.Causes, " "))
	return h.Sum64()
}

// cannot says what is wrong with a wish.
func (l *Library) cannot(w Wish) string {
	carIDs, causeIDs := ids(l.Cars, func(c *Car) string { return c.ID }), ids(l.Causes, func(c *Cause) string { return c.ID })
	switch {
	case l.owners == nil:
		return "the library has no owners.yaml, in which owners speak"
	case len(l.Cars) == 0 || len(l.Causes) == 0:
		return "the library has no car or no cause"
	case w.Ease == Noted && !slices.ContainsFunc(l.Causes, func(c *Cause) bool { return w.allows(c) }):
		return "no cause that is allowed has notes"
	case w.Ease != Noted && !slices.Contains(Eases, w.Ease):
		return fmt.Sprintf("unknown ease %q; known are gentle, fair, hard", clip(string(w.Ease)))
	case w.Car != "" && l.Car(w.Car) == nil:
		return fmt.Sprintf("unknown car %q; %s", clip(w.Car), nearestWords(w.Car, carIDs))
	}
	for _, id := range w.Causes {
		if l.Cause(id) == nil {
			return fmt.Sprintf("unknown cause %q; %s", clip(id), nearestWords(id, causeIDs))
		}
	}
	return ""
}

// Sketch is the first car that Draw tries, without building it: its use, its
// faults and its minutes, without a story. Draw throws a car away that cannot stand
// and tries the next: hold what it gives against this. A wish that cannot be has none.
func (l *Library) Sketch(seed uint64, w Wish) *Job {
	if w.Ease == "" {
		w.Ease = Fair
	}
	if l.cannot(w) != "" {
		return nil
	}
	j, _ := l.sketch(w, rand.New(rand.NewPCG(seed, w.number())))
	return j
}

// sketch draws a car's use and its truth; sound tells that nothing is wrong.
func (l *Library) sketch(w Wish, rng *rand.Rand) (j *Job, sound bool) {
	j = &Job{Car: l.Cars[rng.IntN(len(l.Cars))]}
	if w.Car != "" {
		j.Car = l.Car(w.Car)
	}
	j.Driven = l.drawDriven(w.Ease, rng, j)
	if len(w.Causes) == 0 && w.Ease != Noted && rng.Float64() < l.PairShare {
		j.Faults = l.drawCouple(j.Driven.PadsKm, rng)
	} else {
		cause := l.drawCause(&w, rng)
		if f := drawFault(cause, w.Ease, j.Driven.PadsKm, rng); !cause.Healthy || cause.Changes() {
			j.Faults = []Fault{f}
		}
		sound = cause.Healthy
	}
	return j, sound
}

// one draws a car; why says in a few words what is wrong with it.
func (l *Library) one(w Wish, rng *rand.Rand) (j *Job, why string) {
	j, sound := l.sketch(w, rng)
	spec := &j.Car.Spec
	cond, err := Build(spec, j.Driven, j.Faults)
	if err != nil {
		return nil, "the car cannot be built: " + err.Error()
	}
	if sound && leastLining(spec, &cond) < soundLeast*physics.Millimetre {
		return nil, "a sound car is worn too far"
	}
	im, err := look(spec, cond, j.Driven.Duty())
	if err != nil {
		return nil, "the car cannot be driven: " + err.Error()
	}
	if w.Ease == Noted {
		if why := l.note(j, rng); why != "" {
			return nil, why
		}
		return j, ""
	}
	j.Claims = told(&im, w.Ease, rng)
	j.Minutes = DrawnMinutes
	j.Driven.Stood = j.Claims[0].ID == "none" // who noticed nothing leaves the car overnight
	j.Complaint = l.owners.complain(j.Claims, rng)
	j.Title = pick(l.owners.titles[j.Claims[0].ID], rng)
	j.verified = func() error { return nil } // its claims were computed
	return j, ""
}

// drawDriven draws how the car has been used, and what of it is told.
func (l *Library) drawDriven(ease Ease, rng *rand.Rand, j *Job) Driven {
	clock := clockLeast + float64((clockMost-clockLeast)*rng.Float64())
	d := Driven{Km: nearest(clock, roundKm)}
	b := make([]float64, NumBackgrounds)
	for i := range b {
		b[i] = min(max(exact.NormalQuantile(rng.Float64()), -2), 2)
	}
	d = Vary(d, b)
	d.PadsKm = nearest(d.PadsKm, roundKm)
	d.PadsThinnerMm = nearest(d.PadsThinnerMm*20, 1) / 20
	d.Harshness = nearest(d.Harshness*20, 1) / 20
	d.RoomC = nearest(d.RoomC, 1)
	j.Facts = []Fact{l.owners.tell(&d, "clock_km", rng)}
	chance := map[Ease]float64{Gentle: 0.9, Fair: 0.5, Hard: 0.2}[ease]
	for i, id := range Backgrounds() {
		d.Known[i] = rng.Float64() < chance && !(id == "pads_thinner_mm" && d.PadsThinnerMm == 0)
		if d.Known[i] {
			j.Facts = append(j.Facts, l.owners.tell(&d, id, rng))
		}
	}
	return d
}

// drawCause picks a cause by its weight, those with notes each as often.
func (l *Library) drawCause(w *Wish, rng *rand.Rand) *Cause {
	weight := func(c *Cause) float64 {
		switch {
		case !w.allows(c):
			return 0
		case w.Ease == Noted:
			return 1
		}
		return c.Prior
	}
	return byWeight(l.Causes, weight, rng)
}

// drawFault picks place, severity and age of a cause.
func drawFault(c *Cause, ease Ease, padsKm float64, rng *rand.Rand) Fault {
	f := Fault{Cause: c, Place: c.Places[rng.IntN(len(c.Places))]}
	weight := func(s Severity) float64 { return s.Weight }
	f.Severity = byWeight(c.Severities, weight, rng)
	switch ease { // severities stand from slight to far gone
	case Gentle:
		f.Severity = c.Severities[len(c.Severities)-1]
	case Hard:
		f.Severity = c.Severities[0]
	}
	f.age(padsKm, rng)
	return f
}

// age draws for how long a fault has been there.
func (f *Fault) age(padsKm float64, rng *rand.Rand) {
	lo, hi := min(f.Cause.SinceKm[0], padsKm), min(f.Cause.SinceKm[1], padsKm)
	f.SinceKm = min(max(nearest(lo+float64((hi-lo)*rng.Float64()), roundKm), lo), hi)
}

// drawCouple picks two faults that may be in a car at once.
func (l *Library) drawCouple(padsKm float64, rng *rand.Rand) []Fault {
	c := byWeight(l.Couples(), func(c Couple) float64 { return c.Share }, rng)
	for i := range c.Faults {
		c.Faults[i].age(padsKm, rng)
	}
	return c.Faults[:]
}

// byWeight picks one of a list by weights that are not all 0.
func byWeight[T any](list []T, weight func(T) float64, rng *rand.Rand) T {
	total := 0.0
	for _, x := range list {
		total += weight(x)
	}
	left := float64(total * rng.Float64())
	last := 0
	for i, x := range list {
		w := weight(x)
		if w <= 0 {
			continue
		}
		last = i
		if left < w {
			break
		}
		left -= w
	}
	return list[last]
}

// told is what the owner tells of what they notice: of an easy car nearly all,
// of a hard one a single thing.
func told(im *impression, ease Ease, rng *rand.Rand) []Claim {
	all := im.noticed()
	rng.Shuffle(len(all), func(a, b int) { all[a], all[b] = all[b], all[a] })
	most := map[Ease]int{Gentle: mostTold, Fair: 2, Hard: 1}[ease]
	all = all[:min(len(all), most)]
	if len(all) == 0 {
		none := claimKinds[len(claimKinds)-1]
		all = []Claim{{ID: none.id, Value: pick(none.values, rng)}}
	}
	return all
}

// leastLining is the thinnest half pad's lining [m].
func leastLining(spec *physics.Spec, cond *physics.Condition) float64 {
	least := math.Inf(1)
	for w := range physics.Wheel(physics.NumWheels) {
		for pad := range 2 {
			for half := range 2 {
				least = min(least, spec.Corner(w).LiningNew-cond.Wheels[w].Wear[pad][half])
			}
		}
	}
	return least
}

// nearest is v rounded to a multiple of step.
func nearest(v, step float64) float64 { return float64(math.Floor(float64(v/step)+0.5) * step) }

// WriteDrawn writes what drawn cars hang on beside cars and causes: which faults
// come in pairs, and how owners speak, since each sentence that is picked moves the
// luck of what is drawn after it. Libraries that write the same draw the same cars.
func (l *Library) WriteDrawn(out io.Writer) {
	fmt.Fprintf(out, "%g\n", l.PairShare)
	for i := range l.Pairs {
		p := &l.Pairs[i]
		fmt.Fprintf(out, "%s %s %g %t\n", p.Causes[0].ID, p.Causes[1].ID, p.Weight, p.Across)
	}
	if l.owners != nil {
		fmt.Fprintf(out, "%+v\n", *l.owners) // maps are printed in the order of their keys
	}
}

// DrawnID is the id of a drawn job: "unseen_fair_48213". It is all that is
// needed to draw the job again.
func DrawnID(seed uint64, ease Ease) string {
	return drawnName + string(ease) + "_" + strconv.FormatUint(seed, 10)
}

// ParseDrawn is the inverse of [DrawnID]; ok tells that id is one.
func ParseDrawn(id string) (seed uint64, ease Ease, ok bool) {
	rest, ok := strings.CutPrefix(id, drawnName)
	if !ok {
		return 0, "", false
	}
	name, number, ok := strings.Cut(rest, "_")
	seed, err := strconv.ParseUint(number, 10, 64)
	ease = Ease(name)
	if !ok || err != nil || !slices.Contains(Eases, ease) && ease != Noted || DrawnID(seed, ease) != id {
		return 0, "", false
	}
	return seed, ease, true
}
