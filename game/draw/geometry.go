package draw

import "math"

// A Pt is a place on the sheet [unit]: x to the right, y down, 3 units = 1 mm.
type Pt struct{ X, Y float64 }

// A Rect is an upright rectangle on the sheet [unit].
type Rect struct{ X, Y, W, H float64 }

// Add returns p moved by q.
func (p Pt) Add(q Pt) Pt { return Pt{p.X + q.X, p.Y + q.Y} }

// Sub returns the way from q to p.
func (p Pt) Sub(q Pt) Pt { return Pt{p.X - q.X, p.Y - q.Y} }

// Mul returns p times k.
func (p Pt) Mul(k float64) Pt { return Pt{p.X * k, p.Y * k} }

// Len returns the length of p [unit].
func (p Pt) Len() float64 { return math.Sqrt(p.X*p.X + p.Y*p.Y) }

// unit returns p at length 1, or no way at all for a point.
func (p Pt) unit() Pt {
	l := p.Len()
	if l == 0 {
		return Pt{}
	}
	return Pt{p.X / l, p.Y / l}
}

// normal returns p turned a quarter.
func (p Pt) normal() Pt { return Pt{-p.Y, p.X} }

// Contains says whether p lies in r.
func (r Rect) Contains(p Pt) bool {
	return p.X >= r.X && p.X < r.X+r.W && p.Y >= r.Y && p.Y < r.Y+r.H
}

// Inset returns r made smaller by d on every side, or larger where d < 0.
func (r Rect) Inset(d float64) Rect {
	return Rect{r.X + d, r.Y + d, r.W - 2*d, r.H - 2*d}
}

// Centre returns the middle of r.
func (r Rect) Centre() Pt { return Pt{r.X + r.W/2, r.Y + r.H/2} }

// Corners returns the outline of r, clockwise from the top left.
func (r Rect) Corners() [4]Pt {
	return [4]Pt{{r.X, r.Y}, {r.X + r.W, r.Y}, {r.X + r.W, r.Y + r.H}, {r.X, r.Y + r.H}}
}

// Union returns the smallest rectangle that holds both; an empty one adds nothing.
func (r Rect) Union(s Rect) Rect {
	if r.W <= 0 || r.H <= 0 {
		return s
	}
	if s.W <= 0 || s.H <= 0 {
		return r
	}
	x, y := math.Min(r.X, s.X), math.Min(r.Y, s.Y)
	return Rect{x, y, math.Max(r.X+r.W, s.X+s.W) - x, math.Max(r.Y+r.H, s.Y+s.H) - y}
}

// Overlaps says whether r and s share any area.
func (r Rect) Overlaps(s Rect) bool {
	return r.X < s.X+s.W && s.X < r.X+r.W && r.Y < s.Y+s.H && s.Y < r.Y+r.H
}
