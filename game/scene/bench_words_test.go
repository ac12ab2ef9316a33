package scene

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/physics"
	"evenwear/scenarios"
)

// realBench is a bench of the whole library on a sheet.
func realBench(t *testing.T) (*App, *bench) {
	t.Helper()
	lib, err := scenarios.Embedded()
	if err != nil {
		t.Fatal(err)
	}
	src, err := play.NewBench(lib, words(t), "compact_hatchback")
	if err != nil {
		t.Fatal(err)
	}
	a := testApp(t, false)
	b := newBench(a, src)
	a.Show(b)
	a.Draw()
	return a, b
}

// TestEveryKeyIsWholeAndLettered: each key of the bench shows its letter, no two
// the same, and no label is cut.
func TestEveryKeyIsWholeAndLettered(t *testing.T) {
	a, b := realBench(t)
	for _, drawer := range []bool{false, true} {
		if drawer {
			a.Handle(key("S"))
		}
		taken := map[string]string{}
		for _, k := range b.keys {
			if k.Letter == "" || taken[k.Letter] != "" {
				t.Errorf("key %s has letter %q, which is %q's", k.id, k.Letter, taken[k.Letter])
			}
			taken[k.Letter] = k.id
			box := max(18, a.sheet.Measure(draw.SmallText, k.Letter)+10) + 14
			if w, room := a.sheet.Measure(draw.KeyText.At(13), k.Label), k.Rect.W-9-box; w > room {
				t.Errorf("key %s: %q is %.1f units wide at 13, room for %.1f", k.id, k.Label, w, room)
			}
		}
	}
	for i := range b.rows {
		if r := &b.rows[i]; r.cause != "" {
			b.opened = r.cause
			b.look()
			for _, p := range b.rows {
				style, room := draw.KeyText.At(13), 296-16-10-p.indent-18
				if p.cause != "" {
					room -= 30
				}
				if w := a.sheet.Measure(style, p.text); w > room {
					t.Errorf("row %q is %.1f units wide, room for %.1f", p.text, w, room)
				}
			}
		}
	}
}

// TestCauseStandsOnTheSheet: with the drawer shut the cause and its wheel are
// lettered whole, and the line over the slider says that the bench has turned.
func TestCauseStandsOnTheSheet(t *testing.T) {
	a, b := realBench(t)
	for _, g := range b.view.Groups {
		for _, c := range g.Causes {
			b.do(c.Places[len(c.Places)-1].Act)
			if b.view.Cause != c.Name || a.sheet.Measure(draw.SmallText, b.view.Cause) > placeRoom {
				t.Errorf("%q is lettered for %q, %.0f units wide", b.view.Cause, c.Name, a.sheet.Measure(draw.SmallText, b.view.Cause))
			}
			if w := a.sheet.Measure(draw.SmallText, b.notice()); w > helpEnd-slideX0 {
				t.Errorf("notice %q is %.0f units wide", b.notice(), w)
			}
		}
	}
}

// TestPredictionFits: every question stands in two lines, every comment in two.
func TestPredictionFits(t *testing.T) {
	a, b := realBench(t)
	say := words(t).Say
	for _, id := range []string{"none", "upper", "lower", "both"} {
		q := say("bench.question."+id, "force", "300")
		if n := len(b.lines(a.sheet, q, draw.SentenceText, 292)); n > 2 {
			t.Errorf("%q takes %d lines, room for 2", q, n)
		}
	}
	for _, id := range []string{"close", "too_high", "too_low"} {
		s := say("bench."+id, "off", "100", "computed", "86", "force", "300") + " " + say("bench.pins_take", "force", "10.84")
		if n := len(b.lines(a.sheet, s, draw.SentenceText.At(14), 296)); n > 2 {
			t.Errorf("%q takes %d lines, room for 2", s, n)
		}
	}
	if s := say("bench.other_force", "force", "300"); len(b.lines(a.sheet, s, draw.SentenceText.At(14), 296)) > 2 {
		t.Errorf("%q takes more than 2 lines", s)
	}
}

// TestShareFiguresStandApart: whatever was said and computed, both figures stand
// in the field and not on one another.
func TestShareFiguresStandApart(t *testing.T) {
	a, b := realBench(t)
	for said := range 101 {
		for computed := range 101 {
			mine := a.sheet.Measure(draw.HandText, b.fill("bench_sheet.unit_percent_of", "n", strconv.Itoa(said)))
			wide := a.sheet.Measure(draw.LabelText, b.fill("bench_sheet.computed", "n", strconv.Itoa(computed)))
			x, left := shareFigures(float64(said), float64(computed), mine, wide)
			if x-mine/2 < shareRect.X || x+mine/2 > shareRect.X+shareRect.W-10 || left < shareRect.X || left+wide > shareRect.X+shareRect.W-10 {
				t.Errorf("said %d, computed %d: a figure leaves the field", said, computed)
			}
			if x-mine/2 < left+wide && x+mine/2 > left {
				t.Errorf("said %d, computed %d: the figures overlap", said, computed)
			}
		}
	}
}

