package draw

// Moved draws what d draws with every place moved by by [unit]; sizes stay. A
// clip that was set before stays where it is.
func (c *Canvas) Moved(by Pt, d func()) {
	was := c.origin
	c.origin = was.Add(by.Mul(c.scale))
	d()
	c.origin = was
}

// Clipped draws what d draws inside r only, and inside the clip that stands.
func (c *Canvas) Clipped(r Rect, d func()) {
	was := c.clip
	c.clip = c.Pixels(r).Intersect(was)
	d()
	c.clip = was
}
