package scenetest

import (
	"fmt"
	"strconv"
	"strings"

	"evenwear/game/play"
	"evenwear/game/scene"
)

// write writes a reading down: a word by its key, a figure by the field or, with
// a pointer, by the keys beside it.
func (h *Hand) write(text string) error {
	v := h.View().Instrument
	if v == nil {
		return fmt.Errorf("nothing waits to be read while %q is to be written", text)
	}
	for _, w := range v.Words {
		if w.Label == text {
			return h.Press(func(p *scene.Pressable) bool { return p.Letter == w.Key })
		}
	}
	if len(v.Words) > 0 {
		return fmt.Errorf("%s has no word %q", v.Check, text)
	}
	if h.Way == Letters || h.Way == Tabs {
		h.typeIn(text)
		h.key("Enter")
		return nil
	}
	for _, r := range text {
		if err := h.Press(stop("pad." + string(r))); err != nil {
			return err
		}
	}
	return h.Press(stop("write"))
}

// row opens a row of the call from the catalogue.
func (h *Hand) row(what string) error {
	cause, _, _ := strings.Cut(what, "@")
	for _, g := range h.View().Call.Groups {
		for _, c := range g.Causes {
			if c.ID != cause {
				continue
			}
			for _, at := range c.Places {
				if at.Act.What == what {
					return h.each(stop("pick"), label("groups", g.Name), label("causes", c.Name), label("places", at.Label))
				}
			}
		}
	}
	return fmt.Errorf("the catalogue has no %s", what)
}

// each presses one thing after the other.
func (h *Hand) each(list ...func(*scene.Pressable) bool) error {
	for _, m := range list {
		if err := h.Press(m); err != nil {
			return err
		}
	}
	return nil
}

// counter puts one counter more or less on a row.
func (h *Hand) counter(a play.Act) error {
	for i, r := range h.View().Call.Rows {
		if r.ID != a.What {
			continue
		}
		button, arrow := "more", "Right"
		switch a.N {
		case r.More.Act.N:
		case r.Less.Act.N:
			button, arrow = "less", "Left"
		default:
			return fmt.Errorf("from %d to %g counters in one go", r.Counters, a.N)
		}
		if h.Way == Mouse || h.Way == Finger {
			return h.Press(stop(button + strconv.Itoa(i)))
		}
		if err := h.walk(scene.Pressable{Stop: "rows", Item: i}); err != nil {
			return err
		}
		h.key(arrow)
		return nil
	}
	return fmt.Errorf("the call has no row %s", a.What)
}

// remedy picks one of all that can be done: part, place, then the line.
func (h *Hand) remedy(what string) error {
	for _, part := range h.View().Call.Parts {
		spots := map[string]int{} // lines seen of each place
		for _, r := range part.Remedies {
			for _, at := range r.Places {
				line := spots[at.Label]
				spots[at.Label]++
				if at.Act.What != what {
					continue
				}
				if err := h.Press(label("parts", part.Name)); err != nil {
					return err
				}
				if err := h.Press(label("spots", at.Label)); err != nil {
					return err
				}
				return h.Press(func(p *scene.Pressable) bool { return p.Stop == "remedies" && p.Item == line })
			}
		}
	}
	return fmt.Errorf("nothing that can be done is %s", what)
}

// look takes a look again, on the side of the table where it stands: what every
// hand-over should have, or the learner's other readings.
func (h *Hand) look(w *play.WorkView, what string) error {
	n := 0
	for n < len(w.Looks) && w.Looks[n].Advised {
		n++
	}
	for i, l := range w.Looks {
		if l.Action.Act.What != what {
			continue
		}
		if side, err := h.find(stop("others")); err == nil && side.Chosen == l.Advised {
			if err := h.Press(stop("others")); err != nil {
				return err
			}
		}
		if !l.Advised {
			i -= n
		}
		return h.Press(func(p *scene.Pressable) bool { return p.Stop == "looks" && p.Item == i })
	}
	return fmt.Errorf("%s is not to be looked at again", what)
}

// tell writes the note to the owner and leaves its field.
func (h *Hand) tell(text string) error {
	if err := h.Press(stop("told")); err != nil {
		return err
	}
	h.typeIn(text)
	h.key("Tab")
	return nil
}
