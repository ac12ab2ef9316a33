// Package physicstest gives tests a whole car without reading a file. Cars in
// play come from scenarios/cars.
package physicstest

import . "evenwear/physics" //lint:ignore ST1001 a table of the package's own quantities

// Hatchback is the compact hatchback, new. Values without a published place are
// assumed, as in scenarios/cars/compact_hatchback.yaml.
func Hatchback() *Spec {
	front := CornerSpec{
		PistonDiameter: 54 * Millimetre, K1: 60e6, K3: 2.5e15, Bridge: 120e6,
		SealRate: 0.9e6, SealFriction: 120, SealGrip: 55e-6, PinRate: 8e6, PinFriction: 15,
		PinOffset: 65 * Millimetre, PadOffset: 28 * Millimetre, TiltShare: 0.30, Boot: 300, TiltRate: 50,
		Gap: [2]float64{0.12 * Millimetre, 0.12 * Millimetre}, Grease: 400, EarRate: 20e6, EarFriction: 5,
		Home: 1 * Millimetre, Runout: 30e-6,
		DiscDiameter: 256 * Millimetre, DiscThickness: 22 * Millimetre, DiscMinimum: 20 * Millimetre, DiscMass: 5.2, DiscVented: true,
		DiscConduction: 54, DiscDensity: 7200, DiscHeat: 480, EffectiveRadius: 104 * Millimetre,
		LiningNew: 11 * Millimetre, LiningArea: 45 * SquareCm, Mu: 0.38, FadeKnee: 350, FadeSlope: 0.001,
		WearRate: 10e-15, DiscWearRate: 1e-15, HoseSwell: 0.020 * CubicCentimetre / Megapascal, FluidVolume: 60 * CubicCentimetre,
		LineResistance: 1e10,
	}
	rear := front
	rear.PistonDiameter, rear.K1, rear.Bridge = 34*Millimetre, 45e6, 90e6
	rear.PinOffset, rear.PadOffset = 55*Millimetre, 24*Millimetre
	rear.DiscDiameter, rear.DiscThickness, rear.DiscMinimum, rear.DiscMass, rear.DiscVented = 245*Millimetre, 9*Millimetre, 7.5*Millimetre, 3.6, false
	rear.EffectiveRadius, rear.LiningNew, rear.LiningArea = 101*Millimetre, 9*Millimetre, 28*SquareCm
	rear.HoseSwell, rear.FluidVolume, rear.LineResistance = 0.015*CubicCentimetre/Megapascal, 45*CubicCentimetre, 1.4e10
	return &Spec{
		Body: BodySpec{Mass: 1350, Wheelbase: 2.55, CentreHeight: 0.54, FrontShare: 0.60, Track: 1.48, TyreRadius: 0.300,
			PeakAdhesion: 0.95, SlideAdhesion: 0.80, DragArea: 0.70, Rolling: 0.012, WheelInertia: 0.9},
		Pedal:   PedalSpec{Ratio: 3.8, Free: 1.5 * Millimetre, Reserve: 127 * Millimetre},
		Booster: BoosterSpec{Gain: 4, Threshold: 40, Ceiling: 2500, Vacuum: 70e3, Vent: 0.35, Restore: 0.5},
		Master: MasterSpec{Bore: 20.64 * Millimetre, Efficiency: 0.95, Stroke: [2]float64{17 * Millimetre, 15 * Millimetre},
			SpringPreload: [2]float64{90, 90}, SpringRate: [2]float64{1500, 1800}, PortArea: [2]float64{0.4e-6, 0.4e-6},
			CupResistance: 2e9, Friction: 15, FrictionShare: 0.03, FrictionRate: 0.2e6},
		Valve: ValveSpec{Knee: 2.5 * Megapascal, Slope: 0.35},
		Fluid: FluidSpec{BulkModulus: 1.6e9, Expansion: 0.8e-3, Density: 1050, Heat: 2300, Viscosity: 14e-6, ViscosityC: 1500e-6, DryBoil: 240, WetBoil: 160},
		Reservoir: ReservoirSpec{AtMin: 90 * CubicCentimetre, MinToMax: 120 * CubicCentimetre, MaxToBrim: 25 * CubicCentimetre,
			Port: [2]float64{30 * CubicCentimetre, 30 * CubicCentimetre}, Height: 30 * Millimetre},
		Vessels: VesselsSpec{
			Oil: OilSpec{AtMax: 4.2 * Litre, MinToMax: 1 * Litre, Warm: 80, Density: 860, Viscosity40: 68e-6, Viscosity100: 11e-6,
				Aloft: 0.9 * Litre, WettedArea: 1.4, WettedHeight: 0.35, SumpArea: 0.05, Reach: 0.12},
			Coolant:  CoolantSpec{Volume: 5.6 * Litre, AtMax: 0.75 * Litre, MinToMax: 0.3 * Litre, ToBrim: 0.9 * Litre, Glycol: 0.5, Metal: 75e-6},
			Steering: VesselSpec{Volume: 1 * Litre, MinToMax: 0.12 * Litre, Density: 860},
			Washer:   VesselSpec{Volume: 3 * Litre, MinToMax: 3 * Litre},
		},
		Circuit: [NumWheels]int{FrontLeft: 0, FrontRight: 1, RearLeft: 1, RearRight: 0},
		Front:   front, Rear: rear,
	}
}
