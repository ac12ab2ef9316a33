package scoring

import (
	"errors"
	"fmt"

	"evenwear/physics"
	"evenwear/physics/exact"
)

// A Road is one stop of an outlook.
type Road struct {
	ID       string  // "stop.50.cold"
	Speed    float64 // [m/s]
	Distance float64 // [m]
	MFDD     float64 // [m/s²]
	Pull     float64 // [m/s²] the driver steers against, right positive
	Foot     float64 // [N]
}

// An Outlook is what the physics say of one condition: how the car stops, what
// its pedal does and how long its linings last.
type Outlook struct {
	Stops     []Road
	Decel     float64    // [m/s²] at no more than 500 N, cold and dry
	Imbalance [2]float64 // [%] front and rear axle
	Travel    float64    // [%] of the way to the floor, at 222.4 N
	Reserve   float64    // [m] left above the floor there
	TravelNew float64    // [%] Travel of this car when it was new
	Sink      float64    // [m] in 10 s at 556 N, after the first second
	Level     float64    // [%] of the way from MIN to MAX
	Assist    float64    // [%] of what the booster adds when sound

	Leak        [physics.NumWheels]float64       // [m²] orifices
	Hose        [physics.NumWheels]float64       // [m³/m] swell at 20 MPa
	Crack       [physics.NumWheels]float64       // [m] from the rim of the disc
	Lining      [physics.NumWheels][2][2]float64 // [m] wheel, pad, half
	Soon        float64                          // [m] the least after 1000 km
	SoonWheel   physics.Wheel
	Left        [physics.NumWheels][2][2]float64 // [m] after Lasts
	Lasts       float64                          // [m] driven until 12 000 km or a lining below 1.5 mm
	Worn        bool                             // a lining ended it
	BrakePeak   float64                          // [°C] of a face or lining on the standard descent, which ends early where it burns
	DiscPeak    float64                          // [°C] on the standard descent and while the car then stands
	FluidPeak   float64                          // [°C]
	DescentWay  float64                          // [%] pedal when it has stood there
	DragPower   float64                          // [W] at 80 km/h, all wheels
	DragFuel    float64                          // [m³] lost over 12 000 km
	DescentFoot float64                          // [N]
}

// The standard experiments. The descent, its speed and the steps of the drive
// are ours, no source.
const (
	fullFoot     = 500.0                  // [N] 49 CFR 571.135 S7.5
	travelFoot   = 222.4                  // [N] 49 CFR 570.55(c)
	holdFoot     = 556.0                  // [N] 49 CFR 570.55(b)(1)
	descentGrade = 0.15                   // [1] a pass road, held by the brakes alone
	descentWay   = 12 * physics.Kilometre // [m]
	descentSpeed = 30 * physics.KmPerHour
	descentStand = 600     // [s] at its foot, while the discs' heat soaks into the fluid
	onward       = 12000.0 // [km]
	stride       = 1000.0  // [km]
	stopStep     = 20      // [ms]
	wetLoss      = 0.3     // [1] of dry adhesion; OpenStax College Physics 2e table: 0.7 against 1.0
	hoseLength   = 0.4     // [m] assumed
	fuelEnergy   = 3.2e10  // [J/m³] petrol; a quarter of it reaches the wheels, assumed
	fuelShare    = 0.25
)

// Look works out the outlook of a condition.
func Look(spec *physics.Spec, cond physics.Condition, duty physics.Duty) (Outlook, error) {
	var o Outlook
	m, err := physics.New(spec, cond)
	if err != nil {
		return o, err
	}
	rest, err := m.Rest()
	if err != nil {
		return o, err
	}
	hot, err := o.descend(m, rest)
	if err != nil {
		return o, fmt.Errorf("descent: %w", err)
	}
	if err := o.stops(m, rest, hot); err != nil {
		return o, fmt.Errorf("stop: %w", err)
	}
	if err := o.pedal(m, rest); err != nil {
		return o, fmt.Errorf("pedal: %w", err)
	}
	o.parts(spec, &cond)
	if err := o.drag(m, &rest); err != nil {
		return o, fmt.Errorf("rolling: %w", err)
	}
	if err := o.drive(spec, cond, duty); err != nil {
		return o, fmt.Errorf("driving on: %w", err)
	}
	return o, nil
}

