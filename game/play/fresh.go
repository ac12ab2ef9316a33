package play

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"

	"evenwear/scenarios"
	"evenwear/scoring/evidence"
)

// Fresh makes up a car that nobody wrote down, told of as job's is: cause, place
// and severity by the catalogue's weights, the rest from what is believed of such
// a car, between the points that the table was made from. Its owner tells of it as
// those of drawn cars do, and its table is the job's with these words heard instead:
// the job's should be filled, and its owner must have told something. It allows what
// drawn cars do. causes are those of which it is to have one; none: any. An error says
// that no such car can be.
func (d *Desk) Fresh(job *scenarios.Job, id string, causes []string, r *rand.Rand) (*Case, error) {
	t, err := d.table(job)
	if err != nil {
		return nil, err
	}
	c, err := d.made(t, job, id, causes, true, r)
	if err != nil {
		return nil, err
	}
	j := c.s.job
	im, err := t.ears.witness.Look(c.s.found.Model, j.Driven.Duty())
	if err != nil {
		return nil, fmt.Errorf("job %s: %w", j.ID, err)
	}
	j.Claims, j.Minutes = im.Tells(scenarios.Fair, r), scenarios.DrawnMinutes
	c.s.table = t.retold(j.Claims)
	return c, nil
}

// Noted is [Desk.Fresh] of a car that is not there, with one cause that has notes: all
// there is of it are these. See [scenarios.Noted].
func (d *Desk) Noted(job *scenarios.Job, id, cause string, r *rand.Rand) (*Case, error) {
	t, err := d.table(job)
	if err != nil {
		return nil, err
	}
	c, err := d.made(t, job, id, []string{cause}, false, r)
	if err != nil {
		return nil, err
	}
	s := c.s
	s.job.Minutes, s.seed, s.tries, s.table = 0, r.Uint64(), map[string]uint64{}, t.retold(nil)
	if s.job.Notes, err = s.job.Faults[0].Notes(); err != nil {
		return nil, fmt.Errorf("job %s: %w", s.job.ID, err)
	}
	return c, s.takeNotes()
}

// made is a car made up like a job's, of which nobody has told anything yet, with one
// of these causes; none: any. couples tells that it may have two.
func (d *Desk) made(t *table, job *scenarios.Job, id string, causes []string, couples bool, r *rand.Rand) (*Case, error) {
	hyps := t.Problem().Hypotheses
	of := func(h *evidence.Hypothesis) bool {
		if h.Also.Row != "" && !couples {
			return false
		}
		return len(causes) == 0 || slices.Contains(causes, h.Cause) || h.Also.Row != "" && slices.Contains(causes, h.Also.Cause)
	}
	at, left := -1, 0.0
	for i := range hyps {
		if of(&hyps[i]) {
			left += hyps[i].Prior
		}
	}
	left *= r.Float64()
	for i := range hyps {
		if !of(&hyps[i]) {
			continue
		}
		if at = i; left < hyps[i].Prior {
			break
		}
		left -= hyps[i].Prior
	}
	if at < 0 {
		return nil, fmt.Errorf("no car can be made up that has one of %s", short(strings.Join(causes, ", ")))
	}
	b := make([]float64, len(t.Problem().Background))
	for i := range b {
		b[i] = normal(r)
	}
	fresh := *job // comes as job's car does
	fresh.ID, fresh.Driven, fresh.Claims, fresh.Faults = id+"~"+hyps[at].ID, scenarios.Vary(job.Driven, b), nil, nil
	for i, one := range strings.Split(hyps[at].ID, evidence.And) {
		row, severity, _ := strings.Cut(one, "#")
		name, place, _ := strings.Cut(row, "@")
		cause := d.lib.Cause(name)
		bad := cause.Severity(severity)
		if i > 0 || !cause.Healthy || len(bad.Start)+len(bad.End) > 0 {
			fresh.Faults = append(fresh.Faults, scenarios.Fault{Cause: cause, Place: scenarios.Place(place), Severity: *bad, SinceKm: since(cause, fresh.Driven, b)})
		}
	}
	return d.newCase(&fresh, job.Driven, t)
}
