package audit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"evenwear/scenarios"
)

// judgeBands asks whether beliefs are as often true as they state.
func judgeBands(r *Report, b *Bands) {
	high := b[9]
	if high.N == 0 {
		r.add("calibration, beliefs of 0.9 to 1", "none stated", "90 to 100 % true", Open)
		return
	}
	n := float64(high.N)
	rate := float64(high.True) / n
	r.add("calibration, beliefs of 0.9 to 1", fmt.Sprintf("%.1f %% true of %d, stated %.1f %%, standard error %.1f %%", 100*rate, high.N, 100*high.Stated/n, 100*math.Sqrt(rate*(1-rate)/n)),
		"90 to 100 % true", verdict(rate >= aimTrue))
	var said []string
	for i := range b {
		if b[i].N > 0 {
			said = append(said, fmt.Sprintf("%.0f→%.0f (%d)", 100*b[i].Stated/float64(b[i].N), 100*float64(b[i].True)/float64(b[i].N), b[i].N))
		}
	}
	r.add("  stated → true [%]", strings.Join(said, " "), "", Noted)
}

// judgeRanks asks whether the truth ranks anywhere as often as anywhere else.
func judgeRanks(r *Report, ranks *Ranks) {
	n, square, p := ranks.Flat()
	said := fmt.Sprintf("%v of %d cars, chi-square %.1f on 9, p %.3f", *ranks, n, square, p)
	v := verdict(p >= aimFlat)
	if n < ranksLeast {
		v = Open
	}
	if n == 0 {
		said = "no car was played"
	}
	r.add("  rank histogram of the truth", said, fmt.Sprintf("flat: p ≥ %.2f", aimFlat), v)
}

// judgeRegret holds the model inspector against the best plan there can be.
func judgeRegret(r *Report, all []Regret) {
	var sum, worst [2]float64 // of drawn problems, of traps
	var n [2]int
	trap := 0.0
	for i := range all {
		k := 0
		if all[i].Trap > 0 {
			k, trap = 1, max(trap, all[i].Trap)
		}
		n[k]++
		sum[k] += all[i].Missed()
		worst[k] = max(worst[k], all[i].Missed())
	}
	aim := fmt.Sprintf("≤ %.0f %%", 100*aimRegret)
	for k, what := range []string{"regret against the best plan, small problems", "  traps, where one check alone tells nothing"} {
		if n[k] == 0 {
			r.add(what, "there is none", aim, Open)
			continue
		}
		mean := sum[k] / float64(n[k])
		said := fmt.Sprintf("%.2f %% in the mean of %d, %.1f %% at worst", 100*mean, n[k], 100*worst[k])
		if k == 1 {
			said += fmt.Sprintf("; one check alone tells at most %.3f bit of 1", trap)
		}
		r.add(what, said, aim, verdict(mean <= aimRegret))
	}
}

// judgePairs asks which causes cannot be told apart, and holds the library to what
// it declares of them.
func (a *Audit) judgePairs(r *Report, pairs []Pair) {
	declared, alike := 0, 0
	for _, p := range pairs {
		switch {
		case p.Sure >= aimApart:
		case a.twins(&p) != nil:
			declared++
		default:
			alike++
			r.Twins = append(r.Twins, p)
		}
	}
	slices.SortStableFunc(r.Twins, func(a, b Pair) int { return cmp.Compare(a.Sure, b.Sure) })
	v := Open
	if len(pairs) > 0 {
		v = verdict(alike == 0)
	}
	r.add("pairs of causes told apart", fmt.Sprintf("%d of %d, %d more declared twins, %d neither", len(pairs)-declared-alike, len(pairs), declared, alike),
		fmt.Sprintf("≥ %.2f each, or declared", aimApart), v)
	for i := range a.lib.Twins {
		t := &a.lib.Twins[i]
		least, met := 1.0, false
		for _, p := range pairs {
			if a.twins(&p) == t {
				least, met = min(least, p.Sure), true
			}
		}
		if !met {
			continue // not all causes are there
		}
		said := fmt.Sprintf("%.3f", least)
		if least >= aimApart {
			said += ", told apart by this bank: no twins"
		}
		r.add("  twins "+t.Causes[0].ID+" and "+t.Causes[1].ID, said, "", Noted)
	}
}

// twins is what the library declares of the causes of a pair, or nil.
func (a *Audit) twins(p *Pair) *scenarios.Twins {
	first, _, _ := strings.Cut(p.A, "@")
	second, _, _ := strings.Cut(p.B, "@")
	return a.lib.Twin(first, second)
}
