package scene

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
	"evenwear/game/widget"
	"evenwear/physics/inspect"
)

// A hand plays a session through an app's events alone: it finds the key of an
// act on the sheet and types its letter, or points at it.
type hand struct {
	t       *testing.T
	app     *App
	job     *Job
	session *play.Session
	use     string // "keys", "tab", "mouse" or "touch"
}

// errCalled ends a play at the call sheet.
var errCalled = errors.New("the inspection is over")

func (h *hand) View() *play.View { return h.session.View() }

// Do does an act by hand, and checks that it and nothing else was played.
func (h *hand) Do(a play.Act) error {
	h.t.Helper()
	before := len(h.session.Acts())
	switch a.Do {
	case play.Go:
		h.press("place." + a.What)
	case play.Prepare:
		h.press("work." + a.What)
	case play.Check:
		h.press("check." + a.What)
	case play.OpenCall:
		h.press("call")
	case play.Write:
		h.write(a.Text)
	default:
		return fmt.Errorf("no hand for %q", a.Do)
	}
	acts := h.session.Acts()
	if len(acts) != before+1 {
		return fmt.Errorf("%s %s by %s: %d acts were played, want one; the sheet says %q", a.Do, a.What, h.use, len(acts)-before, h.job.view.Notice)
	}
	if got := acts[before]; got.Do != a.Do || a.What != "" && got.What != a.What {
		return fmt.Errorf("%s %s by %s played %+v", a.Do, a.What, h.use, got)
	}
	if a.Do == play.OpenCall {
		return errCalled
	}
	return nil
}

// press acts on the key with an id. On keys its letter is typed, with the
// character that the window sends after it.
func (h *hand) press(id string) {
	h.t.Helper()
	s, ok := h.job.sheet.(*stations)
	if !ok {
		h.t.Fatalf("%s: the sheet is a %T", id, h.job.sheet)
	}
	h.app.Draw()
	i := slices.IndexFunc(s.keys, func(k stationKey) bool { return k.id == id })
	if part := partOf(h.job.view, id); i < 0 && part != "" && part != s.part {
		h.press(partPrefix + part)
		h.press(id)
		return
	}
	if i < 0 {
		h.t.Fatalf("the sheet has no key %s", id)
	}
	k := s.keys[i]
	switch h.use {
	case "keys":
		if k.Letter == "" {
			h.t.Fatalf("key %s shows no letter", id)
		}
		h.app.Handle(key(k.Letter))
		if len(k.Letter) == 1 {
			h.app.Handle(widget.Event{Kind: widget.TextIn, Rune: rune(strings.ToLower(k.Letter)[0])})
		}
	case "tab":
		for range len(s.keys) + 2 {
			if s.targets.Focus == id {
				break
			}
			h.app.Handle(key("Tab"))
		}
		h.app.Handle(key("Enter"))
	default:
		point(h.app, k.Rect.Centre(), h.use == "touch")
	}
}

// partOf is the part of the brake under which a check's key is found; empty: none.
func partOf(v *play.View, key string) string {
	for _, n := range v.Nodes {
		for _, a := range n.Actions {
			if n.Part != "" && "check."+a.Act.What == key {
				return n.Part
			}
		}
	}
	return ""
}

func (h *hand) write(text string) {
	h.t.Helper()
	v := h.session.View().Instrument
	if v == nil {
		h.t.Fatalf("nothing to read while %q is to be written", text)
	}
	if len(v.Words) > 0 {
		for _, w := range v.Words {
			if w.Label == text || w.Act.Text == text {
				h.press("word." + w.Act.Text)
				return
			}
		}
		h.t.Fatalf("%s has no word %q", v.Check, text)
	}
	for _, r := range text {
		if h.use == "keys" || h.use == "tab" {
			h.app.Handle(widget.Event{Kind: widget.KeyDown, Key: string(r)})
			h.app.Handle(widget.Event{Kind: widget.TextIn, Rune: r})
		} else {
			h.press("pad." + string(r))
		}
	}
	if h.use == "keys" || h.use == "tab" {
		h.app.Handle(key("Enter"))
	} else {
		h.press("write")
	}
}

// perceived is the word for what is perceived.
func perceived(t *testing.T, a *App) func(check, perception string) string {
	return func(check, perception string) string {
		c, ok := inspect.Find(inspect.ID(check))
		if !ok {
			t.Fatalf("no check %s", check)
		}
		for _, w := range c.Meter.Words {
			if a.Say("see."+check+"."+w) == perception {
				return a.Say("word." + w)
			}
		}
		t.Fatalf("%s: nothing is described by %q", check, perception)
		return ""
	}
}

// recorder stops a headless play at the call as a hand does.
type recorder struct{ *play.Session }

