package practice

import (
	"cmp"
	"math"
	"slices"

	"evenwear/game/play"
	"evenwear/scoring/learner"
	"evenwear/scoring/record"
)

// Notes is from how many of the last cars of which only notes were there a
// misconception is named, and from how many of the others: from so many it is told from
// slips, and what was mended is forgotten.
const Notes = 10

// A Naming is a misconception that explains a learner's last cars better than
// slips do.
type Naming struct {
	Idea   string
	Better float64          // [nat]
	Shows  [2]record.Result // the two cars that show it most, the most first
}

// Explained is how well misconceptions explain what somebody believed of a car
// after what they had read there; it is kept with what the debrief came to.
func Explained(s play.Said) ([]record.Idea, error) {
	all, err := learner.ExplainAll(s.Counters, s.Table, s.Readings)
	if err != nil {
		return nil, err
	}
	list := make([]record.Idea, len(all))
	for i := range all {
		list[i] = record.Idea{ID: all[i].Idea, LnP: make([]float64, learner.Points)}
		for g, x := range all[i].Explanation {
			list[i].LnP[g] = min(0, math.Round(100*x)/100)
		}
	}
	return list, nil
}

// Named is the misconception that a learner's last cars show. Cars of which
// nothing of the kind is kept are passed over; one car alone names nothing, nor do
// two of which one does not show it.
func Named(history []record.Result) (n Naming, ok bool) {
	cars, real, ids, ideas := explanations(history)
	if len(cars) < 2 {
		return n, false
	}
	named := learner.Name(real, ids, ideas)
	if named.Idea == "" || named.Shown[1] <= 0 {
		return n, false
	}
	n = Naming{Idea: named.Idea, Better: named.Better}
	for i, j := range named.Jobs {
		n.Shows[i] = cars[j]
	}
	return n, true
}

// Ideas are all misconceptions that a learner's last cars could show, each with by
// how much [nat] it explains them better than slips do, the best first.
func Ideas(history []record.Result) []record.Figure {
	_, real, ids, ideas := explanations(history)
	var list []record.Figure
	for m := range ids {
		list = append(list, record.Figure{ID: ids[m], N: learner.Name(real, ids[m:m+1], ideas[m:m+1]).Better})
	}
	slices.SortStableFunc(list, func(a, b record.Figure) int { return cmp.Compare(b.N, a.N) })
	return list
}

// explanations are those of the last cars: real[j] by the real table, ideas[m][j]
// by misconception m of ids, which is the real one's where it was not asked.
func explanations(history []record.Result) (cars []record.Result, real []learner.Explanation, ids []string, ideas [][]learner.Explanation) {
	left := map[bool]int{true: Notes, false: Notes}
	for _, r := range slices.Backward(inTime(history)) {
		if on := noted(&r); asked(r.Ideas) && left[on] > 0 {
			left[on]--
			cars = append(cars, r)
		}
	}
	slices.Reverse(cars)
	for i := range cars {
		for _, x := range cars[i].Ideas[1:] {
			if !slices.Contains(ids, x.ID) {
				ids = append(ids, x.ID)
			}
		}
	}
	slices.Sort(ids)
	ideas = make([][]learner.Explanation, len(ids))
	for i := range cars {
		list := cars[i].Ideas
		real = append(real, learner.Explanation(list[0].LnP))
		for m, id := range ids {
			at := max(0, slices.IndexFunc(list, func(x record.Idea) bool { return x.ID == id }))
			ideas[m] = append(ideas[m], learner.Explanation(list[at].LnP))
		}
	}
	return cars, real, ids, ideas
}

// asked tells that a result holds what ideas explain of it, at the points they are
// asked at today.
func asked(list []record.Idea) bool {
	if len(list) == 0 || list[0].ID != "" {
		return false
	}
	for i, x := range list {
		_, known := learner.Misconceived(x.ID)
		if len(x.LnP) != learner.Points || i > 0 && !known {
			return false
		}
	}
	return true
}
