package scene

import (
	"image"
	"testing"

	"evenwear/game/draw"
)

// TestEveryCauseIsExplained: wherever the arrows or a finger go in the open
// catalogue, what the cause there means is lettered whole, and at least four rows
// of causes, or all, stay in sight above it.
func TestEveryCauseIsExplained(t *testing.T) {
	for _, touch := range []bool{false, true} {
		a, j := demoCall(t, false, touch, true)
		s := j.sheet.(*call)
		keys(a, "P")
		pane := func() string {
			img, _ := a.Draw()
			y := s.causes.area.Y + s.causes.area.H + 8
			r := a.sheet.Pixels(draw.Rect{X: 226, Y: y, W: 560, H: s.places.area.Y - 22 - y})
			return string(pixels(img, r))
		}
		for i, g := range j.view.Call.Groups {
			s.targets.Focus, s.groups.sel = s.groups.id, i
			s.layout()
			keys(a, "Enter")
			if s.targets.Focus != s.causes.id {
				t.Fatalf("touch %v: %s opens no causes", touch, g.Name)
			}
			rows := (len(g.Causes) + s.causes.cols - 1) / s.causes.cols
			if a, b := s.causes.list.Visible(); b-a < min(4, rows) {
				t.Errorf("touch %v: %s shows %d rows of %d", touch, g.Name, b-a, rows)
			}
			seen := map[string]string{}
			for n, k := range g.Causes {
				if n > 0 {
					s.causes.sel = n - 1
					keys(a, "Right")
				}
				if s.explained() == nil || s.explained().ID != k.ID {
					t.Fatalf("touch %v: at %s the catalogue explains %+v", touch, k.Name, s.explained())
				}
				drawn := pane()
				if was, ok := seen[drawn]; ok {
					t.Errorf("touch %v: %s and %s are drawn alike", touch, k.Name, was)
				}
				seen[drawn] = k.Name
				if touch { // a tap picks it, and it stays explained while a place is chosen
					point(a, s.causes.cell(s.causes.sel).Centre(), true)
				} else {
					keys(a, "Enter")
				}
				if s.targets.Focus != s.places.id || s.explained() == nil || s.explained().ID != k.ID || pane() != drawn {
					t.Errorf("touch %v: with its places in focus %s is not explained as before", touch, k.Name)
				}
				s.targets.Focus = s.causes.id
				s.layout()
			}
		}
	}
}

// pixels are the bytes of a part of a picture.
func pixels(img *image.RGBA, r image.Rectangle) (list []byte) {
	for y := r.Min.Y; y < r.Max.Y; y++ {
		i := img.PixOffset(r.Min.X, y)
		list = append(list, img.Pix[i:i+4*r.Dx()]...)
	}
	return list
}
