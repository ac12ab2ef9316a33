package physics

import (
	"reflect"
	"testing"
)

// How Drive treats a number of a condition.
const (
	reads   = iota // it changes what Drive makes of something else
	keeps          // Drive has it before it, and it changes nothing but itself
	carries        // it comes out as it went in, and nothing follows
)

// treatment is every number of a condition with a size for it [SI].
var treatment = map[string]struct {
	how  int
	size float64
}{
	"Fluid": {keeps, -150e-6}, "Water": {carries, 0.03}, "WaterUptake": {reads, 2e-3},
	"LowGrade": {carries, 0.5}, "MineralOil": {reads, 0.05}, "RubberSwollen": {keeps, 0.2}, "VentShut": {carries, 1},
	"BoosterLoss": {carries, 0.5}, "VacuumLeak": {carries, 0.1}, "DiaphragmLeak": {carries, 3},
	"CupBypass": {carries, 1e-14}, "PortCover": {carries, 1e-3}, "ChamberAir": {carries, 1e-6},
	"LampLost": {carries, 1}, "FloatHigh": {carries, 1e-5},
	"Oil": {carries, -1e-4}, "Coolant": {carries, -1e-4}, "Steering": {carries, -1e-5}, "Washer": {carries, -1e-4}, "Seep": {reads, 6e-5},

	"PinFriction": {reads, 100}, "PinBend": {reads, 2e-6}, "PinPinch": {reads, 1e-4}, "PinSwelling": {reads, 200}, "PinSoaked": {keeps, 100},
	"PinRusting": {reads, 50}, "PinAnchorSet": {reads, 1}, "PinAnchor": {reads, 2e-4},
	"SealFriction": {reads, 400}, "SealRate": {reads, 6e6}, "SealSwelling": {reads, 200}, "SealRusting": {reads, 60},
	"EarFriction": {reads, 300}, "Wear": {reads, 1e-3}, "BondLost": {reads, 0.3}, "PlateProud": {reads, 1e-4},
	"DiscWear": {reads, 1e-4}, "Groove": {reads, 3e-4}, "RimRust": {carries, 1e-3}, "DiscCrack": {carries, 1e-2}, "DiscFilm": {keeps, 1},
	"Runout": {reads, 1e-4}, "Thickness": {reads, 2e-5}, "MuLoss": {reads, 0.3},
	"Leak": {reads, 1e-10}, "SealLeak": {reads, 1e-10}, "ScrewLeak": {reads, 1e-10},
	"Air": {carries, 2e-6}, "HoseSwell": {carries, 1e-13}, "HoseHold": {reads, 0.3e6}, "HoseReturn": {carries, 20},
	"ValveStuck": {reads, 0.5}, "BearingPlay": {carries, 4e-4},
}

// moved sets every number under v to size; of wheels all four.
func moved(v reflect.Value, size float64) {
	switch v.Kind() {
	case reflect.Array:
		for i := range v.Len() {
			moved(v.Index(i), size)
		}
	case reflect.Bool:
		v.SetBool(true)
	default:
		v.SetFloat(size)
	}
}

// each calls do for every number of a condition, by its name: at all wheels at once.
func each(c *Condition, do func(name string, where []reflect.Value)) {
	top, vessels := reflect.ValueOf(c).Elem(), reflect.ValueOf(&c.Vessels).Elem()
	for _, v := range []reflect.Value{top, vessels} {
		for i := range v.NumField() {
			if name := v.Type().Field(i).Name; name != "Wheels" && name != "Vessels" {
				do(name, []reflect.Value{v.Field(i)})
			}
		}
	}
	wheel := reflect.TypeOf(WheelCondition{})
	for i := range wheel.NumField() {
		var where []reflect.Value
		for w := range c.Wheels {
			where = append(where, reflect.ValueOf(&c.Wheels[w]).Elem().Field(i))
		}
		do(wheel.Field(i).Name, where)
	}
}

// TestDriven: what [Condition.Driven] leaves out moves nothing that Drive makes,
// to the bit, on a sound car, one that drags, one with a rough piston, and one
// that leaks; and everything else does move something.
func TestDriven(t *testing.T) {
	leaks := frontLeft(WheelCondition{Leak: 3e-10})
	leaks.Fluid = -60e-6
	seized := pins(4015, 15)
	held := seized
	held.Wheels[FrontLeft].PinAnchorSet[Upper] = true
	rusts := frontLeft(WheelCondition{PinRusting: [2]float64{40, 40}})
	bases := []Condition{{}, pins(235, 235), frontLeft(WheelCondition{SealFriction: 380, SealRate: 6e6}), leaks, seized, held, rusts}
	const km = 1500
	known := 0
	each(&Condition{}, func(name string, _ []reflect.Value) {
		treat, ok := treatment[name]
		if !ok {
			t.Errorf("%s is new: say in this test whether Drive reads it, and in carry if it does not", name)
			return
		}
		known++
		found := false
		for i, base := range bases {
			if testing.Short() && i > 1 {
				break
			}
			with := base
			each(&with, func(n string, where []reflect.Value) {
				for _, v := range where {
					if n == name {
						moved(v, treat.size)
					}
				}
			})
			left := with.Driven()
			plain := base.Driven()
			if treat.how == carries != (left == plain) {
				t.Errorf("%s: Driven leaves it out: %t", name, left == plain)
				return
			}
			a, err := drive(hatchback(), base, MixedDuty(), km, accuracy{rounds: 1, leap: true})
			if err != nil {
				t.Fatal(err)
			}
			b, err := drive(hatchback(), with, MixedDuty(), km, accuracy{rounds: 1, leap: true})
			if err != nil {
				t.Fatal(err)
			}
			same := b
			each(&same, func(n string, where []reflect.Value) {
				if n == name { // as it was put in, or it is not carried
					each(&with, func(m string, put []reflect.Value) {
						for k := range put {
							if m == name && treat.how == carries && !reflect.DeepEqual(put[k].Interface(), where[k].Interface()) {
								t.Errorf("%s comes out changed", name)
							}
						}
					})
					each(&a, func(m string, was []reflect.Value) {
						for k := range was {
							if m == name {
								where[k].Set(was[k])
							}
						}
					})
				}
			})
			found = found || same != a
		}
		if treat.how == carries && found {
			t.Errorf("%s moves what Drive makes of other numbers, yet Driven leaves it out", name)
		}
		if treat.how == reads && !found && !testing.Short() {
			t.Errorf("%s moves nothing: it may be carried along", name)
		}
	})
	if known != len(treatment) {
		t.Errorf("%d numbers of a condition, %d on the list", known, len(treatment))
	}
}
