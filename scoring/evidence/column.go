package evidence

import "slices"

// columns are the fits of a table by check: what is wanted when one check is
// judged under every hypothesis lies side by side, not in 330 places.
type columns struct {
	rows  []*tableRow // of which they are
	check []column
}

type column struct {
	have, ok       []bool // by hypothesis
	mean, residual []float64
	slope          []float64 // [hypothesis][coordinate], row by row
}

// columnsOf gathers rows, or finds what was gathered of the same ones last.
func (t *Table) columnsOf(rows []*tableRow) *columns {
	if last := t.columns.Load(); last != nil && slices.Equal(last.rows, rows) {
		return last
	}
	n, k := len(rows), len(t.problem.Background)
	all := &columns{rows: slices.Clone(rows), check: make([]column, len(t.checks))}
	for c := range all.check {
		col := column{make([]bool, n), make([]bool, n), make([]float64, n), make([]float64, n), make([]float64, n*k)}
		for h, row := range rows {
			if row == nil || !row.have[c] {
				continue
			}
			f := &row.fits[c]
			col.have[h], col.ok[h], col.mean[h], col.residual[h] = true, f.OK, f.Mean, f.Residual
			copy(col.slope[h*k:(h+1)*k], f.Slope)
		}
		all.check[c] = col
	}
	t.columns.Store(all)
	return all
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
