package physics

import (
	"math"
	"math/rand/v2"
	"testing"
)

// lap takes a caliper once round a closed way of pressure, tool and hand and
// returns the work done on it [J], each part of the way by its mean force, and
// the greatest that any part of the way put in.
func lap(t *testing.T, c *Corner, s *CornerState, corners [][3]float64, parts int) (work, most float64) {
	t.Helper()
	at := func(p [3]float64) CornerLoad {
		return CornerLoad{Pressure: p[0], Piston: p[1], Body: p[2], Tight: true}
	}
	for i, to := range corners {
		from := corners[(i+len(corners)-1)%len(corners)]
		leg := 0.0
		for n := 1; n <= parts; n++ {
			var mid [2][3]float64
			for k := range from {
				mid[0][k] = from[k] + (to[k]-from[k])*float64(n-1)/float64(parts)
				mid[1][k] = from[k] + (to[k]-from[k])*float64(n)/float64(parts)
			}
			load := at(mid[1])
			next, _, err := c.Settle(*s, &load)
			if err != nil {
				t.Fatal(err)
			}
			push := (mid[0][0]+mid[1][0])/2*c.area + (mid[0][1]+mid[1][1])/2
			leg += push*(next.X-s.X) + (mid[0][2]+mid[1][2])/2*(next.Y-s.Y)
			*s = next
		}
		work += leg
		most = max(most, math.Abs(leg))
	}
	return work, most
}

// TestCaliperGivesNoEnergy: round any closed way of pressure, tool and hand a
// caliper takes up work or none, never gives any: what its seal, pins and ears
// eat. Without friction it gives back all. Walked backwards in time, the same
// laps would give it, so a friction of the wrong sign is seen.
func TestCaliperGivesNoEnergy(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	ways := [][][3]float64{{{8e6, 0, 0}, {0, 0, 0}}, {{3e6, 0, 0}, {6e6, 0, 0}, {1e6, 0, 0}, {5e6, 0, 0}}}
	for range 12 {
		way := make([][3]float64, 3+rng.IntN(3))
		for i := range way {
			way[i] = [3]float64{1e6 + 7e6*rng.Float64(), 2000 * (rng.Float64() - 0.5), 2000 * (rng.Float64() - 0.5)}
		}
		ways = append(ways, way)
	}
	closed := 0
	for n, way := range ways {
		for _, cond := range []WheelCondition{{}, {PinFriction: [2]float64{4000, 0}, EarFriction: [2]float64{500, 500}}, {SealFriction: 2000, SealRate: 15e6},
			{PinFriction: [2]float64{400, 300}, PinBend: [2]float64{3e-6, 0}}, {BondLost: [2]float64{0.8, 0.3}}} {
			c := NewCorner(demoFront(), &cond, "lap")
			var s CornerState
			for range 3 { // first laps bed it: the state must close
				lap(t, &c, &s, way, 240)
			}
			before := s
			work, most := lap(t, &c, &s, way, 240)
			if math.Abs(s.X-before.X)+math.Abs(s.Y-before.Y) > 1e-9 {
				continue // it creeps on along the pins: not closed
			}
			closed++
			if !(work >= -1e-6*most) {
				t.Errorf("way %d, %+v: a lap gives %.3g J of %.3g put in", n, cond.PinFriction, -work, most)
			}
			if n == 0 && !(-work < -1e-3*most) {
				t.Errorf("%+v: a press eats only %.3g of %.3g J: backwards in time it would pass too", cond.PinFriction, work, most)
			}
		}
		free := demoFront()
		free.SealFriction, free.SealGrip, free.SealRate, free.PinFriction, free.PinRate, free.EarRate = 0, 0, 1, 0, 1, 1
		c := NewCorner(free, &WheelCondition{}, "free")
		var s CornerState
		lap(t, &c, &s, way, 1000)
		if work, most := lap(t, &c, &s, way, 1000); math.Abs(work) > 2e-4*most {
			t.Errorf("way %d: without friction a lap leaves %.3g of %.3g J", n, work, most)
		}
	}
	if closed < len(ways) {
		t.Errorf("only %d laps of %d closed", closed, 3*len(ways))
	}
}

