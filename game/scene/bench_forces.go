package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

// forceScales are the scales a force arrow may have [unit/kN], close enough that
// a starving pad's arrow stays visibly shorter; the first at which the piston's
// arrow stands in its hollow is taken.
var forceScales = [...]float64{22, 16, 11, 8, 6, 5, 4, 3, 2}

const forceRoom = 84.0 // [unit] for the longest arrow

// scaleKN is the scale of the force arrows [unit/kN].
func (b *bench) scaleKN() float64 { return forceScales[b.kN] }

// fitForces goes to a smaller scale when an arrow has outgrown its place. It
// goes back only between presses.
func (b *bench) fitForces() {
	most := max(b.view.Balance[0], b.view.Balance[1])
	if !b.pressed() {
		b.kN = 0
	}
	for b.kN < len(forceScales)-1 && most*forceScales[b.kN] > forceRoom {
		b.kN++
	}
}

// forces draws the arrows on body, piston and pads to scale, each with its figure.
func (b *bench) forces(c *draw.Canvas, p *pose, v *play.CaliperView) {
	th, k := c.Theme, b.scaleKN()
	in, out := b.view.Balance[0], b.view.Balance[1] // as in table and balance
	st := draw.LabelText
	inner := in >= 0.005 && (b.pressed() || in >= 0.05) // a released chamber's own figure stands there
	if inner {
		at := p.inner(axisBB, 28, 0)
		c.BlockArrow(at, draw.Pt{X: 1}, in*k, th.Ink, true)
		y, style := axisBB-15.0, st
		if p.narrow() {
			y, style = axisBB-9, draw.SmallText // between the arrow's head and the wall
		}
		c.Text(draw.Pt{X: p.piston + 34, Y: y}, style, th.Ink, b.fill("bench_sheet.kn", "n", b.num(in, 2)))
	}
	// What pushes the body back is what pushes the piston out.
	if inner {
		root := p.body(axisBB, -21, -29)
		tip, drawn := c.BlockArrow(root, draw.Pt{X: -1}, in*k, th.Ink, false)
		if !drawn {
			tip = root
		}
		figure := b.fill("bench_sheet.kn", "n", b.num(in, 2))
		if w := c.Measure(st, figure); tip.X-3-w > 264 {
			c.Text(draw.Pt{X: tip.X - 3, Y: tip.Y + 5}, st.To(draw.Right), th.Ink, figure)
		} else { // above the arrow, clear of the body's edge however it leans
			x := min(max(tip.X, 264), p.body(axisBB, -27, -29+8).X-w, p.body(axisBB, -27, -29+24).X-w)
			c.Text(draw.Pt{X: x, Y: tip.Y - 11}, st, th.Ink, figure)
		}
	}
	if out >= 0.005 {
		tip := draw.Pt{X: p.fingers + 38, Y: axisBB}
		tail := draw.Pt{X: tip.X + out*k, Y: axisBB}
		c.BlockArrow(tail, draw.Pt{X: -1}, out*k, th.Ink, true)
		c.Text(draw.Pt{X: tip.X, Y: axisBB - 15}, st, th.Ink, b.fill("bench_sheet.kn", "n", b.num(out, 2)))
		c.Text(draw.Pt{X: max(tail.X+8, 776), Y: axisBB + 5}, draw.SmallText, th.Ink, b.word("bench_sheet.label_on_outer"))
	}
	for i, f := range v.Pin {
		if f < 0.03 && f > -0.03 { // what grease and boots take is in the balance line
			continue
		}
		h := p.pin(i)
		root := p.body(axisBB, 17, h)
		col := th.Ink
		if v.Pins[i] != "free" {
			col = th.Caution
		}
		length := max(f*k, 0)
		tip := root
		if f > 0 { // the pin holds the body back: it pushes outboard
			c.BlockArrow(draw.Pt{X: root.X - length, Y: root.Y}, draw.Pt{X: 1}, length, col, true)
			if length >= draw.ShortestForce {
				tip.X -= length
			}
		}
		y := min(root.Y+5, axisBB-128) // above the label of the bleed screw
		if i == 1 {
			y = axisBB + 157 // below the label of the bolt
		}
		c.Text(draw.Pt{X: tip.X - 6, Y: y}, st.To(draw.Right), th.Ink, b.fill("bench_sheet.kn", "n", b.num(f, 2)))
	}
}

