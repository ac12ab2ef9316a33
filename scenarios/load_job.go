package scenarios

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"gopkg.in/yaml.v3"
)

// job reads one car with one story.
func (b *builder) job(src *source) {
	j := &Job{ID: src.id, file: src.name}
	j.verified = sync.OnceValue(j.verify)
	b.lib.Jobs = append(b.lib.Jobs, j)
	if src.node == nil {
		return
	}
	r := src.r
	o := r.object(src.node, "")
	j.Title = o.text("title")
	cars := ids(b.lib.Cars, func(c *Car) string { return c.ID })
	if i := o.name("car", "car", cars); i >= 0 {
		j.Car = b.lib.Cars[i]
	}
	j.Complaint = o.text("complaint")
	heard := true
	items := o.list("notices", true)
	for _, it := range items {
		c, ok := claim(r, it)
		if heard = heard && ok; ok {
			j.Claims = append(j.Claims, c)
		}
	}
	if n := o.get("notices"); n != nil && n.Kind == yaml.SequenceNode {
		claimsFit(r, n, j.Claims)
	}
	driven := o.need("driven", "how the car has been used")
	if driven != nil {
		j.Driven = readDriven(r, driven)
	}
	for _, it := range o.list("facts", false) {
		if f, ok := fact(r, it, &j.Driven); ok {
			j.Facts = append(j.Facts, f)
		}
	}
	for _, it := range o.list("faults", false) {
		if f, ok := b.fault(r, it, &j.Driven); ok {
			j.Faults = append(j.Faults, f)
		}
	}
	b.paired(r, o, j.Faults)
	j.Minutes = o.number("minutes_min", "min", 5, 600)
	j.Aim = o.number("difficulty_bits", "bits", 0, 20)
	j.Goal = o.text("goal")
	o.close()
	if n := o.get("complaint"); n != nil && j.Complaint != "" && heard && len(items) > 0 {
		for _, c := range undeclared(j.Complaint, j.Claims) {
			r.fail(n, "complaint", fmt.Sprintf("the word %q speaks of something that notices does not list", c.word), "list "+c.claim+" under notices, or leave it out")
		}
	}
	if driven != nil && driven.Kind == yaml.MappingNode && j.Car != nil {
		unlikely(r, driven, j)
	}
}

func readDriven(r *reader, n *yaml.Node) Driven {
	o := r.object(n, "driven")
	d := Driven{
		Km:            o.within("clock_km", ClockRange),
		PadsKm:        o.within("pads_km", PadsRange),
		PadsThinnerMm: o.numberOr("pads_thinner_mm", "mm", 0, 5, 0),
		Harshness:     o.numberOr("harshness_ratio", "", 0.3, 3, 1),
		RoomC:         o.within("room_c", RoomRange),
	}
	if stood := o.get("stood_overnight"); stood != nil {
		d.Stood, _ = r.yes(stood, o.at("stood_overnight"))
	}
	if pads := o.get("pads_km"); pads != nil && d.PadsKm > d.Km && d.Km > 0 {
		r.fail(pads, "driven.pads_km", show(d.PadsKm)+" is more than the car has run", "at most driven.clock_km, "+show(d.Km)+" km")
	}
	o.close()
	return d
}

var placeholder = regexp.MustCompile(`\{[a-z_]*\}`)

// fact reads one thing the inspector is told. Its figure is the job's own, put
// in for {KEY}; digits in the text could contradict it and are refused.
func fact(r *reader, it item, d *Driven) (Fact, bool) {
	o := r.object(it.node, it.path)
	known := append([]string{"clock_km"}, Backgrounds()...)
	if !o.bad && !o.lone() {
		r.fail(it.node, it.path, fmt.Sprintf("%d keys stand in one fact", len(o.keys)), "one of "+strings.Join(known, ", "))
		return Fact{}, false
	}
	var f Fact
	fine := false
	for _, k := range known {
		n := o.get(k)
		if n == nil {
			continue
		}
		text, ok := r.text(n, o.at(k))
		if !ok {
			continue
		}
		for _, p := range placeholder.FindAllString(text, -1) {
			if p != "{"+k+"}" {
				r.fail(n, o.at(k), "unknown placeholder "+clip(p), "{"+k+"}")
				ok = false
			}
		}
		if k != "harshness_ratio" && !strings.Contains(text, "{"+k+"}") {
			r.fail(n, o.at(k), "the figure is missing", "write {"+k+"} where it stands in the sentence")
			ok = false
		}
		if strings.ContainsAny(placeholder.ReplaceAllString(text, ""), "0123456789") {
			r.fail(n, o.at(k), "a digit stands in the sentence", "write {"+k+"} for the figure; it is taken from driven")
			ok = false
		}
		if i := slices.Index(Backgrounds(), k); i >= 0 {
			d.Known[i] = true
		}
		f, fine = Fact{ID: k, Text: strings.ReplaceAll(text, "{"+k+"}", d.figure(k))}, ok
	}
	o.close()
	return f, fine
}

// fault reads a cause put into the car.
func (b *builder) fault(r *reader, it item, d *Driven) (f Fault, ok bool) {
	o := r.object(it.node, it.path)
	defer o.close()
	i := o.name("cause", "cause", ids(b.lib.Causes, func(c *Cause) string { return c.ID }))
	at, how, since := o.get("place"), o.get("severity"), o.get("since_km")
	if i < 0 {
		return f, false
	}
	causes := b.lib.Causes[i : i+1]
	if r.noted != nil {
		causes = b.lib.Causes // a schema allows what any of them allows
	}
	for _, c := range causes {
		f, ok = Fault{Cause: c}, true
		if c.Healthy && !c.Changes() {
			r.fail(it.node, it.path+".cause", c.ID+" is no fault", "leave the list of faults out")
		}
		places, severities := make([]string, len(c.Places)), make([]string, len(c.Severities))
		for i, p := range c.Places {
			places[i] = string(p)
		}
		for i := range c.Severities {
			severities[i] = c.Severities[i].ID
		}
		if i := o.choice(at, "place", "place of "+c.ID, places); i >= 0 {
			f.Place = c.Places[i]
		} else {
			ok = false
		}
		if i := o.choice(how, "severity", "severity of "+c.ID, severities); i >= 0 {
			f.Severity = c.Severities[i]
		} else {
			ok = false
		}
		f.SinceKm = o.number("since_km", "km", c.SinceKm[0], c.SinceKm[1])
	}
	if since != nil && d.PadsKm > 0 && f.SinceKm > d.PadsKm {
		r.fail(since, it.path+".since_km", show(f.SinceKm)+" is before the pads were fitted", "at most driven.pads_km, "+show(d.PadsKm)+" km")
		ok = false
	}
	return f, ok
}

// choice is the index of the known name that n, found under key, holds, or -1. A
// key left out means the only one there is.
func (o *object) choice(n *yaml.Node, key, what string, known []string) int {
	switch {
	case n != nil:
		i, _ := o.r.name(n, o.at(key), what, known)
		return i
	case len(known) == 1:
		return 0
	}
	return o.name(key, what, known)
}
