package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// Under the bonnet the vessels stand in a row, cut where there is something to
// see in them. A tag on each, with the letter of a check, makes that check.

const (
	bayX, bayW = 272.0, 590.0
	bayH       = 150.0
	tagSize    = 44.0
)

// bayTags are where the checks under the bonnet are made, from the bay's corner.
var bayTags = []struct {
	check string
	at    draw.Pt
}{
	{"reservoir_level", draw.Pt{X: 0, Y: 0}}, {"cap_vent", draw.Pt{X: 47, Y: 0}}, {"fluid_water", draw.Pt{X: 94, Y: 0}},
	{"fluid_boil", draw.Pt{X: 0, Y: 47}}, {"fluid_layers", draw.Pt{X: 47, Y: 47}}, {"cap_rubber", draw.Pt{X: 94, Y: 47}},
	{"oil_level", draw.Pt{X: 346, Y: 0}}, {"coolant_level", draw.Pt{X: 262, Y: 0}},
	{"steering_level", draw.Pt{X: 464, Y: 0}}, {"washer_level", draw.Pt{X: 543, Y: 0}},
}

// underBonnet tells that the learner stands before the open bonnet.
func (s *stations) underBonnet() bool {
	if s.view.Instrument != nil || s.help {
		return false
	}
	for i := range s.view.Plan.Places {
		if p := &s.view.Plan.Places[i]; p.Here {
			return p.ID == "bonnet"
		}
	}
	return false
}

// bayTop is where the drawing begins: above the longest news.
func (s *stations) bayTop() float64 { return s.newsTop(3) - bayH - 2 }

// textEnd is how far down text may stand over so many lines of news.
func (s *stations) textEnd(news int) float64 {
	if s.underBonnet() {
		return s.bayTop() - 2
	}
	return s.newsTop(news)
}

// bayKeys are the tags. They are for a pointer: the keyboard has the same
// letters below.
func (s *stations) bayKeys() {
	n := node(s.view, "checks")
	if n == nil || !s.underBonnet() {
		return
	}
	for _, a := range n.Actions {
		for _, t := range bayTags {
			if t.check == a.Act.What {
				r := draw.Rect{X: bayX + t.at.X, Y: s.bayTop() + t.at.Y, W: tagSize, H: tagSize}
				s.keys = append(s.keys, stationKey{Key: widget.Key{Rect: r, Label: a.Key, Size: 16, Off: !a.Enabled}, id: "bay." + t.check,
					panel: panelCentre, why: a.Why, hand: true, do: func() { s.do(a.Act) }})
			}
		}
	}
}

// touched presses what only a pointer presses; it says whether it was there.
func (s *stations) touched(at draw.Pt, touch bool) bool {
	x, ok := s.hands.Hit(at, touch)
	if !ok {
		return false
	}
	for i := range s.keys {
		if k := &s.keys[i]; k.id == x.ID {
			if k.Off {
				s.answer(k.why)
			} else {
				k.do()
			}
			return true
		}
	}
	return false
}

// drawBay draws the row of vessels with its tags.
func (s *stations) drawBay(c *draw.Canvas) {
	b := bay{c, draw.Pt{X: bayX, Y: s.bayTop()}}
	b.base()
	b.reservoir()
	b.coolant()
	b.engine()
	b.steering()
	b.washer()
	for _, l := range [...]struct {
		x  float64
		id string
	}{{184, "brake"}, {284, "coolant"}, {394, "engine"}, {486, "steering"}, {565, "washer"}} {
		c.Text(b.at(l.x, 148), draw.SmallText.To(draw.Middle), c.Theme.Ink, s.word("stations.bay_"+l.id))
	}
	for i := range s.keys {
		if k := &s.keys[i]; k.hand {
			k.Key.Draw(c)
		}
	}
}

// A bay is where the row of vessels is drawn.
type bay struct {
	c *draw.Canvas
	o draw.Pt // its top left corner on the sheet
}

func (b *bay) at(x, y float64) draw.Pt { return b.o.Add(draw.Pt{X: x, Y: y}) }

