package physics

const (
	// wearKnee [°C], wearScale [K] and wearMost [1] of [hotWear]; assumed: linings
	// wear no faster while they are warm and several times as fast near fade.
	wearKnee  = 250.0
	wearScale = 150.0
	wearMost  = 8.0

	grooveScale = 0.4 * Millimetre // depth of [scored]; assumed
)

// scored is how many times faster a lining wears on a face scored depth [m] deep
// than on a smooth one: 1 + depth/0.4 mm, as its ridges plough. Straight, so that a
// score an inspector may pass (0.1 mm) costs a quarter; common practice, no source.
// What is in contact once bedded is the whole lining again, so nothing else changes.
func scored(depth float64) float64 { return 1 + depth/grooveScale }

// Archard is the volume [m³] worn off by rate [m²/N] under force [N] over a
// slid distance [m]: V = k·N·s. Source: J. F. Archard, J. Appl. Phys. 24 (1953) 981.
func Archard(rate, force, slid float64) float64 { return rate * force * slid }

// hotWear is how many times faster a lining at face temperature t [°C] wears
// than a cold one: 1 + ((t − 250)/150)² above 250 °C, at most 8.
func hotWear(t float64) float64 {
	if t <= wearKnee {
		return 1
	}
	x := (t - wearKnee) / wearScale
	return min(wearMost, 1+float64(x*x))
}

// sweptArea is one face of the disc that the pads rub [m²]: the ring from the
// disc's edge to as far inside the effective radius as the edge is outside it,
// which is what an evenly worn pad covers.
func (c *CornerSpec) sweptArea() float64 {
	outer := float64(c.DiscDiameter / 2)
	inner := float64(2*c.EffectiveRadius) - outer
	return pi * (float64(outer*outer) - float64(inner*inner))
}
