package scoring

import (
	"math"
	"slices"
	"strings"
	"testing"

	"evenwear/physics"
)

// good is a play with nothing to find fault with.
func good() *Play {
	return &Play{
		Rows: []string{"pins@fl", "piston@fl", "leak@rr", "sound"}, Prior: []float64{0.2, 0.2, 0.1, 0.5}, True: []int{0},
		Counters: []int{20, 0, 0, 0}, Support: []float64{0.99, 0.005, 0.002, 0.003}, ModelBits: 2,
		Readings: []Read{{"lining", 0}, {"run_out", 0}}, Cautions: []Caution{{"chock", true}}, Proof: []Proof{{"pedal", true}},
		Spent: 30, Best: 30, Loss: 20, BestLoss: 20, Release: ReleaseUse,
	}
}

func marked(t *testing.T, p *Play) (Marks, func(id string) Mark) {
	t.Helper()
	m, err := MarkPlay(p)
	if err != nil {
		t.Fatal(err)
	}
	return m, func(id string) Mark {
		for _, k := range m.Marks {
			if k.ID == id {
				return k
			}
		}
		t.Fatalf("no mark %s", id)
		return Mark{}
	}
}

func TestWeights(t *testing.T) {
	m, _ := marked(t, good())
	sum := 0.0
	for _, k := range m.Marks {
		sum += k.Weight
	}
	if len(m.Marks) != 8 || sum != 100 || m.Total != 100 {
		t.Errorf("%d marks of weight %g, a faultless play gets %g", len(m.Marks), sum, m.Total)
	}
}

// TestNothingEarnsNothing: without evidence, safety, reading and minutes count for nothing.
func TestNothingEarnsNothing(t *testing.T) {
	p := good()
	p.Counters, p.Support, p.Readings, p.Spent, p.Proof = []int{0, 0, 0, 0}, slices.Clone(p.Prior), nil, 0, []Proof{{"pedal", false}}
	p.Loss = 200
	m, mark := marked(t, p)
	if mark(Safety).Value != 100 || mark(Safety).Scale != 0 || mark(Minutes).Scale != 0 || mark(Reading).Value != 0 {
		t.Errorf("safety %+v, minutes %+v", mark(Safety), mark(Minutes))
	}
	if m.Total > 20 {
		t.Errorf("doing nothing earns %g", m.Total)
	}
}

// TestLuckyGuess: all counters on the truth without readings gain 10 points of
// diagnosis over the prior's own mark, no more.
func TestLuckyGuess(t *testing.T) {
	p := good()
	p.Support = slices.Clone(p.Prior)
	m, mark := marked(t, p)
	if mark(Diagnosis).Value != 100 {
		t.Errorf("diagnosis is shown as %g, want 100", mark(Diagnosis).Value)
	}
	prior := Proper(p.Prior, truthOf(4, p.True), p.Prior)
	if want := 25*(prior+10)/100 + 25 + mark(Consistency).Value/10 + 5; math.Abs(m.Total-want) > 0.02 {
		t.Errorf("total %g, want %g", m.Total, want)
	}
	if len(m.Notes) != 1 || m.Notes[0].ID != TotalLucky {
		t.Fatalf("notes %+v", m.Notes)
	}
	for i, want := range []float64{100, round(prior+10) - 10, 10, round(prior + 10)} { // what the learner is told
		if a := m.Notes[0].Args[i]; math.Abs(a.Number-want) > 0.01 {
			t.Errorf("%s is told as %g, want %g", a.Name, a.Number, want)
		}
	}
}

func TestUnsafeCap(t *testing.T) {
	p := good()
	p.Unsafe = []Finding{{ID: UnsafeLeak}}
	m, _ := marked(t, p)
	if m.Total != 40 || !m.Capped || m.Uncapped != 100 {
		t.Errorf("total %g, uncapped %g", m.Total, m.Uncapped)
	}
}

