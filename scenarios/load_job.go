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
		Km:            o.number("clock_km", "km", 100, 500000),
		PadsKm:        o.number("pads_km", "km", 100, 200000),
		PadsThinnerMm: o.numberOr("pads_thinner_mm", "mm", 0, 5, 0),
		Harshness:     o.numberOr("harshness_ratio", "", 0.3, 3, 1),
		RoomC:         o.number("room_c", "°C", -20, 45),
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
	for _, k := range known {
		n := o.get(k)
		if n == nil {
			continue
		}
		o.close()
		text, ok := r.text(n, o.at(k))
		if !ok {
			return Fact{}, false
		}
		ok = true
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
		return Fact{ID: k, Text: strings.ReplaceAll(text, "{"+k+"}", d.figure(k))}, ok
	}
	if !o.bad && len(o.keys) == 0 {
		r.fail(it.node, it.path, "the fact says nothing", "one of "+strings.Join(known, ", "))
	}
	o.close()
	return Fact{}, false
}

// fault reads a cause put into the car.
func (b *builder) fault(r *reader, it item, d *Driven) (Fault, bool) {
	o := r.object(it.node, it.path)
	var f Fault
	i := o.name("cause", "cause", ids(b.lib.Causes, func(c *Cause) string { return c.ID }))
	place, sev, since := o.get("place"), o.get("severity"), o.get("since_km")
	if i < 0 {
		o.close()
		return f, false
	}
	f.Cause = b.lib.Causes[i]
	if f.Cause.Healthy {
		r.fail(it.node, it.path+".cause", f.Cause.ID+" is no fault", "leave the list of faults out")
	}
	known := make([]string, len(f.Cause.Places))
	for i, p := range f.Cause.Places {
		known[i] = string(p)
	}
	ok := true
	if place != nil || len(known) != 1 {
		if i := o.name("place", "place of "+f.Cause.ID, known); i >= 0 {
			f.Place = f.Cause.Places[i]
		} else {
			ok = false
		}
	} else {
		f.Place = f.Cause.Places[0]
	}
	names := make([]string, len(f.Cause.Severities))
	for i := range names {
		names[i] = f.Cause.Severities[i].ID
	}
	if sev != nil || len(names) != 1 {
		if i := o.name("severity", "severity of "+f.Cause.ID, names); i >= 0 {
			f.Severity = f.Cause.Severities[i]
		} else {
			ok = false
		}
	} else {
		f.Severity = f.Cause.Severities[0]
	}
	f.SinceKm = o.number("since_km", "km", f.Cause.SinceKm[0], f.Cause.SinceKm[1])
	if since != nil && d.PadsKm > 0 && f.SinceKm > d.PadsKm {
		r.fail(since, it.path+".since_km", show(f.SinceKm)+" is before the pads were fitted", "at most driven.pads_km, "+show(d.PadsKm)+" km")
		ok = false
	}
	o.close()
	return f, ok
}
