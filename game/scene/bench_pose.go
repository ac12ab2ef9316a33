package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

// Sizes of the drawn caliper [unit]. Across the axis, and along it for whole
// parts, one millimetre of the car is trueScale units; only axial movement is
// enlarged beyond that.
const (
	trueScale = 2.05 // [unit/mm]

	discX    = 636.0 // mid-plane of the disc
	axisAA   = 172.0 // height of the piston axis in section A–A
	axisBB   = 474.0 // the same in section B–B
	plateIn  = 11.5  // inner backing plate
	plateOut = 10.0  // outer backing plate
	pistonL  = 116.0 // piston, end to end
	bodyL    = 280.0 // bottom of the bore to the face of the fingers
	fingerW  = 28.0  // fingers, along the axis
)

// A pose is where the parts of one caliper stand on the sheet [unit]: x to the
// right is outboard, h is upwards from the piston axis.
type pose struct {
	radius  float64    // of the piston
	pinAt   float64    // each pin from the piston axis
	axial   float64    // [unit/mm] of axial movement
	disc    [2]float64 // inner and outer face
	plate   [2]float64 // disc side of each backing plate, on the axis
	lean    [2]float64 // [1] the same per unit of h
	lining  [2]float64 // thickness of each lining when nothing squeezes it, on the axis
	taper   [2]float64 // [1] the same per unit of h
	fingers float64    // face of the fingers on the axis
	bore    float64    // bottom of the bore on the axis
	piston  float64    // closed end of the piston on the axis
}

// newPose works out where everything stands. Gaps, travel and squeeze are
// enlarged by factor; thicknesses are not. Piston and body follow the plates
// they push, as they do in the car, so a worn lining never leaves a false gap.
func newPose(b *play.BenchView, v *play.CaliperView, factor float64) pose {
	up := b.PadAt * trueScale
	p := pose{radius: b.Piston / 2 * trueScale, pinAt: b.PinAt * trueScale, axial: factor * trueScale}
	half := v.DiscThickness / 2 * trueScale
	p.disc = [2]float64{discX - half, discX + half}
	for pad, side := range [2]float64{-1, 1} {
		var at [2]float64
		for j := range 2 {
			at[j] = p.disc[pad] + side*(v.Lining[pad][j]*trueScale+v.Gap[pad][j]*p.axial)
		}
		p.plate[pad], p.lean[pad] = (at[0]+at[1])/2, (at[0]-at[1])/(2*up)
		p.lining[pad] = (v.Lining[pad][0] + v.Lining[pad][1]) / 2 * trueScale
		p.taper[pad] = (v.Lining[pad][0] - v.Lining[pad][1]) * trueScale / (2 * up)
	}
	p.fingers = p.plate[1] + plateOut
	p.bore = p.fingers - bodyL - v.Bridge*p.axial
	p.piston = p.plate[0] - plateIn - pistonL
	return p
}

// body returns a place fixed to the body's inboard end: dx from the bottom of
// the bore, h from the axis. The body leans as one piece.
func (p *pose) body(axis, dx, h float64) draw.Pt {
	return draw.Pt{X: p.bore + dx + p.lean[1]*h, Y: axis - h}
}

// finger is the same for the fingers, dx from their face.
func (p *pose) finger(axis, dx, h float64) draw.Pt {
	return draw.Pt{X: p.fingers + dx + p.lean[1]*h, Y: axis - h}
}

// inner is a place on the piston: dx from its closed end. It follows the inner
// pad, which takes a part of the body's lean.
func (p *pose) inner(axis, dx, h float64) draw.Pt {
	return draw.Pt{X: p.piston + dx + p.lean[0]*h, Y: axis - h}
}

// back is the plate's face away from the disc at h, front the face towards it.
func (p *pose) back(axis float64, pad int, h float64) draw.Pt {
	q := p.front(axis, pad, h)
	if pad == 0 {
		q.X -= plateIn
	} else {
		q.X += plateOut
	}
	return q
}

func (p *pose) front(axis float64, pad int, h float64) draw.Pt {
	return draw.Pt{X: p.plate[pad] + p.lean[pad]*h, Y: axis - h}
}

// face is the lining's disc side at h: free, or squeezed against the disc.
func (p *pose) face(axis float64, pad int, h float64) draw.Pt {
	q := p.front(axis, pad, h)
	t := p.lining[pad] + p.taper[pad]*h
	if pad == 0 {
		q.X = min(q.X+t, p.disc[0])
	} else {
		q.X = max(q.X-t, p.disc[1])
	}
	return q
}

// flat returns the pose without lean, for section A–A through the axis.
func (p pose) flat() pose {
	p.lean, p.taper = [2]float64{}, [2]float64{}
	return p
}

// pin is the height of the upper (0) or lower (1) pin.
func (p *pose) pin(i int) float64 {
	if i == 1 {
		return -p.pinAt
	}
	return p.pinAt
}

// hollow is the half height of the piston's hollow; narrow says that a figure in
// it stands close to the arrow.
func (p *pose) hollow() float64 { return p.radius - 14 }
func (p *pose) narrow() bool    { return p.hollow() < 30 }

// pad is the half height of a backing plate: it stands between the pins.
func (p *pose) pad() float64 { return min(107, p.pinAt-26) }

// fits reports whether every part stands in its place on the sheet: banjo and
// bolt heads right of their labels, fingers left of theirs, pins in their bores.
func (p *pose) fits() bool {
	lean := max(p.lean[1], -p.lean[1])
	return p.bore-68 > 318 && p.bore+21-lean*p.pinAt > 404 && p.bore+162+lean*p.pinAt < 606 &&
		p.fingers+fingerW+lean*90 < 746 && p.piston > p.bore
}

// fitMovement draws with the view's factor, or with the largest below it at
// which everything stands in its place: a pad knocked far back, or a body that
// hangs on one pin, would otherwise leave the section.
func (b *bench) fitMovement() {
	was := b.axial
	b.axial = min(b.view.Axial, b.limit)
	for _, f := range [...]float64{80, 40, 20, 10, 1} {
		if f > b.axial {
			continue
		}
		p := newPose(b.view, &b.view.Now, f)
		if b.axial, b.limit = f, f; p.fits() {
			break
		}
	}
	if was != 0 && was != b.axial {
		b.scaled = true
	}
}
