package physics

const (
	tipSide  = 1.0 // [m/s²] sideways acceleration that tips a loose hub to its end; assumed, well below an ordinary bend's
	bendSide = 3.0 // [m/s²] of an ordinary bend; assumed
	bendTime = 1   // [s] each way, then straight
)

// Tip is how far the disc's faces move away from the inner and outer pad [m] when
// a loose hub has tipped by share of the way to one end of its play, −1 to 1,
// outboard at the pads positive.
//
//	disc_in = u·P/2 − w,  disc_out = −u·P/2 − w,  w = |u|·P/2·(R − r_e)/r_e
//
// P is the play at the pads' centre. The disc moves there as a whole, and the body
// follows it on free pins. But it also leans by u·P/(2·r_e), and no pin lets the
// body lean with it: across pads that reach from r_e to the disc's edge R the
// leaning disc needs 2w more room, as if it were thicker. Error: a pad is taken
// as met at its edges alone and as stiff there as at its middle.
func (c *Corner) Tip(share float64) (in, out float64) {
	lean := float64(c.wedge * max(share, -share))
	u := float64(c.play * share)
	return u - lean, -u - lean
}

// tip adds to a load where a bend's sideways acceleration [m/s²] puts the disc of
// wheel w. The road pushes the tyre's foot towards the inside of the bend, so the
// disc goes inboard at one wheel of an axle and outboard at the other.
func (m *Model) tip(load *CornerLoad, w int, side float64) {
	c := &m.corners[w]
	if c.play == 0 || side == 0 {
		return
	}
	share := min(1, max(-1, side/tipSide))
	if w%2 == 1 { // right
		share = -share
	}
	in, out := c.Tip(share)
	load.DiscIn += in
	load.DiscOut += out
}

// shake tips the hub of wheel w to either end and lets it come upright, its
// pressure as it is: the pads stay where that has pushed them.
func (m *Model) shake(s *State, w int) error {
	if m.corners[w].play == 0 {
		return nil
	}
	for _, side := range [...]float64{tipSide, -tipSide, 0} {
		var load CornerLoad
		load.Pressure = s.Pressure[w]
		load.DiscIn, load.DiscOut = m.faces(s, w)
		m.tip(&load, w, side)
		var err error
		if s.Corners[w], s.Forces[w], err = m.corners[w].Settle(s.Corners[w], &load); err != nil {
			return err
		}
	}
	return nil
}

// Bends drives a right and a left bend at a speed [m/s], foot off, and straight
// again. A hub without play does not feel them, so a car with none is returned as
// it came, at that speed.
func (m *Model) Bends(s State, speed, ambient float64) (State, error) {
	s.Speed = speed
	loose := false
	for w := range m.corners {
		loose = loose || m.corners[w].play > 0
	}
	if !loose {
		return s, nil
	}
	in := Input{Engine: true, Hold: true, Ambient: ambient}
	for _, in.Side = range [...]float64{bendSide, -bendSide, 0} {
		var err error
		if s, err = m.Step(s, in, bendTime*1000); err != nil {
			return s, err
		}
	}
	return s, nil
}
