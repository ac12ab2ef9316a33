package physics

import "math"

const (
	cycleShortest = 20.0   // [km]
	cycleLongest  = 250.0  // [km]
	jetShare      = 0.6    // [1] discharge coefficient of a leak's orifice
	cycleTries    = 8      // repetitions of one cycle
	waitPressure  = 1e6    // [Pa] foot resting on the brake at a halt; assumed
	waitTime      = 12.0   // [s] a halt lasts; assumed
	seizedPin     = 2000.0 // [N] sliding force from which a pin keeps its anchor: no brake moves it
)

// Drive wears and ages the car for km [km] and returns its new condition.
//
// It drives cycles: as far as the rarest stop of the duty comes round once. The
// line pressure of every class follows what gives the wanted deceleration with
// the brakes as they are, so a weak wheel makes the driver press harder and all
// others wear for it. At these pressures each wheel goes through the cycle by
// itself; see [wornWheel.cycle]. Corners are quasi-static. Wheels of one axle in
// equal condition are computed once. Most cycles are taken by the trend of those
// computed; see [trip.drive].
//
// What grows with the months, at the duty's kilometres a month, is in every cycle
// as it is in its middle; see [Condition.Age].
//
// Error: below 1 % of any lining, against every stop computed by itself, while one
// wheel is at fault; up to 2.2 % seen where four are stuck at random (24 cars; half of
// them below 0.5 %), and 2 % of a disc's face once a lining is through. Both halves of
// the method are of second order and estimate their error.
func Drive(spec *Spec, cond Condition, duty Duty, km float64) (Condition, error) {
	if err := duty.check(km); err != nil {
		return cond, err
	}
	end, err := drive(spec, cond.Driven(), duty, km, accuracy{rounds: 1, leap: true})
	end.carry(&cond)
	return end, err
}

// accuracy is how finely a trip is driven.
type accuracy struct {
	rounds int  // in which a wheel takes a cycle at least; its tolerance falls with the square
	leap   bool // take cycles by their trend
	solves *int // counts the corners solved, unless nil
}

// drive is Drive as finely as fine says.
func drive(spec *Spec, cond Condition, duty Duty, km float64, fine accuracy) (Condition, error) {
	cond.polish(&duty, km)
	d := trip{spec: spec, duty: &duty, fine: fine, cond: &cond}
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
		d.wheels[d.count].rounds, d.wheels[d.count].solves = fine.rounds, fine.solves
		d.from[d.count] = d.wheels[d.count].slow()
		d.count++
	}
	if often := d.sort(); often > 0 && km > 0 {
		each := min(cycleLongest, max(cycleShortest, 1000/often))
		cycles := max(1, math.Round(km/each))
		d.way = km / cycles
		d.base = d.secondRarest()
		aged := cond
		aged.Age(km / duty.monthly())
		d.ages = aged.Wheels != cond.Wheels
		if err := d.drive(cycles); err != nil {
			return cond, err
		}
	}
	cond.Age(km / duty.monthly())
	leaked := 0.0
	for w := range Wheel(NumWheels) {
		d.wheels[d.same[w]].end(&cond.Wheels[w])
		leaked += d.wheels[d.same[w]].leaked
	}
	cond.Fluid -= min(leaked, max(0, spec.standing(&cond)))
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
	fine     accuracy
	cond     *Condition      // as the trip began
	from     [NumWheels]slow // the same of each distinct wheel
	ages     bool            // wheels change with the months alone
	wheels   [NumWheels]wornWheel
	count    int            // distinct wheels
	same     [NumWheels]int // index of each wheel's twin in wheels
	search   search
	pressure [4]float64 // [Pa] line pressure of each class, last solved
	order    [4]int     // classes, the most frequent first
	way      float64    // [km] of a cycle
	base     int        // rounds in which the second rarest class comes once each
}

