package physics

import "math"

const (
	driveCeiling = 16e6  // [Pa] what a leg gives at most; a car that needs more brakes less
	aimClose     = 0.005 // [1] by which a cycle's pressure may be off
	driveClose   = 2e-4  // [1] of the wanted force
)

// want is the brake force [N] a class asks for.
func (d *trip) want(class int) float64 {
	body, stop := &d.spec.Body, &d.duty.Stops[class]
	return max(0, float64(body.Mass*stop.Decel)-body.Resistance((stop.From+stop.To)/2, 1))
}

// begin solves the pressure of every class with the brakes as they are.
func (d *trip) begin() error {
	for class := range d.duty.Stops {
		if d.duty.Stops[class].PerThousandKm == 0 {
			continue
		}
		want, p := d.want(class), d.duty.Stops[class].Decel*0.9e6
		var lastP, lastF float64
		for range 12 {
			torque, err := d.probe(class, p)
			if err != nil {
				return err
			}
			got := torque / d.spec.Body.TyreRadius
			if math.Abs(got-want) <= driveClose*want || (p >= driveCeiling && got < want) {
				break
			}
			rate := got / p // a brake is nearly straight from the origin
			if lastP > 0 && p != lastP && (got-lastF)/(p-lastP) > 0 {
				rate = (got - lastF) / (p - lastP)
			}
			lastP, lastF = p, got
			next := 2 * p
			if rate > 0 {
				next = p + (want-got)/rate
			}
			p = min(driveCeiling, max(0.3*p, min(3*p, next)))
		}
		d.pressure[class] = p
	}
	return nil
}

// probe is the torque [N·m] of all wheels at pressure p, as they are now.
func (d *trip) probe(class int, p float64) (torque float64, err error) {
	for i := range d.count {
		w := &d.wheels[i]
		t, err := w.press(class, w.line(d.spec, p))
		if err != nil {
			return 0, err
		}
		torque += float64(float64(w.count) * t)
	}
	return torque, nil
}

// aim corrects every pressure by what the last cycle's stops lacked, and for discs
// that are now as hot as is tried next, no longer as used. It tells whether all
// pressures were close.
func (d *trip) aim(used *warms) (close bool) {
	close = true
	for class := range d.duty.Stops {
		torque := 0.0
		for i := range d.count {
			w := &d.wheels[i]
			torque += float64(float64(w.count) * w.torque[class] * w.spec.Fade(w.mean) / w.spec.Fade(used[i]))
		}
		if torque > 0 {
			got := torque / (d.duty.Stops[class].PerThousandKm * d.way / 1000 * d.spec.Body.TyreRadius)
			was := d.pressure[class]
			d.pressure[class] = min(driveCeiling, was*min(2, max(0.5, d.want(class)/got)))
			close = close && math.Abs(d.pressure[class]-was) <= aimClose*was
		}
	}
	return close
}

// follow calls a change of the wheels and corrects every pressure for it, so
// that all stops brake as before.
func (d *trip) follow(change func()) error {
	var before [4]float64
	var err error
	for class := range before {
		if d.pressure[class] > 0 {
			if before[class], err = d.probe(class, d.pressure[class]); err != nil {
				return err
			}
		}
	}
	change()
	for class := range before {
		if before[class] > 0 {
			now, err := d.probe(class, d.pressure[class])
			if err != nil {
				return err
			}
			if now > 0 {
				d.pressure[class] = min(driveCeiling, d.pressure[class]*before[class]/now)
			}
		}
	}
	return nil
}
