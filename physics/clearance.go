package physics

// Clearance is how far each half pad's lining stands off the disc [m] (pad,
// half; below zero where it is squeezed) in a caliper that sits at s, the disc's
// faces moved by in and out [m]; see [Corner.Faces].
func (c *Corner) Clearance(s *CornerState, in, out float64) (gap [2][2]float64) {
	for j := range 2 {
		kb, b := c.kb, c.b
		if j == Lower {
			kb, b = -kb, -b
		}
		gap[Inner][j] = c.gap[Inner][j] + in - (s.X - s.Y - float64(kb*s.Tilt))
		gap[Outer][j] = c.gap[Outer][j] + out - (s.Y + float64(b*s.Tilt) - s.Bridge)
	}
	return gap
}
