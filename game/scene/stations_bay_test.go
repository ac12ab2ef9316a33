package scene

import (
	"strings"
	"testing"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
	"evenwear/physics/inspect"
)

// tagsOf are the tags of the bay by their check.
func tagsOf(s *stations) map[string]*stationKey {
	s.fresh()
	tags := map[string]*stationKey{}
	for i := range s.keys {
		if k := &s.keys[i]; k.hand {
			tags[strings.TrimPrefix(k.id, "bay.")] = k
		}
	}
	return tags
}

// TestEveryVesselHasItsTag: each check under the bonnet is made by its tag, with a
// mouse and with a finger, and carries there the letter it has below; tags keep
// off each other, off the text and inside the picture, and Tab passes them by.
func TestEveryVesselHasItsTag(t *testing.T) {
	for _, touch := range []bool{false, true} {
		for _, inst := range inspect.Instances() {
			c, _ := inspect.Find(inst.Check)
			if c.Station != inspect.Bonnet {
				continue
			}
			a, s := atInstrument(t, play.Act{Do: play.Go, What: "bonnet"})
			a.Resize(1280, 720, touch)
			s.layout()
			k := tagsOf(s)[inst.String()]
			if k == nil {
				t.Errorf("%s has no tag", inst)
				continue
			}
			for i := range s.keys {
				if o := &s.keys[i]; o.id == "check."+inst.String() && o.Letter != k.Label {
					t.Errorf("%s has the letter %s below and %s on its tag", inst, o.Letter, k.Label)
				}
			}
			a.Handle(widget.Event{Kind: widget.PointerDown, At: k.Rect.Centre(), Touch: touch})
			if v := s.view.Instrument; v == nil || v.Check != inst.String() {
				t.Errorf("the tag of %s (touch %v) shows %+v", inst, touch, v)
			}
		}
		a, s := atInstrument(t, play.Act{Do: play.Go, What: "bonnet"})
		a.Resize(1280, 720, touch)
		s.layout()
		tags := tagsOf(s)
		room := draw.Rect{X: centreArea.X, Y: s.bayTop(), W: centreArea.W, H: s.newsTop(3) - s.bayTop()}
		for id, k := range tags {
			if k.Rect.W < widget.TouchTarget || k.Rect.H < widget.TouchTarget || !inside(k.Rect, room) {
				t.Errorf("the tag of %s stands at %v, in a room of %v", id, k.Rect, room)
			}
			for other, o := range tags {
				if id < other && k.Rect.Overlaps(o.Rect) {
					t.Errorf("the tags of %s and %s meet", id, other)
				}
			}
		}
		for range 60 {
			if a.Handle(key("Tab")); strings.HasPrefix(s.targets.Focus, "bay.") {
				t.Fatalf("Tab stops at %s, which stands below as well", s.targets.Focus)
			}
		}
	}
}

func inside(r, in draw.Rect) bool {
	return r.X >= in.X && r.Y >= in.Y && r.X+r.W <= in.X+in.W && r.Y+r.H <= in.Y+in.H
}

// TestTagSaysWhyNot: a tag that cannot be pressed answers, and away from the
// bonnet, at an instrument or in the help there are none.
func TestTagSaysWhyNot(t *testing.T) {
	a, s := atInstrument(t, play.Act{Do: play.Go, What: "bonnet"}, play.Act{Do: play.Check, What: "fluid_water"}, play.Act{Do: play.Write, Text: "1"})
	k := tagsOf(s)["cap_vent"]
	if !k.Off {
		t.Fatal("the air under a cap that was open can be heard")
	}
	point(a, k.Rect.Centre(), false)
	if s.view.Instrument != nil || !strings.Contains(s.view.Notice, "has been open") {
		t.Errorf("the tag says %q", s.view.Notice)
	}
	a.Handle(key("F1"))
	if n := len(tagsOf(s)); n > 0 {
		t.Errorf("%d tags in the help", n)
	}
	for _, acts := range [][]play.Act{{{Do: play.Go, What: "seat"}}, atReservoir} {
		if _, s := atInstrument(t, acts...); len(tagsOf(s)) > 0 {
			t.Errorf("after %+v there are tags", acts)
		}
	}
}
