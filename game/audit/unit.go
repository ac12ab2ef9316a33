package audit

import (
	"context"
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"slices"
	"sync"
	"sync/atomic"

	"evenwear/game/play"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring/evidence"
	"evenwear/scoring/learner"
)

// A Unit is what is worked out about one job of the bank: the job, unseen ones of
// the same car and facts, and how far the beliefs about such cars can be trusted.
// It is what a stopped audit does not work out again.
type Unit struct {
	Job    string   `json:"job"`
	Car    string   `json:"car"`
	Failed string   `json:"failed,omitempty"` // why it could not be worked out
	Solved Solved   `json:"solved"`
	Bank   Played   `json:"bank"`
	Unseen []Played `json:"unseen"`
	Shown  []Played `json:"shown"`  // notes that confront misconceptions, by those who infer
	Thrown int      `json:"thrown"` // unseen ones that could not be solved, made up anew
	Proper Proper   `json:"proper"`
	Bands  Bands    `json:"bands"`
	Ranks  Ranks    `json:"ranks"`
	// Of the first job of each car:
	Pairs   []Pair   `json:"pairs,omitempty"`
	Regrets []Regret `json:"regrets,omitempty"`
}

// A Played is one job played by everybody.
type Played struct {
	Job     string            `json:"job"`
	Totals  []float64         `json:"totals"` // by learner of the crowd, uncapped
	Results []Result          `json:"-"`      // the same, whole
	Ideas   []string          `json:"ideas"`  // misconceptions that the table can show
	Said    map[int]Explained `json:"said"`   // by learner: how well each idea explains what was said
	Unsafe  []int             `json:"unsafe"` // learners who let an unsafe car go
	Marks   [][]float64       `json:"marks"`  // mean of each mark, by group in the order of groups
}

// Explained is ln P of what was said by the real table and then each idea
// [0.01 nat], by skill and exponent.
type Explained [][]int32

// A run is one audit at work.
type run struct {
	opt      Options
	lib      *scenarios.Library
	words    play.Words
	crowd    *crowd
	progress func(Progress)
	mu       sync.Mutex // of progress

	number int        // of the job at hand
	desk   *play.Desk // of the table filled last
	key    string     // of that table
}

// at is a desk where the table of a job may be filled already.
func (r *run) at(job *scenarios.Job) *play.Desk {
	if key := play.TableKey(job); r.desk == nil || key != r.key {
		r.desk, r.key = play.NewDesk(r.lib, r.words), key // the old tables are let go
	}
	return r.desk
}

// Progress is what an audit is at.
type Progress struct {
	Job    string
	Number int     // of the job of the bank, from 1
	Step   string  // "table", "outcomes", "learners", "calibration", "regret", "pairs"
	Share  float64 // [1] of the step
}

func (r *run) tell(job, step string, done, of int) {
	if r.progress == nil || of == 0 {
		return
	}
	r.mu.Lock()
	r.progress(Progress{job, r.number, step, float64(done) / float64(of)})
	r.mu.Unlock()
}

