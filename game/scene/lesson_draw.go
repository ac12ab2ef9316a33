package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
)

func (l *lesson) lessonStamp() uint64 {
	s := newStamp.add(uint64(l.cached)).text(l.typed.Text).num(l.scale.Value, l.scale.Step/2).flag(l.held).text(l.notice())
	for i := range l.keys {
		if k := &l.keys[i]; k.cell == predictCell {
			s = s.text(k.Label).text(k.Letter).flag(k.Chosen).flag(k.Focused).flag(k.Off)
		}
	}
	return uint64(s.flag(l.scale.Focused))
}

// lessonMoving letters the step: what is set and what is asked, or what came.
func (l *lesson) lessonMoving(c *draw.Canvas) {
	th, x := c.Theme, l.x()
	st := draw.SentenceText.At(15)
	c.Text(draw.Pt{X: 957, Y: 77}, draw.HeadingText, th.Ink, l.words.Say("lesson.step_heading", "step", x.Step, "steps", x.Steps))
	c.Text(draw.Pt{X: 957, Y: 98}, draw.LabelText, th.Ink, c.Fit(draw.LabelText, x.Title, 292))
	y := 124.0
	for _, line := range l.paragraph(c) {
		c.Text(draw.Pt{X: 957, Y: y}, st, th.Ink, line)
		y += 18
	}
	c.Line(draw.Pt{X: 957, Y: y - 6}, draw.Pt{X: 1249, Y: y - 6}, draw.Thin)
	y += 16
	for _, line := range l.question(c) {
		c.Text(draw.Pt{X: 957, Y: y}, st, th.Ink, line)
		y += 18
	}
	switch {
	case x.Kind == "choice":
	case x.CanAnswer:
		l.scale.Draw(c)
		c.Text(draw.Pt{X: 968, Y: l.scale.Rect.Y + 22}, draw.SmallText, th.Ink, l.num(l.scale.Lo, 0))
		c.Text(draw.Pt{X: 1238, Y: l.scale.Rect.Y + 22}, draw.SmallText.To(draw.Right), th.Ink, l.words.Say("lesson.end", "n", l.num(l.scale.Hi, 0), "unit", x.Unit))
	}
	for i := range l.keys {
		if l.keys[i].cell == predictCell && (x.CanAnswer || l.keys[i].id != idWrite) {
			l.keys[i].Key.Draw(c)
		}
	}
	if x.Undriven {
		l.block(c, draw.Pt{X: 957, Y: undrivenTop + 18}, draw.SmallText, l.word("lesson.undriven"), 292, 2)
	}
	under := l.refusal(c, x)
	if x.End != "" {
		rule(c, 957, under+2, 1249, under+2)
		l.block(c, draw.Pt{X: 957, Y: under + 20}, endStyle, x.End, 292, endLines(under))
	}
	if x.Kind == "curve" {
		l.curve(c, x, under)
		return
	}
	l.saidAndComputed(c, x, under)
	if x.Kind == "choice" && x.Right > 0 { // the right answer, ticked in ink
		k := l.asked() + 4 + 50*float64(x.Right-1)
		c.Polyline([]draw.Pt{{X: 1237, Y: k + 22}, {X: 1240, Y: k + 28}, {X: 1247, Y: k + 12}}, draw.Visible)
	}
}

// endStyle letters the end of a lesson, lessonFoot is the lowest baseline there is.
var endStyle = draw.SentenceText.At(14)

const lessonFoot = 626.0

// endLines is how many lines of it have room under y.
func endLines(y float64) int {
	return 1 + int((lessonFoot-y-20)/endStyle.LineHeight())
}

// undrivenTop is over the line that says how the car is drawn, at the panel's foot.
const undrivenTop = 592.0

// refusal says under the answer why it was not taken, and returns where there is
// room below.
func (l *lesson) refusal(c *draw.Canvas, x *play.LessonView) float64 {
	y := l.asked()
	switch {
	case x.Kind == "choice":
		y += 8 + 50*float64(len(x.Choices))
	case x.CanAnswer:
		y += 130 // scale and key
	case x.Kind == "curve":
		y += 166
	default:
		y += 68
	}
	s := l.notice()
	if s == "" {
		return y
	}
	st := draw.SentenceText.At(14)
	return l.block(c, draw.Pt{X: 957, Y: y + 6}, st, s, 292, 3) + 4
}

// saidAndComputed stands where the scale was, once a number has been written down.
func (l *lesson) saidAndComputed(c *draw.Canvas, x *play.LessonView, under float64) {
	if x.Kind != "number" || len(x.Lettered) == 0 {
		return
	}
	th, y := c.Theme, under+12
	if !x.CanAnswer {
		y = l.asked() + 30
	}
	c.Text(draw.Pt{X: 957, Y: y}, draw.HandText, th.Graphite, l.words.Say("lesson.you_said", "figure", x.Lettered[0], "unit", x.Unit))
	if len(x.Computed) > 0 {
		c.Text(draw.Pt{X: 957, Y: y + 26}, draw.ValueText.At(16), th.Ink, l.words.Say("lesson.it_is", "figure", l.num(x.Computed[0], l.decimals(x.Computed[0])), "unit", x.Unit))
	}
}

