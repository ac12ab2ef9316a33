package play

import (
	"strings"
	"time"

	"evenwear/scoring"
	"evenwear/scoring/evidence"
	"evenwear/scoring/record"
)

// Result is what the debrief came to, once it is worked out; session is the name
// it is kept under.
func (s *Session) Result(session string, now time.Time) (r record.Result, ok bool) {
	o := s.settled
	if o == nil {
		return r, false
	}
	r = record.Result{When: now.UTC().Truncate(time.Second), Session: session, Job: s.job.ID, Seed: s.seed, Library: s.desk.Hash(),
		For: s.drawn, Truth: s.desk.lib.Truth(s.job), Said: o.said, Total: o.Marks.Total, Capped: o.Marks.Capped, Ideas: o.ideas,
		Model: &record.Model{Minutes: o.Best.Minutes, Bits: o.Best.Final.Bits(s.trueRows()...)}}
	for _, m := range o.Marks.Marks {
		r.Marks = append(r.Marks, record.Figure{ID: m.ID, N: m.Value})
	}
	return r, true
}

// A Said is what somebody believed of a car and what they had read by then.
type Said struct {
	Counters []int // by row of the table
	Table    *evidence.Table
	Readings []evidence.Reading
}

// saidByCause is the learner's belief [1] by cause, of all they put counters on. What
// they left open they did not say.
func saidByCause(p *scoring.Play) []record.Figure {
	var list []record.Figure
	at := map[string]int{}
	for i, n := range p.Counters {
		if n == 0 {
			continue
		}
		cause, _, _ := strings.Cut(p.Rows[i], "@")
		k, met := at[cause]
		if !met {
			k, at[cause] = len(list), len(list)
			list = append(list, record.Figure{ID: cause})
		}
		list[k].N += float64(n)
	}
	for i := range list {
		list[i].N /= scoring.Counters
	}
	return list
}

// sayDrawn is why the car was drawn, in a sentence; nothing when it was chosen.
func (s *Session) sayDrawn() string {
	d := s.drawn
	if d == nil || d.Check != "" {
		return ""
	}
	args := []any{"n", whole(d.N)}
	if d.Idea != "" {
		args = append(args, "idea", s.words.Say("idea."+d.Idea))
	}
	for i, name := range []string{"cause", "other"} {
		if i < len(d.Causes) {
			said := d.Causes[i]
			if c := s.desk.lib.Cause(said); c != nil {
				said = c.Name
			}
			args = append(args, name, said)
		}
	}
	return s.words.Say("drawn."+d.Why, args...)
}
