// Package scenetest plays jobs on an app through its events alone, as a hand at
// a keyboard, a mouse or a touch screen does. It looks at what the sheet says
// can be pressed and never at a coordinate of its own.
package scenetest

import (
	"fmt"
	"strings"
	"unicode"

	"evenwear/game/play"
	"evenwear/game/scene"
	"evenwear/game/widget"
)

// A Way is how a hand works.
type Way string

// The ways. A note to the owner is typed in each: words need letters.
const (
	Letters Way = "letters" // the letter that a key in sight shows
	Tabs    Way = "tabs"    // Tab, arrows and Enter
	Mouse   Way = "mouse"
	Finger  Way = "finger"
)

// A Hand plays a session that an app shows. It is a [playtest.Player].
type Hand struct {
	App *scene.App
	*play.Session
	Way Way
	// Send passes an event on; nil gives it to the app.
	Send func(widget.Event)
}

// Do does an act by hand. It fails when anything but this act came of it.
func (h *Hand) Do(a play.Act) error {
	h.App.Draw() // what is shown is what is pressed
	before := len(h.Acts())
	if err := h.act(a); err != nil {
		return err
	}
	if got := h.Acts()[before:]; len(got) != 1 || got[0] != a {
		return fmt.Errorf("by %s %+v became %+v; the sheet says %q", h.Way, a, got, h.View().Notice)
	}
	return nil
}

func (h *Hand) act(a play.Act) error {
	switch a.Do {
	case play.Write:
		return h.write(a.Text)
	case play.Row:
		return h.row(a.What)
	case play.Counter:
		return h.counter(a)
	case play.Remedy:
		return h.remedy(a.What)
	case play.Seal:
		if h.View().Call.Ask != "" {
			return h.each(stop(string(a.Do)), stop(string(a.Do)))
		}
		return h.Press(stop(string(a.Do)))
	case play.Work, play.HandOver:
		return h.Press(stop(string(a.Do)))
	case play.Check:
		if w := h.View().Work; w != nil {
			return h.look(w, a.What)
		}
	case play.Tell:
		return h.tell(a.Text)
	}
	for _, n := range h.View().Nodes {
		for _, x := range n.Actions {
			if x.Act == a && n.Part != "" {
				return h.atPart(n.Part, stop("check."+a.What))
			}
			if x.Act == a && x.Key != "" {
				return h.Press(func(p *scene.Pressable) bool { return p.Letter == x.Key && !p.Off })
			}
		}
	}
	return fmt.Errorf("nothing on the sheet does %+v", a)
}

// atPart presses what stands at a part of the brake, opened first where another is.
func (h *Hand) atPart(part string, match func(*scene.Pressable) bool) error {
	if _, err := h.find(match); err != nil {
		if err := h.Press(stop("part." + part)); err != nil {
			return err
		}
		h.App.Draw()
	}
	return h.Press(match)
}

// Open opens a job by its title on the cover.
func (h *Hand) Open(title string) error {
	h.App.Draw()
	return h.Press(label("", title))
}

func stop(id string) func(*scene.Pressable) bool {
	return func(p *scene.Pressable) bool { return p.Stop == id }
}

// label is the thing so lettered, of a menu where one is named.
func label(menu, text string) func(*scene.Pressable) bool {
	return func(p *scene.Pressable) bool { return p.Label == text && (menu == "" || p.Stop == menu) }
}

func (h *Hand) find(match func(*scene.Pressable) bool) (scene.Pressable, error) {
	var there []string
	for _, p := range h.App.Pressables() {
		if match(&p) {
			return p, nil
		}
		there = append(there, strings.TrimSpace(p.Stop+" "+p.Label+" "+p.Letter))
	}
	return scene.Pressable{}, fmt.Errorf("no such key; there are %q", there)
}

// Press presses the first thing that matches.
func (h *Hand) Press(match func(*scene.Pressable) bool) error {
	p, err := h.find(match)
	if err != nil {
		return err
	}
	if p.Off {
		return fmt.Errorf("%s %q is unavailable", p.Stop, p.Label)
	}
	switch {
	case h.Way == Mouse || h.Way == Finger:
		return h.point(p)
	case h.Way == Letters && p.Letter != "" && p.Letter != "Enter" && p.Rect.W > 0:
		h.key(p.Letter)
		return nil
	}
	if err := h.walk(p); err != nil {
		return err
	}
	h.key("Enter")
	return nil
}

// far is more presses than anything on a sheet is away.
const far = 400

// walk brings the ring to a thing: Tab to its stop, arrows to the item.
func (h *Hand) walk(to scene.Pressable) error {
	arrow := "Right"
	for range far {
		now, err := h.find(func(p *scene.Pressable) bool { return p.Ringed && p.Stop == to.Stop })
		switch {
		case err != nil:
			h.key("Tab")
			continue
		case now.Item == to.Item:
			return nil
		}
		if to.Stop == "rows" { // there → puts a counter on
			arrow = "Down"
		}
		way := arrow
		if now.Item > to.Item {
			way = map[string]string{"Right": "Left", "Down": "Up"}[arrow]
		}
		h.key(way)
		if then, err := h.find(func(p *scene.Pressable) bool { return p.Ringed && p.Stop == to.Stop }); err == nil && then.Item == now.Item {
			arrow = map[string]string{"Right": "Down", "Down": "Right"}[arrow]
		}
	}
	return fmt.Errorf("the ring does not reach %s %q", to.Stop, to.Label)
}

// point presses with a pointer; what is out of sight is scrolled to.
func (h *Hand) point(p scene.Pressable) error {
	for n := 0; p.Rect.W == 0; n++ {
		if p.Area.W == 0 || n == far {
			return fmt.Errorf("%s %q does not come into sight", p.Stop, p.Label)
		}
		turn := 1.0
		for _, x := range h.App.Pressables() {
			if x.Stop == p.Stop && x.Rect.W > 0 && x.Item > p.Item {
				turn = -1
			}
		}
		h.send(widget.Event{Kind: widget.Wheel, At: p.Area.Centre(), Turn: turn})
		var err error
		if p, err = h.find(func(x *scene.Pressable) bool { return x.Stop == p.Stop && x.Item == p.Item }); err != nil {
			return err
		}
	}
	e := widget.Event{Kind: widget.PointerDown, At: p.Rect.Centre(), Touch: h.Way == Finger}
	h.send(e)
	e.Kind = widget.PointerUp
	h.send(e)
	return nil
}

func (h *Hand) send(e widget.Event) {
	if h.Send != nil {
		h.Send(e)
		return
	}
	h.App.Handle(e)
}

// key strikes a key, which types its character too.
func (h *Hand) key(name string) {
	h.send(widget.Event{Kind: widget.KeyDown, Key: name})
	if len(name) == 1 {
		h.send(widget.Event{Kind: widget.TextIn, Rune: unicode.ToLower(rune(name[0]))})
	}
}

// type types a text as a keyboard does.
func (h *Hand) typeIn(text string) {
	for _, r := range text {
		name := strings.ToUpper(string(r))
		if r == ' ' {
			name = "Space"
		}
		h.send(widget.Event{Kind: widget.KeyDown, Key: name, Shift: unicode.IsUpper(r)})
		h.send(widget.Event{Kind: widget.TextIn, Rune: r, Shift: unicode.IsUpper(r)})
	}
}
