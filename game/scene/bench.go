package scene

import (
	"math"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// A BenchSource is the bench without a face: what [play.Bench] gives.
type BenchSource interface {
	Advance(ms int64)
	Do(a play.Act) error
	// View is all of it; Numbers writes only what moves, without allocating.
	View() *play.BenchView
	Numbers(v *play.BenchView)
}

// NewBench is the bench as a scene.
func NewBench(a *App, src BenchSource) Scene { return newBench(a, src) }

// bench is the free-play section drawing.
type bench struct {
	*lettering
	app    *App
	src    BenchSource
	view   *play.BenchView
	now    pose
	left   pose // where it stood before it jumped, with reduced motion
	jumped bool
	level  pose    // now without lean, for section A–A
	well   pose    // the healthy caliper under the same pedal
	kN     int     // which of forceScales
	axial  float64 // factor of movement as drawn
	limit  float64 // that nothing leaves its place: lowered in a press, lifted between presses
	scaled bool    // the factor of movement has changed since the last press
	bare   bool    // labels of the parts are off
	halved bool    // half a section is shown: no figure stands across its axis
	beside [3]Fact
	under  [5]Fact
	cells  []Cell

	targets   widget.Targets
	keys      []benchKey
	slider    widget.Slider
	said      string // figures typed for the prediction
	holdShare bool
	refused   string  // the last refusal, a sentence
	again     float64 // [ms] of the car until it is pressed again; 0: it is not

	drawer     bool // set-up is open in place of the plots
	list       widget.List
	rows       []drawerRow
	opened     string // cause whose places are shown
	fingerY    float64
	fingerDown bool

	pts []draw.Pt
}

func newBench(a *App, src BenchSource) *bench {
	b := &bench{lettering: newLettering(a.words), app: a, src: src, limit: 80}
	b.cells = []Cell{
		{axialArea, b.axialStamp, func(c *draw.Canvas) { b.axialMoving(c, &b.level, &b.view.Now) }},
		{pinsArea, b.pinsStamp, b.drawPins},
		{pedalArea, b.pedalStamp, b.pedalMoving},
		{tableArea, b.tableStamp, b.tableMoving},
		{sumArea, b.tableStamp, b.sumMoving},
		{plotArea, b.covered(b.plotStamp), b.open(b.plotMoving)},
		{predictArea, b.covered(b.predictStamp), b.open(b.predictMoving)},
		{predictKeyArea, b.keyStamp(predictCell), b.drawKeys(predictCell)},
		{slideArea, b.footStamp, b.footMoving},
		{barArea, b.keyStamp(barCell), b.drawKeys(barCell)},
		{footKeyArea, b.keyStamp(footCell), b.drawKeys(footCell)},
		{titleArea, b.titleStamp, b.titleMoving},
		{drawerRect, b.drawerStamp, b.drawDrawer},
	}
	b.slider = widget.Slider{Rect: draw.Rect{X: slideX0, Y: 668, W: slideX1 - slideX0, H: 8}, Hi: slideMost, Step: 1, Big: 10}
	b.look()
	return b
}

// look takes the whole view as it is now.
func (b *bench) look() {
	b.view = b.src.View()
	b.stand()
	b.keysNow()
}

// stand works out where the parts are.
func (b *bench) stand() {
	b.fitForces()
	b.fitMovement()
	b.now = newPose(b.view, &b.view.Now, b.axial)
	if b.view.Ghost != nil {
		b.well = newPose(b.view, b.view.Ghost, b.axial)
	}
	b.level = b.now.flat()
}

// covered and open leave a cell alone while the drawer covers it.
func (b *bench) covered(of func() uint64) func() uint64 {
	return func() uint64 {
		if b.drawer {
			return 1
		}
		return of()
	}
}

func (b *bench) open(d func(*draw.Canvas)) func(*draw.Canvas) {
	return func(c *draw.Canvas) {
		if !b.drawer {
			d(c)
		}
	}
}

func (b *bench) drawDrawer(c *draw.Canvas) {
	if b.drawer {
		b.drawerMoving(c)
	}
}

// Cells are the places of the bench that move.
func (b *bench) Cells() []Cell { return b.cells }

func (b *bench) drawPins(c *draw.Canvas) {
	v := &b.view.Now
	b.pinsMoving(c, &b.now, v)
	if b.view.Ghost != nil {
		b.outline(c, &b.well) // the healthy caliper under the same pedal
	} else if b.jumped && b.app.Calm {
		b.outline(c, &b.left)
	}
	b.forces(c, &b.now, v)
	b.pinLabels(c, &b.now, v)
}

func (b *bench) pressed() bool  { return b.view.Now.Pressure > 0.005 }
func (b *bench) vented() bool   { return b.view.Vented }
func (b *bench) ratio() float64 { return b.view.Ratio }
func (b *bench) primary() bool  { return b.view.Circuit == 0 }

// Steps below which a movement cannot be seen or a figure does not change.
const (
	seen     = 0.25  // [unit]
	seenMPa  = 0.005 // half a shown step
	seenKN   = 0.005
	seenTurn = 0.002
)

func (s stamp) pose(p *pose) stamp {
	s = s.num(p.radius, seen).num(p.pinAt, seen)
	for i := range 2 {
		s = s.num(p.plate[i], seen).num(p.lean[i], seen/100).num(p.lining[i], seen).num(p.disc[i], seen)
	}
	return s.num(p.bore, seen).num(p.piston, seen)
}

func (b *bench) axialStamp() uint64 {
	v := &b.view.Now
	return uint64(newStamp.pose(&b.now).num(v.Pressure, seenMPa).num(v.Seal, 0.05).flag(b.bare).flag(v.PistonStuck))
}

func (b *bench) pinsStamp() uint64 {
	v := &b.view.Now
	s := newStamp.pose(&b.now).num(v.Pressure, seenMPa).num(v.Seal, 0.05).flag(b.bare).flag(v.PistonStuck).num(b.view.Turn, seenTurn)
	for i := range 2 {
		s = s.num(v.Half[i][0], seenKN).num(v.Half[i][1], seenKN).num(v.Pin[i], seenKN).text(v.Pins[i]).num(b.view.BodyEnds[i], 0.005)
	}
	if b.view.Ghost != nil {
		s = s.pose(&b.well)
	}
	if b.jumped && b.app.Calm {
		s = s.pose(&b.left)
	}
	return uint64(s.num(b.scaleKN(), 0.01))
}

func (b *bench) pedalStamp() uint64 {
	v := b.view
	return uint64(newStamp.num(v.Pedal, 0.25).num(v.Foot, 0.5).flag(v.Foot > 0).num(v.Stroke[0], 0.2).num(v.Stroke[1], 0.2).
		add(uint64(draw.FluidStep(v.Chamber[0]))).add(uint64(draw.FluidStep(v.Chamber[1]))).num(v.Level, 0.005))
}

func (b *bench) tableStamp() uint64 {
	s := newStamp
	for i, x := range b.tableFigures() {
		s = s.num(x, math.Pow10(-tableRows[i].decimals))
	}
	for _, x := range b.view.Balance {
		s = s.num(x, 0.01)
	}
	return uint64(s)
}

func (b *bench) plotStamp() uint64 {
	v := b.view
	return uint64(newStamp.add(uint64(len(v.Plot))).num(v.Time, plotSpan/400).num(v.Predict.Said, 1))
}

func (b *bench) predictStamp() uint64 {
	p := &b.view.Predict
	return uint64(newStamp.flag(b.targets.Focus == idShare).flag(p.Open).text(p.Question).text(p.Comment).num(p.Said, 1).num(p.Computed, 1))
}
