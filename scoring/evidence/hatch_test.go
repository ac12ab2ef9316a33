package evidence

import "evenwear/physics"

// hatchback is the compact hatchback of the physics page §8; what that page
// leaves open is assumed here and stands in the car's file for play.
func hatchback() *physics.Spec {
	const mm = physics.Millimetre
	f := *front()
	f.Grease = 400
	f.DiscDiameter, f.DiscThickness, f.DiscMinimum, f.DiscMass, f.DiscVented = 256*mm, 22*mm, 20*mm, 5.2, true
	f.DiscConduction, f.DiscDensity, f.DiscHeat = 52, 7200, 480
	f.LiningNew, f.LiningArea = 11*mm, 45*physics.SquareCm
	f.FadeKnee, f.FadeSlope = 300, 0.0015
	f.WearRate, f.DiscWearRate = 4e-14, 4e-15
	f.HoseSwell, f.FluidVolume, f.LineResistance = 0.020*physics.CubicCentimetre/physics.Megapascal, 60*physics.CubicCentimetre, 2e10
	r := f
	r.PistonDiameter, r.K1, r.Bridge = 34*mm, 45e6, 90e6
	r.PinOffset, r.PadOffset = 55*mm, 24*mm
	r.DiscDiameter, r.DiscThickness, r.DiscMinimum, r.DiscMass, r.DiscVented = 245*mm, 9*mm, 7.5*mm, 3.6, false
	r.EffectiveRadius, r.LiningNew, r.LiningArea = 101*mm, 9*mm, 28*physics.SquareCm
	r.HoseSwell, r.FluidVolume = 0.015*physics.CubicCentimetre/physics.Megapascal, 45*physics.CubicCentimetre
	return &physics.Spec{
		Body: physics.BodySpec{Mass: 1350, Wheelbase: 2.55, CentreHeight: 0.54, FrontShare: 0.60, Track: 1.47, TyreRadius: 0.300,
			PeakAdhesion: 0.95, SlideAdhesion: 0.80, DragArea: 0.65, Rolling: 0.012, WheelInertia: 0.8},
		Pedal:   physics.PedalSpec{Ratio: 3.8, Free: 1.5 * mm, Reserve: 130 * mm},
		Booster: physics.BoosterSpec{Gain: 4, Threshold: 40, Ceiling: 2500, Vacuum: 70e3, Vent: 0.35, Restore: 1},
		Master: physics.MasterSpec{Bore: 20.64 * mm, Efficiency: 0.95, Stroke: [2]float64{17 * mm, 15 * mm},
			SpringPreload: [2]float64{90, 90}, SpringRate: [2]float64{1500, 1800}, Port: [2]float64{0.5 * mm, 0.5 * mm},
			PortArea: [2]float64{0.4e-6, 0.4e-6}, CupResistance: 1e9, Friction: 15, FrictionShare: 0.03, FrictionRate: 1e6},
		Valve:     physics.ValveSpec{Knee: 2.5e6, Slope: 0.35},
		Fluid:     physics.FluidSpec{BulkModulus: 1.6e9, Expansion: 0.8e-3, Density: 1050, Heat: 2300, Viscosity: 15e-6, ViscosityC: 1400e-6, DryBoil: 240, WetBoil: 160},
		Reservoir: physics.ReservoirSpec{AtMin: 60e-6, MinToMax: 120e-6, MaxToBrim: 25e-6, Port: [2]float64{20e-6, 20e-6}, Height: 40 * mm},
		Circuit:   [physics.NumWheels]int{0, 1, 1, 0},
		Front:     f, Rear: r,
	}
}

// front is the front brake of the physics page §1.
func front() *physics.CornerSpec {
	return &physics.CornerSpec{
		PistonDiameter: 54 * physics.Millimetre, K1: 60e6, K3: 2.5e15, Bridge: 120e6,
		SealRate: 0.9e6, SealFriction: 120, SealGrip: 55e-6,
		PinRate: 8e6, PinFriction: 15, PinOffset: 65 * physics.Millimetre, PadOffset: 28 * physics.Millimetre,
		TiltShare: 0.30, Boot: 300, TiltRate: 50, Gap: [2]float64{0.12 * physics.Millimetre, 0.12 * physics.Millimetre},
		EarRate: 20e6, EarFriction: 5, Home: 2 * physics.Millimetre, EffectiveRadius: 104 * physics.Millimetre, Mu: 0.38,
		Runout: 0.03 * physics.Millimetre,
	}
}
