package scene

import (
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// A Pressable is one thing of a sheet that a hand can press, told without a
// picture: what guides a hand that does not see it.
type Pressable struct {
	Stop    string    // where Tab rests; the items of a menu share theirs
	Label   string    // lettered on it; a thing that is drawn has none
	Letter  string    // the key that presses it; empty: none
	Rect    draw.Rect // where it stands; nothing while it is scrolled out of sight
	Area    draw.Rect // of the menu that scrolls; nothing for a key
	Item    int       // in its menu
	Off     bool      // unavailable
	Chosen  bool
	Ringed  bool // Enter presses it
	Pointer bool // pressed by a pointer only; the keyboard has another way
}

// Pressables are what can be pressed on the current scene, in no order that
// matters. A scene that does not tell has none.
func (a *App) Pressables() []Pressable {
	if p, ok := a.scene.(presser); ok {
		return p.pressables()
	}
	return nil
}

type presser interface{ pressables() []Pressable }

func ofKey(k *widget.Key, stop string, ringed bool) Pressable {
	return Pressable{Stop: stop, Label: k.Label, Letter: k.Letter, Rect: k.Rect, Off: k.Off, Chosen: k.Chosen, Ringed: ringed}
}

func ofTarget(t *widget.Target, focus string) Pressable {
	return Pressable{Stop: t.ID, Letter: t.Key, Rect: t.Rect, Off: !t.Enabled, Ringed: t.ID == focus}
}

// ofList is the rows of a list in one stop.
func ofList(l *widget.List, stop string, label func(i int) string) (list []Pressable) {
	from, to := l.Visible()
	for i := range l.Rows {
		p := Pressable{Stop: stop, Label: label(i), Area: l.Rect, Item: i, Ringed: l.Focused && i == l.Selected}
		if i >= from && i < to {
			p.Rect = l.Row(i)
		}
		list = append(list, p)
	}
	return list
}

func (j *Job) pressables() []Pressable {
	if p, ok := j.sheet.(presser); ok {
		return p.pressables()
	}
	return nil
}

func (v *cover) pressables() []Pressable {
	v.layout()
	list := v.list()
	for i := range v.lists {
		l := &v.lists[i]
		list = append(list, ofList(&l.List, l.id, func(i int) string { return l.offers[i].Name })...)
	}
	return list
}

func (s *stations) pressables() (list []Pressable) {
	s.layout()
	for i := range s.keys {
		if k := &s.keys[i]; !k.tick {
			p := ofKey(&k.Key, k.id, k.Focused)
			p.Pointer = k.hand
			list = append(list, p)
		}
	}
	return addTargets(list, &s.targets)
}

func (f *form) pressables() (list []Pressable) {
	f.layout()
	for i := range f.keys {
		k := &f.keys[i]
		p := ofKey(&k.Key, k.id, k.Focused)
		_, p.Pointer = f.hands.Find(k.id)
		list = append(list, p)
	}
	for _, m := range f.menus {
		from, to := m.shown()
		for i := range m.items {
			p := ofKey(&m.items[i].Key, m.id, m.list.Focused && i == m.sel)
			p.Area, p.Item, p.Rect = m.area, i, draw.Rect{}
			if i >= from && i < to {
				p.Rect = m.cell(i)
			}
			list = append(list, p)
		}
	}
	return addTargets(list, &f.targets)
}

// pressables are those of a form and the rows, which arrows walk.
func (s *call) pressables() []Pressable {
	return append(s.form.pressables(), ofList(&s.rows, idRows, func(i int) string {
		if rows := s.v().Rows; i < len(rows) {
			return s.words.Say("play.at", "what", rows[i].Cause, "place", rows[i].Place)
		}
		return s.word("call.pick")
	})...)
}

// addTargets adds the stops that no key or menu told of, such as fields.
func addTargets(list []Pressable, targets *widget.Targets) []Pressable {
	told := map[string]bool{idRows: true}
	for i := range list {
		told[list[i].Stop] = true
	}
	for _, t := range targets.InOrder() {
		if !told[t.ID] {
			list = append(list, ofTarget(&t, targets.Focus))
		}
	}
	return list
}
