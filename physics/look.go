package physics

import "math"

const (
	lampDifference = 1.5 * Megapascal // between the circuits; 49 CFR 571.135 S5.5.1, from memory
	bootFull       = 300.0            // [N] a pin's rubber grips with once its boot is swollen tight; assumed
)

// Lamp is the light of the brake warning lamp [1] with the engine running: lit by a
// level at MIN or below, less what a sticking float keeps, or by circuits whose pressures
// differ by more than 1.5 MPa. A lamp that has lost all its light never shows.
func (m *Model) Lamp(s *State) float64 {
	low := s.Standing <= m.spec.Reservoir.AtMin-m.cond.FloatHigh
	apart := math.Abs(s.Master.Pressure[0]-s.Master.Pressure[1]) > lampDifference
	if low || apart {
		return m.LampTest()
	}
	return 0
}

// LampTest is the lamp's light [1] when the key is turned, before the engine runs:
// it is lit then whatever the level, so that a dead one is found.
func (m *Model) LampTest() float64 { return 1 - m.cond.LampLost }

// DiscThickness is a disc's least thickness over its rubbed faces [m], as a pointed
// gauge finds it between the scores' ridges: at the bottom of the deepest on each face.
func (m *Model) DiscThickness(w Wheel) float64 {
	c := &m.cond.Wheels[w]
	return m.LandThickness(w) - c.Groove[Inner] - c.Groove[Outer]
}

// LandThickness is what flat anvils read on the rubbed faces [m]: the mean over a
// turn, on the ridges.
func (m *Model) LandThickness(w Wheel) float64 {
	c := &m.cond.Wheels[w]
	return m.spec.Corner(w).DiscThickness - c.DiscWear[Inner] - c.DiscWear[Outer]
}

// RimThickness is what jaws laid across the disc's rim read [m]: no pad rubs there,
// so it stays as new, and rust stands on it.
func (m *Model) RimThickness(w Wheel) float64 {
	return m.spec.Corner(w).DiscThickness + m.cond.Wheels[w].RimRust
}

// SteelGap is how much lining [m] has yet to wear, at the thinnest end of a wheel's
// pads, before steel rubs on the disc: the plate, or before it the inner pad's
// tongue. Below 0 it rubs.
func (m *Model) SteelGap(w Wheel) float64 {
	spec, c := m.spec.Corner(w), &m.cond.Wheels[w]
	least := spec.LiningNew
	for half := range 2 {
		least = min(least, spec.LiningNew-c.Wear[Inner][half]-spec.Tongue, spec.LiningNew-c.Wear[Outer][half])
	}
	return least
}

// PinBootTorn tells that water gets to a pin.
func (m *Model) PinBootTorn(w Wheel, pin int) bool { return m.cond.Wheels[w].PinRusting[pin] > 0 }

// PistonBootTorn tells that water gets to the piston.
func (m *Model) PistonBootTorn(w Wheel) bool { return m.cond.Wheels[w].SealRusting > 0 }

// PinBootSwollen is how far a pin's boot looks swollen [1], from what its rubber has
// taken up so far.
func (m *Model) PinBootSwollen(w Wheel, pin int) float64 {
	return min(1, m.cond.Wheels[w].PinSoaked[pin]/bootFull)
}

// OilLayer is the share of a glass of fluid from the reservoir [1] that stands as an
// oily layer on the rest: mineral oil and glycol ethers do not mix.
func (m *Model) OilLayer() float64 { return m.cond.MineralOil }

// BoilingPoint is where this car's fluid boils at one atmosphere [°C].
func (m *Model) BoilingPoint() float64 { return m.boil - freezing }
