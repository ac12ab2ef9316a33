package physics

// A lump is some stops of a class with the way between them.
type lump struct {
	class    int
	number   float64
	pressure float64 // [Pa] at the wheel
	pressed  float64 // [m] a pad slides under it
	dragged  float64 // [m] a pad slides in between
}

func (d *trip) lump(w *wornWheel, class int, number float64) lump {
	perRadian := number * w.spec.EffectiveRadius / d.spec.Body.TyreRadius
	return lump{class, number, w.line(d.spec, d.pressure[class]),
		d.duty.Stops[class].way() * perRadian, d.between() * perRadian}
}

// A phase is what the classes of a group press and drag with [N] at one moment.
type phase struct {
	press, drag [4][2][2]float64
	touch       [4]contact
	held        [4]bool     // neither piston nor pins slid, so that the drag is what is left of before
	pressed     CornerState // by the last
}

// lumps wears what a group of lumps wears, mingled.
//
// Every stop re-establishes the drag, from linings that have worn a little more
// since, so press and drag are functions of the wear w: dw/ds = K·N(w). N is looked at
// before and after, N after being what stop and release leave once all has worn off as
// before; [wornWheel.between] makes a mean of them. What holds the caliper then follows
// to where the last stop of the lump finds it.
func (w *wornWheel) lumps(d *trip, group []lump) error {
	stops := 0.0
	for i := range group {
		w.loses(d, &group[i])
		stops += group[i].number
	}
	var first, second phase
	if err := w.look(group, &first, true); err != nil {
		return err
	}
	rest, work, cond, gap := w.rest, w.work, w.cond, w.corner.gap
	w.wear(group, &first)
	drags := worthLooking(group, &first, dragWorth)
	if often := group[0].number >= lumpOften || group[0].class == d.order[0]; often || drags {
		w.drags = w.drags || often && worthLooking(group, &first, dragCoarse)
		if !often && w.foresees(first.touch[0]) {
			second = w.foresee(&first, &cond)
		} else if err := w.look(group, &second, drags); err != nil {
			return err
		}
		from, to, supposed := rest, w.rest, w.since(&cond)
		if !drags {
			from, to, second.drag = first.pressed, second.pressed, first.drag
		}
		w.rest, w.work, w.cond, w.corner.gap = rest, work, cond, gap
		w.slip += w.between(group, &first, &second, often)
		w.wear(group, &first)
		if stops >= lumpOften && supposed > 0 {
			w.rest.follow(&from, &to, w.since(&cond)/supposed*(1-1/stops))
		}
	}
	for l := range group {
		f := CornerForces{Half: first.press[l]}
		w.torque[group[l].class] += float64(group[l].number * w.corner.Torque(&f) * w.spec.Fade(w.mean))
	}
	return nil
}

// worthLooking tells whether drag wears enough to follow how it changes.
func worthLooking(group []lump, at *phase, share float64) bool {
	stops, drag := 0.0, 0.0
	for l := range group {
		for i := range 2 {
			for j := range 2 {
				stops = max(stops, at.press[l][i][j]*group[l].pressed)
				drag = max(drag, at.drag[l][i][j]*group[l].dragged)
			}
		}
	}
	return drag > share*stops
}

// look presses and, if asked, releases the wheel once in every class of a group.
// Each class finds what one stop of the one before it has worn; after that the
// wear is as it was.
func (w *wornWheel) look(group []lump, at *phase, drag bool) error {
	work, cond, gap := w.work, w.cond, w.corner.gap
	for i := range group {
		l := &group[i]
		if i > 0 && drag {
			w.takeOff(&at.press[i-1], group[i-1].pressed/group[i-1].number)
			w.takeOff(&at.drag[i-1], group[i-1].dragged/group[i-1].number)
		}
		s, f, err := w.settle(w.rest, &CornerLoad{Pressure: l.pressure}, &w.seen[l.class][0])
		if err != nil {
			return err
		}
		at.press[i], at.pressed = f.Half, s
		if drag {
			was := w.rest
			if at.drag[i], at.touch[i], err = w.release(s, l); err != nil {
				return err
			}
			at.held[i] = !slid(&was, &w.rest)
		}
	}
	w.work, w.cond, w.corner.gap = work, cond, gap
	return nil
}

// wear takes off what the forces of a phase wear.
func (w *wornWheel) wear(group []lump, at *phase) {
	for i := range group {
		w.takeOff(&at.press[i], group[i].pressed)
		w.takeOff(&at.drag[i], group[i].dragged)
	}
}

// follow moves a state by a share of the way from one to another.
func (s *CornerState) follow(from, to *CornerState, share float64) {
	toward := func(x *float64, a, b float64) { *x += float64((b - a) * share) }
	toward(&s.X, from.X, to.X)
	toward(&s.Y, from.Y, to.Y)
	toward(&s.Tilt, from.Tilt, to.Tilt)
	toward(&s.Bridge, from.Bridge, to.Bridge)
	toward(&s.SealAnchor, from.SealAnchor, to.SealAnchor)
	for i := range 2 {
		toward(&s.PinAnchor[i], from.PinAnchor[i], to.PinAnchor[i])
		toward(&s.EarAnchor[i], from.EarAnchor[i], to.EarAnchor[i])
	}
}
