package audit

import (
	"context"
	"fmt"
	"hash/fnv"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"

	"evenwear/game/play"
	"evenwear/physics/inspect"
	"evenwear/scoring"
	"evenwear/scoring/evidence"
	"evenwear/scoring/learner"
)

// lucks is how many sessions of one job there are, each with its own luck of the
// instruments; learners share them in turn, as a class shares cars.
const lucks = 20

// A stage is one job laid out, with what learners of wrong ideas believe of it and
// how the model inspector plays it.
type stage struct {
	*play.Case
	seed   uint64
	prior  []float64
	rows   []string
	true   []int
	ideas  []string // misconceptions that the table can show
	bent   []*evidence.Table
	prices *evidence.Prices
	memory []*evidence.Memory // of the table and of each that is bent, at these prices
	mu     sync.Mutex
	trails map[trailKey]*trail
}

type trailKey struct {
	seed  uint64
	tenth int // of a minute
}

// A trail is the model inspector's, worked out at most once.
type trail struct {
	once sync.Once
	t    evidence.Trail
	err  error
}

// newStage lays a job out; its table must be filled. Bent tables are taken over from
// other, a stage of the same car and facts; it may be nil.
func newStage(ctx context.Context, c *play.Case, seed uint64, other *stage) (*stage, error) {
	s := &stage{Case: c, seed: seed, prices: c.Prices(), trails: map[trailKey]*trail{}}
	for _, b := range c.Table().PriorRows() {
		s.rows, s.prior = append(s.rows, b.ID), append(s.prior, b.P)
	}
	for _, row := range c.Truth() {
		for i, id := range s.rows {
			if id == row {
				s.true = append(s.true, i)
			}
		}
	}
	if other != nil {
		s.ideas = other.ideas
		for _, b := range other.bent {
			s.bent = append(s.bent, c.Retold(b))
		}
	} else {
		s.bend()
	}
	for _, t := range slices.Insert(slices.Clone(s.bent), 0, s.Table()) {
		s.memory = append(s.memory, t.Remember(s.prices))
	}
	return s, c.Weigh(ctx)
}

// bend makes the tables of those who hold ideas.
func (s *stage) bend() {
	for i := range learner.Misconceptions {
		if t, ok := learner.Misconceptions[i].Bend(s.Table()); ok {
			s.ideas, s.bent = append(s.ideas, learner.Misconceptions[i].ID), append(s.bent, t)
		}
	}
}

// inspect is the model inspector's trail in the session of this seed with so many
// minutes [min]; below a tenth they count as none.
func (s *stage) inspect(ctx context.Context, seed uint64, minutes float64) (evidence.Trail, error) {
	key := trailKey{seed, int(math.Floor(10*minutes + 0.5))}
	s.mu.Lock()
	k := s.trails[key]
	if k == nil {
		k = &trail{}
		s.trails[key] = k
	}
	s.mu.Unlock()
	k.once.Do(func() {
		k.t, k.err = s.memory[0].Inspect(ctx, float64(key.tenth)/10, func(i inspect.Instance) (int64, error) { return s.Show(seed, i) })
	})
	return k.t, k.err
}

// table is what a learner reckons with, and what is remembered of it.
func (s *stage) table(l *learner.Learner) (*evidence.Table, *evidence.Memory) {
	for i, id := range s.ideas {
		if id == l.Holds {
			return s.bent[i], s.memory[1+i]
		}
	}
	return s.Table(), s.memory[0]
}

// A Result is how one learner ended one job.
type Result struct {
	Total  float64   `json:"t"` // uncapped
	Marks  []float64 `json:"m"` // the eight, as they stand in the total before weights
	Unsafe bool      `json:"u,omitempty"`
	Spent  float64   `json:"s"` // [min]

	counters []int
	support  []float64
	readings []evidence.Reading
}

// How the unskilled mind what is beside the diagnosis; assumed.
const (
	cautious = 0.4 // [1] of the cautions are kept without skill, all with all of it
	dueFew   = 2   // cautions of a job in which no wheel came off
	dueMany  = 8   // of one in which a wheel did, as in sessions that were played by hand
	proofs   = 5   // things to be made sure of after the work
)

// luckOf is a learner's own luck in one job.
func luckOf(seed uint64, job string, l *learner.Learner, number int) *rand.Rand {
	h := fnv.New64a()
	h.Write([]byte(job))
	h.Write([]byte{0})
	h.Write([]byte(l.Kind))
	h.Write([]byte(l.Holds))
	return rand.New(rand.NewPCG(seed, h.Sum64()+uint64(number)*0x9e3779b97f4a7c15))
}

