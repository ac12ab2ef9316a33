package scene

import (
	"math"

	"evenwear/game/draw"
	"evenwear/game/widget"
)

// How an instrument is looked at: whole, or enlarged with a part of it in sight.
// A key, a tap on it, the wheel or two fingers enlarge it; arrows or a drag move
// what is seen.

// enlargement of an instrument, and how far one press moves it [1].
const (
	enlargement = 3.0
	panStep     = 1.0 / 12
)

// tapReach is how far a finger may slip in a tap [unit].
const tapReach = 6.0

// A closeness is how an instrument is looked at.
type closeness struct {
	big  bool
	at   draw.Pt // [1] what of it stands in the middle then, 0 to 1 either way
	held bool    // a pointer is down on it
	from draw.Pt // [unit] where it went down
	last draw.Pt // [unit] where it is
	slid bool    // it moved further than a tap
}

var panKeys = [...]struct {
	key    string
	dx, dy float64
}{{"Left", -1, 0}, {"Right", 1, 0}, {"Up", 0, -1}, {"Down", 0, 1}}

// lookKeys enlarge the instrument and move what is seen of it.
func (s *stations) lookKeys() {
	s.add("big", panelChecks, widget.Key{Rect: draw.Rect{X: 27, Y: 632, W: 180, H: padHeight}, Label: s.word("stations.enlarge"), Letter: "+", Chosen: s.look.big},
		func() { s.look.big = !s.look.big })
	if !s.look.big {
		return
	}
	for i, p := range panKeys {
		s.add("pan."+p.key, panelChecks, widget.Key{Rect: draw.Rect{X: 217 + 142*float64(i), Y: 632, W: 134, H: padHeight},
			Label: s.word("stations.pan_" + p.key), Letter: p.key, Size: 14}, func() { s.look.pan(p.key) })
	}
}

// pan moves what is seen of an enlarged instrument; it says whether key does.
func (l *closeness) pan(key string) bool {
	for _, p := range panKeys {
		if p.key == key {
			l.move(p.dx*panStep, p.dy*panStep)
			return true
		}
	}
	return false
}

func (l *closeness) move(dx, dy float64) {
	l.at = draw.Pt{X: clamp(l.at.X+dx, 0, 1), Y: clamp(l.at.Y+dy, 0, 1)}
}

// enlarge enlarges about a place of the sheet that shows r whole.
func (l *closeness) enlarge(p draw.Pt, r draw.Rect) {
	l.big, l.at = true, draw.Pt{}
	l.move((p.X-r.X)/r.W, (p.Y-r.Y)/r.H)
}

// handle takes what happens to the instrument itself, drawn whole in r, and says
// whether it did. A minus reduces where it cannot begin a figure.
func (l *closeness) handle(e widget.Event, r draw.Rect, minus bool) bool {
	switch e.Kind {
	case widget.KeyDown:
		if l.big && e.Key == "-" && !minus {
			l.big = false
			return true
		}
		return l.big && l.pan(e.Key)
	case widget.Wheel, widget.Pinch:
		l.held = false
		switch {
		case !r.Contains(e.At) || e.Turn == 0:
			return false
		case e.Turn > 0:
			l.big = false
		case !l.big:
			l.enlarge(e.At, r)
		}
		return true
	case widget.PointerDown:
		l.held, l.slid, l.from, l.last = r.Contains(e.At), false, e.At, e.At
		return l.held
	case widget.PointerMove:
		if !l.held {
			return false
		}
		l.slid = l.slid || math.Hypot(e.At.X-l.from.X, e.At.Y-l.from.Y) > tapReach
		if l.big && l.slid {
			l.move((l.last.X-e.At.X)/(r.W*enlargement), (l.last.Y-e.At.Y)/(r.H*enlargement))
			l.last = e.At
		}
		return true
	case widget.PointerUp:
		held := l.held
		l.held = false
		switch {
		case !held || l.slid:
		case l.big:
			l.big = false
		default:
			l.enlarge(e.At, r)
		}
		return held
	}
	return false
}

// wholeFrame is where an instrument is drawn when all of it is in sight.
var wholeFrame = draw.Rect{X: 274, Y: 94, W: 588, H: 430}

// frame is where the instrument is drawn: larger than what is seen of it when
// it is enlarged.
func (l *closeness) frame() draw.Rect {
	r := wholeFrame
	if !l.big {
		return r
	}
	w, h := r.W*enlargement, r.H*enlargement
	mid := r.Centre()
	return draw.Rect{X: mid.X - w*l.at.X, Y: mid.Y - h*l.at.Y, W: w, H: h}
}