// pinLabels say what the two pins and the two halves of the outer pad do.
func (b *bench) pinLabels(c *draw.Canvas, p *pose, v *play.CaliperView) {
	if b.bare {
		return
	}
	mm := b.view.BodyEnds
	b.pinLabel(c, 318, pinLabelID(v.Pins[0], 0), b.num(mm[0], 2), draw.Pt{X: pinTip(p, 0) + 4, Y: axisBB - p.pinAt + 9})
	half := v.Half[1]
	if x := b.view.Lesson; x != nil && x.CanAnswer { // which end wears may be asked
		half = [2]float64{1, 1}
	}
	b.pinLabel(c, 386, halfLabelID(half, 0), b.num(v.Half[1][0], 2), p.mid(1, 67))
	b.pinLabel(c, 540, halfLabelID(half, 1), b.num(v.Half[1][1], 2), p.mid(1, -78))
	b.pinLabel(c, 590, pinLabelID(v.Pins[1], 1), b.num(mm[1], 2), draw.Pt{X: pinTip(p, 1) + 12, Y: axisBB + p.pinAt + 3})
	b.dotLine(c, draw.Pt{X: 374, Y: 367}, p.body(axisBB, 3, p.radius+58))
	b.dotLine(c, draw.Pt{X: 392, Y: 572}, p.body(axisBB, 86, -p.radius-5))
	b.dotLine(c, draw.Pt{X: 388, Y: 603}, p.body(axisBB, 28, -p.pinAt))
}

func pinTip(p *pose, i int) float64 {
	return min(p.body(axisBB, 162, p.pin(i)).X, 590)
}

// mid is the middle of a lining at h.
func (p *pose) mid(pad int, h float64) draw.Pt {
	a, z := p.front(axisBB, pad, h), p.face(axisBB, pad, h)
	return draw.Pt{X: (a.X + z.X) / 2, Y: a.Y}
}

func (b *bench) pinLabel(c *draw.Canvas, y float64, id, figure string, end draw.Pt) {
	for i, line := range b.lines(c, b.fill(id, "n", figure), pinLabelStyle, pinLabelWidth) {
		c.Text(draw.Pt{X: 750, Y: y + 16*float64(i)}, pinLabelStyle, c.Theme.Ink, line)
	}
	b.leader(c, draw.Pt{X: 747, Y: y - 4}, end)
}

// Labels beside section B–B.
var pinLabelStyle = draw.SmallText

const pinLabelWidth = 190.0 // [unit]

var pinLabels = map[string][2]string{
	"free":  {"bench_sheet.upper_free", "bench_sheet.lower_free"},
	"dry":   {"bench_sheet.upper_dry", "bench_sheet.lower_dry"},
	"tight": {"bench_sheet.upper_tight", "bench_sheet.lower_tight"},
	"stuck": {"bench_sheet.upper_stuck", "bench_sheet.lower_stuck"},
	"bent":  {"bench_sheet.upper_bent", "bench_sheet.lower_bent"},
}

func pinLabelID(state string, i int) string {
	if ids, ok := pinLabels[state]; ok {
		return ids[i]
	}
	return pinLabels["free"][i]
}

// halfLabelID says how a half of the outer pad fares beside its other half.
func halfLabelID(half [2]float64, i int) string {
	sum := half[0] + half[1]
	ids := [2]string{"bench_sheet.half_upper", "bench_sheet.half_lower"}
	switch {
	case sum < 0.005:
	case half[i] < 0.25*sum:
		ids = [2]string{"bench_sheet.half_upper_light", "bench_sheet.half_lower_light"}
	case half[i] > 0.58*sum:
		ids = [2]string{"bench_sheet.half_upper_heavy", "bench_sheet.half_lower_heavy"}
	}
	return ids[i]
}