func TestSureness(t *testing.T) {
	p := good()
	p.Support = []float64{0.6, 0.2, 0.1, 0.1}
	for _, c := range []struct {
		counters []int
		want     string
	}{{[]int{12, 4, 2, 2}, ConsistencyFair}, {[]int{18, 2, 0, 0}, ConsistencyOver}, {[]int{8, 4, 4, 4}, ConsistencyUnder}} {
		p.Counters = c.counters
		_, mark := marked(t, p)
		if k := mark(Consistency); k.Reason.ID != c.want || (c.want == ConsistencyFair) != (k.Value == 100) {
			t.Errorf("%v: %+v, want %s", c.counters, k, c.want)
		}
	}
}

// TestReadingMark: repeats of one check count once; two divisions off is nothing.
func TestReadingMark(t *testing.T) {
	p := good()
	p.Readings = []Read{{"a", 0}, {"a", -2}, {"a", 1}, {"b", 0}, {"c", 5}}
	_, mark := marked(t, p)
	if got, want := mark(Reading).Value, round(100*(0.5+1+0)/3); got != want {
		t.Errorf("reading %g, want %g", got, want)
	}
}

func TestHarm(t *testing.T) {
	p := good()
	p.Harms = []string{"harm.petroleum"}
	_, mark := marked(t, p)
	if k := mark(Safety); k.Value != 75 || k.Reason.ID != SafetyHarm {
		t.Errorf("safety %+v", k)
	}
}

// TestAllMissingIsNamed: a reason names every caution that was not kept, every
// harmful act, every look that is missing and every danger, each once.
func TestAllMissingIsNamed(t *testing.T) {
	p := good()
	p.Cautions = []Caution{{"a", false}, {"b", true}, {"c", false}}
	p.Harms = []string{"h", "i"}
	p.Proof = []Proof{{"x", false}, {"y", true}, {"z", false}}
	p.Unsafe = []Finding{{ID: UnsafeLeak, Wheel: "front_left"}, {ID: UnsafeLeak, Wheel: "front_right"}, {ID: UnsafeCrack}}
	named := func(r Reason, arg string, want ...string) {
		t.Helper()
		i := slices.IndexFunc(r.Args, func(a Arg) bool { return a.Name == arg })
		if i < 0 || !slices.Equal(r.Args[i].Texts, want) {
			t.Errorf("%s names %+v, want %v", r.ID, r.Args, want)
		}
	}
	m, mark := marked(t, p)
	named(mark(Safety).Reason, "which", "h", "i")
	named(mark(Safety).Reason, "missing", "a", "c")
	named(mark(ProofMark).Reason, "missing", "x", "z")
	named(m.Notes[len(m.Notes)-1], "dangers", UnsafeLeak, UnsafeCrack)
}

// TestSpread: counters not placed are the prior over everything else.
func TestSpread(t *testing.T) {
	got := Spread([]int{10, 0, 0, 0}, []float64{0.2, 0.2, 0.1, 0.5})
	for i, want := range []float64{0.5, 0.125, 0.0625, 0.3125} {
		if math.Abs(got[i]-want) > 1e-12 {
			t.Errorf("row %d: %g, want %g", i, got[i], want)
		}
	}
}

func TestBadPlay(t *testing.T) {
	for want, spoil := range map[string]func(*Play){
		"21 counters placed; there are 20": func(p *Play) { p.Counters[0] = 21 },
		"-1 counters on pins@fl":           func(p *Play) { p.Counters[0] = -1 },
		"no row is true":                   func(p *Play) { p.True = nil },
		"true row 4 of 4":                  func(p *Play) { p.True = []int{4} },
		"wanted as many of each":           func(p *Play) { p.Support = nil },
		"a number of the play is NaN":      func(p *Play) { p.Loss = math.NaN() },
		"has prior NaN":                    func(p *Play) { p.Prior[1] = math.NaN() },
	} {
		p := good()
		spoil(p)
		if _, err := MarkPlay(p); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want it to say %q", err, want)
		}
	}
}