func (b *bay) box(x, y, w, h float64, fill draw.HatchKind) {
	o := draw.Rect{X: b.o.X + x, Y: b.o.Y + y, W: w, H: h}.Corners()
	b.c.Part(o[:], fill, o[0])
}

func (b *bay) plain(x, y, w, h float64) {
	b.c.Box(draw.Rect{X: b.o.X + x, Y: b.o.Y + y, W: w, H: h}, &b.c.Theme.Panel, draw.Visible)
}

// black is rubber: a cap, a hose.
func (b *bay) black(x, y, w, h float64) {
	b.c.Box(draw.Rect{X: b.o.X + x, Y: b.o.Y + y, W: w, H: h}, &b.c.Theme.Rub, draw.Visible)
}

// vessel is a wall to see through, with something in it: the same in every car.
func (b *bay) vessel(x, y, w, h, fluid float64, step int) {
	b.plain(x, y, w, h)
	o := draw.Rect{X: b.o.X + x, Y: b.o.Y + y + h - fluid, W: w, H: fluid}.Corners()
	b.c.Level(o[:], step, o[3])
	b.c.Line(o[0], o[1], draw.Hidden)
	for _, up := range [2]float64{0.3, 0.75} { // two marks
		p := b.at(x+w, y+h*up)
		b.c.Line(p, p.Sub(draw.Pt{X: 10}), draw.Thin)
	}
	f := draw.Rect{X: b.o.X + x, Y: b.o.Y + y, W: w, H: h}.Corners()
	b.c.Outline(f[:], draw.Visible)
}

func (b *bay) leader(x0, y0, x1, y1 float64) {
	b.c.Line(b.at(x0, y0), b.at(x1, y1), draw.Thin)
	ink := b.c.Theme.Ink
	b.c.Circle(b.at(x1, y1), 2.2, &ink, draw.Pen{})
}

// base is the floor of the bay, cut.
func (b *bay) base() { b.box(150, 128, bayW-152, 6, draw.HatchPlate) }

// reservoir is the brake fluid's, on its master cylinder.
func (b *bay) reservoir() {
	b.black(160, 30, 44, 14)
	b.vessel(152, 44, 60, 46, 22, 1)
	b.black(162, 90, 10, 8)
	b.black(192, 90, 10, 8)
	b.box(150, 98, 78, 20, draw.HatchBody)
	b.plain(160, 103, 58, 10) // its bore
	b.box(228, 92, 6, 32, draw.HatchPlate)
	b.leader(138, 68, 156, 60)
}

// coolant is the expansion vessel, with its hose.
func (b *bay) coolant() {
	b.black(270, 54, 28, 12)
	b.vessel(252, 66, 64, 56, 24, 0)
	b.black(316, 108, 18, 10)
	b.leader(284, tagSize, 284, 60)
}

// engine is cut through block and sump; its dipstick stands in its tube.
func (b *bay) engine() {
	c := b.c
	b.box(334, 76, 116, 46, draw.HatchDisc)
	b.plain(376, 84, 26, 38) // two bores
	b.plain(412, 84, 26, 38)
	b.plain(346, 62, 100, 14)
	c.Line(b.at(360, 118), b.at(360, 60), draw.Pen{Width: 6})
	c.Line(b.at(360, 117), b.at(360, 60), draw.Pen{Width: 3, Col: c.Theme.Panel})
	c.Circle(b.at(360, 55), 6, nil, draw.Visible)
	b.leader(366, tagSize, 364, 51)
}

// steering is the power steering's reservoir, with the stick on its cap.
func (b *bay) steering() {
	b.black(470, 56, 32, 12)
	b.vessel(464, 68, 44, 44, 18, 2)
	b.black(478, 112, 14, 16)
	b.leader(486, tagSize, 486, 60)
}

// washer is the bottle's filler, the rest hidden below the wing.
func (b *bay) washer() {
	c := b.c
	b.black(550, 58, 30, 10)
	neck := []draw.Pt{b.at(556, 68), b.at(574, 68), b.at(574, 88), b.at(588, 104), b.at(588, 124), b.at(542, 124), b.at(542, 104), b.at(556, 88)}
	c.Polygon(neck, c.Theme.Panel)
	c.Outline(neck, draw.Visible)
	b.leader(565, tagSize, 565, 62)
}
