package scene

import (
	"bytes"
	"image"
	"math"
	"slices"
	"strings"
	"testing"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// atInstrument opens a job with an instrument that waits to be read.
func atInstrument(t *testing.T, acts ...play.Act) (*App, *stations) {
	t.Helper()
	a := testApp(t, false)
	j, _ := openJob(t, a, "warm_wheel", 3)
	for _, act := range acts {
		if !j.do(act) {
			t.Fatalf("%+v: %s", act, j.view.Notice)
		}
	}
	s := j.sheet.(*stations)
	s.fresh()
	return a, s
}

func typed(a *App, text string) {
	for _, r := range text {
		a.Handle(widget.Event{Kind: widget.KeyDown, Key: strings.ToUpper(string(r))})
		a.Handle(widget.Event{Kind: widget.TextIn, Rune: r})
	}
}

var atReservoir = []play.Act{{Do: play.Go, What: "bonnet"}, {Do: play.Check, What: "reservoir_level"}}

// TestOddFigures: what is no reading is answered by a sentence, and neither the
// instrument nor what was typed nor a minute is lost.
func TestOddFigures(t *testing.T) {
	for _, tc := range []struct{ text, kept, says string }{
		{"", "", "skip"},
		{"-", "-", "no number"},
		{".", ".", "no number"},
		{"-.", "-.", "no number"},
		{"1e9", "1e9", "no number"}, // the letter is answered when it is typed, too
		{"999999999999", "999999999999", "off the instrument"},
		{"-31", "-31", "off the instrument"},
		{"62,5", "62,5", "finer"},
		{"1.2.3", "1.2.3", "no number"},
		{"5-5", "5-5", "no number"},
		{"7,5,3-2", "7,5,3-2", "one point or comma"},
		{"0.00000000000000000000000000000005", "0.0000000000000000000000000000", "no number"},
	} {
		a, s := atInstrument(t, atReservoir...)
		minutes := s.view.Title.Minutes
		typed(a, tc.text)
		if before, _, letter := strings.Cut(tc.text, "e"); letter {
			b, s := atInstrument(t, atReservoir...)
			if typed(b, before+"e"); !strings.Contains(s.view.Notice, "no place in a figure") {
				t.Errorf("%q: a letter in a figure is answered by %q", tc.text, s.view.Notice)
			}
		}
		if s.field.Text != tc.kept {
			t.Errorf("%q: the field holds %q, want %q", tc.text, s.field.Text, tc.kept)
		}
		if tc.says == "" {
			continue
		}
		a.Handle(key("Enter"))
		switch {
		case s.view.Instrument == nil:
			t.Errorf("%q was written down", tc.text)
		case !strings.Contains(s.view.Notice, tc.says):
			t.Errorf("%q is answered by %q, want a sentence with %q", tc.text, s.view.Notice, tc.says)
		case s.field.Text != tc.kept || s.view.Title.Minutes != minutes:
			t.Errorf("%q: after the refusal the field holds %q and %g minutes are spent, want %q and %g", tc.text, s.field.Text, s.view.Title.Minutes, tc.kept, minutes)
		}
	}
	a, s := atInstrument(t, play.Act{Do: play.Go, What: "bonnet"})
	typed(a, "q")
	if s.view.Instrument == nil || s.view.Notice != "" || s.field.Text != "" {
		t.Errorf("the letter of the check is taken for a figure: %q, field %q", s.view.Notice, s.field.Text)
	}
	a, s = atInstrument(t, atReservoir...)
	typed(a, "65,0")
	a.Handle(key("Enter"))
	if n := s.view.Notebook; s.view.Instrument != nil || n[0].Written != "65" {
		t.Errorf("65,0 with a comma was not written: %+v, %s", n, s.view.Notice)
	}
}

// TestEnlarge: key, tap, wheel and drag enlarge an instrument about a place, move
// what is seen and show it whole again; a minus that begins a figure stays with
// the figure.
func TestEnlarge(t *testing.T) {
	a, s := atInstrument(t, atReservoir...)
	for _, big := range []bool{true, false, true} {
		if a.Handle(key("+")); s.look.big != big {
			t.Fatalf("+ leaves it at enlarged %v, want %v", s.look.big, big)
		}
	}
	typed(a, "-")
	if !s.look.big || s.field.Text != "-" {
		t.Errorf("a minus in the empty field: enlarged %v, field %q", s.look.big, s.field.Text)
	}
	typed(a, "-")
	if s.look.big || s.field.Text != "-" {
		t.Errorf("a minus after the first: enlarged %v, field %q; it cannot belong to the figure", s.look.big, s.field.Text)
	}

	at := draw.Pt{X: 640, Y: 240}
	point(a, at, true)
	shows := func(what string, want draw.Pt) {
		t.Helper()
		f, mid := s.look.frame(), wholeFrame.Centre()
		// The place of the whole picture that is drawn in the middle.
		got := draw.Pt{X: wholeFrame.X + (mid.X-f.X)/f.W*wholeFrame.W, Y: wholeFrame.Y + (mid.Y-f.Y)/f.H*wholeFrame.H}
		if !s.look.big || got.Sub(want).Len() > 0.5 {
			t.Errorf("%s: enlarged %v about %v, want about %v", what, s.look.big, got, want)
		}
	}
	shows("a tap", at)
	a.Handle(widget.Event{Kind: widget.PointerDown, At: at, Touch: true})
	a.Handle(widget.Event{Kind: widget.PointerMove, At: at.Add(draw.Pt{X: 30, Y: -60}), Touch: true})
	a.Handle(widget.Event{Kind: widget.PointerUp, At: at.Add(draw.Pt{X: 30, Y: -60}), Touch: true})
	shows("a drag", draw.Pt{X: 630, Y: 260})
	sameAsWhole(t, a, "a drag")
	point(a, at, false)
	if s.look.big {
		t.Error("a tap on the enlarged instrument does not show it whole")
	}
	a.Handle(widget.Event{Kind: widget.Wheel, At: at, Turn: -1})
	shows("the wheel", at)
	a.Handle(widget.Event{Kind: widget.Wheel, At: at, Turn: 1})
	if s.look.big {
		t.Error("the wheel back does not show it whole")
	}
	a.Handle(widget.Event{Kind: widget.PointerDown, At: at, Touch: true})
	a.Handle(widget.Event{Kind: widget.Pinch, At: at, Turn: -1, Touch: true})
	a.Handle(widget.Event{Kind: widget.PointerUp, At: at, Touch: true})
	shows("two fingers, the first let go after", at)
	for range 40 {
		s.look.pan("Left")
		s.look.pan("Down")
	}
	if s.look.at != (draw.Pt{X: 0, Y: 1}) {
		t.Errorf("moving on ends at %v, want the corner", s.look.at)
	}
	if s.view.Instrument == nil || s.field.Text != "-" {
		t.Error("looking closely wrote or lost something")
	}
}

// TestPointerAtRestDrawsNothing: a mouse that only moves changes nothing.
func TestPointerAtRestDrawsNothing(t *testing.T) {
	a, _ := atInstrument(t, atReservoir...)
	a.Draw()
	for x := 0.0; x < 1280; x += 40 {
		a.Handle(widget.Event{Kind: widget.PointerMove, At: draw.Pt{X: x, Y: 300}})
	}
	if _, dirty := a.Draw(); len(dirty) > 0 {
		t.Errorf("a moving mouse drew %v", dirty)
	}
}

// planPixels is the plan with its legend.
func planPixels(a *App, p *play.PlanView) []uint8 {
	c := draw.New(draw.SheetW, draw.SheetH, a.theme, a.fonts)
	c.Clear(draw.Rect{W: draw.SheetW, H: draw.SheetH})
	drawPlan(c, p)
	for _, id := range wheelPlaces {
		placeKey(c, play.PlanPlace{ID: id}, planKeys[id], "", false)
	}
	placeKey(c, play.PlanPlace{ID: "bonnet"}, planKeys["bonnet"], "", false)
	return c.Image().SubImage(image.Rect(18, 100, 262, 425)).(*image.RGBA).Pix[:325*1280*4-4*1280]
}

// TestPlanShowsWhatIsPrepared: each thing that is prepared is drawn on the plan,
// apart from its keys, and no two are drawn alike.
func TestPlanShowsWhatIsPrepared(t *testing.T) {
	a := testApp(t, false)
	p := &play.PlanView{}
	seen := map[string][]uint8{"a parked car": planPixels(a, p)}
	for name, flag := range map[string]*bool{
		"rear chocked": &p.Chocked[1], "front chocked": &p.Chocked[0], "front lifted": &p.Lifted[0], "rear lifted": &p.Lifted[1],
		"stand FL": &p.OnStand[0], "stand FR": &p.OnStand[1], "stand RL": &p.OnStand[2], "stand RR": &p.OnStand[3],
		"nuts FL": &p.NutsSlack[0], "nuts RR": &p.NutsSlack[3], "off FL": &p.WheelOff[0], "off RR": &p.WheelOff[3],
		"hot FL": &p.DiscHot[0], "hot FR": &p.DiscHot[1], "hot RL": &p.DiscHot[2], "hot RR": &p.DiscHot[3],
	} {
		*flag = true
		pix := planPixels(a, p)
		*flag = false
		for other, o := range seen {
			if bytes.Equal(pix, o) {
				t.Errorf("on the plan %s looks like %s", name, other)
			}
		}
		seen[name] = pix
	}
}

// TestRefusalIsSeen: the reason why a dashed key cannot be pressed is lettered on
// the sheet, at the ground where there is most room below as at a wheel.
func TestRefusalIsSeen(t *testing.T) {
	for _, tc := range []struct {
		place, key string
	}{{"ground", "work.lower_front"}, {"front_left", "work.wheel_off@front_left"}, {"road", "check.pull"}} {
		a, s := atInstrument(t, play.Act{Do: play.Go, What: tc.place})
		img, _ := a.Draw()
		before := append([]uint8(nil), img.Pix...)
		for i := range s.keys {
			if k := &s.keys[i]; k.id == tc.key {
				if !k.Off {
					t.Fatalf("%s can be pressed", tc.key)
				}
				point(a, k.Rect.Centre(), false)
				break
			}
		}
		if s.view.Notice == "" {
			t.Errorf("%s does not say why", tc.key)
			continue
		}
		img, _ = a.Draw()
		changed := 0
		for y := 64; y < 530; y++ {
			for x := 264; x < 870; x++ {
				if i := img.PixOffset(x, y); img.Pix[i] != before[i] {
					changed++
				}
			}
		}
		if changed < 200 {
			t.Errorf("%s: the reason %q changes %d pixels of the centre", tc.key, s.view.Notice, changed)
		}
	}
}

// TestStationsAtAnySize: the sheet is drawn into any window, and a place pressed
// there is the place of the sheet that is seen under it.
func TestStationsAtAnySize(t *testing.T) {
	a, s := atInstrument(t, play.Act{Do: play.Go, What: "bonnet"})
	for _, size := range []image.Point{{640, 360}, {800, 450}, {500, 900}, {1920, 1080}, {1, 1}} {
		a.Resize(size.X, size.Y, false)
		img, _ := a.Draw()
		if img.Rect.Size() != size {
			t.Errorf("%v is drawn as %v", size, img.Rect.Size())
		}
		if size.X < 100 {
			continue
		}
		for i := range s.keys {
			k := &s.keys[i]
			px := a.sheet.Pixels(k.Rect)
			at := a.Sheet(float64(px.Min.X+px.Max.X)/2, float64(px.Min.Y+px.Max.Y)/2)
			if at.Sub(k.Rect.Centre()).Len() > 3*math.Max(1, 1280/float64(size.X)) || !px.In(img.Rect) {
				t.Errorf("%v: key %s lies at %v of %v, and is pressed at %v, not %v", size, k.id, px, img.Rect, at, k.Rect.Centre())
			}
		}
	}
}

// TestEnterDoesNotRepeatACheck: however a check was chosen and ended, another Enter
// makes it not again, spends no minute, and Tab goes on from it.
func TestEnterDoesNotRepeatACheck(t *testing.T) {
	tabTo := func(a *App, s *stations, id string) {
		t.Helper()
		for range 80 {
			if s.targets.Focus == id {
				return
			}
			keys(a, "Tab")
		}
		t.Fatalf("Tab never comes to %s", id)
	}
	for _, check := range []string{"pedal_travel", "warning_lamp"} {
		for _, how := range []string{"letter", "Tab", "mouse"} {
			for _, end := range []string{"Enter", "Delete"} {
				a, s := atInstrument(t, play.Act{Do: play.Go, What: "seat"})
				i := slices.IndexFunc(s.keys, func(k stationKey) bool { return k.id == "check."+check })
				if i < 0 {
					t.Fatalf("no key for %s", check)
				}
				switch k := s.keys[i]; how {
				case "letter":
					keys(a, k.Letter)
				case "Tab":
					tabTo(a, s, k.id)
					keys(a, "Enter")
				default:
					point(a, k.Rect.Centre(), false)
				}
				v := s.view.Instrument
				if v == nil {
					t.Fatalf("%s by %s: no instrument", check, how)
				}
				switch {
				case end == "Delete":
					keys(a, "Delete")
				case len(v.Words) > 0:
					tabTo(a, s, "word."+v.Words[0].Act.Text)
					keys(a, "Enter")
				default:
					typed(a, readMarks(t, a.words, v))
					keys(a, "Enter")
				}
				minutes, notes := s.view.Title.Minutes, len(s.view.Notebook)
				if s.view.Instrument != nil || notes != 1 {
					t.Fatalf("%s by %s ended by %s: not ended, %q", check, how, end, s.view.Notice)
				}
				keys(a, "Enter", "Enter")
				if s.view.Instrument != nil || s.view.Title.Minutes != minutes || len(s.view.Notebook) != notes {
					t.Errorf("%s by %s ended by %s: Enter made a check again", check, how, end)
				}
				a.Handle(widget.Event{Kind: widget.KeyDown, Key: "Tab"})
				a.Handle(widget.Event{Kind: widget.KeyDown, Key: "Tab", Shift: true})
				if s.targets.Focus != "check."+check {
					t.Errorf("%s by %s ended by %s: one on and one back Tab is at %q", check, how, end, s.targets.Focus)
				}
			}
		}
	}
}

// TestPictureOfWordsSaysWhere: what is said with a word is not pressed on its picture,
// and a press there says where the words stand.
func TestPictureOfWordsSaysWhere(t *testing.T) {
	for _, touch := range []bool{false, true} {
		a, s := atInstrument(t, play.Act{Do: play.Go, What: "seat"}, play.Act{Do: play.Check, What: "warning_lamp"})
		a.Pressables()
		point(a, wholeFrame.Centre(), touch)
		if s.view.Instrument == nil || s.view.Notice != a.words.Say("stations.words_below") {
			t.Errorf("touch %v: the picture says %q", touch, s.view.Notice)
		}
	}
}
