package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// Ids of what can be pressed on the bench.
const (
	idSlider  = "slider"
	idShare   = "share"
	idList    = "list"
	idLessons = "lessons"
)

// A benchKey is a key with what it does and the cell that draws it.
type benchKey struct {
	widget.Key
	id   string
	cell int
	do   func()
}

// The cells that hold keys; also their panels in reading order.
const (
	barCell = iota
	drawerCell
	predictCell
	footCell
)

var (
	barArea        = draw.Rect{X: 415, Y: 19, W: 845, H: 30}
	predictKeyArea = draw.Rect{X: 946, Y: 588, W: 315, H: 43}
	footKeyArea    = draw.Rect{X: 625, Y: 643, W: 164, H: 54}
)

var pinStates = [...]string{"free", "dry", "stuck"}

// pinLetters are two rows of the keyboard, as the pins lie one over the other.
var pinLetters = [2][3]string{{"Q", "W", "E"}, {"Z", "X", "C"}}

// Where the keys of each pin begin, and where its name ends.
var pinKeysX = [2]float64{420, 703}

// keysNow lists every key as the bench stands and gives the targets afresh.
func (b *bench) keysNow() {
	b.keys = b.keys[:0]
	v := b.view
	add := func(cell int, id string, k widget.Key, do func()) {
		k.Focused = b.targets.Focus == id
		b.keys = append(b.keys, benchKey{k, id, cell, do})
	}
	for i, side := range [2]string{"upper", "lower"} {
		for j, state := range pinStates {
			k := widget.Key{Rect: draw.Rect{X: pinKeysX[i] + 78*float64(j), Y: 24, W: 75, H: 22},
				Label: b.word("bench_sheet.pin_" + state), Letter: pinLetters[i][j], Chosen: v.Now.Pins[i] == state}
			add(barCell, side+state, k, func() { b.do(play.Act{Do: play.Pin, What: side, Text: state}) })
		}
	}
	add(barCell, "setup", widget.Key{Rect: draw.Rect{X: 944, Y: 24, W: 96, H: 22}, Label: b.word("bench_sheet.set_up"), Letter: "S", Chosen: b.drawer}, b.swapDrawer)
	add(barCell, "parts", widget.Key{Rect: draw.Rect{X: 1045, Y: 24, W: 105, H: 22}, Label: b.word("bench_sheet.all_parts"), Letter: "L", Chosen: !b.bare}, func() { b.bare = !b.bare })
	add(barCell, "leave", widget.Key{Rect: draw.Rect{X: 1155, Y: 24, W: 97, H: 22}, Label: b.word("bench_sheet.leave"), Letter: "Esc"}, b.leave)
	if b.drawer {
		b.drawerKeys(add)
	} else {
		p := &v.Predict
		add(predictCell, "rub", widget.Key{Rect: draw.Rect{X: 956, Y: 594, W: 136, H: 32}, Label: b.word("bench_sheet.rub_out"), Letter: "Del", Off: p.Said < 0},
			func() { b.said = ""; b.do(play.Act{Do: play.Rub}) })
		add(predictCell, "again", widget.Key{Rect: draw.Rect{X: 1101, Y: 594, W: 151, H: 32}, Label: b.word("bench_sheet.press_again"), Letter: "Enter"}, b.pressAgain)
	}
	label := "bench_sheet.press"
	if v.Down {
		label = "bench_sheet.let_go"
	}
	add(footCell, "press", widget.Key{Rect: draw.Rect{X: 632, Y: 650, W: 150, H: 40}, Label: b.word(label), Letter: "Space"}, b.press)

	b.targets.Clear()
	for i := range b.keys {
		b.targets.Add(b.keys[i].Target(b.keys[i].id, b.keys[i].cell))
	}
	b.slider.Value, b.slider.Focused = v.Wanted, b.targets.Focus == idSlider
	b.targets.Add(b.slider.Target(idSlider, footCell))
	if b.drawer {
		b.targets.Add(widget.Target{ID: idList, Rect: b.list.Rect, Panel: drawerCell, Enabled: true})
	} else {
		b.targets.Add(widget.Target{ID: idShare, Rect: shareRect, Panel: predictCell, Enabled: v.Predict.Open, Through: true})
	}
	b.letterKeys()
}

// letterKeys takes the letter Enter off a key that Enter does not press.
func (b *bench) letterKeys() {
	for i := range b.keys {
		b.keys[i].Letter = b.targets.Letter(b.keys[i].id, b.keys[i].Letter)
	}
}

// shareRect is the field that takes the prediction: the scale with its figures.
var shareRect = draw.Rect{X: 957, Y: 482, W: 296, H: 69}

func (b *bench) drawKeys(cell int) func(c *draw.Canvas) {
	return func(c *draw.Canvas) {
		for i := range b.keys {
			if b.keys[i].cell == cell {
				b.keys[i].Key.Draw(c)
			}
		}
	}
}

func (b *bench) keyStamp(cell int) func() uint64 {
	return func() uint64 {
		s := newStamp
		for i := range b.keys {
			if k := &b.keys[i]; k.cell == cell {
				s = s.text(k.Label).text(k.Letter).flag(k.Chosen).flag(k.Focused).flag(k.Off)
			}
		}
		return uint64(s)
	}
}

const placeRoom = 228.0 // [unit] for the caliper's place and the cause

// barStill letters what stands between the keys.
func (b *bench) barStill(c *draw.Canvas) {
	th := c.Theme
	place := b.fill("bench_sheet.place", "wheel", b.word("bench_sheet.wheel_"+b.view.Wheel))
	y := 41.0
	if b.view.Cause != "" { // what is in stands on the sheet, the drawer open or not
		y = 33
		c.Text(draw.Pt{X: 146, Y: 46}, draw.SmallText, th.Ink, fit(c, b.lettering, b.view.Cause, draw.SmallText, placeRoom))
	}
	c.Text(draw.Pt{X: 146, Y: y}, draw.LabelText, th.Ink, fit(c, b.lettering, place, draw.LabelText, placeRoom))
	for i, id := range [2]string{"bench_sheet.upper_pin", "bench_sheet.lower_pin"} {
		for j, line := range b.lines(c, b.word(id), draw.SmallText, 40) {
			c.Text(draw.Pt{X: pinKeysX[i] - 6, Y: 33 + 13*float64(j)}, draw.SmallText.To(draw.Right), th.Ink, line)
		}
	}
}
