package widget

import (
	"math"

	"evenwear/assets"
	"evenwear/game/draw"
)

// A Slider sets one figure along a scale: the pedal force on the bench.
type Slider struct {
	Rect     draw.Rect // of the scale's bar
	Lo, Hi   float64
	Step     float64 // one press of an arrow key
	Big      float64 // the same with Shift
	Division float64 // smallest tick
	Long     float64 // numbered tick
	Unit     string
	Value    float64
	Focused  bool

	held   bool
	labels []string // of the numbered ticks, written once
}

func (s *Slider) x(v float64) float64 {
	return s.Rect.X + s.Rect.W*(v-s.Lo)/(s.Hi-s.Lo)
}

// thumb is the marker that is dragged.
func (s *Slider) thumb() draw.Rect {
	return draw.Rect{X: s.x(s.Value) - 9, Y: s.Rect.Y - 15, W: 18, H: 16}
}

// Draw draws the scale, its filled part and the marker.
func (s *Slider) Draw(c *draw.Canvas) {
	th := c.Theme
	bar := s.Rect.Corners()
	c.Polygon(bar[:], th.Panel)
	fill := draw.Rect{X: s.Rect.X, Y: s.Rect.Y, W: s.x(s.Value) - s.Rect.X, H: s.Rect.H}
	if fill.W > 0 {
		k := fill.Corners()
		c.Level(k[:], 3, draw.Pt{X: s.Rect.X, Y: s.Rect.Y})
	}
	c.Outline(bar[:], draw.Thin)
	s.ticks(c)
	t := s.thumb()
	k := corner(t)
	pts := [6]draw.Pt{
		{X: t.X, Y: t.Y}, {X: t.X + t.W - k, Y: t.Y}, {X: t.X + t.W, Y: t.Y + k},
		{X: t.X + t.W, Y: t.Y + t.H}, {X: t.X + t.W/2, Y: t.Y + t.H + 8}, {X: t.X, Y: t.Y + t.H},
	}
	c.Polygon(pts[:], th.Panel)
	c.Outline(pts[:], draw.Visible.In(th.Key))
	for _, dx := range [2]float64{6, 11} {
		c.Line(draw.Pt{X: t.X + dx, Y: t.Y + 5}, draw.Pt{X: t.X + dx, Y: t.Y + 14}, draw.Thin.In(th.Key))
	}
	if s.Focused {
		ring := Chamfered(t.Inset(-4))
		ring[3].Y += 8
		ring[4].Y += 8
		c.Outline(ring[:], draw.Thin.In(th.Key).Wide(1.4))
	}
}

func (s *Slider) ticks(c *draw.Canvas) {
	if !(s.Division > 0) || (s.Hi-s.Lo)/s.Division > 500 {
		return
	}
	y := s.Rect.Y + s.Rect.H
	every := max(1, int(math.Round(s.Long/s.Division)))
	if s.labels == nil {
		for i := 0; float64(i)*s.Division <= s.Hi-s.Lo+s.Division/2; i += every {
			s.labels = append(s.labels, assets.Figure(s.Lo+float64(i)*s.Division, -1))
		}
	}
	for i := 0; ; i++ {
		v := s.Lo + float64(i)*s.Division
		if v > s.Hi+s.Division/2 {
			return
		}
		x := s.x(v)
		if i%every != 0 {
			c.Line(draw.Pt{X: x, Y: y}, draw.Pt{X: x, Y: y + 4}, draw.Thin)
			continue
		}
		c.Line(draw.Pt{X: x, Y: y}, draw.Pt{X: x, Y: y + 7}, draw.Thin)
		c.Text(draw.Pt{X: x, Y: y + 20}, draw.SmallText.To(draw.Middle), c.Theme.Ink, s.labels[i/every])
	}
}

// Target returns what the slider reacts to: the bar and its marker.
func (s *Slider) Target(id string, panel int) Target {
	r := s.Rect
	return Target{ID: id, Rect: draw.Rect{X: r.X - 9, Y: r.Y - 22, W: r.W + 18, H: r.H + 44}, Panel: panel, Enabled: true, Through: true}
}

// Handle answers an event and says whether the value changed. Arrow keys count
// when the slider is in focus.
func (s *Slider) Handle(e Event) bool {
	was := s.Value
	switch e.Kind {
	case KeyDown:
		if !s.Focused {
			return false
		}
		step := s.Step
		if e.Shift {
			step = s.Big
		}
		switch e.Key {
		case "Left", "Down":
			s.set(s.Value - step)
		case "Right", "Up":
			s.set(s.Value + step)
		case "Home":
			s.set(s.Lo)
		case "End":
			s.set(s.Hi)
		}
	case PointerDown:
		if s.held = s.Target("", 0).Rect.Contains(e.At); s.held {
			s.drag(e.At)
		}
	case PointerMove:
		if s.held {
			s.drag(e.At)
		}
	case PointerUp:
		s.held = false
	}
	return s.Value != was
}

func (s *Slider) drag(at draw.Pt) {
	v := s.Lo + (s.Hi-s.Lo)*(at.X-s.Rect.X)/s.Rect.W
	if s.Step > 0 {
		v = s.Lo + math.Round((v-s.Lo)/s.Step)*s.Step
	}
	s.set(v)
}

func (s *Slider) set(v float64) {
	if v != v {
		return
	}
	s.Value = min(max(v, s.Lo), s.Hi)
}