func (l *lesson) decimals(v float64) int {
	if v < 20 && v > -20 {
		return 2
	}
	return 0
}

// curve plots what was said, in pencil, and what came, against the foot's force.
func (l *lesson) curve(c *draw.Canvas, x *play.LessonView, top float64) {
	th := c.Theme
	if !x.CanAnswer {
		top = l.asked() + 10
	}
	foot := min(top+130, 612)
	most, far := 0.0, x.At[len(x.At)-1]
	for _, v := range append(append([]float64{}, x.Said...), x.Computed...) {
		most = max(most, v)
	}
	most = nice(most, 1)
	at := func(n, v float64) draw.Pt {
		return draw.Pt{X: 996 + 236*n/far, Y: foot - (foot-top-12)*v/most}
	}
	c.Polyline([]draw.Pt{{X: 996, Y: top}, {X: 996, Y: foot}, {X: 1240, Y: foot}}, draw.Thin.Wide(1.6))
	c.Text(draw.Pt{X: 991, Y: top + 12}, draw.SmallText.To(draw.Right), th.Ink, l.num(most, 0))
	c.Text(draw.Pt{X: 991, Y: foot}, draw.SmallText.To(draw.Right), th.Ink, x.Unit)
	var said, got []draw.Pt
	for i, n := range x.At {
		p := at(n, 0)
		c.Line(p, draw.Pt{X: p.X, Y: p.Y + 4}, draw.Thin)
		c.Text(draw.Pt{X: p.X, Y: foot + 17}, draw.SmallText.To(draw.Middle), th.Ink, l.num(n, 0))
		if i < len(x.Said) {
			said = append(said, at(n, x.Said[i]))
		}
		if i < len(x.Computed) {
			got = append(got, at(n, x.Computed[i]))
		}
	}
	if len(said) > 1 {
		c.Pencil(said)
	}
	for _, p := range said {
		c.Pencil([]draw.Pt{{X: p.X - 4, Y: p.Y - 4}, {X: p.X + 4, Y: p.Y + 4}})
	}
	if len(got) > 1 {
		c.Polyline(got, draw.Visible)
	}
	for _, p := range got {
		c.Circle(p, 4, &th.Paper, draw.Thin.Wide(1.6))
	}
}

func (l *lesson) wayStamp() uint64 {
	s := newStamp.num(l.axial, 1).add(uint64(l.kN)).add(uint64(l.cached))
	for i := range l.keys {
		if k := &l.keys[i]; k.cell == footCell {
			s = s.flag(k.Focused).flag(k.Off)
		}
	}
	return uint64(s)
}

// wayMoving draws the way through the lesson, and the scales of the drawing.
func (l *lesson) wayMoving(c *draw.Canvas) {
	th := c.Theme
	c.Text(draw.Pt{X: 28, Y: 664}, draw.SmallText, th.Ink, l.fill("bench_sheet.scale_arrows", "n", l.num(l.scaleKN(), 0)))
	c.Text(draw.Pt{X: 28, Y: 681}, draw.SmallText, th.Ink, l.fill("bench_sheet.scale_axial", "n", l.num(l.axial, 0)))
	for i := range l.keys {
		if l.keys[i].cell == footCell {
			l.keys[i].Key.Draw(c)
		}
	}
}

func (l *lesson) lessonTitle(c *draw.Canvas) {
	v := l.view
	l.beside[0] = Fact{Caption: l.word("bench_sheet.fact_sheet"), Value: v.Title.Sheet, Width: 94}
	l.beside[1] = Fact{Caption: l.word("bench_sheet.fact_car"), Value: v.Title.Car, Width: 146}
	l.beside[2] = Fact{Caption: l.word("lesson.fact_step"), Value: l.words.Say("stations.of", "n", l.num(float64(l.x().Step), 0), "all", l.num(float64(l.x().Steps), 0))}
	under := []Fact{{Caption: l.word("bench_sheet.fact_pressure"), Value: l.fill("bench_sheet.mpa", "n", l.num(v.Now.Pressure, 2)), Width: 90},
		{Caption: l.word("bench_sheet.fact_scale"), Value: l.fill("bench_sheet.fact_movement", "n", l.num(l.axial, 0)), Width: 178},
		{Caption: l.word("lesson.fact_lesson"), Value: l.x().Title}}
	drawTitle(c, l.lettering, l.beside[:], under)
}
