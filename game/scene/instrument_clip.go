package scene

import (
	"math"

	"evenwear/game/draw"
)

// A lens enlarges a piece of the drawing about a place: a detail circle. What
// is drawn through it is cut at its rim.
type lens struct {
	from, at draw.Pt // the middle of the piece and of the circle, on the sheet
	r        float64 // [unit] of the circle
	k        float64 // enlargement
	rim      [48]draw.Pt
	in, out  []draw.Pt
}

func newLens(from, at draw.Pt, r, k float64) *lens {
	l := &lens{from: from, at: at, r: r, k: k}
	for i := range l.rim {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(l.rim)))
		l.rim[i] = at.Add(draw.Pt{X: r * c, Y: r * s})
	}
	return l
}

// see is where a place of the drawing stands in the lens.
func (l *lens) see(p draw.Pt) draw.Pt { return l.at.Add(p.Sub(l.from).Mul(l.k)) }

// cut returns an outline of the drawing as seen through the lens. It is cut by
// one chord of the rim after the other (Sutherland and Hodgman, 1974).
func (l *lens) cut(outline []draw.Pt) []draw.Pt {
	l.out = l.out[:0]
	for _, p := range outline {
		l.out = append(l.out, l.see(p))
	}
	for i, a := range l.rim {
		b := l.rim[(i+1)%len(l.rim)]
		side := func(p draw.Pt) float64 { return (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X) }
		l.in, l.out = append(l.in[:0], l.out...), l.out[:0]
		for j, q := range l.in {
			p := l.in[(j+len(l.in)-1)%len(l.in)]
			sp, sq := side(p), side(q)
			if sp*sq < 0 {
				l.out = append(l.out, p.Add(q.Sub(p).Mul(sp/(sp-sq))))
			}
			if sq >= 0 {
				l.out = append(l.out, q)
			}
		}
	}
	return l.out
}

// line draws what the lens shows of a straight line.
func (l *lens) line(c *draw.Canvas, a, b draw.Pt, p draw.Pen) {
	a, b = l.see(a), l.see(b)
	d, e := b.Sub(a), a.Sub(l.at)
	dd, de, ee := d.X*d.X+d.Y*d.Y, d.X*e.X+d.Y*e.Y, e.X*e.X+e.Y*e.Y
	root := de*de - dd*(ee-l.r*l.r)
	if !(root > 0) || dd == 0 {
		return
	}
	root = math.Sqrt(root)
	t0, t1 := max((-de-root)/dd, 0), min((-de+root)/dd, 1)
	if t0 < t1 {
		c.Line(a.Add(d.Mul(t0)), a.Add(d.Mul(t1)), p)
	}
}
