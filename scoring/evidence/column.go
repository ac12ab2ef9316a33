package evidence

import (
	"slices"
	"sync"
)

// columns are the fits of a table by check.
type columns struct {
	rows  []*tableRow // of which they are
	check []column
}

// A column is the fits of one check, equal ones once: most faults do not show at
// most checks, so there are fewer kinds of fit than hypotheses.
type column struct {
	made sync.Once
	of   []int32 // by hypothesis: its kind; −1: not computed
	kind []kind
}

// A kind is a [Fit] that tells apart from others by ==.
type kind struct {
	ok, steady     bool // steady: it does not move with the background
	mean, residual float64
	slope          [MaxBackground]float64
}

// columnsOf are those of rows, the ones wanted last if they were of the same.
func (t *Table) columnsOf(rows []*tableRow) *columns {
	if last := t.columns.Load(); last != nil && slices.Equal(last.rows, rows) {
		return last
	}
	all := &columns{rows: slices.Clone(rows), check: make([]column, len(t.checks))}
	t.columns.Store(all)
	return all
}

// column is the fits of a check under the hypotheses of p.
func (p *Posterior) column(c int) *column {
	if p.columns == nil {
		p.columns = p.t.columnsOf(p.rows)
	}
	col := &p.columns.check[c]
	col.made.Do(func() { col.gather(p.columns.rows, c) })
	return col
}

func (col *column) gather(rows []*tableRow, c int) {
	col.of = make([]int32, len(rows))
	seen := map[kind]int32{}
	for h, row := range rows {
		if row == nil || !row.have[c] {
			col.of[h] = -1
			continue
		}
		f := &row.fits[c]
		k := kind{ok: f.OK, mean: f.Mean, residual: f.Residual}
		copy(k.slope[:], f.Slope)
		k.steady = k.slope == [MaxBackground]float64{}
		at, known := seen[k]
		if !known {
			at = int32(len(col.kind))
			seen[k] = at
			col.kind = append(col.kind, k)
		}
		col.of[h] = at
	}
}

// along is mean and variance [unit, unit²] of the check turned to under a
// hypothesis: what its slopes, its instrument's bias and its fit's error make of
// what is known of the coordinates. It is [gaussian.along] without a ray.
func (a *aimed) along(g *gaussian, slope []float64) (mean, variance float64) {
	at := 0 // of row i of the packed covariance
	for i, s := range slope {
		if s != 0 {
			mean += float64(s * g.mean[i])
			for j, other := range slope[:i] {
				variance += float64(2 * s * other * g.cov[at+j])
			}
			variance += float64(s * s * g.cov[at+i])
		}
		at += i + 1
	}
	one := func(at int, coef float64) {
		mean += float64(coef * g.mean[at])
		row := g.cov[at*(at+1)/2:]
		for j, s := range slope {
			variance += float64(2 * coef * s * row[j])
		}
		variance += float64(coef * coef * row[at])
	}
	if a.biasAt >= 0 {
		one(a.biasAt, a.bias)
	}
	if a.fitAt >= 0 {
		one(a.fitAt, 1)
		if a.biasAt >= 0 {
			variance += float64(2 * a.bias * g.at(a.biasAt, a.fitAt))
		}
	}
	return mean, max(0, variance)
}
