package draw

import "math"

// Pencil draws a line the learner drew: it wanders by ±0.7 and a second, weaker
// stroke goes over it. The wander comes from a fixed seed and the place, never
// from a clock, so a picture of the same facts is the same picture.
func (c *Canvas) Pencil(pts []Pt) {
	for pass, w := range [2]float64{pencil.Width, pencil.Width * 0.45} {
		c.wander(pts, uint32(pass))
		c.strokePath(false, Pen{Width: w, Col: c.Theme.Graphite})
	}
}

// wanderStep is how long a hand goes straight [unit].
const wanderStep = 9

// wander puts pts into c.path [px] with the unsteadiness of a hand.
func (c *Canvas) wander(pts []Pt, pass uint32) {
	c.path = c.path[:0]
	seed := 0x9E3779B9 + pass*0x85EBCA6B
	for i, p := range pts {
		if i > 0 {
			a := pts[i-1]
			n := int(math.Min(p.Sub(a).Len()/wanderStep, 1000))
			for k := 1; k <= n; k++ {
				c.path = append(c.path, c.astray(a.Add(p.Sub(a).Mul(float64(k)/float64(n+1))), &seed))
			}
		}
		c.path = append(c.path, c.astray(p, &seed))
	}
}

// astray moves p by up to 0.7 either way.
func (c *Canvas) astray(p Pt, seed *uint32) Pt {
	return c.px(p.Add(Pt{0.7 * noise(seed), 0.7 * noise(seed)}))
}

// noise returns the next number of a linear congruential series, −1 to 1
// (multiplier and increment as in Numerical Recipes, 2nd ed., 7.1).
func noise(s *uint32) float64 {
	*s = *s*1664525 + 1013904223
	return float64(*s>>8)/(1<<23) - 1
}
