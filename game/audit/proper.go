package audit

import (
	"cmp"
	"math"
	"slices"

	"evenwear/scoring"
)

// Proper is how many spreads of counters were held against the honest one.
type Proper struct {
	Tried  int     `json:"tried"`
	Beaten int     `json:"beaten"` // spreads that expect more than the honest one
	Even   int     `json:"even"`   // other spreads that expect as much, equal remainders excepted
	Margin float64 `json:"margin"` // least that another spread loses
}

func (p *Proper) add(o Proper) {
	if p.Tried == 0 || o.Tried > 0 && o.Margin < p.Margin {
		p.Margin = o.Margin
	}
	p.Tried, p.Beaten, p.Even = p.Tried+o.Tried, p.Beaten+o.Beaten, p.Even+o.Even
}

// properPlays is in how many plays of a job spreads are tried.
const properPlays = 5

// proper tries to beat the projection of the belief that readings bear: every
// counter moved to each likely row, and all of it sharpened, flattened or put on
// one row.
func proper(s *stage, p *Played) Proper {
	var out Proper
	out.Margin = math.Inf(1)
	for i := range min(properPlays, len(p.Results)) {
		belief := p.Results[i].support
		honest := scoring.Project(belief)
		is := s.expected(honest, belief)
		try := func(other []int) {
			if slices.Equal(other, honest) {
				return
			}
			out.Tried++
			switch lost := is - s.expected(other, belief); {
			case lost < -1e-9:
				out.Beaten++
			case lost < 1e-9:
				if !evenRemainders(honest, other, belief) {
					out.Even++
				}
			default:
				out.Margin = min(out.Margin, lost)
			}
		}
		likely := likeliest(belief, 10)
		for from := range honest {
			for _, to := range likely {
				if honest[from] > 0 && to != from {
					other := slices.Clone(honest)
					other[from]--
					other[to]++
					try(other)
				}
			}
		}
		for _, e := range []float64{0.25, 0.5, 0.8, 1.25, 2, 4} {
			bent, sum := make([]float64, len(belief)), 0.0
			for j, b := range belief {
				bent[j] = math.Pow(b, e)
				sum += bent[j]
			}
			for j := range bent {
				bent[j] /= sum
			}
			try(scoring.Project(bent))
		}
		for _, to := range likely {
			all := make([]int, len(belief))
			all[to] = scoring.Counters
			try(all)
		}
	}
	if math.IsInf(out.Margin, 1) {
		out.Margin = 0
	}
	return out
}

// expected is the diagnosis mark that counters expect when a row is true with the
// probability believed.
func (s *stage) expected(counters []int, belief []float64) float64 {
	said := scoring.Spread(counters, s.prior)
	truth := make([]float64, len(belief))
	sum := 0.0
	for k, b := range belief {
		if b > 0 {
			truth[k] = 1
			sum += b * scoring.Proper(said, truth, s.prior)
			truth[k] = 0
		}
	}
	return sum
}

// evenRemainders tells that two spreads lie as far from a belief: largest
// remainders that are equal may fall to either row.
func evenRemainders(a, b []int, belief []float64) bool {
	return math.Abs(scoring.Brier(scoring.Shares(a), belief)-scoring.Brier(scoring.Shares(b), belief)) < 1e-10
}

func likeliest(belief []float64, n int) []int {
	order := make([]int, len(belief))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(belief[b], belief[a]) })
	return order[:min(n, len(order))]
}
