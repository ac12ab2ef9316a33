package scene

import (
	"fmt"
	"image"
	"math"
	"strings"
	"testing"

	"evenwear/game/draw"
	"evenwear/game/play"
)

// twice is how large instruments are drawn to be measured, and edge how far from
// the picture's edge [px].
const twice, edge = 2, 20

// drawn is an instrument alone on a ground, k times the size of its mount.
func drawn(a *App, v *play.InstrumentView, k, swing float64) *image.RGBA {
	w, h := k*mountW, k*mountH
	size := draw.Pt{X: math.Ceil(w) + 2*edge, Y: math.Ceil(h) + 2*edge}
	c := draw.NewSheet(int(size.X), int(size.Y), size, a.theme, a.fonts)
	c.Clear(draw.Rect{W: size.X, H: size.Y})
	drawInstrument(c, a.words, v, draw.Rect{X: edge, Y: edge, W: w, H: h}, swing)
	return c.Image()
}

// shownAs is one of the instruments shown with its needle elsewhere.
func shownAs(t *testing.T, check string, needle ...float64) *play.InstrumentView {
	t.Helper()
	for _, v := range shown {
		if v.Check == check {
			v.Needle = needle
			return &v
		}
	}
	t.Fatalf("no %s is shown", check)
	return nil
}

// inked are the middles of the ink lines that a level (or upright) line of
// pixels crosses, in units of the mount: along it from one place to another, at
// the place at across it.
func inked(img *image.RGBA, upright bool, at, from, to float64) (list []float64) {
	px := func(x float64) int { return edge + int(math.Round(twice*x)) }
	sum, mid := 0.0, 0.0
	for i := px(from); i <= px(to); i++ {
		p := image.Pt(i, px(at))
		if upright {
			p = image.Pt(px(at), i)
		}
		if dark := 200 - float64(img.RGBAAt(p.X, p.Y).R); dark > 0 {
			sum += dark
			mid += dark * (float64(i) + 0.5)
		} else if sum > 0 {
			list = append(list, (mid/sum-edge)/twice)
			sum, mid = 0, 0
		}
	}
	return list
}

