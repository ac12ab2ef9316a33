package physics

import "math"

// Constants of the heat paths. Those without a source are assumed, at the
// middle of what is usual for passenger cars.
const (
	stefanBoltzmann = 5.670374419e-8 // [W/(m²·K⁴)] CODATA 2018, exact to the digits shown
	freezing        = 273.15         // [K] at 0 °C, exact
	roomAir         = 20.0           // [°C] when Input.Ambient is 0

	stillFilm = 4.0    // [W/(m²·K)] standing: 3 to 5 on four discs, Topouris et al., Strojniški vestnik 66 (2020) 15 (abstract)
	faceFilm  = 8.0    // [W/(m²·K) per (m/s)^⅝] faces; see films
	vaneFilm  = 0.7175 // [W/(m²·K) per rad/s] inside vanes, with vaneFloor the straight line through the three
	vaneFloor = 1.3    // [W/(m²·K)] films of McPhee & Johnson, Int. J. Thermal Sci. 47 (2008) 458
	vaneArea  = 1.2    // [1] vane walls per ring face; assumed
	emission  = 0.5    // [1] of a disc face, between bright and oxidised; assumed
	ringShare = 0.75   // [1] of the disc's mass that is ring, if so much fits between the faces; assumed
	hatPath   = 5.0    // [W/K] neck between ring and hat; assumed
	hatLoss   = 1.2    // [W/K] hat to hub, wheel and air; assumed
	padK      = 1.0    // [W/(m·K)] lining; assumed, with the next two an effusivity of 1732 W·s^½/(m²·K)
	padRho    = 2500.0 // [kg/m³]
	padHeat   = 1200.0 // [J/(kg·K)]
	plateC    = 18e3   // [J/(m²·K)] backing plate of 5 mm steel
	padLoss   = 25.0   // [W/(m²·K)] of lining area, edges and back to air; assumed
	airGap    = 300.0  // [W/(m²·K)] across 0.1 mm of air when a pad is off the disc
	rimPath   = 8.0    // [W/(m·K)] plate to piston per metre of piston diameter; assumed
	borePath  = 16.0   // [W/(m·K)] piston to fluid and bore, likewise; assumed
	fingers   = 6.0    // [W/(m·K)] outer plate through the fingers to the body; assumed
	pistonC   = 1.8e3  // [J/(m·K)] piston per metre of diameter; assumed
	bodyC     = 620e3  // [J/(m²·K)] caliper body per piston area, 3 kg for 54 mm; assumed
	bodyLoss  = 0.4    // [W/K] body to still air; assumed
	bodyWind  = 0.11   // [W/K per m/s] body to moving air; assumed
)

// brakeHeat is one wheel's heat paths with its condition worked in.
type brakeHeat struct {
	ring      slab
	area      float64 // [m²] one face of the ring
	vented    bool
	share     float64    // [1] of frictional heat that enters the disc
	padC      [2]float64 // [J/K]
	lining    [2]float64 // [W/K] disc face to pad, pressed
	loose     [2]float64 // [W/K] the same across an air gap
	padOut    float64    // [W/K]
	hatC      float64
	diameter  float64 // [m] piston
	pistonC   float64
	fluidC    float64    // [J/K] caliper body and fluid together
	stillLoss [2]float64 // spare of bodyLoss scaled by size, [W/K] and [W/K per m/s]
}

// heatLoad is what heats and cools one wheel during a step.
type heatLoad struct {
	power   [2]float64 // [W] rubbed at the inner and outer pad
	pressed [2]bool
	speed   float64 // [m/s] of the car
	turning float64 // [rad/s] of the disc
	air     float64 // [°C]
}

// newBrakeHeat works a condition into a design's heat paths.
func newBrakeHeat(c *CornerSpec, w *WheelCondition) brakeHeat {
	b := brakeHeat{area: c.sweptArea(), vented: c.DiscVented, diameter: c.PistonDiameter}
	ring := min(ringShare*c.DiscMass, c.DiscDensity*b.area*c.DiscThickness)
	b.hatC = (c.DiscMass - ring) * c.DiscHeat
	worn := float64(c.DiscDensity * b.area * (w.DiscWear[0] + w.DiscWear[1]))
	ring = max(0.2*ring, ring-worn)
	b.ring = slab{k: c.DiscConduction, rhoC: c.DiscDensity * c.DiscHeat, depth: ring / (2 * c.DiscDensity * b.area)}
	b.share = DiscShare(effusivity(c.DiscConduction, c.DiscDensity, c.DiscHeat), effusivity(padK, padRho, padHeat), b.area, c.LiningArea)
	for i := range 2 {
		left := max(0.5*Millimetre, c.LiningNew-float64((w.Wear[i][0]+w.Wear[i][1])/2))
		b.padC[i] = c.LiningArea * (plateC + float64(left*padRho*padHeat))
		film := padK / (left / 2) // to the middle of the lining
		b.lining[i] = film * c.LiningArea
		b.loose[i] = series(film, airGap) * c.LiningArea
	}
	b.padOut = padLoss * c.LiningArea
	b.pistonC = pistonC * c.PistonDiameter
	b.fluidC = float64(bodyC*c.PistonArea()) + float64(c.FluidVolume*1050*2300)
	size := c.PistonDiameter / (54 * Millimetre)
	b.stillLoss = [2]float64{bodyLoss * size, bodyWind * size}
	return b
}