// TestFiguresKeepTheirUnits: no label is broken between a figure and its unit.
func TestFiguresKeepTheirUnits(t *testing.T) {
	a, b := realBench(t)
	for _, id := range words(t).IDs() {
		if !strings.HasPrefix(id, "bench_sheet.") {
			continue
		}
		for width := 60.0; width < 240; width += 10 {
			for _, line := range b.lines(a.sheet, b.fill(id, "n", "1.10"), draw.SmallText, width) {
				if strings.HasSuffix(line, "1.10") && id != "bench_sheet.scale_axial" && id != "bench_sheet.fact_movement" && !strings.HasPrefix(id, "bench_sheet.label_disc") && id != "bench_sheet.times_slower" {
					t.Errorf("%s at %g: a line ends in %q", id, width, line)
				}
			}
		}
	}
}

// TestStarvingPadIsSeen: at every force the arrows of a starved outer and of the
// inner pad differ by more than their line, and both stand in their room.
func TestStarvingPadIsSeen(t *testing.T) {
	for _, mpa := range []float64{1.28, 4, 7.9, 10} {
		car := new(benchCar).at(t, stuckUpper, [2]string{"stuck", "free"}, 30, mpa)
		b := newBench(testApp(t, false), car)
		k := b.scaleKN()
		in, out := car.view.Balance[0]*k, car.view.Balance[1]*k
		if in-out < 6 || in > forceRoom {
			t.Errorf("at %g MPa, %g px/kN: inner arrow %.1f, outer %.1f", mpa, k, in, out)
		}
		if next := b.kN - 1; next >= 0 && car.view.Balance[0]*forceScales[next] <= forceRoom {
			t.Errorf("at %g MPa %g px/kN would still have stood", mpa, forceScales[next])
		}
	}
}

// TestPlotScrolls: after a long press the plots show its last seconds across
// their whole width.
func TestPlotScrolls(t *testing.T) {
	_, b := realBench(t)
	b.press()
	for range 100 {
		b.Advance(100)
	}
	axis := axisOf(plotFTop, plotFFoot, 3, b.begin())
	pts := b.thin(axis, 1, func(s *play.BenchSample) float64 { return s.Inner })
	if first, last := pts[0].X, pts[len(pts)-1].X; first < plotX0 || first > plotX0+3 || math.Abs(last-plotX1) > 3 {
		t.Errorf("after %.1f s the trace goes from %.1f to %.1f, the axis from %g to %g", b.view.Time, first, last, plotX0, plotX1)
	}
}

// TestTableAgreesWithBalance: piston and fingers are one figure, rounded once.
func TestTableAgreesWithBalance(t *testing.T) {
	_, b := realBench(t)
	for n := range 60 {
		b.do(play.Act{Do: play.Foot, N: float64(n)})
		if n == 0 {
			b.press()
		}
		b.Advance(200)
		f := b.tableFigures()
		if b.num(f[4], 2) != b.num(b.view.Balance[0], 2) || b.num(f[5], 2) != b.num(b.view.Balance[1], 2) {
			t.Errorf("at %d N the table says %s, the balance %s", n, b.num(f[5], 2), b.num(b.view.Balance[1], 2))
		}
	}
}

// TestBalanceTermsStandApart: the widest figures leave the signs their room.
func TestBalanceTermsStandApart(t *testing.T) {
	a := testApp(t, false)
	for i := 1; i < len(balanceX); i++ {
		end := balanceX[i-1] + a.sheet.Measure(draw.SmallText, "22.67")
		sign := a.sheet.Measure(draw.SmallText, "=") / 2
		if end+2 > balanceX[i]-9-sign || balanceX[i]-9+sign+1 > balanceX[i] {
			t.Errorf("term %d ends at %.1f, its sign stands at %.1f ± %.1f, the next at %g", i, end, balanceX[i]-9, sign, balanceX[i])
		}
	}
}

// TestSmallWindowAsksForRoom: under 0.8 pixels a unit one line in the margin asks
// for a larger window on every sheet, and above it nothing does.
func TestSmallWindowAsksForRoom(t *testing.T) {
	for _, x := range []struct {
		w, h int
		asks bool
	}{{1280, 720, false}, {1024, 576, false}, {1000, 563, true}, {640, 360, true}} {
		a := testApp(t, false)
		for _, s := range []Scene{a.scene, newBench(a, new(benchCar).at(t, physics.WheelCondition{}, freePins, 0, 0))} {
			a.Show(s)
			a.Resize(x.w, x.h, false)
			img, _ := a.Draw()
			bare := draw.New(x.w, x.h, a.theme, a.fonts)
			bare.Sheet()
			differs := false
			for y := range int(draw.Margin*a.still.Scale()) - 1 {
				for p := range x.w {
					differs = differs || img.RGBAAt(p, y) != bare.Image().RGBAAt(p, y)
				}
			}
			if differs != x.asks {
				t.Errorf("%s: asks %v, want %v", strconv.Itoa(x.w)+"×"+strconv.Itoa(x.h), differs, x.asks)
			}
		}
	}
}