func (r recorder) Do(a play.Act) error {
	if err := r.Session.Do(a); err != nil {
		return err
	}
	if a.Do == play.OpenCall {
		return errCalled
	}
	return nil
}

// TestInspectionByHand plays the inspection of a job through the app's events:
// by letters, by Tab and Enter, by mouse, by finger. Each way writes the same
// notebook as the session played without a face.
func TestInspectionByHand(t *testing.T) {
	var plan playtest.Plan
	for _, p := range playtest.Plans {
		if p.Job == "warm_wheel" {
			plan = p
		}
	}
	bare := testApp(t, false)
	_, alone := openJob(t, bare, plan.Job, 21)
	if _, err := playtest.Play(recorder{alone}, plan, perceived(t, bare)); !errors.Is(err, errCalled) {
		t.Fatal(err)
	}
	want := alone.View().Notebook
	if len(want) < 15 {
		t.Fatalf("only %d readings: the plan inspects too little to prove anything", len(want))
	}
	for _, use := range []string{"keys", "tab", "mouse", "touch"} {
		t.Run(use, func(t *testing.T) {
			a := testApp(t, false)
			a.Resize(1280, 720, use == "touch")
			j, s := openJob(t, a, plan.Job, 21)
			h := &hand{t, a, j, s, use}
			if _, err := playtest.Play(h, plan, perceived(t, a)); !errors.Is(err, errCalled) {
				t.Fatal(err)
			}
			if got := s.View().Notebook; !slices.Equal(got, want) {
				t.Errorf("notebook by %s:\n%v\nwant\n%v", use, got, want)
			}
			if k := kindOf(j.view); k != callSheet {
				t.Errorf("the call key led to sheet %d, want the call", k)
			}
		})
	}
}

// TestDiscTurnsByHand: Space holds and turns the disc, the needle follows, and
// with reduced motion it moves only in steps. Steady motion allocates nothing.
func TestDiscTurnsByHand(t *testing.T) {
	for _, calm := range []bool{false, true} {
		a := testApp(t, false)
		a.Calm = calm
		j, _ := openJob(t, a, "warm_wheel", 3)
		for _, act := range append(wheelOffActs, play.Act{Do: play.Check, What: "runout@front_left"}) {
			if !j.do(act) {
				t.Fatal(j.view.Notice)
			}
		}
		a.Draw()
		moves := func() (n int) {
			for range 20 {
				a.Advance(50)
				if _, dirty := a.Draw(); len(dirty) > 0 {
					n++
				}
			}
			return n
		}
		if calm {
			if n := moves(); n != 0 {
				t.Errorf("with reduced motion %d frames moved by themselves", n)
			}
			a.Handle(key("Space"))
			if _, dirty := a.Draw(); len(dirty) == 0 {
				t.Error("with reduced motion a step moved nothing")
			}
			continue
		}
		if n := moves(); n < 18 {
			t.Errorf("a turning disc moved in %d of 20 frames", n)
		}
		if n := testing.AllocsPerRun(60, func() { a.Advance(16); a.Draw() }); n > 0 {
			t.Errorf("a turning disc allocates %.1f times a frame, want 0", n)
		}
		a.Handle(key("Space"))
		a.Draw()
		if n := moves(); n != 0 {
			t.Errorf("a disc that is held moved in %d frames", n)
		}
	}
}

// TestStationsRedraw: after every act of a hand the sheet is as one drawn afresh.
func TestStationsRedraw(t *testing.T) {
	a := testApp(t, false)
	j, _ := openJob(t, a, "warm_wheel", 3)
	for _, k := range []string{"F1", "F1", "Tab", "3", "Q", "A", "2", "Q", "+", "Right", "Up", "+", "F2", "Enter", "Backspace", "Delete", "F2", "X", "Tab", "Esc"} {
		a.Handle(key(k))
		sameAsWhole(t, a, k)
	}
	a.Show(j)
	for _, act := range append(wheelOffActs, play.Act{Do: play.Check, What: "runout@front_left"}) {
		if !j.do(act) {
			t.Fatal(j.view.Notice)
		}
		sameAsWhole(t, a, string(act.Do)+act.What)
	}
	for range 5 {
		a.Advance(137)
		sameAsWhole(t, a, "the disc's turn")
	}
}

