package physics

import "math"

// releaseSteps are the settlings of one release at most: let go, a turn to
// re-establish the drag with a place between, and one to measure it.
const releaseSteps = 4 + len(turnCosines)

// turnCosines is a turn of the disc in steps of 60°, ending where it began.
var turnCosines = [6]float64{0.5, -0.5, -1, -0.5, 0.5, 1}

const turnEven = 0.9 // [1] of a half pad's greatest force in a turn, by which it may change

// wornWheel is one distinct wheel of a trip.
type wornWheel struct {
	wheel  Wheel
	count  int // wheels in the same condition
	spec   *CornerSpec
	cond   WheelCondition
	corner Corner
	rest   CornerState // released
	leaked float64     // [m³]
	solves *int        // counts [wornWheel.settle], unless nil

	// Of the present cycle:
	work   float64    // [J] of friction
	torque [4]float64 // [N·m] summed over the stops of a class
	slip   float64    // [m] estimated error of wear
	falls  [2][2]fall // the latest of each half pad
	bent   float64    // [1] greatest bend seen
	drags  bool       // its drag is worth following

	lore
	seen [4][1 + releaseSteps]glimpse
}

// begin settles a wheel as it stands before the trip.
func (w *wornWheel) begin(spec *Spec, cond *Condition, wheel Wheel) error {
	c := spec.Corner(wheel)
	*w = wornWheel{wheel: wheel, count: 1, spec: c, cond: cond.Wheels[wheel],
		lore: lore{rounds: 1, less: roundsLess, mean: roomAir}}
	w.corner = NewCorner(c, &w.cond, wheel.String())
	var err error
	w.rest, err = Released(c, &w.cond, wheel.String())
	return err
}

// Released is where a caliper sits after it has been taken 0 → 8 → 0 MPa once
// from zero displacements and anchors, quasi-static. A seized pin first takes
// the place a healthy one has then, unless the condition says where it seized.
func Released(spec *CornerSpec, cond *WheelCondition, name string) (CornerState, error) {
	var s CornerState
	var err error
	stuck := [2]bool{}
	for i := range 2 {
		stuck[i] = spec.PinFriction+cond.PinGrip(i) >= seizedPin && !cond.PinAnchorSet[i]
	}
	if stuck[0] || stuck[1] {
		free := *cond
		for i := range 2 {
			if stuck[i] {
				free.PinFriction[i], free.PinPinch[i] = 0, 0
			}
		}
		if s, err = Released(spec, &free, name); err != nil {
			return s, err
		}
	}
	for i := range 2 {
		if cond.PinAnchorSet[i] {
			s.PinAnchor[i] = cond.PinAnchor[i]
		}
	}
	c := NewCorner(spec, cond, name)
	s, _, err = c.press(s)
	return s, err
}

// A glimpse is how far a caliper last moved in one situation, to look for it there
// first: that saves steps, and where it is found does not depend on it.
type glimpse struct {
	x, y, tilt, bridge float64
}

// settle is [Corner.Settle] begun as far from s as the caliper moved last time.
func (w *wornWheel) settle(s CornerState, load *CornerLoad, g *glimpse) (CornerState, CornerForces, error) {
	if w.solves != nil {
		*w.solves++
	}
	from := s
	s.X += g.x
	s.Y += g.y
	s.Tilt += g.tilt
	s.Bridge += g.bridge
	f, err := w.corner.find(&s, load, nil)
	*g = glimpse{s.X - from.X, s.Y - from.Y, s.Tilt - from.Tilt, s.Bridge - from.Bridge}
	return s, f, err
}

// line is the pressure at this wheel when its chamber has p [Pa].
func (w *wornWheel) line(spec *Spec, p float64) float64 {
	if v := &spec.Valve; !w.wheel.Front() && v.Knee > 0 {
		if knee, slope := v.at(w.cond.ValveStuck); p > knee {
			return knee + float64(slope*(p-knee))
		}
	}
	return p
}

// press is the torque [N·m] the wheel would make at p [Pa].
func (w *wornWheel) press(class int, p float64) (float64, error) {
	_, f, err := w.settle(w.rest, &CornerLoad{Pressure: p}, &w.seen[class][0])
	return w.corner.Torque(&f) * w.spec.Fade(w.mean), err
}

// release lets go from a pressed state and turns the disc, once to re-establish
// the drag and once to measure it: the mean force of each half over a turn [N],
// and how it touched.
//
// Where the turn only bends the caliper, force follows the disc's place: the ends of
// its way tell the mean if it takes no half pad off the disc, and two places between
// if it does, one on the way there and one on the way back, as ears rub both ways.
func (w *wornWheel) release(s CornerState, l *lump) (half [2][2]float64, touch contact, err error) {
	load := CornerLoad{Pressure: min(l.pressure, w.cond.HoseHold)}
	step := 0
	turn := func(to float64) (f CornerForces) {
		if err == nil {
			step++
			load.DiscIn, load.DiscOut = w.corner.Faces(to)
			s, f, err = w.settle(s, &load, &w.seen[l.class][step])
		}
		return f
	}
	first := turn(1)
	low := turn(-1)
	from := s
	var rising CornerForces
	parts := !follows(&low.Half, &first.Half, false)
	if parts {
		rising = turn(-0.5)
	}
	high := turn(1)
	w.rest = s
	slides := slid(&from, &s)
	touch = touching(&first.Half) | touching(&low.Half)<<4 | touching(&high.Half)<<8
	if slides {
		touch |= slidInTurn
	}
	switch {
	case follows(&low.Half, &high.Half, slides):
		return mean(&low.Half, &high.Half), touch, err
	case parts && !slides:
		falling := turn(0.5)
		ends, between := mean(&low.Half, &high.Half), mean(&rising.Half, &falling.Half)
		for i := range 2 {
			for j := range 2 {
				half[i][j] = (ends[i][j] + float64(2*between[i][j])) / 3
			}
		}
		return half, touch, err
	}
	for _, to := range turnCosines {
		f := turn(to)
		for i := range 2 {
			for j := range 2 {
				half[i][j] += f.Half[i][j] / float64(len(turnCosines))
			}
		}
	}
	w.rest = s
	touch |= wholeTurn
	return half, touch, err
}

