package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// keyed is the keys of a sheet without a job.
type keyed struct {
	targets widget.Targets
	keys    []doingKey
}

// A doingKey is a key with what it does.
type doingKey struct {
	widget.Key
	id string
	do func()
}

// begin drops the keys, so that they are listed afresh.
func (s *keyed) begin() {
	s.keys = s.keys[:0]
	s.targets.Clear()
}

// add lists a key with what it does.
func (s *keyed) add(panel int, id string, k widget.Key, do func()) {
	k.Focused = s.targets.Focus == id
	s.keys = append(s.keys, doingKey{k, id, do})
	s.targets.Add(k.Target(id, panel))
}

// addLeave lists the key that leads away, at the right of the head.
func (s *keyed) addLeave(label string, h float64, do func()) {
	s.add(0, "leave", widget.Key{Rect: draw.Rect{X: 1157, Y: 40.5 - h/2, W: 98, H: h}, Label: label, Letter: "Esc"}, do)
}

// keyHeight is how high a key in the head is [unit].
func keyHeight(touch bool) float64 {
	if touch {
		return widget.TouchTarget
	}
	return 29
}

// press does what an event presses.
func (s *keyed) press(e widget.Event) {
	id := s.targets.Handle(e)
	for i := range s.keys {
		if s.keys[i].id == id {
			s.keys[i].do()
			return
		}
	}
}

func (s *keyed) draw(c *draw.Canvas) {
	for i := range s.keys {
		s.keys[i].Key.Draw(c)
	}
}

func (s *keyed) list() (list []Pressable) {
	for i := range s.keys {
		list = append(list, ofKey(&s.keys[i].Key, s.keys[i].id, s.keys[i].Focused))
	}
	return list
}
