package evidence

// names sorts hypotheses into what they say is wrong (a class: one row, or two),
// and rows into causes and places. What is believed of a class of two rows is
// half on each.
type names struct {
	classOf    []int    // hypothesis -> class
	classIDs   []string // "pins_dry@front_left", "pins_dry@front_left + fluid_topped_up@car"
	parts      [][2]int // class -> its rows; the second is −1 where there is one
	rowIDs     []string
	causeOf    []int // hypothesis -> cause, or both causes
	causesOf   []string
	causeOfRow []int
	placeOfRow []int
	causeIDs   []string
	placeIDs   []string
}

func (n *names) add(h *Hypothesis) {
	row := n.row(h.Row, h.Cause, h.Place)
	also, cause := -1, h.Cause
	if h.Also.Row != "" {
		also, cause = n.row(h.Also.Row, h.Also.Cause, h.Also.Place), h.Cause+And+h.Also.Cause
	}
	c := group(&n.classIDs, h.classID())
	if c == len(n.parts) {
		n.parts = append(n.parts, [2]int{row, also})
	}
	n.classOf = append(n.classOf, c)
	n.causeOf = append(n.causeOf, group(&n.causesOf, cause))
}

func (n *names) row(id, cause, place string) int {
	r := group(&n.rowIDs, id)
	if r == len(n.causeOfRow) {
		n.causeOfRow = append(n.causeOfRow, group(&n.causeIDs, cause))
		n.placeOfRow = append(n.placeOfRow, group(&n.placeIDs, place))
	}
	return r
}

// rows is what is believed of each row when prob is believed of each hypothesis.
func (n *names) rows(prob []float64) []Belief {
	all := beliefs(n.rowIDs)
	for h, c := range n.classOf {
		switch p := n.parts[c]; {
		case p[1] < 0:
			all[p[0]].P += prob[h]
		default:
			all[p[0]].P += float64(prob[h] / 2)
			all[p[1]].P += float64(prob[h] / 2)
		}
	}
	return all
}

// gathered sums rows by a group of theirs.
func gathered(rows []Belief, of []int, ids []string) []Belief {
	all := beliefs(ids)
	for r, g := range of {
		all[g].P += rows[r].P
	}
	return all
}

func beliefs(ids []string) []Belief {
	all := make([]Belief, len(ids))
	for i, id := range ids {
		all[i].ID = id
	}
	return all
}

// exactly reports whether a class is these rows and no others.
func (n *names) exactly(class int, rows []string) bool {
	p := n.parts[class]
	switch {
	case p[1] < 0:
		return len(rows) == 1 && n.rowIDs[p[0]] == rows[0]
	case len(rows) != 2:
		return false
	}
	a, b := n.rowIDs[p[0]], n.rowIDs[p[1]]
	return a == rows[0] && b == rows[1] || a == rows[1] && b == rows[0]
}
