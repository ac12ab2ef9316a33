package physics

import "math"

const (
	cycleShortest = 20.0   // [km]
	cycleLongest  = 250.0  // [km]
	driveCeiling  = 16e6   // [Pa] what a leg gives at most; a car that needs more brakes less
	driveClose    = 2e-4   // [1] of the wanted force
	jetShare      = 0.6    // [1] discharge coefficient of a leak's orifice
	waitPressure  = 1e6    // [Pa] foot resting on the brake at a halt; assumed
	waitTime      = 12.0   // [s] a halt lasts; assumed
	seizedPin     = 2000.0 // [N] sliding force from which a pin keeps its anchor: no brake moves it
)

// Drive wears and ages the car for km [km] and returns its new condition.
//
// It drives cycles: as far as the rarest stop of the duty comes round once, each
// with its share of every class. For a class the line pressure is solved that
// gives the wanted deceleration with the brakes as they are, so a weak wheel
// makes the driver press harder and all others wear for it. The linings wear
// implicitly while pressed; then the brake is released, the disc turned, and
// what still rubs wears on until the next stop. Corners are quasi-static. Wheels
// of one axle in equal condition are computed once. After two cycles as many
// more are taken by their trend as it can be trusted for; see [trip.leap].
//
// Error: below 1 % of any lining (twice the rounds; see the test).
func Drive(spec *Spec, cond Condition, duty Duty, km float64) (Condition, error) {
	if err := duty.check(km); err != nil {
		return cond, err
	}
	return drive(spec, cond, duty, km, 1)
}

// drive is Drive with a cycle's frequent stops taken in that many rounds, and
// the trend trusted for that much less.
func drive(spec *Spec, cond Condition, duty Duty, km float64, rounds int) (Condition, error) {
	d := trip{spec: spec, duty: &duty}
	for w := range Wheel(NumWheels) {
		if mate := w.Mate(); mate < w && cond.Wheels[w] == cond.Wheels[mate] {
			d.same[w] = d.same[mate]
			d.wheels[d.same[w]].count++
			continue
		}
		d.same[w] = d.count
		if err := d.wheels[d.count].begin(spec, &cond, w); err != nil {
			return cond, err
		}
		d.count++
	}
	class, often := duty.rarest()
	if often > 0 && km > 0 {
		each := min(cycleLongest, max(cycleShortest, 1000/often))
		cycles := max(1, math.Round(km/each))
		d.rare, d.rounds = class, rounds
		for done := 0.0; done < cycles; {
			n, err := d.leap(km/cycles, cycles-done)
			if err != nil {
				return cond, err
			}
			done += n
		}
	}
	for w := range Wheel(NumWheels) {
		d.wheels[d.same[w]].end(&cond.Wheels[w])
	}
	cond.Fluid -= min(d.leaked, max(0, spec.standing(&cond)))
	return cond, nil
}

// standing is the fluid left in the reservoir [m³] of a car at rest: filled to
// MAX when new, less what worn linings took and what is gone.
func (s *Spec) standing(cond *Condition) float64 {
	left := s.Reservoir.AtMin + s.Reservoir.MinToMax + cond.Fluid
	for w := range Wheel(NumWheels) {
		c := &cond.Wheels[w]
		worn := c.DiscWear[Inner] + c.DiscWear[Outer]
		for i := range 2 {
			worn += float64((c.Wear[i][Upper] + c.Wear[i][Lower]) / 2)
		}
		left -= float64(worn * s.Corner(w).PistonArea())
	}
	return left
}

// A trip is a Drive under way.
type trip struct {
	spec     *Spec
	duty     *Duty
	wheels   [NumWheels]wornWheel
	count    int            // distinct wheels
	same     [NumWheels]int // index of each wheel's twin in wheels
	pressure [4]float64     // [Pa] line pressure of each class, last solved
	leaked   float64        // [m³]
	rare     int            // class that comes once a cycle
	rounds   int            // in which a cycle takes the others
}

// cycle drives km with its share of every class of stops: the rarest once, the
// others in rounds.
func (d *trip) cycle(km float64) error {
	for round := range d.rounds {
		for class := range d.duty.Stops {
			part := km / float64(d.rounds)
			if class == d.rare {
				if round > 0 {
					continue
				}
				part = km
			}
			if err := d.stops(&d.duty.Stops[class], class, part); err != nil {
				return err
			}
		}
	}
	for i := range d.count {
		d.wheels[i].warm(d.duty, km*Kilometre, d.spec.Body.TyreRadius)
	}
	return nil
}

// stops drives one class of stops and the way between them over km.
func (d *trip) stops(stop *DutyStop, class int, km float64) error {
	number := stop.PerThousandKm * km / 1000
	if number == 0 {
		return nil
	}
	if err := d.press(stop, class, number); err != nil {
		return err
	}
	all, braked := 0.0, 0.0
	for i := range d.duty.Stops {
		each := &d.duty.Stops[i]
		all += each.PerThousandKm
		if each.PerThousandKm > 0 {
			braked += float64(each.PerThousandKm * each.way() / 1e6)
		}
	}
	between := km * Kilometre * (1 - braked) * stop.PerThousandKm / all
	for i := range d.count {
		w := &d.wheels[i]
		w.wear()
		if err := w.rub(between / d.spec.Body.TyreRadius); err != nil {
			return err
		}
		if w.leak > 0 {
			rho := d.spec.Fluid.Density
			d.leaked += float64(float64(w.count) * number * jetShare * w.leak *
				(float64(math.Sqrt(2*w.pressure/rho)*stop.time()) + float64(halt(stop)*math.Sqrt(2*waitPressure/rho))))
		}
	}
	return nil
}

// halt is how long the car then waits with a foot on the brake [s].
func halt(stop *DutyStop) float64 {
	if stop.To > 0 {
		return 0
	}
	return waitTime
}

// press solves the line pressure of a class and leaves every wheel pressed.
func (d *trip) press(stop *DutyStop, class int, number float64) error {
	body := &d.spec.Body
	want := float64(body.Mass*stop.Decel) - body.Resistance((stop.From+stop.To)/2, 1)
	want = max(0, want)
	p := d.pressure[class]
	if p == 0 {
		p = stop.Decel * 0.9e6
	}
	var lastP, lastF float64
	turned := number * stop.way() / body.TyreRadius
	for range 12 {
		got := 0.0
		for i := range d.count {
			w := &d.wheels[i]
			t, err := w.press(w.line(d.spec, p), turned)
			if err != nil {
				return err
			}
			got += float64(float64(w.count) * t / body.TyreRadius)
		}
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
	return nil
}