// TestPointersStandAtTheirValues measures in the picture where ink lines stand
// and compares with the places worked out from the ends of each scale. The bound
// of 0.15 unit, three tenths of a pixel here, is below a twentieth of any
// division that is read.
func TestPointersStandAtTheirValues(t *testing.T) {
	a := testApp(t, false)
	for _, tc := range []struct {
		name     string
		v        *play.InstrumentView
		upright  bool
		at       float64 // across the line of pixels
		from, to float64 // along it
		want     []float64
	}{
		{"pull gauge, 0 N", shownAs(t, "pin_upper@front_left", 0), false, 165, 14, 316, []float64{30}},
		{"pull gauge, 270 N", shownAs(t, "pin_upper@front_left", 270), false, 165, 14, 316, []float64{30 + 266*0.27}},
		{"push gauge, 1350 N", shownAs(t, "push_piston@front_left", 1350), false, 165, 14, 316, []float64{30 + 266*0.45}},
		{"tape, 23.5 m", shownAs(t, "stop_distance", 23.5), false, 80, 6, 324, []float64{14 + 3*23.5}},
		{"tape enlarged: window, pointer", shownAs(t, "stop_distance", 23.5), false, 184, 18, 300, []float64{165 - 0.5*20}},
		{"tape enlarged: 20, 25 and 30 m", shownAs(t, "stop_distance", 23.5), false, 205, 26, 304, []float64{165 - 80, 165 + 20, 165 + 120}},
		{"plain scale, 4.3", shownAs(t, "unknown", 4.3), false, 76, 10, 320, []float64{20 + 29*4.3}},
		{"pendulum enlarged: pointer at −0.34", shownAs(t, "pull", -0.34), false, 202, 30, 300, []float64{165}},
		{"pendulum enlarged: −0.7 to 0", shownAs(t, "pull", -0.34), false, 221, 31, 299,
			[]float64{165 - 121.5, 165 - 87.75, 165 - 54, 165 - 20.25, 165 + 13.5, 165 + 47.25, 165 + 81, 165 + 114.75}},
		{"reservoir, 40 %", shownAs(t, "reservoir_level", 40), true, 124, 60, 140, []float64{206 - 146.0/150*70}},
		{"dipstick, 75 %: the middle of a ragged edge", shownAs(t, "oil_level", 75), true, 131, 102, 107.5, []float64{226 - 192.0/200*125}},
		{"dipstick: MIN and MAX", shownAs(t, "oil_level", -50), true, 170, 20, 230, []float64{226 - 0.96*150, 226 - 0.96*50}},
		{"coolant, 35 %", shownAs(t, "coolant_level", 35), true, 100, 120, 160, []float64{224 - 174.0/350*135}},
		{"coolant: MIN and MAX", shownAs(t, "coolant_level", 35), true, 204, 60, 200, []float64{224 - 174.0/350*200, 224 - 174.0/350*100}},
		{"cap stick, 40 %: the middle of a ragged edge", shownAs(t, "steering_level", 40), true, 131, 141, 147, []float64{230 - 188.0/200*90}},
		{"dip tube, 65 %", shownAs(t, "washer_level", 65), true, 160, 60, 108, []float64{226 - 1.86*65}},
		{"water tester, 2.6 %", shownAs(t, "fluid_water", 2.6), false, 72, 130, 200, []float64{165 + 52*math.Tan(2.4*0.1/5)}},
		{"rule, pressed at 106 mm", shownAs(t, "pedal_travel", 168, 106), true, 142, 70, 230, []float64{236 - 1.12*106}},
		{"rule enlarged: 110 mm, edge at 106, 100 mm", shownAs(t, "pedal_travel", 168, 106), true, 223, 142, 232, []float64{168, 188, 218}},
		{"feeler, 8.5: the end of step 8", shownAs(t, "lining_outer_upper@front_left", 8.5), false, 144, 172.5, 180, []float64{246 - 9*8}},
		{"feeler, 8.5: the disc's face carried across step 12", shownAs(t, "lining_outer_upper@front_left", 8.5), false, 210, 150, 190, []float64{246 - 9*8.5}},
		{"inner feeler, 6.5: the disc's face carried across step 12", shownAs(t, "lining_inner_upper@front_left", 6.5), false, 210, 220, 260, []float64{104 + 330 - 246 + 9*6.5}},
		{"blades, 0.08: the fourth pack lies across the mouth", shownAs(t, "clearance@front_left", 0.09), false, 103, 58, 260, nil},
		{"blades, 0.08: the fifth stops at it", shownAs(t, "clearance@front_left", 0.09), false, 122, 129.8, 260, []float64{131}},
		{"gauge, 20.63: thimble lines 15 and 10", shownAs(t, "disc_thickness@front_left", 20.63), true, 230, 155, 215,
			[]float64{104 + 136*0.56 - 2*7.2, 104 + 136*0.56 + 3*7.2}},
		{"gauge, 20.63: 18 to 20 mm on the sleeve", shownAs(t, "disc_thickness@front_left", 20.63), false, 173, 160, 210,
			[]float64{212 - 16*2.63, 212 - 16*1.63, 212 - 16*0.63}},
		{"gauge, 20.63: 18.5 to 20.5 mm under them", shownAs(t, "disc_thickness@front_left", 20.63), false, 186, 166, 212.5,
			[]float64{212 - 16*2.13, 212 - 16*1.13, 212 - 16*0.13}},
	} {
		got := inked(drawn(a, tc.v, twice, 0), tc.upright, tc.at, tc.from, tc.to)
		same := len(got) == len(tc.want)
		for i := range min(len(got), len(tc.want)) {
			same = same && math.Abs(got[i]-tc.want[i]) <= 0.15
		}
		if !same {
			t.Errorf("%s: ink stands at %.2f, want %.2f", tc.name, got, tc.want)
		}
	}
}

// TestDialFollowsTheTurn measures the angle of the needle's point at shares of a
// turn: the position that the turn has there, a hundredth of a division true.
func TestDialFollowsTheTurn(t *testing.T) {
	a := testApp(t, false)
	v := shownAs(t, "runout@front_left", swingOf(0.22, 0.12)...)
	bare := drawn(a, shownAs(t, "runout@front_left", 0.72), twice, 0)
	for _, share := range []float64{0, 0.25, 0.4, 0.5, 0.77, 1} {
		img := drawn(a, v, twice, share)
		var x, y float64
		for j := range img.Rect.Dy() {
			for i := range img.Rect.Dx() {
				dx, dy := (float64(i)+0.5-edge)/twice-dialX, (float64(j)+0.5-edge)/twice-dialY
				r := math.Hypot(dx, dy)
				if r < 45 || r > 85 { // the needle only: the marks and their figures cancel
					continue
				}
				if d := float64(bare.RGBAAt(i, j).R) - float64(img.RGBAAt(i, j).R); d > 0 {
					x, y = x+d*dx, y+d*dy
				}
			}
		}
		got := math.Atan2(x, -y) / (2 * math.Pi)
		n := share * 24
		i := min(int(n), 23)
		want := v.Needle[i] + (v.Needle[i+1]-v.Needle[i])*(n-float64(i))
		if math.Abs(got-want) > 0.001 {
			t.Errorf("at %g of a turn the needle stands at %.4f mm, want %.4f", share, got, want)
		}
	}
}