// TestReasonsListed: every reason a mark gives is listed with its arguments.
func TestReasonsListed(t *testing.T) {
	plays := []*Play{good(), good(), good(), good(), good()}
	plays[4].Harms, plays[4].Cautions[0].Kept = []string{"h"}, false
	plays[1].Counters, plays[1].Harms, plays[1].Loss, plays[1].Needless, plays[1].Spent = []int{0, 0, 0, 20}, []string{"h"}, 90, 1, 60
	plays[1].Unsafe = []Finding{{ID: UnsafeLeak}}
	plays[2].Counters, plays[2].Support, plays[2].Readings, plays[2].Loss = []int{6, 5, 5, 4}, slices.Clone(plays[2].Prior), nil, 50
	plays[2].Cautions[0].Kept, plays[2].Proof[0].Done = false, false
	plays[3].Support = slices.Clone(plays[3].Prior)
	for _, p := range plays {
		m, _ := marked(t, p)
		reasons := slices.Clone(m.Notes)
		for _, k := range m.Marks {
			reasons = append(reasons, k.Reason)
		}
		for _, r := range reasons {
			var names []string
			for _, a := range r.Args {
				names = append(names, a.Name)
			}
			if !slices.ContainsFunc(ReasonIDs(), func(s ReasonSpec) bool { return s.ID == r.ID && slices.Equal(s.Args, names) }) {
				t.Errorf("%s with %v is not in ReasonIDs", r.ID, names)
			}
		}
	}
}

// sound is an outlook within every limit.
func sound() Outlook {
	o := Outlook{Decel: 8, Travel: 50, Level: 60, Assist: 100, DescentWay: 55, Soon: 6e-3, Lasts: 12e6}
	for w := range o.Lining {
		o.Lining[w] = [2][2]float64{{7e-3, 7e-3}, {7e-3, 7e-3}}
		o.Hose[w] = 1e-6
	}
	return o
}

// TestFindings: each limit is found alone, with its source.
func TestFindings(t *testing.T) {
	o := sound()
	if f := o.Findings(false); len(f) != 0 {
		t.Fatalf("a sound car has %+v", f)
	}
	for id, spoil := range map[string]func(*Outlook){
		UnsafeDecel:      func(o *Outlook) { o.Decel = 5.6 },
		UnsafeImbalance:  func(o *Outlook) { o.Imbalance[1] = 31 },
		UnsafeTravel:     func(o *Outlook) { o.Travel = 81 },
		UnsafeSink:       func(o *Outlook) { o.Sink = 1.1e-3 },
		UnsafeLeak:       func(o *Outlook) { o.Leak[2] = 1e-10 },
		UnsafeLevel:      func(o *Outlook) { o.Level = -1 },
		UnsafeAssist:     func(o *Outlook) { o.Assist = 5 },
		UnsafeLining:     func(o *Outlook) { o.Lining[1][1][0] = 1.49e-3 },
		UnsafeLiningSoon: func(o *Outlook) { o.Soon = 1.4e-3 },
		UnsafeVapour:     func(o *Outlook) { o.DescentWay = 90 },
		UnsafeBurnt:      func(o *Outlook) { o.BrakePeak = 1001 },
		UnsafeHose:       func(o *Outlook) { o.Hose[0] = 2.1e-6 },
		UnsafeCrack:      func(o *Outlook) { o.Crack[3] = 5e-3 },
	} {
		o := sound()
		spoil(&o)
		f := o.Findings(false)
		if len(f) != 1 || f[0].ID != id || f[0].Source == "" || f[0].Unit == "" {
			t.Errorf("%s: found %+v", id, f)
		}
	}
	if d := Danger([]Finding{{ID: UnsafeImbalance}}, ReleaseTrip); len(d) != 0 {
		t.Errorf("a short trip may pull: %+v", d)
	}
	if d := Danger([]Finding{{ID: UnsafeLeak}}, ReleaseCarried); len(d) != 0 {
		t.Errorf("a carried car endangers nobody: %+v", d)
	}
}