// effusivity is √(k·ρ·c) [W·s^½/(m²·K)].
func effusivity(k, rho, heat float64) float64 { return math.Sqrt(k * rho * heat) }

// DiscShare is the share of frictional heat [1] that enters a disc of
// effusivity e1 over its swept face a1 [m²] when a pad of e2, a2 rubs it: both
// surfaces have one temperature, so heat goes as e·a.
func DiscShare(e1, e2, a1, a2 float64) float64 {
	d, p := float64(e1*a1), float64(e2*a2)
	return d / (d + p)
}

// films returns the heat transfer coefficients [W/(m²·K)] of face and mid-plane, the
// face's with its radiation, at a speed of the car [m/s] and a turning speed [rad/s]:
//
//	h_face = 4 + 8·v^⅝                       between a laminar film's √v and a turbulent one's v^0.8
//	h_mid  = 1.2·max(4, 1.3 + 0.7175·ω)      the vanes pump air in proportion to speed
//
// McPhee & Johnson (2008) found 27.0 to 78.3 inside the vanes from 342 to 1025 rev/min
// and there 45.5 to 55.4 % of the convection: so the faces' film rose as speed to the
// power 0.61. The factor 8 is theirs too, if the vanes' walls have 1.2 times the area
// of the faces and a tyre of 0.3 m takes a car along. Error: air that a wheel keeps off
// its disc, or a duct brings to it, changes it by a half.
func (b *brakeHeat) films(face, air, speed, turning float64) (outside, inside float64) {
	hot, cold := face+freezing, air+freezing
	root := math.Sqrt(speed)
	eighth := math.Sqrt(math.Sqrt(root))
	outside = stillFilm + float64(faceFilm*root*eighth) + radiate(emission, hot, cold)
	if b.vented {
		inside = vaneArea * max(stillFilm, vaneFloor+float64(vaneFilm*turning))
	}
	return outside, inside
}

// radiate is the radiation between two temperatures [K] as a film [W/(m²·K)]:
// ε·σ·(T⁴ − T₀⁴)/(T − T₀).
func radiate(emit, hot, cold float64) float64 {
	return float64(emit * stefanBoltzmann * (float64(hot*hot) + float64(cold*cold)) * (hot + cold))
}

// step advances one wheel's temperatures by dt [s]. Disc implicit; the lumps,
// whose time constants exceed a minute, explicit, and every watt that leaves
// one enters another.
func (b *brakeHeat) step(h *HeatState, load *heatLoad, dt float64) {
	face := h.Face()
	var drain float64 // [W] from disc to pads
	var pad [2]float64
	for i := range 2 {
		g := b.loose[i]
		if load.pressed[i] {
			g = b.lining[i]
		}
		q := float64(g * (face - h.Pad[i]))
		drain += q
		pad[i] = q + float64((1-b.share)*load.power[i]) - float64(b.padOut*(h.Pad[i]-load.air))
	}
	hat := float64(hatPath * (h.Disc[DiscCells-1] - h.Hat))
	ends := slabEnds{
		face: (float64(b.share*(load.power[0]+load.power[1])) - drain) / (2 * b.area),
		mid:  -hat / (2 * b.area),
		air:  load.air,
	}
	ends.faceLoss, ends.midLoss = b.films(face, load.air, load.speed, load.turning)
	var scratch [DiscCells]float64
	b.ring.conduct(h.Disc[:], scratch[:], ends, dt)

	toPiston := float64(rimPath * b.diameter * (h.Pad[Inner] - h.Piston))
	toFluid := float64(borePath * b.diameter * (h.Piston - h.Fluid))
	toBody := float64(fingers * b.diameter * (h.Pad[Outer] - h.Fluid))
	out := float64((b.stillLoss[0] + float64(b.stillLoss[1]*load.speed)) * (h.Fluid - load.air))
	h.Hat += float64(dt * (hat - float64(hatLoss*(h.Hat-load.air))) / b.hatC)
	h.Pad[Inner] += float64(dt * (pad[Inner] - toPiston) / b.padC[Inner])
	h.Pad[Outer] += float64(dt * (pad[Outer] - toBody) / b.padC[Outer])
	h.Piston += float64(dt * (toPiston - toFluid) / b.pistonC)
	h.Fluid += float64(dt * (toFluid + toBody - out) / b.fluidC)
}