// sort puts the classes in order and returns how often the rarest comes
// [1/1000 km]; 0 without any.
func (d *trip) sort() (least float64) {
	for i := range d.order {
		at := i
		for at > 0 && d.duty.Stops[d.order[at-1]].PerThousandKm < d.duty.Stops[i].PerThousandKm {
			d.order[at] = d.order[at-1]
			at--
		}
		d.order[at] = i
		if n := d.duty.Stops[i].PerThousandKm; n > 0 && (least == 0 || n < least) {
			least = n
		}
	}
	return least
}

// secondRarest is how often the second rarest class comes in a cycle; 1 without any.
func (d *trip) secondRarest() int {
	n, rarer := 1.0, 0.0
	for i := len(d.order) - 1; i >= 0; i-- {
		each := d.duty.Stops[d.order[i]].PerThousandKm
		if rarer > 0 && each > rarer {
			n = math.Round(each * d.way / 1000)
			break
		}
		rarer = each
	}
	return int(max(1, min(roundsBase, n)))
}

// cycle drives one cycle: again, until the brakes are nearly as hot in it as it makes
// them and all stops brake as wanted; what is still lacking is mended, see
// [wornWheel.mend]. A wheel that would only do the same is left out.
func (d *trip) cycle() error {
	if d.pressure == [4]float64{} {
		if err := d.begin(); err != nil {
			return err
		}
	}
	var none, all [NumWheels]bool
	for i := range d.count {
		all[i] = true
	}
	start, redo := d.wheels, all
	d.search.known = false
	var used, made warms
	for tries := 0; tries <= cycleTries && redo != none; tries++ {
		for i := range d.count {
			if !redo[i] {
				continue
			}
			w := &d.wheels[i]
			before := w.since(&start[i].cond)
			if tries > 0 {
				w.again(&start[i])
			}
			if err := w.cycle(d); err != nil {
				return err
			}
			if tries > 0 && before > 0 {
				w.learn(w.since(&start[i].cond)/before, hotWear(w.mean)/hotWear(used[i]))
			}
			used[i] = w.mean
			made[i] = w.warmth(d.duty, d.way*Kilometre, d.spec.Body.TyreRadius)
			d.search.suppose(i, used[i], made[i])
		}
		next := d.search.next(&used, &made)
		for i := range d.count {
			d.wheels[i].mean = next[i]
		}
		aimed := d.aim(&used)
		for i := range d.count {
			w := &d.wheels[i]
			close := w.near(hotWear(next[i]) / hotWear(used[i]))
			done := !redo[i] || w.tune(d, &start[i], close, aimed)
			redo[i] = !done || !close || !aimed
		}
	}
	for i := range d.count {
		w := &d.wheels[i]
		w.mend(&start[i], hotWear(w.mean)/hotWear(used[i]))
	}
	return nil
}

// age makes every wheel what it is some cycles after the trip began.
func (d *trip) age(cycles float64) {
	if !d.ages {
		return
	}
	aged := *d.cond
	aged.Age(cycles * d.way / d.duty.monthly())
	for i := range d.count {
		w := &d.wheels[i]
		worn := w.cond
		w.cond = aged.Wheels[w.wheel]
		w.cond.Wear, w.cond.DiscWear = worn.Wear, worn.DiscWear
		w.corner = NewCorner(w.spec, &w.cond, w.corner.name)
	}
}

// between is how far the car goes between two stops [m].
func (d *trip) between() float64 {
	all, braked := 0.0, 0.0
	for i := range d.duty.Stops {
		if each := &d.duty.Stops[i]; each.PerThousandKm > 0 {
			all += each.PerThousandKm
			braked += float64(each.PerThousandKm * each.way() / 1e6)
		}
	}
	return (1 - braked) * 1e6 / all
}

// halt is how long the car then waits with a foot on the brake [s].
func halt(stop *DutyStop) float64 {
	if stop.To > 0 {
		return 0
	}
	return waitTime
}