// each calls do for 0 … n − 1 on all workers; the error is the first by number.
func (r *run) each(ctx context.Context, job, step string, n int, do func(i int) error) error {
	errs := make([]error, n)
	var next, done atomic.Int64
	var wait sync.WaitGroup
	for range r.opt.Workers {
		wait.Go(func() {
			for {
				i := int(next.Add(1)) - 1
				if i >= n || ctx.Err() != nil {
					return
				}
				errs[i] = do(i)
				r.tell(job, step, int(done.Add(1)), n)
			}
		})
	}
	wait.Wait()
	if err := ctx.Err(); err != nil {
		return err
	}
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// unit works one job of the bank out. unseen are the causes one of which each of the
// jobs has that nobody wrote down and that go with it, shown that of each car whose
// notes confront misconceptions; first tells that it is the first of its car, whose causes
// are told apart.
func (r *run) unit(ctx context.Context, job *scenarios.Job, unseen [][]string, shown []string, first bool) (*Unit, error) {
	u := &Unit{Job: job.ID, Car: job.Car.ID}
	if err := job.Verify(); err != nil { // the owner must not say what the physics deny
		return nil, err
	}
	desk := r.at(job)
	c, err := desk.Case(job)
	if err != nil {
		return nil, err
	}
	if err := c.Table().Fill(ctx, r.opt.Workers, func(p evidence.Progress) { r.tell(job.ID, "table", p.Done+p.Failed, p.Total) }); err != nil {
		return nil, err
	}
	if err := c.Table().Failed(); err != nil {
		return nil, fmt.Errorf("job %s: a car of the catalogue cannot be computed: %w", job.ID, err)
	}
	bank, err := r.stage(ctx, c, nil)
	if err != nil {
		return nil, err
	}
	if u.Bank, err = r.everybody(ctx, bank, false); err != nil {
		return nil, err
	}
	if u.Solved, err = r.solved(ctx, bank); err != nil {
		return nil, err
	}
	u.Proper = proper(bank, &u.Bank)
	for n, causes := range unseen {
		fc, thrown, err := r.fair(ctx, desk, job, n, causes)
		if err != nil {
			return nil, err
		}
		u.Thrown += thrown
		s, p, err := r.madeUp(ctx, fc, bank, false)
		if err != nil {
			return nil, err
		}
		u.Unseen = append(u.Unseen, p)
		u.Proper.add(proper(s, &p))
	}
	for n, cause := range shown {
		nc, err := r.noted(desk, job, n, cause)
		if err != nil {
			return nil, err
		}
		_, p, err := r.madeUp(ctx, nc, bank, true)
		if err != nil {
			return nil, err
		}
		u.Shown = append(u.Shown, p)
	}
	if u.Bands, u.Ranks, err = r.calibrate(ctx, desk, job); err != nil {
		return nil, err
	}
	if !first {
		return u, nil
	}
	if u.Regrets, err = r.regrets(ctx, bank, r.opt.Small); err != nil {
		return nil, err
	}
	u.Pairs, err = r.pairs(ctx, bank)
	return u, err
}

// madeUp lays a car out that was made up like a job of the bank, and lets the crowd
// play it.
func (r *run) madeUp(ctx context.Context, c *play.Case, bank *stage, name bool) (*stage, Played, error) {
	s, err := r.stage(ctx, c, bank)
	if err != nil {
		return nil, Played{}, err
	}
	p, err := r.everybody(ctx, s, name)
	return s, p, err
}

func (r *run) stage(ctx context.Context, c *play.Case, other *stage) (*stage, error) {
	r.tell(c.ID(), "outcomes", 0, 1)
	s, err := newStage(ctx, c, r.opt.Seed, other)
	r.tell(c.ID(), "outcomes", 1, 1)
	return s, err
}

// freshTries is how many cars that cannot be are thrown away for one that can.
const freshTries = 20

// groups are the causes of each group of the catalogue that has some, the most first.
func (r *run) groups() [][]string {
	var all [][]string
	for _, g := range r.lib.Groups {
		var causes []string
		for _, c := range r.lib.Causes {
			if c.Group == g.ID {
				causes = append(causes, c.ID)
			}
		}
		if len(causes) > 0 {
			all = append(all, causes)
		}
	}
	slices.SortStableFunc(all, func(a, b []string) int { return len(b) - len(a) })
	return all
}

// fresh makes up the nth unseen job told of as job is, of one of these causes; none:
// of any.
func (r *run) fresh(desk *play.Desk, job *scenarios.Job, n int, causes []string) (*play.Case, error) {
	luck := r.luckOf(job, 0x6a09e667f3bcc908, n)
	return r.made(job, func() (*play.Case, error) { return desk.Fresh(job, fmt.Sprintf("%s.%d", job.ID, n), causes, luck) })
}

// noted makes up the nth car of which only notes are there, told of as job is.
func (r *run) noted(desk *play.Desk, job *scenarios.Job, n int, cause string) (*play.Case, error) {
	luck := r.luckOf(job, 0xbb67ae8584caa73b, n)
	return r.made(job, func() (*play.Case, error) { return desk.Noted(job, fmt.Sprintf("%s.noted%d", job.ID, n), cause, luck) })
}

// luckOf is that of what is made up as the nth of a kind told of as job is.
func (r *run) luckOf(job *scenarios.Job, kind uint64, n int) *rand.Rand {
	h := fnv.New64a()
	h.Write([]byte(job.ID))
	return rand.New(rand.NewPCG(r.opt.Seed^kind, h.Sum64()+uint64(n)*0x9e3779b97f4a7c15))
}

// made tries until a car can be.
func (r *run) made(job *scenarios.Job, try func() (*play.Case, error)) (c *play.Case, err error) {
	for range freshTries {
		if c, err = try(); err == nil {
			return c, nil
		}
	}
	return nil, fmt.Errorf("job %s: no car like it can be made up: %w", job.ID, err)
}

// fairLooks is in how many sessions the model inspector plays a job made up before
// anybody else does.
const fairLooks = 3

// fair is fresh for a job that can be solved in its minutes, as those of the bank
// have to be; thrown is how many that cannot were made up before. The last is taken
// when none can.
func (r *run) fair(ctx context.Context, desk *play.Desk, job *scenarios.Job, n int, causes []string) (c *play.Case, thrown int, err error) {
	for ; thrown < freshTries; thrown++ {
		if c, err = r.fresh(desk, job, n+thrown*r.opt.Unseen, causes); err != nil {
			return nil, thrown, err
		}
		memory := c.Table().Remember(c.Prices())
		beliefs := make([]float64, fairLooks)
		for i := range beliefs {
			t, err := memory.Inspect(ctx, c.Minutes(), func(inst inspect.Instance) (int64, error) { return c.Show(r.opt.Seed+uint64(i), inst) })
			if err != nil {
				return nil, thrown, err
			}
			beliefs[i] = inTruth(c, t.Final)
		}
		slices.Sort(beliefs)
		if beliefs[(fairLooks-1)/2] >= aimSolved {
			break
		}
	}
	return c, thrown, nil
}

// everybody lets the crowd play a job. name asks how well ideas explain what was
// said: then those who hold an idea play and the crude do not, else the other way round.
func (r *run) everybody(ctx context.Context, s *stage, name bool) (Played, error) {
	n := len(r.crowd.all)
	p := Played{Job: s.ID(), Totals: make([]float64, n), Results: make([]Result, n), Ideas: s.ideas}
	said := make([]Explained, n)
	err := r.each(ctx, s.ID(), "learners", n, func(i int) (err error) {
		l := &r.crowd.all[i]
		if name && l.Kind != learner.Reasoner || !name && l.Holds != "" {
			return nil
		}
		if p.Results[i], err = s.play(ctx, l, r.crowd.index[i]); err != nil || !name {
			return err
		}
		said[i], err = s.explain(&p.Results[i])
		return err
	})
	if err != nil {
		return p, err
	}
	if name {
		p.Said = map[int]Explained{}
	}
	for i := range p.Results {
		p.Totals[i] = p.Results[i].Total
		if p.Results[i].Unsafe {
			p.Unsafe = append(p.Unsafe, i)
		}
		if said[i] != nil {
			p.Said[i] = said[i]
		}
	}
	for _, g := range r.crowd.groups() {
		p.Marks = append(p.Marks, r.crowd.meanMarks(g, p.Results))
	}
	return p, nil
}

// groups lists the groups of the crowd in their order.
func (c *crowd) groups() []string {
	var all []string
	for _, g := range c.group {
		if !slices.Contains(all, g) {
			all = append(all, g)
		}
	}
	return all
}

func (c *crowd) meanMarks(group string, results []Result) []float64 {
	var sum []float64
	n := 0.0
	for i, g := range c.group {
		if g != group {
			continue
		}
		if sum == nil {
			sum = make([]float64, len(results[i].Marks))
		}
		for k, m := range results[i].Marks {
			sum[k] += m
		}
		n++
	}
	for k := range sum {
		sum[k] = hundredth(sum[k] / n)
	}
	return sum
}

// explain holds what was said against the real table and every idea.
func (s *stage) explain(r *Result) (Explained, error) {
	all := make(Explained, 0, 1+len(s.bent))
	for m, t := range slices.Insert(slices.Clone(s.bent), 0, s.Table()) {
		if m > 0 {
			idea, _ := learner.Misconceived(s.ideas[m-1])
			if !slices.ContainsFunc(slices.Concat(t.Given(), r.readings), func(x evidence.Reading) bool { return idea.About(x.Check.Check) }) {
				all = append(all, all[0]) // nothing was read of which it thinks otherwise
				continue
			}
		}
		x, err := learner.Explain(r.counters, t, r.readings)
		if err != nil {
			return nil, err
		}
		line := make([]int32, len(x))
		for g := range x {
			line[g] = int32(100 * x[g])
		}
		all = append(all, line)
	}
	return all, nil
}