// play lets learner number play the job.
func (s *stage) play(ctx context.Context, l *learner.Learner, number int) (Result, error) {
	luck := luckOf(s.seed, s.ID(), l, number)
	session := s.seed + uint64(number%lucks)
	own, memory := s.table(l)
	post, err := memory.Posterior()
	if err != nil {
		return Result{}, err
	}
	p := &scoring.Play{Rows: s.rows, Prior: s.prior, True: s.true, OnPaper: s.OnPaper()}
	problem, due := s.Table().Problem(), dueFew
	var made []inspect.Instance
	for ctx.Err() == nil {
		inst, ok := l.Next(post, own, s.prices, s.Minutes(), luck)
		if !ok {
			break
		}
		shown, err := s.Show(session, inst)
		if err != nil {
			return Result{}, err
		}
		check, _ := inspect.Find(inst.Check)
		if check.Station == inspect.WheelOff {
			due = dueMany
		}
		written := l.Write(&check.Meter, shown, luck)
		if err := post.Add(evidence.Reading{Check: inst, Display: written}); err != nil {
			return Result{}, err
		}
		made = append(made, inst)
		p.Readings = append(p.Readings, scoring.Read{Check: inst.String(), Divisions: check.Meter.Apart(written, shown)})
	}
	real := post
	if own != s.Table() {
		if real, err = s.Table().Posterior(post.Readings()); err != nil {
			return Result{}, err
		}
	}
	p.Support, p.Began = evidence.Probabilities(real.Rows()), evidence.Probabilities(real.BeganRows())
	belief, err := l.Believe(post, own, luck)
	if err != nil {
		return Result{}, err
	}
	p.Counters = make([]int, len(s.rows))
	if belief != nil {
		if err := addsUp(belief); err != nil {
			return Result{}, fmt.Errorf("job %s: %s %d: %w", s.ID(), l.Kind, number, err)
		}
		p.Counters = scoring.Project(belief)
		l.Misplace(p.Counters, luck)
	}
	p.Spent = s.prices.Minutes(problem, made)
	full, err := s.inspect(ctx, session, s.Minutes())
	if err != nil {
		return Result{}, err
	}
	p.Best = full.Minutes
	if p.Spent < full.Minutes {
		if full, err = s.inspect(ctx, session, p.Spent); err != nil {
			return Result{}, err
		}
	}
	p.ModelBits = full.Final.Bits(s.Truth()...)
	if err := s.end(ctx, p, l, post, belief, due, luck); err != nil {
		return Result{}, err
	}
	m, err := scoring.MarkPlay(p)
	if err != nil {
		return Result{}, err
	}
	r := Result{Total: m.Uncapped, Unsafe: m.Capped, Spent: p.Spent, counters: p.Counters, support: p.Support, readings: post.Readings()}
	for _, k := range m.Marks {
		r.Marks = append(r.Marks, math.Floor(100*k.Value*k.Scale+0.5)/100)
	}
	return r, ctx.Err()
}

// addsUp refuses a belief that is none, in a sentence.
func addsUp(belief []float64) error {
	sum := 0.0
	for i, b := range belief {
		if !(b >= 0) {
			return fmt.Errorf("row %d is believed %g; a belief is 0 to 1", i+1, b)
		}
		sum += b
	}
	if math.Abs(sum-1) > 1e-9 {
		return fmt.Errorf("the rows are believed %.12g in all; wanted 1", sum)
	}
	return nil
}

// severity is the likeliest of a row by what was read, of cars with that fault only.
func (s *stage) severity(post *evidence.Posterior, row string) string {
	best, most := "", -1.0
	for h, b := range post.Hypotheses() {
		if x := &s.Table().Problem().Hypotheses[h]; x.Row == row && x.Also.Row == "" && b.P > most {
			_, best, _ = strings.Cut(x.ID, "#")
			most = b.P
		}
	}
	return best
}

// end is what a learner does about the car and how carefully.
func (s *stage) end(ctx context.Context, p *scoring.Play, l *learner.Learner, post *evidence.Posterior, belief []float64, due int, luck *rand.Rand) error {
	for range due {
		p.Cautions = append(p.Cautions, scoring.Caution{ID: "caution", Kept: luck.Float64() < cautious+(1-cautious)*l.Skill})
	}
	chosen, release := []string(nil), scoring.ReleaseUse
	act, rows := l.Decide(belief)
	if act == learner.Refer {
		chosen, release = s.Referral(), scoring.ReleaseCarried
	}
	for _, row := range rows {
		cure, err := s.Cure(ctx, s.rows[row], s.severity(post, s.rows[row]))
		if err != nil {
			return err
		}
		if len(cure.Remedies) > 0 && slices.Equal(cure.Remedies, s.Referral()) {
			chosen, release = cure.Remedies, cure.Release
			break
		}
		if cure.Release != scoring.ReleaseUse {
			release = cure.Release
		}
		for _, id := range cure.Remedies {
			if !slices.Contains(chosen, id) {
				chosen = append(slices.Clone(chosen), id)
			}
		}
	}
	looked := true
	for range proofs {
		done := act == learner.Treat && luck.Float64() < l.Skill
		looked = looked && done
		p.Proof = append(p.Proof, scoring.Proof{ID: "proof", Done: done})
	}
	on := 0
	for _, t := range p.True {
		on += p.Counters[t]
	}
	known := 2*on > scoring.Counters
	if err := s.Decide(p, chosen, release, known); err != nil {
		// Work that cannot be done on this car is handed on.
		release = scoring.ReleaseCarried
		if err := s.Decide(p, s.Referral(), release, known); err != nil {
			return err
		}
	}
	// Who looks again at all of it sees what must not drive.
	if looked && release == scoring.ReleaseUse && len(scoring.Danger(p.Unsafe, scoring.ReleaseTrip)) > 0 {
		return s.Decide(p, chosen, scoring.ReleaseCarried, known)
	}
	return nil
}