// pedalWork is what a foot puts into a pedal [J] over each of three presses to
// 300 N, as the lever sees it, booster off, and the most it had put in; and the
// same for a foot that had pressed 0.1 s later than the pedal moved.
func pedalWork(t *testing.T, cond Condition) (net, most, late float64) {
	t.Helper()
	m, s := build(t, pedalled(), cond)
	press := func(when float64) float64 { return 300 * max(0, min(when/0.3, 1, (1.5-when)/0.3)) }
	for range 3 {
		net, most, late = 0, 0, 0
		for i := range 2000 {
			when := float64(i+1) / 1000
			next := stepped(t, m, s, Input{Foot: press(when)}, 1, 1)
			moved := m.PedalTravel(&next) - m.PedalTravel(&s)
			net += press(when-0.0005) * moved
			late += press(when-0.1) * moved
			most = max(most, net)
			s = next
		}
	}
	return net, most, late
}

// TestPedalGivesNoEnergy: a foot that presses and lets go gets back less than it
// gave, whatever is wrong with the car.
func TestPedalGivesNoEnergy(t *testing.T) {
	for name, cond := range map[string]Condition{
		"sound": {}, "air": frontLeft(WheelCondition{Air: 4e-6}), "dry pins": pins(300, 300), "corroded": frontLeft(WheelCondition{SealFriction: 2000, SealRate: 15e6}),
		"hose": frontLeft(WheelCondition{HoseHold: 0.5e6, HoseReturn: 50}), "port": {PortCover: [2]float64{2e-3, 2e-3}}, "bypass": {CupBypass: [2]float64{1e-12, 0}},
		"vent": {VentShut: 1, Fluid: -20e-6}, "chamber": {ChamberAir: [2]float64{2e-6, 0}}, "oil": {MineralOil: 0.1, RubberSwollen: 1, PortCover: [2]float64{2e-3, 2e-3}},
		"bent": frontLeft(WheelCondition{PinFriction: [2]float64{400, 400}, PinBend: [2]float64{3e-6, 3e-6}}), "parted": frontLeft(WheelCondition{BondLost: [2]float64{0.9, 0.9}}),
		"seal": frontLeft(WheelCondition{SealLeak: 1e-8}), "screw": frontLeft(WheelCondition{ScrewLeak: 1e-8, Air: 1e-6}), "valves": {Wheels: [NumWheels]WheelCondition{{}, {}, {ValveStuck: 1}, {ValveStuck: -1}}},
	} {
		net, most, late := pedalWork(t, cond)
		if most < 2 {
			t.Fatalf("%s: a press takes only %.2g J", name, most)
		}
		if !(net > 0) {
			t.Errorf("%s: three presses leave the foot %.3g J richer, of %.3g given", name, -net, most)
		}
		if name == "sound" && late > 0 {
			t.Errorf("a pedal that moves 0.1 s before its foot would pass, with %.3g J", late)
		}
	}
}

// TestStopEnergy: what the brakes rub in a stop is what the car loses less what
// air and tyres take, and nothing is left over for the discs to gain, with a rust film
// on them as without.
func TestStopEnergy(t *testing.T) {
	for _, film := range []float64{0, 1} {
		var cond Condition
		for w := range cond.Wheels {
			cond.Wheels[w].DiscFilm = film
		}
		stopEnergy(t, cond)
	}
}

func stopEnergy(t *testing.T, cond Condition) {
	t.Helper()
	m, s := build(t, pedalled(), cond)
	spec := m.spec
	s.Speed = 30
	heat := func(s *State) (sum float64) {
		for w := range s.Heat {
			sum += m.heat[w].stored(&s.Heat[w])
		}
		return sum
	}
	before, kinetic, resist := heat(&s), spec.Body.Mass*s.Speed*s.Speed/2, 0.0
	for s.Speed > 0 {
		from := s
		s = stepped(t, m, s, Input{Foot: 500}, 1, 1)
		v := (from.Speed + s.Speed) / 2
		resist += spec.Body.Resistance(v, 1) * (s.Distance - from.Distance)
	}
	rubbed := kinetic - resist
	got := heat(&s) - before
	air := 0.02 * rubbed // what the discs give to the air in five seconds
	if !(got <= rubbed*(1+1e-4) && got >= rubbed-air) {
		t.Errorf("%.1f kJ are in the brakes of %.1f kJ rubbed", got/1e3, rubbed/1e3)
	}
	if resist < 2e-4*kinetic || 1.01*got <= rubbed*(1+1e-4) {
		t.Errorf("one per cent of heat too much would pass")
	}
}