func (o *Outlook) descend(m *physics.Model, rest physics.State) (physics.State, error) {
	d, err := m.Descend(rest, descentGrade, descentWay, descentSpeed)
	if err != nil {
		return rest, err
	}
	o.BrakePeak = d.Hottest()
	for i := range d.DiscPeak {
		o.DiscPeak, o.FluidPeak = max(o.DiscPeak, d.DiscPeak[i]), max(o.FluidPeak, d.FluidPeak[i])
	}
	o.DescentFoot = d.Foot
	s := d.End
	s.Speed = 0
	for range descentStand {
		if s, err = m.Step(s, physics.Input{Engine: true}, 1000); err != nil {
			return rest, err
		}
		for i := range s.Heat {
			o.FluidPeak = max(o.FluidPeak, s.Heat[i].Fluid)
		}
	}
	for range 100 {
		if s, err = m.Step(s, physics.Input{Foot: travelFoot, Engine: true}, stopStep); err != nil {
			return rest, err
		}
	}
	o.DescentWay = 100 * m.PedalTravel(&s) / m.Spec().Pedal.Reserve
	return d.End, nil
}

func (o *Outlook) stops(m *physics.Model, rest, hot physics.State) error {
	for _, kmh := range [3]float64{50, 80, 100} {
		for _, how := range [3]string{"cold", "hot", "wet"} {
			plan := physics.StopPlan{Speed: kmh * physics.KmPerHour, Foot: fullFoot, Millis: stopStep}
			from := rest
			switch how {
			case "hot":
				from = hot
				from.Speed, from.Distance = 0, 0
			case "wet":
				for i := range plan.Surface {
					plan.Surface[i] = wetLoss
				}
			}
			r, err := m.Stop(from, plan)
			var late *physics.NotStoppedError
			switch {
			case errors.As(err, &late): // as far as it went, and what it lost of its speed on the way
				r.Distance, r.Foot = late.Way, late.Foot
				r.MFDD = (float64(plan.Speed*plan.Speed) - float64(late.Speed*late.Speed)) / (2 * late.Way)
			case err != nil:
				return err
			}
			o.Stops = append(o.Stops, Road{fmt.Sprintf("stop.%.0f.%s", kmh, how), plan.Speed, r.Distance, r.MFDD, r.Pull, r.Foot})
			if kmh == 100 && how == "cold" {
				o.Decel = r.MFDD
			}
		}
	}
	// Imbalance is told at a gentle stop, before a wheel locks and evens it out.
	r, err := m.Stop(rest, physics.StopPlan{Speed: 50 * physics.KmPerHour, Decel: 4, FootLimit: fullFoot, Millis: stopStep})
	if err != nil {
		return err
	}
	for axle := range 2 {
		o.Imbalance[axle] = 100 * r.Imbalance[axle]
	}
	return nil
}

// press moves the foot evenly to a force [N] within 0.4 s and keeps it for a second.
func press(m *physics.Model, s physics.State, to float64) (physics.State, error) {
	var err error
	for i := range 20 {
		if s, err = m.Step(s, physics.Input{Foot: to * float64(i+1) / 20, Engine: true}, 20); err != nil {
			return s, err
		}
	}
	return m.Step(s, physics.Input{Foot: to, Engine: true}, 1000)
}

// pedal presses from rest to each force and holds the greater one.
func (o *Outlook) pedal(m *physics.Model, rest physics.State) error {
	s, err := press(m, rest, travelFoot)
	if err != nil {
		return err
	}
	way := m.Spec().Pedal.Reserve
	o.Reserve = way - float64(m.PedalTravel(&s))
	o.Travel = Travel(way, o.Reserve)
	if o.TravelNew, err = travelNew(m.Spec()); err != nil {
		return err
	}
	if s, err = press(m, rest, holdFoot); err != nil {
		return err
	}
	first := m.PedalTravel(&s)
	for range 9 {
		if s, err = m.Step(s, physics.Input{Foot: holdFoot, Engine: true}, 1000); err != nil {
			return err
		}
	}
	o.Sink = float64(m.PedalTravel(&s)) - first
	o.Level = 100 * m.Level(&rest)
	rod := float64(travelFoot * m.Spec().Pedal.Ratio)
	if sound := m.BoosterForce(rod, m.Spec().Booster.Vacuum); sound > 0 {
		o.Assist = 100 * m.BoosterForce(rod, rest.Vacuum) / sound
	} else {
		o.Assist = 100 // a car without a booster lacks none
	}
	return nil
}

