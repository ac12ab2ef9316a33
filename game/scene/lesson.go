package scene

import (
	"slices"
	"strconv"
	"strings"

	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// NewLesson is a lesson as a scene: the bench's drawing, with the lesson in the
// place of its plots and its slider.
func NewLesson(a *App, src BenchSource) Scene { return newLesson(a, src) }

// lesson is the bench led by the hand.
type lesson struct {
	*bench
	cells  []Cell
	scale  widget.Slider // of the figure that is asked for
	typed  widget.NumberField
	held   bool // a figure has been set since the last was written down
	cached stamp
}

const (
	idScale = "scale"
	idWrite = "write"
	idRun   = "run"
	idNext  = "next"
	idPrior = "before"
)

var (
	lessonArea   = draw.Rect{X: 946, Y: 52, W: 315, H: 580}
	lessonWayBar = draw.Rect{X: 20, Y: 636, W: 768, H: 65}
)

func newLesson(a *App, src BenchSource) *lesson {
	l := &lesson{bench: newBench(a, src)}
	l.cells = []Cell{
		{axialArea, l.axialStamp, func(c *draw.Canvas) { l.axialMoving(c, &l.level, &l.view.Now) }},
		{pinsArea, l.pinsStamp, l.drawPins},
		{pedalArea, func() uint64 { return uint64(stamp(l.pedalStamp()).add(uint64(l.cached))) }, l.pedalMoving},
		{tableArea, l.tableStamp, l.tableMoving},
		{sumArea, l.tableStamp, l.sumMoving},
		{lessonArea, l.lessonStamp, l.lessonMoving},
		{barArea, l.keyStamp(barCell), l.drawKeys(barCell)},
		{lessonWayBar, l.wayStamp, l.wayMoving},
		{titleArea, func() uint64 { return uint64(stamp(l.titleStamp()).add(uint64(l.cached))) }, l.lessonTitle},
	}
	l.look()
	return l
}

func (l *lesson) x() *play.LessonView { return l.view.Lesson }

// look takes the whole view as it is now.
func (l *lesson) look() {
	l.view = l.src.View()
	l.stand()
	l.cached = l.cached.add(1)
	l.layout()
}

// Cells are the places of the lesson that move.
func (l *lesson) Cells() []Cell { return l.cells }

// Still draws the lesson without what moves.
func (l *lesson) Still(c *draw.Canvas) {
	th := c.Theme
	c.Sheet()
	for _, p := range [][4]float64{{18, 50, 1262, 50}, {258, 50, 258, 634}, {944, 50, 944, 634}, {258, 293, 944, 293}, {18, 634, 1262, 634}} {
		c.Line(draw.Pt{X: p[0], Y: p[1]}, draw.Pt{X: p[2], Y: p[3]}, draw.Thin)
	}
	c.Text(draw.Pt{X: 29, Y: 42}, draw.SheetText, th.Ink, l.word("sheet.lesson"))
	place := l.fill("bench_sheet.place", "wheel", l.word("bench_sheet.wheel_"+l.view.Wheel))
	c.Text(draw.Pt{X: 180, Y: 41}, draw.LabelText, th.Ink, place)
	l.pedalStill(c)
	l.axialStill(c)
	l.pinsStill(c)
}

// layout lists every key as the lesson stands and gives the targets afresh.
func (l *lesson) layout() {
	x := l.x()
	l.keys = l.keys[:0]
	add := func(cell int, id string, k widget.Key, do func()) {
		k.Focused = l.targets.Focus == id
		l.keys = append(l.keys, benchKey{k, id, cell, do})
	}
	add(barCell, "parts", widget.Key{Rect: draw.Rect{X: 1045, Y: 24, W: 105, H: 22}, Label: l.word("bench_sheet.all_parts"), Letter: "L", Chosen: !l.bare},
		func() { l.bare = !l.bare })
	add(barCell, "leave", widget.Key{Rect: draw.Rect{X: 1155, Y: 24, W: 97, H: 22}, Label: l.word("bench_sheet.leave"), Letter: "Esc"}, l.leave)
	l.answers(add)
	way := func(id, word, letter string, at, w float64, off bool, do play.Verb) {
		add(footCell, id, widget.Key{Rect: draw.Rect{X: at, Y: 646, W: w, H: 46}, Label: l.word(word), Letter: letter, Off: off, Strong: id == idRun}, func() { l.act(play.Act{Do: do}) })
	}
	way(idPrior, "lesson.before", "B", 192, 168, !x.CanBefore, play.Before)
	way(idRun, "lesson.run", "P", 372, 232, !x.CanRun, play.Run)
	way(idNext, "lesson.next", "N", 616, 166, !x.CanNext, play.Next)
	l.targets.Clear()
	for i := range l.keys {
		l.targets.Add(l.keys[i].Target(l.keys[i].id, l.keys[i].cell))
	}
	if x.Kind != "choice" {
		l.scale.Focused = l.targets.Focus == idScale
		l.targets.Add(widget.Target{ID: idScale, Rect: l.scaleRect(), Panel: predictCell, Enabled: x.CanAnswer, Through: true})
	}
	l.letterKeys()
}

// choiceWide leaves room for the tick of the right answer beside its key.
const choiceWide = 274.0

// answers are the keys of a choice, or the scale and the key that writes down.
func (l *lesson) answers(add func(int, string, widget.Key, func())) {
	x := l.x()
	if x.Kind == "choice" {
		for i, text := range x.Choices {
			k := widget.Key{Rect: draw.Rect{X: 957, Y: l.asked() + 4 + 50*float64(i), W: choiceWide, H: 44}, Label: text, Letter: strconv.Itoa(i + 1), Left: true, Size: 14,
				Chosen: len(x.Said) > 0 && int(x.Said[0]) == i+1, Off: !x.CanAnswer && !(len(x.Said) > 0 && int(x.Said[0]) == i+1)}
			add(predictCell, "choice"+k.Letter, k, func() { l.act(play.Act{Do: play.Answer, N: float64(i + 1)}) })
		}
		return
	}
	l.scale.Rect = draw.Rect{X: 968, Y: l.asked() + 44, W: 270, H: 8}
	l.scale.Lo, l.scale.Hi = x.Lo, l.most()
	l.scale.Step = (l.scale.Hi - l.scale.Lo) / 150
	l.scale.Big = 10 * l.scale.Step
	add(predictCell, idWrite, widget.Key{Rect: draw.Rect{X: 957, Y: l.asked() + 72, W: 292, H: 44}, Label: l.writes(), Letter: "Enter", Off: !x.CanAnswer || !l.held}, l.write)
}

// most is the greatest figure of the scale: a guess that is far off has room, a
// typed figure may lie beyond.
func (l *lesson) most() float64 {
	for _, s := range [...]struct {
		unit string
		most float64
	}{{"%", 150}, {"kN", 30}, {"MPa", 15}, {"mm", 120}, {"N", 300}} {
		if s.unit == l.x().Unit {
			return min(s.most, l.x().Hi)
		}
	}
	return l.x().Hi
}

// asked is where the question ends and its answers begin.
func (l *lesson) asked() float64 {
	c := l.app.sheet
	y := 128 + 18*float64(len(l.paragraph(c)))
	return y + 30 + 18*float64(len(l.question(c)))
}

// question is what is asked; of a curve, with the point that is to be said now.
func (l *lesson) question(c *draw.Canvas) []string {
	x, st := l.x(), draw.SentenceText.At(15)
	lines := l.lines(c, x.Question, st, 292)
	if x.Kind != "curve" || !x.CanAnswer {
		return lines
	}
	n := len(x.Said) % len(x.At)
	which := l.words.Say("lesson.which", "n", n+1, "all", len(x.At), "foot", l.num(x.At[n], 0))
	if len(x.Said) == len(x.At) {
		which = l.words.Say("lesson.all_said", "all", len(x.At), "foot", l.num(x.At[n], 0))
	}
	return append(slices.Clone(lines), l.lines(c, which, st, 292)...)
}

// paragraph is what is told: beforehand what is set, afterwards what came.
func (l *lesson) paragraph(c *draw.Canvas) []string {
	x := l.x()
	if x.Look == "" {
		return l.lines(c, x.Tell, draw.SentenceText.At(15), 292)
	}
	return append(append([]string{}, l.lines(c, x.Comment, draw.SentenceText.At(15), 292)...), l.lines(c, x.Look, draw.SentenceText.At(15), 292)...)
}

// figure is the figure that is set, as it would be written down.
func (l *lesson) figure() string {
	if l.typed.Text != "" {
		return l.typed.Text
	}
	d := 0
	if l.scale.Hi-l.scale.Lo < 60 {
		d = 1
	}
	return strings.TrimSpace(l.num(l.scale.Value, d))
}

// writes letters the key that writes down.
func (l *lesson) writes() string {
	x := l.x()
	if !l.held {
		return l.word("lesson.set_first")
	}
	if x.Kind == "curve" && len(x.Said) < len(x.At) {
		return l.words.Say("lesson.write_point", "figure", l.figure(), "unit", x.Unit, "foot", l.num(x.At[len(x.Said)], 0))
	}
	return l.words.Say("lesson.write", "figure", l.figure(), "unit", x.Unit)
}

func (l *lesson) scaleRect() draw.Rect {
	r := l.scale.Rect
	return draw.Rect{X: r.X - 8, Y: r.Y - 20, W: r.W + 16, H: 40}
}

func (l *lesson) act(a play.Act) {
	l.refused = ""
	if err := l.src.Do(a); err != nil {
		l.refused = err.Error()
	}
	if a.Do == play.Run && l.refused == "" {
		l.newPress()
	}
	if a.Do == play.Next || a.Do == play.Before {
		l.scale.Value, l.typed.Text, l.held = 0, "", false
	}
	l.look()
}

func (l *lesson) write() {
	n, err := play.Figure(l.words, l.figure())
	if err != nil {
		l.refused = err.Error()
		return
	}
	if l.act(play.Act{Do: play.Answer, N: n}); l.refused == "" {
		l.typed.Text, l.held = "", false
	}
}
