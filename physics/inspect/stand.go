package inspect

import (
	"math"
	"strings"

	"evenwear/physics"
)

// How a car stands when an inspector comes to it: driven in, stopped, bonnet up
// at once, on a yard that falls as far as rain needs to run off, nose uphill. All
// assumed; an engine that has gone cold has stood for hours.
const (
	hotEngine   = 85.0     // [°C] oil and coolant
	hotSteering = 60.0     // [°C]
	coldEngine  = 20.0     // [°C] all of it
	atOnce      = 20.0     // [s] from the engine's stop to the dipstick in the hand
	runBack     = 10 * 60  // [s] the wait that handbooks ask for
	stoodCold   = 120 * 60 // [s]
	yardFall    = 0.02     // [1] tangent
)

// A stand is what an instance's form presumes of engine and ground; its zero
// value is a warm engine whose oil has run back, on the flat.
type stand struct{ cold, hasty, slope bool }

func (s stand) bonnet() physics.Bonnet {
	b := physics.Bonnet{Engine: hotEngine, Steering: hotSteering, Rested: runBack}
	if s.cold {
		b.Engine, b.Steering, b.Rested = coldEngine, coldEngine, stoodCold
	}
	if s.hasty {
		b.Rested = atOnce
	}
	if s.slope {
		b.Slope = yardFall
	}
	return b
}

// The preparations that decide how a car stands under its bonnet.
const (
	flat     = "roll_level"
	rested   = "run_back"
	goneCold = "engine_cold"
)

// formMark stands between a check and what was not as it should be.
const formMark = "~"

// forms are a check made in spite of what it wants: one for each set of wants
// that do not stand and of spoils that do. What they show is worked out for that
// stand, so that the evidence knows what such a reading is worth.
func forms(c *Check) []Check {
	wishes := append(append([]string(nil), c.Wants...), c.Spoils...)
	var list []Check
	for set := 1; set < 1<<len(wishes); set++ {
		f := *c
		f.Of, f.Amiss = c.ID, nil
		for i, w := range wishes {
			if set>>i&1 == 1 {
				f.Amiss = append(f.Amiss, w)
			}
		}
		f.ID = ID(strings.Join(append([]string{string(c.ID)}, f.Amiss...), formMark))
		s := c.standWith(f.Amiss)
		f.Measure = func(w *World, _ physics.Wheel) (float64, error) { return c.level(w.Model, s.bonnet()), nil }
		d := c.doubt(s)
		f.Meter.Sigma = math.Sqrt(float64(c.Meter.Sigma*c.Meter.Sigma) + float64(d*d))
		list = append(list, f)
	}
	return list
}

// standWith is how the car stands when these wishes of a check are not met.
func (c *Check) standWith(amiss []string) stand {
	has := func(list []string, name string) bool {
		for _, n := range list {
			if n == name {
				return true
			}
		}
		return false
	}
	return stand{
		cold:  has(c.Wants, goneCold) != has(amiss, goneCold),
		hasty: has(amiss, rested),
		slope: has(amiss, flat),
	}
}

// Made is the form in which a check is made when stands tells which preparations
// stand: the check itself when all it wants does.
func (i Instance) Made(stands func(name string) bool) Instance {
	c, ok := Find(i.Check)
	if !ok {
		return i
	}
	id := string(c.ID)
	for _, w := range c.Wants {
		if !stands(w) {
			id += formMark + w
		}
	}
	for _, w := range c.Spoils {
		if stands(w) {
			id += formMark + w
		}
	}
	i.Check = ID(id)
	return i
}

// Proper is the check that an instance is a form of; the instance itself when it
// is made as it should be.
func (i Instance) Proper() Instance {
	if c, ok := Find(i.Check); ok && c.Of != "" {
		i.Check = c.Of
	}
	return i
}

// running are the checks whose pedal is pressed with the engine running, or just
// after. They throw the oil up again; the minute or two at idle warm a cold engine
// by some 5 K, which is left out.
var running = []ID{
	"pedal_travel", "pedal_feel", "hold_sink", "pump_running", "pump_off", "assist", "assist_kept", "assist_reserve", "free_travel",
	"wetness", "hose_bulge", "spin", "turning_force", "wet_piston", "clearance", "wet_screw", "trapped_pressure", "hose_release", "push_piston",
}

// Undoes names the preparations that do not stand any more when this check has
// been made.
func (i Instance) Undoes() []string {
	c, ok := Find(i.Check)
	switch {
	case !ok:
		return nil
	case c.Station == Road && !c.PerWheel: // driven, and parked where it stood
		return []string{rested, flat}
	case contains(running, c.ID):
		return []string{rested}
	}
	return nil
}

func contains(list []ID, id ID) bool {
	for _, l := range list {
		if l == id {
			return true
		}
	}
	return false
}
