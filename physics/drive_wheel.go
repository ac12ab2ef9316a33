package physics

// wornWheel is one distinct wheel of a trip.
type wornWheel struct {
	wheel  Wheel
	count  int // wheels in the same condition
	spec   *CornerSpec
	cond   WheelCondition
	corner Corner
	leak   float64 // [m²]

	rest     CornerState  // released
	pressed  CornerState  // at the peak of the present class
	forces   CornerForces // there
	yield    [2][2]float64
	slid     float64 // [m] of the present class
	pressure float64 // [Pa] at the wheel, of the present class
	mean     float64 // [°C] of the disc
	work     float64 // [J] of friction in the present cycle
}

// begin settles a wheel as it stands before the trip.
func (w *wornWheel) begin(spec *Spec, cond *Condition, wheel Wheel) error {
	c := spec.Corner(wheel)
	*w = wornWheel{wheel: wheel, count: 1, spec: c, cond: cond.Wheels[wheel], leak: cond.Wheels[wheel].Leak, mean: roomAir}
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
		stuck[i] = spec.PinFriction+cond.PinFriction[i] >= seizedPin && !cond.PinAnchorSet[i]
	}
	if stuck[0] || stuck[1] {
		free := *cond
		for i := range 2 {
			if stuck[i] {
				free.PinFriction[i] = 0
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

// line is the pressure at this wheel when its chamber has p [Pa].
func (w *wornWheel) line(spec *Spec, p float64) float64 {
	if v := &spec.Valve; !w.wheel.Front() && v.Knee > 0 && p > v.Knee {
		return v.Knee + float64(v.Slope*(p-v.Knee))
	}
	return p
}

// press applies the brake from rest to p [Pa] for stops in which the wheel
// turns by turned [rad] in all, and returns its torque [N·m].
func (w *wornWheel) press(p, turned float64) (float64, error) {
	w.pressure = p
	w.slid = turned * w.spec.EffectiveRadius
	w.setYield(w.slid, hotWear(w.mean))
	load := CornerLoad{Pressure: p, Yield: w.yield}
	var err error
	if w.pressed, w.forces, err = w.corner.Settle(w.rest, &load); err != nil {
		return 0, err
	}
	return w.corner.Torque(&w.forces) * w.spec.Fade(w.mean), nil
}

// setYield makes every half pad wear over slid [m] while it is solved.
func (w *wornWheel) setYield(slid, hot float64) {
	k := w.spec.WearRate * hot * slid / (w.spec.LiningArea / 2)
	for i := range 2 {
		for j := range 2 {
			w.yield[i][j] = k
			if w.cond.Wear[i][j] >= w.spec.LiningNew {
				w.yield[i][j] = 0 // the plate does not wear
			}
		}
	}
}

// wear takes off what the stops just solved have worn.
func (w *wornWheel) wear() {
	w.takeOff(&w.forces.Half, w.yield, w.slid)
	w.work += float64((w.corner.padFriction(&w.forces, Inner) + w.corner.padFriction(&w.forces, Outer)) * w.slid)
}

// takeOff moves lining and disc back by what forces [N] wore over slid [m].
func (w *wornWheel) takeOff(half *[2][2]float64, yield [2][2]float64, slid float64) {
	for i := range 2 {
		disc := Archard(w.spec.DiscWearRate, half[i][Upper]+half[i][Lower], slid) / w.spec.sweptArea()
		w.cond.DiscWear[i] += disc
		for j := range 2 {
			worn := min(float64(yield[i][j]*half[i][j]), max(0, w.spec.LiningNew-w.cond.Wear[i][j]))
			w.cond.Wear[i][j] += worn
			w.corner.gap[i][j] += worn + disc
		}
	}
}

// turnCosines is a turn of the disc in steps of 60°, ending where it began.
var turnCosines = [6]float64{0.5, -0.5, -1, -0.5, 0.5, 1}

// release lets go from the peak and turns the disc, once to re-establish the
// drag and once to measure it: the mean force of each half over a turn [N].
func (w *wornWheel) release() (half [2][2]float64, err error) {
	s := w.pressed
	left := min(w.pressure, w.cond.HoseHold)
	load := CornerLoad{Pressure: left}
	load.DiscIn, load.DiscOut = w.corner.Faces(1)
	var f CornerForces
	if s, f, err = w.corner.Settle(s, &load); err != nil {
		return half, err
	}
	if f.Inner()+f.Outer() > 0 {
		for _, c := range [2]float64{-1, 1} {
			load.DiscIn, load.DiscOut = w.corner.Faces(c)
			if s, f, err = w.corner.Settle(s, &load); err != nil {
				return half, err
			}
		}
	}
	for _, c := range turnCosines {
		load.DiscIn, load.DiscOut = w.corner.Faces(c)
		if s, f, err = w.corner.Settle(s, &load); err != nil {
			return half, err
		}
		for i := range 2 {
			for j := range 2 {
				half[i][j] += f.Half[i][j] / 6
			}
		}
	}
	w.rest = s
	return half, nil
}

const dragTrial = 5e-6 // [m] of wear tried to see how drag answers

// rub lets residual drag wear until the next class of stops, the wheel turning
// by turned [rad].
//
// Every real stop re-establishes the drag, so drag wears at the rate of a fresh
// release as long as release does not change: w = K·N. Where the body no longer
// follows (seized pins) wear relaxes it: N = N₀ − κ·w. The implicit answer for
// both is w = K·N₀/(1 + K·κ), κ from a second release with a little worn off.
func (w *wornWheel) rub(turned float64) error {
	slid := turned * w.spec.EffectiveRadius
	half, err := w.release()
	if err != nil {
		return err
	}
	w.setYield(slid, hotWear(w.mean))
	most := 0.0
	for i := range 2 {
		for j := range 2 {
			most = max(most, w.yield[i][j]*half[i][j])
		}
	}
	if most > dragTrial {
		kept, gap := w.rest, w.corner.gap
		share := dragTrial / most
		for i := range 2 {
			for j := range 2 {
				w.corner.gap[i][j] += float64(share * w.yield[i][j] * half[i][j])
			}
		}
		if w.pressed, _, err = w.corner.Settle(kept, &CornerLoad{Pressure: w.pressure}); err != nil {
			return err
		}
		less, err := w.release()
		if err != nil {
			return err
		}
		w.rest, w.corner.gap = kept, gap
		for i := range 2 {
			for j := range 2 {
				n, k := half[i][j], w.yield[i][j]
				if trial := share * k * n; trial > 0 {
					half[i][j] = n / (1 + float64(k*max(0, n-less[i][j])/trial))
				}
			}
		}
	}
	w.takeOff(&half, w.yield, slid)
	f := CornerForces{Half: half}
	w.work += float64((w.corner.padFriction(&f, Inner) + w.corner.padFriction(&f, Outer)) * slid)
	return nil
}

// warm sets the temperature of the next cycle from the friction work of this
// one: as warm as the disc must be to lose that to the air at the duty's speed.
func (w *wornWheel) warm(duty *Duty, way, radius float64) {
	air := roomAir + duty.Ambient
	heat := newBrakeHeat(w.spec, &w.cond)
	power := w.work / way * duty.Speed
	for range 6 { // radiation grows with temperature; each pass errs a third as much
		outside, inside := heat.films(w.mean, air, duty.Speed, duty.Speed/radius)
		w.mean = (w.mean + air + power/(2*heat.area*(outside+inside))) / 2
	}
	w.work = 0
}

// end writes the wheel back.
func (w *wornWheel) end(c *WheelCondition) {
	c.Wear, c.DiscWear = w.cond.Wear, w.cond.DiscWear
	for i := range 2 {
		if w.spec.PinFriction+w.cond.PinFriction[i] >= seizedPin {
			c.PinAnchorSet[i], c.PinAnchor[i] = true, w.rest.PinAnchor[i]
		}
	}
}
