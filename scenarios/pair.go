package scenarios

import (
	"fmt"
	"slices"
	"strings"
)

// A Pair is two causes that a car may have at once.
type Pair struct {
	Causes [2]*Cause
	Weight float64
	Across bool // the second sits at the other wheel of the axle; else at the same wheel, where both have one
}

// Twins are two causes that the checks of this program do not tell apart surely, and
// why, for a learner to read. The audit holds them to it.
type Twins struct {
	Causes [2]*Cause
	Why    string
}

// A Couple is a pair at its places.
type Couple struct {
	Faults [2]Fault // each at its likeliest severity; since when is open
	Share  float64  // [1] of all cars with two faults
}

// Couples are all pairs at all their places.
func (l *Library) Couples() []Couple {
	total := 0.0
	for i := range l.Pairs {
		total += l.Pairs[i].Weight
	}
	var out []Couple
	for i := range l.Pairs {
		p := &l.Pairs[i]
		at := p.places()
		for _, places := range at {
			c := Couple{Share: p.Weight / total / float64(len(at))}
			for k := range c.Faults {
				c.Faults[k] = Fault{Cause: p.Causes[k], Place: places[k], Severity: p.Causes[k].likeliest()}
			}
			out = append(out, c)
		}
	}
	return out
}

// places are where a pair can sit together.
func (p *Pair) places() (out [][2]Place) {
	for _, a := range p.Causes[0].Places {
		for _, b := range p.Causes[1].Places {
			wa, oneA := a.Wheel()
			wb, oneB := b.Wheel()
			switch {
			case oneA && oneB && p.Across && wb != wa.Mate():
			case oneA && oneB && !p.Across && wa != wb:
			default:
				out = append(out, [2]Place{a, b})
			}
		}
	}
	return out
}

// likeliest is the severity of the greatest weight, the first of equals.
func (c *Cause) likeliest() Severity {
	best := 0
	for i := range c.Severities {
		if c.Severities[i].Weight > c.Severities[best].Weight {
			best = i
		}
	}
	return c.Severities[best]
}

// pairs reads which causes may be in a car at once.
func (b *builder) pairs(src *source) {
	if src.node == nil {
		return
	}
	r := src.r
	o := r.object(src.node, "")
	b.lib.PairShare = o.number("cars_share", "of 1", 0, 0.5)
	names := ids(b.lib.Causes, func(c *Cause) string { return c.ID })
	for _, it := range o.list("pairs", true) {
		p := r.object(it.node, it.path)
		pair := Pair{Weight: p.numberOr("weight_ratio", "", 0.01, 1000, 1)}
		if n := p.get("across"); n != nil {
			pair.Across, _ = r.yes(n, p.at("across"))
		}
		list := p.list("causes", true)
		for i, c := range list {
			at, ok := r.name(c.node, c.path, "cause", names)
			if !ok || i > 1 {
				continue
			}
			if pair.Causes[i] = b.lib.Causes[at]; pair.Causes[i].Healthy {
				r.fail(c.node, c.path, names[at]+" is no fault", "two causes that are")
			}
		}
		p.close()
		switch {
		case r.noted != nil:
		case len(list) != 2:
			r.fail(it.node, it.path, fmt.Sprintf("%d causes stand in a pair", len(list)), "two")
		case pair.Causes[0] == nil || pair.Causes[1] == nil:
		case pair.Causes[0] == pair.Causes[1]:
			r.fail(it.node, it.path, "a cause is paired with itself", "two that differ")
		case slices.ContainsFunc(b.lib.Pairs, func(q Pair) bool { return q.Causes == pair.Causes && q.Across == pair.Across }):
			r.fail(it.node, it.path, "the pair stands twice", "once")
		case len(pair.places()) == 0:
			r.fail(it.node, it.path, "the two share no place", "causes of a wheel, or one of the whole car")
		default:
			b.lib.Pairs = append(b.lib.Pairs, pair)
		}
	}
	for _, it := range o.list("twins", false) {
		if t, ok := b.twins(r, it, names); ok {
			b.lib.Twins = append(b.lib.Twins, t)
		}
	}
	o.close()
}

// twins reads two causes that are not told apart.
func (b *builder) twins(r *reader, it item, names []string) (t Twins, ok bool) {
	p := r.object(it.node, it.path)
	t.Why = p.text("why")
	list := p.list("causes", true)
	ok = len(list) == 2 && t.Why != ""
	for i, c := range list {
		at, known := r.name(c.node, c.path, "cause", names)
		if ok = ok && known; ok {
			t.Causes[i] = b.lib.Causes[at]
		}
	}
	p.close()
	switch {
	case r.noted != nil:
		return t, false
	case len(list) != 2:
		r.fail(it.node, it.path, fmt.Sprintf("%d causes stand in twins", len(list)), "two")
	case ok && t.Causes[0] == t.Causes[1]:
		r.fail(it.node, it.path, "a cause is its own twin", "two that differ")
		return t, false
	case ok && b.lib.Twin(t.Causes[0].ID, t.Causes[1].ID) != nil:
		r.fail(it.node, it.path, "the twins stand twice", "once")
		return t, false
	}
	return t, ok
}

// Twin is what is declared of two causes that are not told apart, or nil.
func (l *Library) Twin(a, b string) *Twins {
	for i := range l.Twins {
		if c := &l.Twins[i].Causes; c[0].ID == a && c[1].ID == b || c[0].ID == b && c[1].ID == a {
			return &l.Twins[i]
		}
	}
	return nil
}

// paired refuses faults of a job that the library does not let stand together:
// no inspector could think of them.
func (b *builder) paired(r *reader, o *object, faults []Fault) {
	n := o.get("faults")
	switch {
	case len(faults) < 2 || r.noted != nil:
	case len(faults) > 2:
		r.fail(n, "faults", fmt.Sprintf("%d faults stand in one car", len(faults)), "one or two")
	case !slices.ContainsFunc(b.lib.Couples(), func(c Couple) bool { return c.is(faults[0], faults[1]) || c.is(faults[1], faults[0]) }):
		r.fail(n, "faults", fmt.Sprintf("%s at %s and %s at %s cannot be together", faults[0].Cause.ID, faults[0].Place, faults[1].Cause.ID, faults[1].Place), "a pair of pairs.yaml, at places it allows")
	}
}

// Kin names the story that a couple shares with its mirror images: what mirrors
// the first fault mirrors the second.
func (c *Couple) Kin() string {
	a, b := &c.Faults[0], &c.Faults[1]
	_, side, half := a.Severity.mirrors(a.Place)
	at := b.Place
	if w, ok := at.Wheel(); ok {
		_, pin, _ := strings.Cut(string(at), ".")
		if side {
			w = w.Mate()
		}
		if half {
			pin = strings.NewReplacer("upper", "lower", "lower", "upper").Replace(pin)
		}
		if at = Place(w.String()); pin != "" {
			at += Place("." + pin)
		}
	}
	return Kin(a.Cause, &a.Severity, a.Place) + "+" + b.Cause.ID + "#" + b.Severity.ID + "@" + string(at)
}

func (c *Couple) is(a, b Fault) bool {
	f := &c.Faults
	return f[0].Cause == a.Cause && f[0].Place == a.Place && f[1].Cause == b.Cause && f[1].Place == b.Place
}
