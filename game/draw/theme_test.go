package draw

import (
	"image/color"
	"math"
	"testing"
)

// TestContrastFormula is OC-142: WCAG 2.2, definition of contrast ratio and
// relative luminance, knee at 0.04045; each colour on white.
func TestContrastFormula(t *testing.T) {
	for _, x := range []struct {
		rgb  uint32
		want float64
	}{
		{0x000000, 21}, {0x767676, 4.54}, {0x777777, 4.48}, {0x949494, 3.03},
		{0x595959, 7.00}, {0xff0000, 4.00}, {0x0000ff, 8.59},
	} {
		got := Contrast(hex(x.rgb), hex(0xffffff))
		if math.Abs(got-x.want) > 0.005 {
			t.Errorf("OC-142 #%06x on white: got %.4f, want %.2f ± 0.005 (WCAG 2.2)", x.rgb, got, x.want)
		}
		if back := Contrast(hex(0xffffff), hex(x.rgb)); back != got {
			t.Errorf("contrast of #%06x depends on the order: %v and %v", x.rgb, got, back)
		}
	}
}

// grounds are what a theme letters on.
func grounds(th *Theme) map[string]color.RGBA {
	m := map[string]color.RGBA{
		"paper": th.Paper, "panel": th.Panel, "disc": th.Disc, "body": th.Body, "plate": th.Plate,
		"lining": th.Lining, "piston": th.Piston, "carrier": th.Carrier, "pin": th.Pin,
	}
	return m
}

// TestTextContrast is OC-140: WCAG 2.2 SC 1.4.3, text at 4.5 : 1 or more on
// every ground it is set on. Letters of the kit are under 18 pt, so the easier
// bound for large text is never taken.
func TestTextContrast(t *testing.T) {
	const least = 4.5
	for _, th := range []*Theme{Paper, Slate} {
		hold := func(what string, a, b color.RGBA) {
			if got := Contrast(a, b); got < least {
				t.Errorf("OC-140 %s: %s has %.2f : 1, want %.1f (WCAG 2.2 SC 1.4.3)", th.Name, what, got, least)
			}
		}
		for name, g := range grounds(th) {
			hold("ink on "+name, th.Ink, g)
			hold("graphite on "+name, th.Graphite, g)
			hold("caution on "+name, th.Caution, g)
			hold("key on "+name, th.Key, g)
		}
		hold("ink on margin", th.Ink, th.Margin)
		hold("lettering of a chosen key", th.OnKey, th.Key)
		for _, f := range th.Fluid {
			hold("ink on fluid", th.Ink, f)
		}
	}
}

// TestGraphicsContrast is OC-141: WCAG 2.2 SC 1.4.11, what is needed to
// understand a control or a drawing at 3 : 1 or more against its neighbours.
func TestGraphicsContrast(t *testing.T) {
	const least = 3.0
	for _, th := range []*Theme{Paper, Slate} {
		hold := func(what string, a, b color.RGBA) {
			if got := Contrast(a, b); got < least {
				t.Errorf("OC-141 %s: %s has %.2f : 1, want %.0f (WCAG 2.2 SC 1.4.11)", th.Name, what, got, least)
			}
		}
		for name, g := range grounds(th) {
			hold("edge on "+name, th.Ink, g)
			hold("key outline on "+name, th.Key, g)
			hold("rubber against "+name, th.Rub, g)
			hold("fluid line on "+name, th.FluidLine, g)
		}
		hold("chosen key on paper", th.Key, th.Paper)
		hold("grease dots", th.FluidLine, th.Tint(Grease))
	}
}

// TestLevelStrokesShow: strokes in fluid must be seen in it; where they fall
// short of 3 : 1 the pressure still reads by pitch, edge and figure in ink.
func TestLevelStrokesShow(t *testing.T) {
	for _, th := range []*Theme{Paper, Slate} {
		for i, f := range th.Fluid {
			if got := Contrast(th.FluidLine, f); got < 3 {
				t.Errorf("OC-141 %s: strokes in fluid %d have %.2f : 1, want 3", th.Name, i, got)
			}
		}
	}
}

// TestPaletteRatios pins the ratios the palette was chosen by, against paper and
// panel, to its printed decimal.
func TestPaletteRatios(t *testing.T) {
	for _, x := range []struct {
		name         string
		a            color.RGBA
		th           *Theme
		paper, panel float64
	}{
		{"ink", Paper.Ink, Paper, 15.4, 16.5}, {"graphite", Paper.Graphite, Paper, 6.3, 6.8},
		{"key", Paper.Key, Paper, 7.9, 8.4}, {"caution", Paper.Caution, Paper, 6.9, 7.4},
		{"fluid line", Paper.FluidLine, Paper, 6.5, 6.9},
		{"ink", Slate.Ink, Slate, 14.1, 12.6}, {"graphite", Slate.Graphite, Slate, 8.2, 7.3},
		{"key", Slate.Key, Slate, 9.4, 8.4}, {"caution", Slate.Caution, Slate, 8.2, 7.3},
		{"fluid line", Slate.FluidLine, Slate, 11.9, 10.6},
	} {
		p, q := Contrast(x.a, x.th.Paper), Contrast(x.a, x.th.Panel)
		if math.Abs(p-x.paper) > 0.06 || math.Abs(q-x.panel) > 0.06 {
			t.Errorf("%s %s: got %.2f on paper and %.2f on panel, want %.1f and %.1f", x.th.Name, x.name, p, q, x.paper, x.panel)
		}
	}
}

func TestFluidStep(t *testing.T) {
	for _, x := range []struct {
		mpa  float64
		want int
	}{{-1, 0}, {0, 0}, {1e-9, 1}, {0.5, 1}, {0.51, 2}, {2, 2}, {2.01, 3}, {6, 3}, {6.01, 4}, {20, 4}, {math.NaN(), 0}} {
		if got := FluidStep(x.mpa); got != x.want {
			t.Errorf("FluidStep(%g MPa) = %d, want %d", x.mpa, got, x.want)
		}
	}
}
