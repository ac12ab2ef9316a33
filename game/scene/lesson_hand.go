package scene

import (
	"evenwear/game/play"
	"evenwear/game/widget"
)

// Handle answers one event.
func (l *lesson) Handle(e widget.Event) {
	defer l.layout()
	if l.handleScale(e) || l.handleTyped(e) {
		return
	}
	id := l.targets.Handle(e)
	for i := range l.keys {
		if l.keys[i].id == id && !l.keys[i].Off {
			l.keys[i].do()
			return
		}
	}
}

// handleScale sets the figure on its scale.
func (l *lesson) handleScale(e widget.Event) bool {
	x := l.x()
	if x.Kind == "choice" || !x.CanAnswer {
		return false
	}
	arrow := e.Kind == widget.KeyDown && (e.Key == "Left" || e.Key == "Right")
	switch {
	case e.Kind == widget.PointerDown && !l.scaleRect().Contains(e.At):
		return false
	case e.Kind == widget.KeyDown && !arrow:
		return false
	}
	l.scale.Focused = true
	if !l.scale.Handle(e) && e.Kind != widget.PointerDown { // pointed at where it stands already, it is set
		return false
	}
	l.targets.Focus, l.typed.Text, l.held, l.refused = idScale, "", true, ""
	return true
}

// handleTyped takes figures typed for a question that wants a number.
func (l *lesson) handleTyped(e widget.Event) bool {
	x := l.x()
	if x.Kind == "choice" || !x.CanAnswer {
		return false
	}
	l.typed.Focused = true
	if !l.typed.Handle(e) {
		return false
	}
	l.targets.Focus, l.held, l.refused = idScale, l.typed.Text != "", ""
	if n, err := play.Figure(l.words, l.typed.Text); err == nil { // the scale's marker follows
		l.scale.Value = clamp(n, l.scale.Lo, l.scale.Hi)
	}
	return true
}

// Advance lets the lesson move on; its words are asked for again when a run has
// come to its end.
func (l *lesson) Advance(ms int) {
	running := l.x().Running
	notice := l.view.Notice
	l.src.Advance(int64(ms))
	l.src.Numbers(l.view)
	if r, ok := l.src.(interface{ Running() bool }); ok && r.Running() != running || l.view.Notice != notice {
		l.look()
		return
	}
	l.stand()
}

func (l *lesson) pressables() []Pressable {
	var list []Pressable
	for i := range l.keys {
		list = append(list, ofKey(&l.keys[i].Key, l.keys[i].id, l.targets.Focus == l.keys[i].id))
	}
	if l.x().Kind != "choice" {
		if t, ok := l.targets.Find(idScale); ok {
			list = append(list, ofTarget(&t, l.targets.Focus))
		}
	}
	return list
}