// TestDecide: mending what is wrong beats leaving it, renewing more, and
// referring; a sound car is given back.
func TestDecide(t *testing.T) {
	long := 12000 * physics.Kilometre
	leak := []Finding{{ID: UnsafeLeak}}
	mend := Choice{Minutes: 20, Parts: 10, Release: ReleaseUse, Lasts: long}
	more := mend
	more.Needless, more.Parts = 1, 30
	leave := Choice{Release: ReleaseUse, Findings: leak, Lasts: long}
	carry := Choice{Refers: true, Release: ReleaseCarried, Findings: leak, Minutes: 40}
	if best, loss := Decide([]Choice{leave, more, carry, mend}); best != 3 || loss != 30 {
		t.Errorf("best is %d with %g, want to mend for 30", best, loss)
	}
	// A fault that endangers nobody but rubs away 50 litres: standing still mends nothing.
	rub := Choice{Release: ReleaseTrip, Lasts: long, DragFuel: 0.05}
	if l := rub.Loss(); l != lossStanding+100 {
		t.Errorf("a rubbing brake sent away unmended loses %g, want %d", l, lossStanding+100)
	}
	if rub.Refers = true; rub.Loss() != lossStanding {
		t.Errorf("referred it loses %g beside its minutes and parts, want %d", rub.Loss(), lossStanding)
	}
	if l := leave.Loss(); l < 100 {
		t.Errorf("a leak on the road loses %g", l)
	}
	if d := more.Loss() - mend.Loss(); d != 25 {
		t.Errorf("a needless part of 20 loses %g, want 25", d)
	}
	// A pedal's way costs evenly up to its limit, and there no more than the danger that begins.
	way := func(used float64) Choice { return Choice{Release: ReleaseUse, Lasts: long, Pedal: used} }
	half, at := way(0.5), way(1)
	over := at
	over.Findings = []Finding{{ID: UnsafeTravel}}
	if half.Loss() != 50 || at.Loss() != 100 || over.Loss() != 100 {
		t.Errorf("half the pedal's way loses %g, all %g, beyond %g; want 50, 100, 100", half.Loss(), at.Loss(), over.Loss())
	}
	refer := Choice{Sound: true, Refers: true, Release: ReleaseCarried, Lasts: long}
	give := Choice{Sound: true, Release: ReleaseUse, Lasts: long}
	if d := refer.Loss() - give.Loss(); d != 40 {
		t.Errorf("referring a sound car loses %g, want 40", d)
	}
	if best, _ := Decide(nil); best != -1 {
		t.Errorf("nothing to choose gives %d", best)
	}
}

// TestBitsBeyondTheOwner: what the owner told is no reading: who reads nothing more
// has told no bits, who halves what the owner left open one.
func TestBitsBeyondTheOwner(t *testing.T) {
	p := good()
	p.ModelBits, p.Began, p.Support = 1, []float64{0.4, 0.3, 0.1, 0.2}, []float64{0.4, 0.3, 0.1, 0.2}
	if _, mark := marked(t, p); mark(Evidence).Value != 0 {
		t.Errorf("no bit beyond the owner's words is worth %g", mark(Evidence).Value)
	}
	p.Support = []float64{0.6, 0.2, 0.1, 0.1} // log2(0.6/0.4) = 0.585 of 1
	if _, mark := marked(t, p); mark(Evidence).Value != 58.5 {
		t.Errorf("half again as sure is worth %g, want 58.50", mark(Evidence).Value)
	}
	// The owner's words left less than half a bit: who finds all of it has all of the
	// mark, who misses a tenth of a bit a fifth less, who looks at nothing none.
	p.ModelBits = math.Log2(0.6 / 0.5)
	p.Began = []float64{0.5, 0.3, 0.1, 0.1}
	if _, mark := marked(t, p); mark(Evidence).Value != 100 {
		t.Errorf("all that was left to be told is worth %g", mark(Evidence).Value)
	}
	p.ModelBits += 0.1
	if _, mark := marked(t, p); mark(Evidence).Value != 80 {
		t.Errorf("a tenth of a bit less than the model's %.2f is worth %g, want 80", p.ModelBits, mark(Evidence).Value)
	}
	p.Readings = nil
	if _, mark := marked(t, p); mark(Evidence).Value != 0 {
		t.Errorf("nothing looked at is worth %g", mark(Evidence).Value)
	}
	p.Began = []float64{0.4}
	if _, err := MarkPlay(p); err == nil || !strings.Contains(err.Error(), "4 rows with 1 beliefs before any reading; wanted as many") {
		t.Errorf("got %v", err)
	}
}
