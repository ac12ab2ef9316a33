package physics_test

import (
	"math"
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

// What a hasty look shows: oil too low at once after stopping, low at the end
// that points up, low when cold; coolant too high when hot, and out through the
// cap when it was filled to the brim.
func TestHastyLooks(t *testing.T) {
	model := func(c physics.VesselsCondition) *physics.Model {
		m, err := physics.New(physicstest.Hatchback(), physics.Condition{Vessels: c})
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	m := model(physics.VesselsCondition{})
	warm := physics.Bonnet{Engine: 80, Steering: 60, Rested: 1800}
	good := m.OilLevel(warm)
	if math.Abs(good-1) > 0.05 {
		t.Errorf("warm and rested, filled to MAX: %.3f of the way, want 1", good)
	}
	for name, b := range map[string]physics.Bonnet{
		"at once": {Engine: 80, Rested: 10}, "on a slope": {Engine: 80, Rested: 1800, Slope: 0.06}, "cold": physics.Cold,
	} {
		if l := m.OilLevel(b); l > good-0.1 {
			t.Errorf("oil read %s stands at %.2f, want a tick below %.2f", name, l, good)
		}
	}
	last := -1.0
	for _, s := range []float64{1, 10, 60, 300, 1800} {
		l := m.OilLevel(physics.Bonnet{Engine: 80, Rested: s})
		if l <= last && l < 0.99 {
			t.Errorf("oil %g s after stopping stands at %.3f, %.3f before", s, l, last)
		}
		last = l
	}
	if cold, hot := m.CoolantLevel(physics.Cold), m.CoolantLevel(warm); math.Abs(cold-1) > 1e-9 || hot < cold+0.4 {
		t.Errorf("coolant at MAX stands at %.2f cold and %.2f at 80 °C", cold, hot)
	}
	low := model(physics.VesselsCondition{Coolant: -0.4e-3, Oil: -1.2e-3, Steering: -0.15e-3, Washer: -2.9e-3})
	if l := low.CoolantLevel(physics.Cold); l >= 0 {
		t.Errorf("0.4 l of coolant lost: cold it stands at %.2f, want below MIN", l)
	}
	if l := low.CoolantLevel(physics.Bonnet{Engine: 95}); l <= 0 {
		t.Errorf("0.4 l of coolant lost: hot it stands at %.2f, and seems enough", l)
	}
	if o, s, w := low.OilLevel(warm), low.SteeringLevel(physics.Cold), low.WasherLevel(physics.Cold); o >= 0 || s >= 0 || w > 0.05 {
		t.Errorf("oil %.2f, steering %.2f, washer %.2f: want low", o, s, w)
	}
	if cold, hot := m.SteeringLevel(physics.Cold), m.SteeringLevel(physics.Bonnet{Steering: 80}); cold != 1 || hot < 1.3 {
		t.Errorf("steering fluid at its cold MAX stands at %.2f cold and %.2f hot", cold, hot)
	}
	full := model(physics.VesselsCondition{Coolant: 2e-3})
	spec := &physicstest.Hatchback().Vessels.Coolant
	if l, brim := full.CoolantLevel(physics.Bonnet{Engine: 100}), 1+spec.ToBrim/spec.MinToMax; math.Abs(l-brim) > 1e-9 {
		t.Errorf("2 l too much: hot it stands at %.2f, want the brim %.2f", l, brim)
	}
	if _, err := physics.New(physicstest.Hatchback(), physics.Condition{Vessels: physics.VesselsCondition{Oil: -5e-3}}); err == nil {
		t.Error("more oil lost than there was is not refused")
	}
}
