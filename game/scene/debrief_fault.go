package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

// The true fault: a half section of the caliper as it was, the sound one dashed,
// and what differs in words and figures; the reservoir, or the vessel under the
// bonnet that is meant, where the level tells.

const (
	faultX0  = 29.0  // [unit]
	labelX0  = 420.0 // labels right of the section
	faultFig = 562.0 // top of what stands under the section
)

var labelArea = draw.Rect{X: labelX0, Y: 326, W: nextLeft - labelX0 - 5, H: 304}

func (s *debrief) drawFault(c *draw.Canvas) {
	f, th := s.fault(), c.Theme
	id := "debrief_sheet.fault"
	if f.Kind == "sound" {
		id = "debrief_sheet.sound"
	}
	c.Text(draw.Pt{X: faultX0, Y: 337}, draw.HeadingText, th.Ink, s.word(id))
	s.layLabels(c, f)
	if f.Kind == "fluid" {
		id = "debrief_sheet.reservoir"
		if about := f.Vessel + f.Organ; about != "" {
			id = "debrief_sheet." + about
		}
		s.line(c, 354, id, "", "")
		if f.Organ != "" {
			s.drawOrgan(c, f)
		} else {
			s.drawReservoir(c, draw.Rect{X: 120, Y: 384, W: 150, H: 190}, f)
		}
		s.labels.draw(c, s.targets.Focus == s.labels.id)
		return
	}
	b := s.sectionOf(f)
	half := s.halfOf(b, f)
	s.line(c, 354, half.caption, "place", f.Place)
	id = "debrief_sheet.pressed"
	switch {
	case f.Kind == "sound":
		id = "debrief_sheet.pressed_sound"
	case f.Released:
		id = "debrief_sheet.released"
	}
	text := s.words.Say(id, "pressure", s.num(play.DebriefPressure/1e6, 2), "axial", s.num(b.axial, 0))
	c.Text(draw.Pt{X: faultX0, Y: 370}, draw.SmallText, th.Ink, fit(c, s.lettering, text, draw.SmallText, labelX0-faultX0-8))
	half.draw(c, b, f)
	s.leaders(c, b, f, half)
	s.labels.draw(c, s.targets.Focus == s.labels.id)
	s.drawForces(c, f)
	if d := f.Level[1] - f.Level[0]; d > 0.03 || d < -0.03 {
		s.drawReservoir(c, draw.Rect{X: 372, Y: faultFig + 8, W: 34, H: 54}, f)
	}
}

func (s *debrief) line(c *draw.Canvas, y float64, id, name, value string) {
	c.Text(draw.Pt{X: faultX0, Y: y}, draw.SmallText, c.Theme.Ink, fit(c, s.lettering, s.fill(id, name, value), draw.SmallText, labelX0-faultX0-8))
}

// layLabels puts what differs into lines beside the section.
func (s *debrief) layLabels(c *draw.Canvas, f *play.FaultView) {
	s.labels.items = s.labels.items[:0]
	add := func(text string) {
		lines := s.lines(c, text, draw.SmallText, labelArea.W-rollRail)
		for i, l := range lines {
			h := 15.0
			if i == len(lines)-1 {
				h += 8
			}
			s.labels.add(h, func(c *draw.Canvas, r draw.Rect) {
				c.Text(draw.Pt{X: r.X, Y: r.Y + 12}, draw.SmallText, c.Theme.Ink, fit(c, s.lettering, l, draw.SmallText, r.W+2))
			})
		}
	}
	add(s.labelHead(f))
	for i := range f.Labels {
		add(f.Labels[i].Text)
	}
}

// drawForces draws what each pad presses with beside the sound car's, to one
// scale: filled as it was, hollow if sound.
func (s *debrief) drawForces(c *draw.Canvas, f *play.FaultView) {
	th := c.Theme
	most := 0.0
	pad := func(v *play.CaliperView, i int) float64 { return v.Half[i][0] + v.Half[i][1] }
	for i := range 2 {
		most = max(most, pad(&f.Faulty, i), pad(&f.Healthy, i))
	}
	forces := "debrief_sheet.forces"
	if f.Kind == "sound" {
		forces = "debrief_sheet.forces_sound"
	}
	scale := 2.0
	for _, k := range [...]float64{200, 100, 50, 22, 10, 5} {
		if most*k <= 130 {
			scale = k
			break
		}
	}
	c.Text(draw.Pt{X: faultX0, Y: faultFig + 12}, draw.SmallText, th.Ink, s.fill(forces, "scale", s.num(scale, 0)))
	for i, id := range [2]string{"debrief_sheet.inner", "debrief_sheet.outer"} {
		y := faultFig + 32 + 22*float64(i)
		c.Text(draw.Pt{X: faultX0, Y: y + 5}, draw.SmallText, th.Ink, s.word(id))
		x := faultX0 + 42
		was, sound := pad(&f.Faulty, i), pad(&f.Healthy, i)
		arrow := func(kN float64, filled bool) {
			c.BlockArrow(draw.Pt{X: x, Y: y}, draw.Pt{X: 1}, kN*scale, th.Ink, filled)
		}
		if f.Kind != "sound" {
			arrow(sound, false)
		}
		arrow(was, true)
		x += max(was, sound)*scale + 10
		id := "debrief_sheet.kn_beside"
		if f.Kind == "sound" {
			id = "debrief_sheet.kn"
		}
		c.Text(draw.Pt{X: x, Y: y + 5}, draw.SmallText, th.Ink, s.words.Say(id, "now", s.num(was, 2), "sound", s.num(sound, 2)))
	}
}

// drawReservoir draws a vessel with its marks, the level as it was in fluid and
// the sound car's dashed.
func (s *debrief) drawReservoir(c *draw.Canvas, r draw.Rect, f *play.FaultView) {
	th := c.Theme
	// MIN and MAX a quarter of the height from foot and top; a washer bottle has
	// no MIN: it is empty at its foot.
	foot, marks := 0.75, [2]string{"debrief_sheet.min", "debrief_sheet.max"}
	if f.Vessel == "washer" {
		foot, marks = 1, [2]string{"debrief_sheet.empty", "debrief_sheet.full"}
	}
	at := func(level float64) float64 {
		y := r.Y + r.H*(foot-(foot-0.25)*level)
		return min(max(y, r.Y), r.Y+r.H)
	}
	y := at(f.Level[1])
	fluid := []draw.Pt{{X: r.X, Y: y}, {X: r.X + r.W, Y: y}, {X: r.X + r.W, Y: r.Y + r.H}, {X: r.X, Y: r.Y + r.H}}
	c.Level(fluid, 0, fluid[0])
	c.Line(fluid[0], fluid[1], draw.Visible)
	c.Polyline([]draw.Pt{{X: r.X, Y: r.Y}, {X: r.X, Y: r.Y + r.H}, {X: r.X + r.W, Y: r.Y + r.H}, {X: r.X + r.W, Y: r.Y}}, draw.Visible)
	for i, id := range marks {
		m := at(float64(i))
		c.Line(draw.Pt{X: r.X - 6, Y: m}, draw.Pt{X: r.X + 8, Y: m}, draw.Thin.Wide(1.6))
		c.Text(draw.Pt{X: r.X - 9, Y: m + 5}, draw.SmallText.To(draw.Right), th.Ink, s.word(id))
	}
	h := at(f.Level[0])
	c.Line(draw.Pt{X: r.X - 4, Y: h}, draw.Pt{X: r.X + r.W + 8, Y: h}, draw.Hidden.Wide(1.4))
}
