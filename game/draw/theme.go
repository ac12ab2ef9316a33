package draw

import (
	"image/color"
	"math"
)

// A Theme is one palette. The palette is the same list of names in every theme,
// so a drawing never asks which theme it is in.
type Theme struct {
	Name                                                 string
	Paper, Panel, Margin                                 color.RGBA // grounds
	Ink                                                  color.RGBA // drawing, lettering
	Graphite                                             color.RGBA // the learner's pencil, captions
	Key, OnKey                                           color.RGBA // what can be pressed; lettering of a chosen key
	Caution                                              color.RGBA // always with a triangle or rust marks
	FluidLine                                            color.RGBA // strokes in fluid and grease; never text
	Disc, Body, Plate, Lining, Piston, Carrier, Pin, Rub color.RGBA // part tints; the hatch decides
	Fluid                                                [5]color.RGBA
}

// Paper is ink on paper; Slate is chalk on slate, for projectors and dark rooms.
var (
	Paper = &Theme{
		Name:  "paper",
		Paper: hex(0xF5EFE0), Panel: hex(0xFBF7EC), Margin: hex(0xE8DFC8),
		Ink: hex(0x16191D), Graphite: hex(0x54575B), Key: hex(0x1C4C72), OnKey: hex(0xFFFFFF),
		Caution: hex(0x98280F), FluidLine: hex(0x7A4B00),
		Disc: hex(0xE4E2DA), Body: hex(0xEEE4CB), Plate: hex(0xD3D6D8), Lining: hex(0xDCCBA6),
		Piston: hex(0xE6E9EA), Carrier: hex(0xDDD9CC), Pin: hex(0xF0F1F0), Rub: hex(0x3A3D42),
		Fluid: [5]color.RGBA{hex(0xFBEFCB), hex(0xF6DE9E), hex(0xF0CB6C), hex(0xE8B23A), hex(0xD99A1A)},
	}
	Slate = &Theme{
		Name:  "slate",
		Paper: hex(0x1B2226), Panel: hex(0x232B30), Margin: hex(0x141A1D),
		Ink: hex(0xF1F0E6), Graphite: hex(0xB4BAB8), Key: hex(0x9CCBF0), OnKey: hex(0x10181D),
		Caution: hex(0xFFA184), FluidLine: hex(0xFFD98A),
		Disc: hex(0x3A4347), Body: hex(0x3B3A30), Plate: hex(0x40474C), Lining: hex(0x4E4632),
		Piston: hex(0x3D4449), Carrier: hex(0x35393A), Pin: hex(0x454A4C), Rub: hex(0xC9CDCB),
		Fluid: [5]color.RGBA{hex(0x33290F), hex(0x453610), hex(0x574412), hex(0x6A5214), hex(0x7C6016)},
	}
)

func hex(rgb uint32) color.RGBA {
	return color.RGBA{uint8(rgb >> 16), uint8(rgb >> 8), uint8(rgb), 0xff}
}

// FluidStep returns the fluid tint and level strokes that stand for a pressure
// [MPa]: 0 none, 1 to 0.5, 2 to 2, 3 to 6, 4 above.
func FluidStep(pressure float64) int {
	switch {
	case !(pressure > 0):
		return 0
	case pressure <= 0.5:
		return 1
	case pressure <= 2:
		return 2
	case pressure <= 6:
		return 3
	}
	return 4
}

// Contrast returns the contrast ratio of two opaque colours, 1 to 21.
//
//	(L₁ + 0.05)/(L₂ + 0.05), L = 0.2126 R + 0.7152 G + 0.0722 B
//
// with each channel linear by c/12.92 below 0.04045 and ((c + 0.055)/1.055)^2.4
// above: relative luminance of WCAG 2.2.
func Contrast(a, b color.RGBA) float64 {
	la, lb := luminance(a), luminance(b)
	if la < lb {
		la, lb = lb, la
	}
	return (la + 0.05) / (lb + 0.05)
}

func luminance(c color.RGBA) float64 {
	lin := func(v uint8) float64 {
		x := float64(v) / 255
		if x <= 0.04045 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	return 0.2126*lin(c.R) + 0.7152*lin(c.G) + 0.0722*lin(c.B)
}
