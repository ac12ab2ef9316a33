package physics

import "fmt"

// A DivergedError says that a step found no balance, or that a quantity ran away to
// where no car can be. It ends the run: a stop, a descent, a tour.
type DivergedError struct {
	Millis   int64   // [ms] of the state the step started from
	Quantity string  // "fluid", "speed", "caliper front_left", …
	Residual float64 // that is missing to a balance, or the value that ran away
	Unit     string
	Away     bool  // ran away
	Last     State // the last good one, from which the step started

	cause error
}

func (e *DivergedError) Error() string {
	if e.Away {
		return fmt.Sprintf("step from %d ms: %s runs away to %.3g %s", e.Millis, e.Quantity, e.Residual, e.Unit)
	}
	return fmt.Sprintf("step from %d ms: %s does not balance, residual %.3g %s", e.Millis, e.Quantity, e.Residual, e.Unit)
}

// Unwrap is the [CornerError] of a caliper that found no equilibrium.
func (e *DivergedError) Unwrap() error { return e.cause }

// lost completes the error of a step that started from s.
func (s *State) lost(err error) error {
	e, ok := err.(*DivergedError)
	if !ok {
		c, ok := err.(*CornerError)
		if !ok {
			return err
		}
		e = &DivergedError{Quantity: "caliper " + c.Corner, Residual: c.Residual, Unit: "N", cause: c}
	}
	e.Millis, e.Last = s.Millis, *s
	return e
}

// How far anything may go before it has run away: beyond what any car, however
// broken, reaches.
const (
	mostSpeed    = 300.0  // [m/s]
	mostWay      = 1e12   // [m]
	mostPressure = 1e9    // [Pa] steel pipes burst at a fifth of it
	mostTravel   = 0.3    // [m] of piston or body
	mostHeat     = 3000.0 // [°C] iron boils
	mostFluid    = 0.1    // [m³]
	mostGas      = 100.0  // [1] warmth of squeezed air over its temperature
)

// runsAway names what has gone where no car can be, or is no number.
func (s *State) runsAway() error {
	away := func(x, most float64) bool { return !(x <= most && x >= -most) } // NaN too
	found := func(quantity string, x float64, unit string) error {
		return &DivergedError{Quantity: quantity, Residual: x, Unit: unit, Away: true}
	}
	switch {
	case away(s.Speed, mostSpeed):
		return found("speed", s.Speed, "m/s")
	case away(s.Distance, mostWay):
		return found("way", s.Distance, "m")
	case away(s.Decel, mostPressure):
		return found("deceleration", s.Decel, "m/s²")
	case away(s.Vacuum, Atmosphere):
		return found("vacuum", s.Vacuum, "Pa")
	case away(s.Standing, mostFluid):
		return found("fluid standing in the reservoir", s.Standing, "m³")
	case away(s.Lost, mostFluid):
		return found("fluid lost", s.Lost, "m³")
	}
	for i, p := range s.Master.Pressure {
		switch {
		case away(p, mostPressure):
			return found("pressure of chamber "+chamberNames[i], p, "Pa")
		case away(s.Master.Stroke[i], mostTravel):
			return found("stroke of chamber "+chamberNames[i], s.Master.Stroke[i], "m")
		}
	}
	for w := range s.Pressure {
		c, h := &s.Corners[w], &s.Heat[w]
		switch {
		case away(s.Pressure[w], mostPressure):
			return found("pressure "+Wheel(w).String(), s.Pressure[w], "Pa")
		case away(s.Cavity[w], mostFluid):
			return found("fluid "+Wheel(w).String(), s.Cavity[w], "m³")
		case away(s.Air[w], mostFluid):
			return found("air "+Wheel(w).String(), s.Air[w], "m³")
		case away(s.AirWarm[w], mostGas):
			return found("warmth of the air "+Wheel(w).String(), s.AirWarm[w], "")
		case away(c.X, mostTravel) || away(c.Y, mostTravel):
			return found("caliper "+Wheel(w).String(), c.X, "m")
		}
		for _, t := range [...]float64{h.Disc[0], h.Disc[DiscCells-1], h.Fluid, h.Pad[Inner], h.Pad[Outer]} {
			if away(t, mostHeat) {
				return found("temperature "+Wheel(w).String(), t, "°C")
			}
		}
	}
	return nil
}

var chamberNames = [...]string{"primary", "secondary"}
