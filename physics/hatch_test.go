package physics

// hatchback is the compact hatchback of the physics page §8, with values of our
// own where the table is silent.
func hatchback() *Spec {
	front := *demoFront()
	front.EarFriction, front.Runout, front.Grease = 5, 30e-6, 400
	front.DiscDiameter, front.DiscThickness, front.DiscMinimum, front.DiscMass, front.DiscVented = 256*Millimetre, 22*Millimetre, 20*Millimetre, 5.2, true
	front.DiscConduction, front.DiscDensity, front.DiscHeat = 54, 7200, 480
	front.LiningNew, front.LiningArea = 11*Millimetre, 45*SquareCm
	front.FadeKnee, front.FadeSlope = 300, 0.0012
	front.WearRate, front.DiscWearRate = 1.0e-14, 0.4e-14
	front.HoseSwell, front.FluidVolume, front.LineResistance = 0.020*CubicCentimetre/Megapascal, 60*CubicCentimetre, 1e10
	front.Home = 0
	rear := front
	rear.PistonDiameter, rear.K1, rear.Bridge = 34*Millimetre, 45e6, 90e6
	rear.PinOffset, rear.PadOffset = 55*Millimetre, 24*Millimetre
	rear.DiscDiameter, rear.DiscThickness, rear.DiscMinimum, rear.DiscMass, rear.DiscVented = 245*Millimetre, 9*Millimetre, 7.5*Millimetre, 3.6, false
	rear.EffectiveRadius, rear.LiningNew, rear.LiningArea = 101*Millimetre, 9*Millimetre, 28*SquareCm
	rear.HoseSwell, rear.FluidVolume = 0.015*CubicCentimetre/Megapascal, 45*CubicCentimetre
	return &Spec{
		Body: BodySpec{Mass: 1350, Wheelbase: 2.55, CentreHeight: 0.54, FrontShare: 0.60, Track: 1.48, TyreRadius: 0.300,
			PeakAdhesion: 0.95, SlideAdhesion: 0.80, DragArea: 0.68, Rolling: 0.011, WheelInertia: 0.9},
		Valve:     ValveSpec{Knee: 2.5e6, Slope: 0.35},
		Fluid:     FluidSpec{Density: 1060, BulkModulus: 1.6e9, Expansion: 0.8e-3, Heat: 2300},
		Reservoir: ReservoirSpec{AtMin: 60 * CubicCentimetre, MinToMax: 120 * CubicCentimetre, MaxToBrim: 25 * CubicCentimetre},
		Front:     front, Rear: rear,
	}
}
