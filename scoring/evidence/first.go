package evidence

import "slices"

// first is what every check would tell before any reading, of the rows it was
// judged by.
type first struct {
	rows   []*tableRow
	worths []Worth
}

// AtFirst is [Posterior.All] before any reading: what is worth looking at on any
// car of this kind. It is worked out once of what the table holds; it must not be
// changed.
func (t *Table) AtFirst() ([]Worth, error) {
	p, err := t.Posterior(nil)
	if err != nil {
		return nil, err
	}
	if last := t.first.Load(); last != nil && slices.Equal(last.rows, p.rows) {
		return last.worths, nil
	}
	all := p.All()
	t.first.Store(&first{p.rows, all})
	return all, nil
}
