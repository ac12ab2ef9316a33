package scene

import (
	"slices"
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// At a wheel there are more checks than keys have room: the brake is drawn, a key
// at each of its parts opens what can be looked at there.

// partKeys are the letters of the parts, partChecks those of an open part's checks.
const (
	partLetters  = "QWERTYAS"
	checkLetters = "DFGHJKLUIOP"
)

// Where the key of each part stands and what of the drawing it points at.
var partKeys = map[string]struct {
	key draw.Rect
	to  draw.Pt
}{
	"screw":     {partKey(0, 0), draw.Pt{X: 676, Y: 121}},
	"hose":      {partKey(0, 1), draw.Pt{X: 668, Y: 186}},
	"piston":    {partKey(0, 2), draw.Pt{X: 688, Y: 206}},
	"inner_pad": {partKey(0, 3), draw.Pt{X: 707, Y: 232}},
	"pins":      {partKey(1, 0), draw.Pt{X: 736, Y: 111}},
	"outer_pad": {partKey(1, 1), draw.Pt{X: 734, Y: 176}},
	"disc":      {partKey(1, 2), draw.Pt{X: 724, Y: 276}},
	"hub":       {partKey(1, 3), draw.Pt{X: 744, Y: 352}},
}

func partKey(side, row int) draw.Rect {
	return draw.Rect{X: 556 + 208*float64(side), Y: 98 + 66*float64(row), W: 100, H: padHeight}
}

// tall stretches the drawing between its keys: y [unit] of a height in it.
func tall(y float64) float64 { return 100 + 1.14*(y-100) }

// brakeRoom is what the drawing with its keys leaves of the width of the centre.
const brakeRoom = 270.0

// openPart is the part whose checks are in sight, and whether checks are sorted
// by parts here at all.
func (s *stations) openPart() (n *play.Node, sorted bool) {
	for i := range s.view.Nodes {
		if k := &s.view.Nodes[i]; k.Part != "" {
			sorted = true
			if k.Part == s.part {
				n = k
			}
		}
	}
	return n, sorted
}

// brakeKeys are the parts of the brake.
func (s *stations) brakeKeys() {
	if s.help {
		return
	}
	letter := 0
	for i := range s.view.Nodes {
		n := &s.view.Nodes[i]
		at, drawn := partKeys[n.Part]
		if n.Part == "" || !drawn || letter >= len(partLetters) {
			continue
		}
		part := n.Part
		s.add(partPrefix+part, panelCentre, widget.Key{Rect: at.key, Label: s.word("stations.part_" + part),
			Letter: partLetters[letter : letter+1], Chosen: part == s.part, Left: true, Size: 14}, func() {
			if s.part == part {
				part = ""
			}
			s.part = part
		})
		letter++
	}
}

const partPrefix = "part."

// here tells whether a caution stands at what can be done now.
func (s *stations) here(n *play.Node) bool {
	return len(n.At) == 0 || slices.Contains(n.At, s.part)
}

// brake draws the upper half of a wheel's brake, cut through the piston, seen
// from the front: inside of the car at the left. Nothing of it is to scale and
// nothing of what this car has.
func (s *stations) brake(c *draw.Canvas) {
	th := c.Theme
	part := func(h draw.HatchKind, xy ...float64) {
		pts := make([]draw.Pt, 0, len(xy)/2)
		for i := 0; i+1 < len(xy); i += 2 {
			pts = append(pts, draw.Pt{X: xy[i], Y: tall(xy[i+1])})
		}
		c.Part(pts, h, pts[0])
	}
	rect := func(x0, y0, x1, y1 float64) draw.Rect {
		return draw.Rect{X: x0, Y: tall(y0), W: x1 - x0, H: tall(y1) - tall(y0)}
	}
	cut := func(h draw.HatchKind, x0, y0, x1, y1 float64) { part(h, x0, y0, x1, y0, x1, y1, x0, y1) }
	// The hub with a stud, and the disc on it.
	part(draw.HatchKnuckle, 690, 366, 740, 366, 740, 330, 748, 330, 748, 404, 690, 404)
	c.Box(rect(748, 346, 762, 354), &th.Pin, draw.Visible)
	part(draw.HatchDisc, 716, 150, 728, 150, 728, 316, 756, 316, 756, 342, 748, 342, 748, 326, 716, 326)
	// Pads: plate and lining on either side.
	cut(draw.HatchPlate, 702, 160, 708, 240)
	cut(draw.HatchLining, 708, 160, 716, 240)
	cut(draw.HatchLining, 728, 160, 736, 240)
	cut(draw.HatchPlate, 736, 160, 742, 240)
	// The body: bore, bridge over the rim, fingers.
	part(draw.HatchBody, 664, 130, 760, 130, 760, 238, 742, 238, 742, 146, 702, 146,
		702, 170, 680, 170, 680, 230, 702, 230, 702, 250, 664, 250)
	fluid := rect(680, 171, 685, 229).Corners()
	c.Level(fluid[:], 1, fluid[0])
	cut(draw.HatchPiston, 685, 171, 702, 229)
	// A pin before the cut, the bleed screw, the hose.
	c.Box(rect(690, 106, 756, 116), &th.Pin, draw.Visible)
	c.Box(rect(718, 102, 726, 120), &th.Rub, draw.Thin)
	c.Box(rect(672, 112, 680, 130), &th.Plate, draw.Visible)
	c.Box(rect(658, 182, 664, 192), &th.Rub, draw.Thin)
	c.Line(draw.Pt{X: 680, Y: tall(404)}, draw.Pt{X: 766, Y: tall(404)}, draw.Centre)
	c.Line(draw.Pt{X: 664, Y: tall(200)}, draw.Pt{X: 764, Y: tall(200)}, draw.Centre)
	for i := range s.keys {
		k := &s.keys[i]
		name, ok := strings.CutPrefix(k.id, partPrefix)
		if !ok {
			continue
		}
		to := partKeys[name].to
		to.Y = tall(to.Y)
		from := draw.Pt{X: k.Rect.X + k.Rect.W, Y: k.Rect.Y + k.Rect.H/2}
		if from.X > to.X {
			from.X = k.Rect.X
		}
		c.Line(from, to, draw.Thin)
		c.Circle(to, 2.6, &th.Ink, draw.Pen{})
		k.Key.Draw(c)
	}
	c.Text(draw.Pt{X: 676, Y: tall(390)}, draw.SmallText.To(draw.Right), th.Ink, s.word("instrument.not_to_scale"))
}
