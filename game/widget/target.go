package widget

import (
	"cmp"
	"math"
	"slices"

	"evenwear/game/draw"
)

// A Target is one thing that can be pressed.
type Target struct {
	ID      string
	Rect    draw.Rect
	Key     string // the letter shown on it; empty: none
	Panel   int    // panels are read one after the other
	Enabled bool
	Through bool // Enter does nothing to it and goes on to the key lettered Enter
	Brief   bool // done with once it is pressed: a letter or a pointer leaves no focus on it
}

// Targets is everything on a screen that can be pressed, and which of it is in
// focus. Fill it afresh when the screen changes: focus stays with its id.
//
// Enter presses what is in focus, which has a ring, and when nothing is, the key
// lettered Enter, which shows that letter only then. Tab puts the ring on a key; a letter or a pointer presses a key
// without it, so that a second Enter does not press that key again.
type Targets struct {
	Focus string // id; empty: nothing
	left  string // where Tab goes on from while nothing is in focus
	list  []Target
	dirty bool
}

// Clear takes every target out and keeps the focus.
func (t *Targets) Clear() { t.list = t.list[:0] }

// Add puts a target in.
func (t *Targets) Add(x Target) {
	t.list = append(t.list, x)
	t.dirty = true
}

// InOrder returns the targets in reading order: panel by panel, in rows from the
// top, each from the left. Two targets share a row when the middle of one lies
// within the height of the row's first.
func (t *Targets) InOrder() []Target {
	if !t.dirty {
		return t.list
	}
	t.dirty = false
	slices.SortStableFunc(t.list, func(a, b Target) int {
		return cmp.Or(cmp.Compare(a.Panel, b.Panel), cmp.Compare(a.Rect.Y, b.Rect.Y), cmp.Compare(a.Rect.X, b.Rect.X))
	})
	for i := 0; i < len(t.list); {
		first, j := t.list[i], i+1
		for j < len(t.list) && t.list[j].Panel == first.Panel && t.list[j].Rect.Centre().Y < first.Rect.Y+first.Rect.H {
			j++
		}
		slices.SortStableFunc(t.list[i:j], func(a, b Target) int { return cmp.Compare(a.Rect.X, b.Rect.X) })
		i = j
	}
	return t.list
}

// Leave takes the focus away; Tab goes on from id.
func (t *Targets) Leave(id string) { t.Focus, t.left = "", id }

// Step moves the focus to the next target, or the one before for Shift-Tab, and
// returns its id. It goes round at the ends and passes over what is unavailable.
func (t *Targets) Step(back bool) string {
	list := t.InOrder()
	n := len(list)
	from := cmp.Or(t.Focus, t.left)
	at := slices.IndexFunc(list, func(x Target) bool { return x.ID == from })
	step := 1
	if back {
		step = n - 1
		if at < 0 {
			at = 0
		}
	}
	for range n {
		at = (at + step) % n
		if list[at].Enabled {
			t.Focus = list[at].ID
			break
		}
	}
	return t.Focus
}

// Find returns the target with an id.
func (t *Targets) Find(id string) (Target, bool) {
	for _, x := range t.list {
		if x.ID == id {
			return x, true
		}
	}
	return Target{}, false
}

// ByKey returns the available target whose key shows this letter.
func (t *Targets) ByKey(key string) (Target, bool) {
	for _, x := range t.InOrder() {
		if x.Enabled && x.Key == key && key != "" {
			return x, true
		}
	}
	return Target{}, false
}

// Enter returns the id of what Enter presses; empty: nothing.
func (t *Targets) Enter() string {
	x, ringed := t.Find(t.Focus)
	if !ringed || x.Through {
		x, _ = t.ByKey(enter)
	}
	if !x.Enabled {
		return ""
	}
	return x.ID
}

const enter = "Enter"

// Letter returns what stands on the key with an id and a letter: that, but Enter
// only where Enter presses it. Ask when every target is in.
func (t *Targets) Letter(id, letter string) string {
	if letter == enter && t.Enter() != id {
		return ""
	}
	return letter
}

// Hit returns the target under a pointer. A finger reaches a target that is
// smaller than 44 from as far as that size would, the nearest first.
func (t *Targets) Hit(p draw.Pt, touch bool) (Target, bool) {
	best, found := Target{}, false
	least := math.Inf(1)
	for _, x := range t.InOrder() {
		d := away(x.Rect, p)
		reach := draw.Pt{}
		if touch {
			reach = draw.Pt{X: max(0, TouchTarget-x.Rect.W) / 2, Y: max(0, TouchTarget-x.Rect.H) / 2}
		}
		if d.X <= reach.X && d.Y <= reach.Y && d.Len() < least {
			best, found, least = x, true, d.Len()
		}
	}
	return best, found
}

// away returns how far p lies outside r along each axis.
func away(r draw.Rect, p draw.Pt) draw.Pt {
	return draw.Pt{
		X: max(0, r.X-p.X, p.X-(r.X+r.W)),
		Y: max(0, r.Y-p.Y, p.Y-(r.Y+r.H)),
	}
}

// Handle works Tab, letters, Enter on the focus, and the pointer. It returns
// the id that was pressed, empty when none was; what is unavailable takes the
// focus from a pointer, so that its reason can be read, but is not pressed.
func (t *Targets) Handle(e Event) string {
	switch e.Kind {
	case KeyDown:
		switch e.Key {
		case "Tab":
			t.Step(e.Shift)
			return ""
		case enter:
			id := t.Enter()
			if _, ringed := t.Find(t.Focus); !ringed && id != "" {
				t.Leave(id)
			}
			return id
		}
		if x, ok := t.ByKey(e.Key); ok {
			t.press(x)
			return x.ID
		}
	case PointerDown:
		if x, ok := t.Hit(e.At, e.Touch); ok {
			t.press(x)
			if x.Enabled {
				return x.ID
			}
		}
	}
	return ""
}

// press moves the focus to what a letter or a pointer has met.
func (t *Targets) press(x Target) {
	if x.Brief && x.Enabled {
		t.Leave(x.ID)
		return
	}
	t.Focus = x.ID
}
