package scene

import (
	"slices"
	"strings"
	"testing"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// the form of the sheet that is shown.
func (h *hand) form() *form {
	h.t.Helper()
	switch s := h.job.sheet.(type) {
	case *call:
		return &s.form
	case *handover:
		return &s.form
	}
	h.t.Fatalf("the sheet is a %T", h.job.sheet)
	return nil
}

// tab goes on until an id is in focus.
func (h *hand) tab(id string) {
	h.t.Helper()
	for range 60 {
		if h.form().targets.Focus == id {
			return
		}
		h.app.Handle(key("Tab"))
	}
	h.t.Fatalf("Tab never comes to %s", id)
}

// pressKey presses a key of a form: by its letter, with what the window types
// after it, or where it stands.
func (h *hand) pressKey(id string) {
	h.t.Helper()
	h.app.Draw()
	f := h.form()
	i := slices.IndexFunc(f.keys, func(k formKey) bool { return k.id == id })
	if i < 0 {
		h.t.Fatalf("the sheet has no key %s", id)
	}
	k := f.keys[i]
	switch {
	case h.use != "keys":
		point(h.app, k.Rect.Centre(), h.use == "touch")
	case k.Letter == "" || k.Letter == "Enter":
		h.tab(id)
		h.app.Handle(key("Enter"))
	default:
		h.letter(k.Letter)
	}
}

func (h *hand) letter(name string) {
	h.app.Handle(key(name))
	if len(name) == 1 {
		h.app.Handle(widget.Event{Kind: widget.TextIn, Rune: rune(strings.ToLower(name)[0])})
	}
}

// choose presses the item of a menu that ok takes: with arrows and Enter, or
// where it stands once it is scrolled into sight.
func (h *hand) choose(id string, ok func(i int, k *menuItem) bool) {
	h.t.Helper()
	h.app.Draw()
	f := h.form()
	n := slices.IndexFunc(f.menus, func(m *menu) bool { return m.id == id })
	if n < 0 {
		h.t.Fatalf("the sheet has no menu %s", id)
	}
	m := f.menus[n]
	i := 0
	for i < len(m.items) && !ok(i, &m.items[i]) {
		i++
	}
	if i == len(m.items) {
		h.t.Fatalf("%s holds nothing of the kind among %d", id, i)
	}
	if h.use == "keys" {
		h.tab(id)
		h.app.Handle(key("Home"))
		for range i / m.cols {
			h.app.Handle(key("Down"))
		}
		for range i % m.cols {
			h.app.Handle(key("Right"))
		}
		h.app.Handle(key("Enter"))
		return
	}
	for range 40 {
		from, to := m.shown()
		switch {
		case i >= from && i < to:
			point(h.app, m.cell(i).Centre(), h.use == "touch")
			return
		case i < from:
			h.scroll(m, -1)
		default:
			h.scroll(m, 1)
		}
		f.layout()
	}
	h.t.Fatalf("item %d of %s cannot be scrolled into sight", i, id)
}

// scroll turns the wheel, or drags, by one row.
func (h *hand) scroll(m *menu, rows float64) {
	at := m.area.Centre()
	if h.use == "mouse" {
		h.app.Handle(widget.Event{Kind: widget.Wheel, At: at, Turn: rows})
		return
	}
	to := draw.Pt{X: at.X, Y: at.Y - rows*m.list.RowH}
	for _, e := range []widget.Event{{Kind: widget.PointerDown, At: at}, {Kind: widget.PointerMove, At: to}, {Kind: widget.PointerUp, At: to}} {
		e.Touch = true
		h.app.Handle(e)
	}
}

func labelled(name string) func(int, *menuItem) bool {
	return func(_ int, k *menuItem) bool { return k.Label == name }
}

// want compares what was played since n acts with what was meant.
func (h *hand) want(n int, want ...play.Act) {
	h.t.Helper()
	got := h.session.Acts()[n:]
	if !slices.Equal(got, want) {
		h.t.Errorf("by %s was played\n%+v\nwant\n%+v", h.use, got, want)
	}
}

// hands plays on a fresh call sheet by keyboard, by mouse and by finger.
func hands(t *testing.T, sealed bool, do func(h *hand)) {
	for _, use := range []string{"keys", "mouse", "touch"} {
		t.Run(use, func(t *testing.T) {
			a, j := demoCall(t, false, use == "touch", sealed)
			if sealed {
				acts(t, j, append(chosenActs, play.Act{Do: play.Work})...)
			}
			do(&hand{t, a, j, j.game.(*play.Session), use})
		})
	}
}

// TestCallByHand: rows, counters, the seal, remedies and the work, each way alone.
func TestCallByHand(t *testing.T) {
	const pins, pin = "pins_seized@front_right", "pin_seized@front_right.upper_pin"
	counter := func(row string, n float64) play.Act { return play.Act{Do: play.Counter, What: row, N: n} }
	hands(t, false, func(h *hand) {
		n := len(h.session.Acts())
		open := func(group, cause, place string) {
			h.pressKey("pick")
			h.choose("groups", labelled(group))
			h.choose("causes", labelled(cause))
			h.choose("places", labelled(place))
		}
		rod := func(row int, sign string) {
			if h.use != "keys" {
				h.pressKey(map[string]string{"+": "more", "-": "less", "x": "less"}[sign] + string(rune('0'+row)))
				return
			}
			h.tab(idRows)
			h.app.Handle(key("Home"))
			for range row {
				h.app.Handle(key("Down"))
			}
			h.app.Handle(key(map[string]string{"+": "Right", "-": "Left", "x": "Delete"}[sign]))
		}
		open("Guide pins", "Both guide pins seized", "front right")
		rod(0, "+")
		rod(0, "+")
		open("Guide pins", "One guide pin seized", "front right, upper pin")
		rod(1, "+")
		rod(1, "-")
		rod(1, "x")
		h.want(n, play.Act{Do: play.Row, What: pins}, counter(pins, 1), counter(pins, 2),
			play.Act{Do: play.Row, What: pin}, counter(pin, 1), counter(pin, 0), play.Act{Do: play.DropRow, What: pin})

		n = len(h.session.Acts())
		h.pressKey("seal")
		h.pressKey("seal") // counters are open: it asked
		remedy := func(part, place, id string) {
			h.choose("parts", labelled(part))
			h.choose("spots", labelled(place))
			s := h.job.sheet.(*call)
			h.choose("remedies", func(i int, _ *menuItem) bool { return s.remedyAt(i).ID == id })
		}
		remedy("Guide pins and boots", "front right", "renew_pins")
		h.choose("chosen", func(i int, _ *menuItem) bool { return i == 0 })
		remedy("Guide pins and boots", "front right", "renew_pins")
		h.choose("parts", labelled("Pads"))
		if h.job.sheet.(*call).place == "" {
			h.choose("spots", labelled("front axle"))
		}
		h.choose("remedies", func(i int, _ *menuItem) bool { return h.job.sheet.(*call).remedyAt(i).ID == "renew_pads" })
		h.pressKey("work")
		renew := play.Act{Do: play.Remedy, What: "renew_pins@front_right"}
		h.want(n, play.Act{Do: play.Seal}, renew, play.Act{Do: play.DropRem, What: renew.What}, renew,
			play.Act{Do: play.Remedy, What: "renew_pads@front_axle"}, play.Act{Do: play.Work})
		if h.job.kind != handoverSheet {
			t.Errorf("after the work sheet %d is shown, want the hand-over", h.job.kind)
		}
	})
}

// TestHandoverByHand: looks that are read at their station, the others turned
// to, a release, the owner's note and the hand-over, each way alone.
func TestHandoverByHand(t *testing.T) {
	hands(t, true, func(h *hand) {
		n := len(h.session.Acts())
		var want []play.Act
		look := func(what string) {
			h.t.Helper()
			h.choose("looks", func(i int, _ *menuItem) bool {
				s := h.job.sheet.(*handover)
				return s.v().Looks[s.first+i].Action.Act.What == what
			})
			v := h.session.View().Instrument
			if v == nil {
				h.t.Fatalf("%s is not being read: %s", what, h.job.view.Notice)
			}
			text := readMarks(h.t, h.app.words, v)
			h.write(text)
			want = append(want, play.Act{Do: play.Check, What: what}, play.Act{Do: play.Write, Text: text})
			if h.job.kind != handoverSheet {
				h.t.Fatalf("%s was read and sheet %d is shown, want the hand-over", what, h.job.kind)
			}
		}
		look("pump_running")
		look("slow_stop")
		h.pressKey("others")
		look("pedal_travel")
		h.choose("releases", func(i int, _ *menuItem) bool { return i == 1 })
		const note = "New pins. Go slow"
		h.note(note)
		h.pressKey("handover")
		h.job.game.Cancel()
		want = append(want, play.Act{Do: play.Release, What: "release.trip"}, play.Act{Do: play.Tell, Text: note}, play.Act{Do: play.HandOver})
		got := slices.Clone(h.session.Acts()[n:])
		for i := range got { // a reading may name its check or leave it out
			if got[i].Do == play.Write {
				got[i].What = ""
			}
		}
		if !slices.Equal(got, want) {
			h.t.Errorf("by %s was played\n%+v\nwant\n%+v", h.use, got, want)
		}
	})
}

// note writes what the owner is told: typed, or letter by letter on the pad.
func (h *hand) note(text string) {
	h.t.Helper()
	s := h.job.sheet.(*handover)
	if h.use == "keys" {
		h.letter(s.v().Tell.Key)
		typed(h.app, text)
		h.app.Handle(key("Esc"))
		return
	}
	if h.use == "touch" { // the note itself brings the letters
		point(h.app, s.told.Rect.Centre(), true)
	} else {
		h.pressKey("letters")
	}
	begins := true
	for _, r := range text {
		switch {
		case r == ' ':
			h.pressKey("pad.space")
			continue
		case !begins && r >= 'A' && r <= 'Z':
			h.pressKey("pad.shift")
		}
		h.pressKey("letter." + strings.ToLower(string(r)))
		begins = r == '.'
	}
	h.pressKey("pad.end")
}