// TestInstrumentsStayInTheirPlace: at the sizes in use nothing is drawn outside
// the rectangle given, beyond the width of a line.
func TestInstrumentsStayInTheirPlace(t *testing.T) {
	a := testApp(t, false)
	list := shown
	for _, end := range []struct {
		check  string
		needle []float64
	}{
		{"lining_outer_upper@front_left", []float64{1.5}}, {"lining_outer_upper@front_left", []float64{12.5}},
		{"lining_inner_upper@front_left", []float64{1.5}}, {"lining_inner_upper@front_left", []float64{12.5}},
		{"pedal_travel", []float64{180, 8}}, {"reservoir_level", []float64{-30}}, {"reservoir_level", []float64{120}},
		{"oil_level", []float64{-50}}, {"oil_level", []float64{150}}, {"coolant_level", []float64{-100}}, {"coolant_level", []float64{250}},
		{"coolant_level", []float64{-90}}, {"coolant_level", []float64{230}}, {"steering_level", []float64{-50}}, {"steering_level", []float64{150}},
		{"washer_level", []float64{0}}, {"washer_level", []float64{100}},
		{"fluid_water", []float64{0}}, {"fluid_water", []float64{5}}, {"pull", []float64{-2}}, {"pull", []float64{2}},
		{"stop_distance", []float64{0}}, {"stop_distance", []float64{100}}, {"disc_thickness@front_left", []float64{0}},
		{"pin_upper@front_left", []float64{500}}, {"push_piston@front_left", []float64{0}},
	} {
		list = append(list, *shownAs(t, end.check, end.needle...))
	}
	for i := range list {
		for _, k := range []float64{1, 1.7} {
			img := drawn(a, &list[i], k, 0.4)
			if p, out := outside(img, img.Rect.Inset(edge-3)); out {
				t.Errorf("%s %v at size %g draws outside, at %v", list[i].Check, list[i].Needle, k, p)
			}
		}
	}
}

// outside finds a pixel out of r that is not ground.
func outside(img *image.RGBA, r image.Rectangle) (image.Point, bool) {
	for y := range img.Rect.Dy() {
		for x := range img.Rect.Dx() {
			if p := image.Pt(x, y); !p.In(r) && img.RGBAAt(x, y) != img.RGBAAt(0, 0) {
				return p, true
			}
		}
	}
	return image.Point{}, false
}

// TestInstrumentsWithoutPositions: what a broken view may hold is drawn as
// little as it must be, and never panics.
func TestInstrumentsWithoutPositions(t *testing.T) {
	a := testApp(t, false)
	for _, v := range shown {
		for _, needle := range [][]float64{nil, {math.NaN()}, {math.Inf(1), -1e300}, {1e9}, {-5}} {
			v.Needle = needle
			drawn(a, &v, 1, 0.4)
			bad := v
			bad.Lo, bad.Hi, bad.Division, bad.Long = 0, 0, 0, 0
			drawn(a, &bad, 1, math.NaN())
			bad.Lo, bad.Hi, bad.Division, bad.Long = 0, 1e12, 1e-9, math.NaN()
			drawn(a, &bad, 1, -7)
		}
	}
}

// TestDialAllocatesNothing: a turning disc is drawn every frame.
func TestDialAllocatesNothing(t *testing.T) {
	a := testApp(t, false)
	v := shownAs(t, "runout@front_left", swingOf(0.22, 0.12)...)
	c := draw.New(draw.SheetW, draw.SheetH, a.theme, a.fonts)
	share := 0.0
	frame := func() {
		share = math.Mod(share+0.013, 1)
		drawInstrument(c, a.words, v, draw.Rect{X: 274, Y: 94, W: 588, H: 430}, share)
	}
	for range 100 {
		frame()
	}
	if n := testing.AllocsPerRun(60, frame); n > 0 {
		t.Errorf("a frame of the turning disc allocates %.1f times, want 0", n)
	}
}

// TestFiguresOfMarks: a mark is lettered as it is written, whatever its last bits.
func TestFiguresOfMarks(t *testing.T) {
	for i := -200; i <= 500; i++ {
		x := float64(i) * 0.02
		want := strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", math.Abs(x)), "0"), ".")
		if i < 0 {
			want = "−" + want
		}
		if got := figureOf(x); got != want {
			t.Errorf("%v is lettered %q, want %q", x, got, want)
		}
	}
}