// slid tells whether piston or pins slid from one state to the other. Ears do at
// every move, and nothing comes of it.
func slid(a, b *CornerState) bool {
	return a.SealAnchor != b.SealAnchor || a.PinAnchor != b.PinAnchor
}

// follows tells whether the same half pads touch the disc at both ends of its way,
// and, if something slid on it, all with nearly the same force.
func follows(a, b *[2][2]float64, slid bool) bool {
	for i := range 2 {
		for j := range 2 {
			low, high := min(a[i][j], b[i][j]), max(a[i][j], b[i][j])
			if high > 0 && low == 0 || slid && high-low > turnEven*high {
				return false
			}
		}
	}
	return true
}

// mean is the mean force of each half [N].
func mean(a, b *[2][2]float64) (half [2][2]float64) {
	for i := range 2 {
		for j := range 2 {
			half[i][j] = (a[i][j] + b[i][j]) / 2
		}
	}
	return half
}

// wearRate is how much a half pad wears per newton and metre slid [1/N].
func (w *wornWheel) wearRate() float64 {
	return w.spec.WearRate * hotWear(w.mean) / (w.spec.LiningArea / 2)
}

// takeOff moves lining and disc back by what forces [N] wore over slid [m].
func (w *wornWheel) takeOff(half *[2][2]float64, slid float64) {
	rate := w.wearRate() * slid
	for i := range 2 {
		k := rate
		if deep := w.cond.Groove[i]; deep > 0 {
			k *= scored(deep)
		}
		disc := Archard(w.spec.DiscWearRate, half[i][Upper]+half[i][Lower], slid) / w.spec.sweptArea()
		w.cond.DiscWear[i] += disc
		for j := range 2 {
			// The plate behind the lining does not wear.
			worn := min(float64(k*half[i][j]), max(0, w.spec.LiningNew-w.cond.Wear[i][j]))
			w.cond.Wear[i][j] += worn
			w.corner.gap[i][j] += worn + disc
		}
	}
	f := CornerForces{Half: *half}
	w.work += float64((w.corner.padFriction(&f, Inner) + w.corner.padFriction(&f, Outer)) * slid)
}

// loses lets a leak run while a lump's stops press and the car waits after them.
func (w *wornWheel) loses(d *trip, l *lump) {
	if holes := w.cond.Holes(); holes > 0 {
		stop, rho := &d.duty.Stops[l.class], d.spec.Fluid.Density
		w.leaked += float64(l.number * jetShare * holes *
			(float64(math.Sqrt(2*l.pressure/rho)*stop.time()) + float64(halt(stop)*math.Sqrt(2*waitPressure/rho))))
	}
}

// warmth is how warm [°C] the disc must be to lose the friction work of the
// present cycle to the air at the duty's speed. Its mean changes in minutes, a
// cycle takes hours, so no heat is stored.
func (w *wornWheel) warmth(duty *Duty, way, radius float64) float64 {
	air := roomAir + duty.Ambient
	heat := newBrakeHeat(w.spec, &w.cond)
	power := w.work / way * duty.Speed
	t := w.mean
	for range 6 { // radiation grows with temperature; each pass errs a third as much
		outside, inside := heat.films(t, air, duty.Speed, duty.Speed/radius)
		t = (t + air + power/(2*heat.area*(outside+inside))) / 2
	}
	return t
}

// end writes the wheel back.
func (w *wornWheel) end(c *WheelCondition) {
	c.Wear, c.DiscWear = w.cond.Wear, w.cond.DiscWear
	for i := range 2 {
		if w.spec.PinFriction+c.PinGrip(i) >= seizedPin {
			c.PinAnchorSet[i], c.PinAnchor[i] = true, w.rest.PinAnchor[i]
		}
	}
}

// contact is how the pads met the disc in a turn, a bit each: which half pads touched it
// at its first place and at both ends of its way, whether something slid meanwhile, and
// whether the turn was taken in small steps. What changes none of this changes forces smoothly.
type contact int

const (
	slidInTurn contact = 1 << (12 + iota)
	wholeTurn
)

// touching is which half pads touch the disc, a bit each.
func touching(half *[2][2]float64) (bits contact) {
	for i := range 2 {
		for j := range 2 {
			if half[i][j] > 0 {
				bits |= 1 << (2*i + j)
			}
		}
	}
	return bits
}