// travelNew is [Outlook.Travel] of a new car [%].
func travelNew(spec *physics.Spec) (float64, error) {
	way, err := travelOf(spec, physics.Condition{})
	return Travel(spec.Pedal.Reserve, spec.Pedal.Reserve-way), err
}

// PedalUsed is how much of a pedal's way the car has lost [1], from what it had
// when new (0) to the limit of its travel (1).
func (o *Outlook) PedalUsed() float64 {
	if o.TravelNew >= limitTravel.value {
		return 0 // the limit is none for this car
	}
	return clamp((o.Travel-o.TravelNew)/(limitTravel.value-o.TravelNew), 0, 1)
}

func (o *Outlook) parts(spec *physics.Spec, cond *physics.Condition) {
	for w := range physics.Wheel(physics.NumWheels) {
		c := spec.Corner(w)
		o.Leak[w] = cond.Wheels[w].Holes()
		o.Crack[w] = cond.Wheels[w].DiscCrack
		o.Hose[w] = (c.HoseSwell + cond.Wheels[w].HoseSwell) * (20 * physics.Megapascal) / hoseLength
	}
	o.Lining = linings(spec, cond)
}

func linings(spec *physics.Spec, cond *physics.Condition) (l [physics.NumWheels][2][2]float64) {
	for w := range physics.Wheel(physics.NumWheels) {
		for pad := range 2 {
			for half := range 2 {
				l[w][pad][half] = spec.Corner(w).LiningNew - cond.Wheels[w].Wear[pad][half]
			}
		}
	}
	return l
}

// least is the thinnest half pad and its wheel.
func least(l *[physics.NumWheels][2][2]float64) (thin float64, at physics.Wheel) {
	thin = l[0][0][0]
	for w := range physics.Wheel(physics.NumWheels) {
		for pad := range 2 {
			for half := range 2 {
				if l[w][pad][half] < thin {
					thin, at = l[w][pad][half], w
				}
			}
		}
	}
	return thin, at
}

// drag is what the released brakes cost a rolling car. Each disc turns once
// before it counts: its run-out pushes the pads back from where a release left
// them, and only what drags after that goes on dragging.
func (o *Outlook) drag(m *physics.Model, rest *physics.State) error {
	const spokes = 24
	speed := 80 * physics.KmPerHour
	for w := range physics.Wheel(physics.NumWheels) {
		c, s, sum := m.Corner(w), rest.Corners[w], 0.0
		for i := range 2 * spokes {
			load := physics.CornerLoad{Pressure: rest.Pressure[w]}
			load.DiscIn, load.DiscOut = c.Faces(exact.CosTurn(float64(i%spokes) / spokes))
			var f physics.CornerForces
			var err error
			if s, f, err = c.Settle(s, &load); err != nil {
				return err
			}
			if i >= spokes {
				sum += c.Torque(&f)
			}
		}
		o.DragPower += float64(sum/spokes*speed) / m.Spec().Body.TyreRadius
	}
	o.DragFuel = float64(o.DragPower/speed*onward*physics.Kilometre) / (fuelEnergy * fuelShare)
	return nil
}

// drive goes on by 1000 km until 12 000 km or a half pad below 1.5 mm. A car
// whose lining is gone within a stride cannot be driven through it.
func (o *Outlook) drive(spec *physics.Spec, cond physics.Condition, duty physics.Duty) error {
	o.Left = o.Lining
	o.Soon, o.SoonWheel = least(&o.Left)
	for o.Lasts < onward*physics.Kilometre && !o.Worn {
		if thin, _ := least(&o.Left); thin < limitLining.value*physics.Millimetre {
			o.Worn = true
			break
		}
		next, err := physics.Drive(spec, cond, duty, stride)
		if err != nil {
			return err
		}
		cond = next
		o.Left = linings(spec, &cond)
		if o.Lasts += stride * physics.Kilometre; o.Lasts <= stride*physics.Kilometre {
			o.Soon, o.SoonWheel = least(&o.Left)
		}
	}
	return nil
}
