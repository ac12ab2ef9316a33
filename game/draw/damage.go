package draw

import "image"

// damage is what has been painted since it was last asked for: few rectangles
// that cover it, so that a window uploads only these.
type damage struct {
	list [8]image.Rectangle
	n    int
}

// add widens the damage by r. Most shapes fall on ground that was cleared just
// before and cost one comparison.
func (d *damage) add(r image.Rectangle) {
	for i := range d.n {
		if r.In(d.list[i]) {
			return
		}
	}
	best, waste := -1, 0
	for i := range d.n {
		u := d.list[i].Union(r)
		w := area(u) - area(d.list[i]) - area(r)
		if best < 0 || w < waste {
			best, waste = i, w
		}
	}
	switch {
	case best >= 0 && (waste <= 4096 || d.n == len(d.list)):
		d.list[best] = d.list[best].Union(r)
	default:
		d.list[d.n] = r
		d.n++
	}
}

func area(r image.Rectangle) int { return r.Dx() * r.Dy() }

// TakeDamage appends the pixel rectangles that were painted since the last call
// to into, and forgets them. They cover everything painted and may overlap.
func (c *Canvas) TakeDamage(into []image.Rectangle) []image.Rectangle {
	into = append(into, c.damage.list[:c.damage.n]...)
	c.damage.n = 0
	return into
}