// TestStationsKeys: on every sheet of the inspection no key meets another, by
// touch each is at least 44 wide and high, and each that does more than write a figure or
// strike a line shows a letter that no other has.
func TestStationsKeys(t *testing.T) {
	for _, touch := range []bool{false, true} {
		a := testApp(t, false)
		a.Resize(1280, 720, touch)
		j, _ := openJob(t, a, "warm_wheel", 3)
		acts := append([]play.Act{{Do: play.Go, What: "bonnet"}, {Do: play.Check, What: "fluid_water"}, {Do: play.Write, Text: "1"}, {Do: play.Go, What: "seat"},
			{Do: play.Check, What: "pedal_feel"}, {Do: play.Skip}, {Do: play.Go, What: "road"}}, wheelOffActs...)
		for _, act := range append(acts, play.Act{Do: play.Check, What: "runout@front_left"}) {
			if !j.do(act) {
				t.Fatal(j.view.Notice)
			}
			a.Draw()
			s := j.sheet.(*stations)
			s.part = ""
			s.layout()
			keysStandApart(t, s, act.What)
			for i := range s.view.Nodes {
				if n := &s.view.Nodes[i]; n.Part != "" {
					s.part = n.Part
					s.layout()
					keysStandApart(t, s, act.What+" "+n.Part)
				}
			}
		}
	}
}

// keysStandApart holds the keys of a sheet to what TestStationsKeys says.
func keysStandApart(t *testing.T, s *stations, where string) {
	t.Helper()
	letters := map[string]string{}
	for i, k := range s.keys {
		if k.tick {
			continue
		}
		if s.app.Touch && (k.Rect.H < widget.TouchTarget || k.Rect.W < widget.TouchTarget) {
			t.Errorf("%s: by touch key %s is %.0f by %.0f, want %.0f", where, k.id, k.Rect.W, k.Rect.H, widget.TouchTarget)
		}
		for _, o := range s.keys[:i] {
			if !o.tick && k.Rect.Overlaps(o.Rect) {
				t.Errorf("%s: keys %s and %s meet", where, k.id, o.id)
			}
		}
		if strings.HasPrefix(k.id, "pad.") || strings.HasPrefix(k.id, "note") || k.hand { // a tag bears the letter of its key
			continue
		}
		if k.Letter == "" {
			t.Errorf("%s: key %s shows no letter", where, k.id)
		}
		if o := letters[k.Letter]; o != "" {
			t.Errorf("%s: %s and %s both show %s", where, o, k.id, k.Letter)
		}
		letters[k.Letter] = k.id
	}
}

// TestEveryCheckByHand: every check at a wheel, on the car and off it, is reached
// by letters, by Tab and Enter, by mouse and by finger.
func TestEveryCheckByHand(t *testing.T) {
	for _, use := range []string{"keys", "tab", "mouse", "touch"} {
		a := testApp(t, false)
		a.Resize(1280, 720, use == "touch")
		made := map[inspect.ID]bool{}
		for _, acts := range [][]play.Act{{{Do: play.Go, What: "front_left"}}, wheelOffActs[:8], wheelOffActs} {
			j, session := openJob(t, a, "warm_wheel", 3)
			for _, act := range acts {
				if !j.do(act) {
					t.Fatal(j.view.Notice)
				}
			}
			h := &hand{t, a, j, session, use}
			for _, n := range session.View().Nodes {
				for _, x := range n.Actions {
					id, _, _ := strings.Cut(x.Act.What, "@")
					if n.Part == "" || !x.Enabled || made[inspect.ID(id)] {
						continue
					}
					made[inspect.ID(id)] = true
					if err := h.Do(x.Act); err != nil {
						t.Fatal(err)
					}
					if v := j.view.Instrument; v == nil || v.Check != x.Act.What {
						t.Fatalf("%s by %s: the instrument is %+v", x.Act.What, use, v)
					}
					j.do(j.view.Instrument.Skip.Act)
				}
			}
		}
		for _, c := range inspect.All() {
			if c.Part != "" && !made[c.ID] {
				t.Errorf("%s is not reached by %s", c.ID, use)
			}
		}
	}
}

// TestLineBeingReadIsEmpty: until it is written no lettering of the sheet outside the
// instrument holds the reading: the line being read has no value.
func TestLineBeingReadIsEmpty(t *testing.T) {
	a := testApp(t, false)
	j, _ := openJob(t, a, "warm_wheel", 3)
	for _, act := range append(wheelOffActs, play.Act{Do: play.Check, What: "disc_thickness@front_left"}) {
		if !j.do(act) {
			t.Fatal(j.view.Notice)
		}
	}
	a.Draw()
	s := j.sheet.(*stations)
	if s.field.Text != "" || s.view.Notebook[len(s.view.Notebook)-1].Written != "" {
		t.Error("a figure stands beside an instrument that was not read")
	}
	a.Handle(widget.Event{Kind: widget.TextIn, Rune: 'x'})
	a.Handle(key("Enter"))
	if len(s.view.Notebook) == 0 || s.view.Instrument == nil || s.view.Notice == "" {
		t.Error("an empty figure was written down, or refused without a sentence")
	}
}
