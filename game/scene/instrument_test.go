package scene

import (
	"testing"

	"evenwear/game/draw"
	"evenwear/game/draw/drawtest"
	"evenwear/game/play"
)

// swingOf is the needle over a turn with a run-out [mm].
func swingOf(mid, runout float64) (list []float64) {
	turn := arc{a: 0, b: 6.283185307179586, lo: 0, hi: 24}
	for i := range 25 {
		list = append(list, mid-runout/2*turn.dir(float64(i)).Y)
	}
	return list
}

// shown are instruments as a job shows them.
var shown = []play.InstrumentView{
	{Check: "lining_outer_upper@front_left", Kind: "stepped_feeler", Unit: "mm", Division: 1, Long: 1, Lo: 2, Hi: 12, Pad: "outer", Half: "upper", Needle: []float64{8.5}},
	{Check: "lining_inner_upper@front_left", Kind: "stepped_feeler", Unit: "mm", Division: 1, Long: 1, Lo: 2, Hi: 12, Pad: "inner", Half: "upper", Needle: []float64{6.5}},
	{Check: "runout@front_left", Kind: "dial_indicator", Unit: "mm", Division: 0.01, Long: 0.1, Lo: 0, Hi: 1, Needle: swingOf(0.22, 0.12)},
	{Check: "hub_play@front_left", Kind: "dial_indicator", Unit: "mm", Division: 0.01, Long: 0.1, Lo: 0, Hi: 1, Needle: []float64{0.12, 0.18}},
	{Check: "pedal_travel", Kind: "rule", Unit: "mm", Division: 1, Long: 10, Lo: 0, Hi: 200, Needle: []float64{168, 106}},
	{Check: "disc_thickness@front_left", Kind: "thickness_gauge", Unit: "mm", Division: 0.01, Long: 0.5, Lo: 0, Hi: 25, Needle: []float64{20.63}},
	{Check: "thickness_variation@front_left", Kind: "thickness_gauge", Unit: "mm", Division: 0.01, Long: 0.5, Lo: 0, Hi: 25, Needle: []float64{10.02, 9.98}},
	{Check: "temperature@front_left", Kind: "thermometer", Unit: "°C", Division: 1, Lo: -20, Hi: 500, Digits: "148"},
	{Check: "reservoir_level", Kind: "reservoir", Unit: "%", Division: 10, Long: 100, Lo: -30, Hi: 120, Needle: []float64{40}},
	{Check: "fluid_water", Kind: "tester", Unit: "%", Division: 0.1, Long: 1, Lo: 0, Hi: 5, Needle: []float64{2.6}},
	{Check: "oil_level", Kind: "dipstick", Unit: "%", Division: 10, Long: 100, Lo: -50, Hi: 150, Needle: []float64{75}},
	{Check: "coolant_level", Kind: "coolant", Unit: "%", Division: 10, Long: 100, Lo: -100, Hi: 250, Needle: []float64{35}},
	{Check: "steering_level", Kind: "cap_stick", Unit: "%", Division: 10, Long: 100, Lo: -50, Hi: 150, Needle: []float64{40}},
	{Check: "washer_level", Kind: "dip_tube", Unit: "%", Division: 10, Long: 50, Lo: 0, Hi: 100, Needle: []float64{65}},
	{Check: "fluid_boil", Kind: "boil_tester", Unit: "°C", Division: 1, Lo: 80, Hi: 320, Digits: "187"},
	{Check: "pin_upper@front_left", Kind: "pull_gauge", Unit: "N", Division: 20, Long: 200, Lo: 0, Hi: 1000, Half: "upper", Needle: []float64{270}},
	{Check: "push_piston@front_left", Kind: "pull_gauge", Unit: "N", Division: 50, Long: 500, Lo: 0, Hi: 3000, Needle: []float64{1350}},
	{Check: "pull", Kind: "pendulum", Unit: "m/s²", Division: 0.02, Long: 0.1, Lo: -2, Hi: 2, Needle: []float64{-0.34}},
	{Check: "stop_distance", Kind: "tape", Unit: "m", Division: 1, Long: 5, Lo: 0, Hi: 100, Needle: []float64{23.5}},
	{Check: "wetness@front_left", Kind: "observation", Marks: "A shine creeps round the wiped joint, and the cloth takes a faint stain."},
	{Check: "hose_bulge@front_left", Kind: "observation", Marks: "Under the heavy foot the hose swells in the hand like a small ball."},
	{Check: "trapped_pressure@front_left", Kind: "observation", Marks: "The screw open, the hose jumps and the bottle clouds."},
	{Check: "spin@front_left", Kind: "observation", Marks: "One push, and it whispers round a turn or two before it stands."},
	{Check: "pedal_feel", Kind: "observation", Marks: "The foot goes on a good way as the force doubles, and is pushed back lively."},
	{Check: "warning_lamp", Kind: "observation", Marks: "The brake lamp shows with the ignition and goes out again."},
	{Check: "opening_outer@front_left", Kind: "observation", Pad: "outer", Marks: "The lining is about as thick as two coins; the plate stands close to the disc."},
	{Check: "opening_inner@front_left", Kind: "observation", Pad: "inner", Marks: "Past the disc the upper edge shows about as much lining as backing plate."},
	{Check: "slow_stop", Kind: "observation", Marks: "Hands loose, the wheel turns by itself with the clock, and the bonnet leaves the line.", Needle: []float64{1}},
	{Check: "cap_vent", Kind: "observation", Marks: "As the cap turns there is a whistle, and the diaphragm, which hung far down into the neck, goes back up."},
	{Check: "fluid_layers", Kind: "observation", Marks: "An oily part floats on the rest of the sample, and a sharp line lies between them."},
	{Check: "cap_rubber", Kind: "observation", Marks: "The diaphragm is firm, and springs back to its old shape from a fingertip."},
	{Check: "clearance@front_left", Kind: "blade_feeler", Unit: "mm", Division: 0.02, Long: 0.1, Lo: 0, Hi: 1, Needle: []float64{0.09}},
	{Check: "plate_inner@front_left", Kind: "blade_feeler", Unit: "mm", Division: 0.02, Long: 0.1, Lo: 0, Hi: 1, Pad: "inner", Needle: []float64{0.37}},
	{Check: "turning_force@front_left", Kind: "pull_gauge", Unit: "N", Division: 10, Long: 100, Lo: 0, Hi: 500, Needle: []float64{60}},
	{Check: "ear_outer@front_left", Kind: "pull_gauge", Unit: "N", Division: 10, Long: 100, Lo: 0, Hi: 500, Pad: "outer", Needle: []float64{180}},
	{Check: "disc_film@front_left", Kind: "observation", Marks: "Over the shine lies a thin veil, tea-coloured, that a finger would wipe off."},
	{Check: "groove_outer@front_left", Kind: "observation", Marks: "The nail ticks over fine rings, as over the grooves of a record."},
	{Check: "bond_inner@front_left", Kind: "observation", Pad: "inner", Marks: "From one corner on, less than half way round, a dark line opens between lining and plate."},
	{Check: "face_inner@front_left", Kind: "observation", Pad: "inner", Marks: "The lining is matt and grainy all over, and dry to the touch."},
	{Check: "pin_boots@front_left", Kind: "observation", Marks: "A fold is split through; behind it the pin is brown."},
	{Check: "piston_boot@front_left", Kind: "observation", Marks: "The boot lies round the piston in one fold, all the way."},
	{Check: "wet_piston@front_left", Kind: "observation", Marks: "Behind the lip the bore shines, and the cloth takes a faint stain."},
	{Check: "unknown", Kind: "unknown", Unit: "bar", Division: 0.1, Long: 1, Lo: 0, Hi: 10, Needle: []float64{4.3}},
}

// TestInstrumentPictures draws every kind in a ruled cell, small as on a list.
func TestInstrumentPictures(t *testing.T) {
	for _, slate := range []bool{false, true} {
		a := testApp(t, slate)
		name := "instruments"
		if slate {
			name += "-slate"
		}
		const cols, w, h = 4, 346.0, 266.0
		rows := (len(shown) + cols - 1) / cols
		size := draw.Pt{X: cols*w + 16, Y: float64(rows)*h + 16}
		c := draw.NewSheet(int(size.X), int(size.Y), size, a.theme, a.fonts)
		c.Clear(draw.Rect{W: size.X, H: size.Y})
		for i := range shown {
			r := draw.Rect{X: 8 + w*float64(i%cols), Y: 8 + h*float64(i/cols), W: w, H: h}
			c.Box(r, nil, draw.Thin)
			drawInstrument(c, a.words, &shown[i], r.Inset(8), 0.4)
		}
		drawtest.Golden(t, name, c.Image())
	}
}
