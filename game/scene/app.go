package scene

import (
	"image"

	"evenwear/assets"
	"evenwear/game/draw"
	"evenwear/game/widget"
)

// A Scene is one screen. Handle and Advance change it; Still and the cells only
// look, and may be called any number of times between two changes.
type Scene interface {
	Handle(e widget.Event)
	// Advance moves a scene on by ms milliseconds.
	Advance(ms int)
	// Still draws all that stays until StillStamp changes; it covers the sheet.
	Still(c *draw.Canvas)
	StillStamp() uint64
	// Cells are the places that move, always the same list. A cell is drawn
	// over a fresh copy of what Still left under it, clipped to its area.
	Cells() []Cell
}

// A Cell is a place of the sheet that is drawn again when its stamp changes.
type Cell struct {
	Area  draw.Rect
	Stamp func() uint64
	Draw  func(c *draw.Canvas)
}

// Options are what an [App] is built from.
type Options struct {
	Words *assets.Words
	Fonts *assets.Fonts
	Slate bool // start in the slate theme
	Calm  bool // reduced motion: parts jump to where they end
	Touch bool // keys are at least 44 units high
	Cover Cover
}

// An App holds the current scene and the sheet it is drawn on. When nothing has
// changed nothing is drawn. It is not for several goroutines at once.
type App struct {
	words *assets.Words
	fonts *assets.Fonts
	theme *draw.Theme
	Calm  bool
	Touch bool

	scene      Scene
	cover      *cover
	over       bool
	w, h       int
	still      *draw.Canvas // what stays, drawn once per state
	sheet      *draw.Canvas // still with the cells over it
	drawn      bool
	stillStamp uint64
	cellStamps []uint64
	dirty      []image.Rectangle
}

// NewApp returns an app that shows its cover, 1280×720 until it is resized.
func NewApp(o Options) *App {
	a := &App{words: o.Words, fonts: o.Fonts, theme: draw.Paper, Calm: o.Calm, Touch: o.Touch}
	if o.Slate {
		a.theme = draw.Slate
	}
	a.cover = newCover(a, o.Cover)
	a.scene = a.cover
	a.Resize(draw.SheetW, draw.SheetH, o.Touch)
	return a
}

// Say is the wording of an id.
func (a *App) Say(id string, args ...any) string { return a.words.Say(id, args...) }

// Words is the wording in use.
func (a *App) Words() *assets.Words { return a.words }

// Show makes s the current scene.
func (a *App) Show(s Scene) { a.scene, a.drawn = s, false }

// ShowCover goes back to the cover.
func (a *App) ShowCover() {
	a.cover.renew()
	a.Show(a.cover)
}

// Leave ends the program at the next frame.
func (a *App) Leave() { a.over = true }

// Over reports whether the learner has left.
func (a *App) Over() bool { return a.over }

// Sheet turns a pixel into a place of the sheet.
func (a *App) Sheet(x, y float64) draw.Pt { return a.sheet.ToSheet(x, y) }

// Theme is the theme in use.
func (a *App) Theme() *draw.Theme { return a.theme }

// SwapTheme goes from paper to slate or back.
func (a *App) SwapTheme() {
	if a.theme == draw.Paper {
		a.theme = draw.Slate
	} else {
		a.theme = draw.Paper
	}
	a.still, a.sheet = nil, nil
	a.Resize(a.w, a.h, a.Touch)
}

// Resize gives the app a picture of w×h pixels. touch asks for keys at least
// 44 units high.
func (a *App) Resize(w, h int, touch bool) {
	w, h = min(max(w, 1), 8192), min(max(h, 1), 8192)
	if a.still != nil && w == a.w && h == a.h && touch == a.Touch {
		return
	}
	a.w, a.h, a.Touch, a.drawn = w, h, touch, false
	a.still = draw.New(w, h, a.theme, a.fonts)
	a.sheet = draw.New(w, h, a.theme, a.fonts)
}

// Handle gives one event to the scene; F2 is the theme's key everywhere.
func (a *App) Handle(e widget.Event) {
	if e.Kind == widget.KeyDown && e.Key == themeKey {
		a.SwapTheme()
		return
	}
	a.scene.Handle(e)
}

const themeKey = "F2"

// Advance moves the scene on by ms milliseconds.
func (a *App) Advance(ms int) { a.scene.Advance(ms) }

// Draw brings the picture up to date and returns it with the rectangles that
// changed: none when nothing moved. Both stay the app's own until the next call.
func (a *App) Draw() (*image.RGBA, []image.Rectangle) {
	a.dirty = a.dirty[:0]
	cells := a.scene.Cells()
	stamp := a.scene.StillStamp()
	if !a.drawn || stamp != a.stillStamp {
		a.scene.Still(a.still)
		a.askForRoom()
		copy(a.sheet.Image().Pix, a.still.Image().Pix)
		a.cellStamps = a.cellStamps[:0]
		for i := range cells {
			a.cellStamps = append(a.cellStamps, cells[i].Stamp())
			a.cell(&cells[i])
		}
		a.drawn, a.stillStamp = true, stamp
		a.dirty = append(a.dirty, a.sheet.Image().Bounds())
		return a.sheet.Image(), a.dirty
	}
	for i := range cells {
		s := cells[i].Stamp()
		if s == a.cellStamps[i] {
			continue
		}
		a.cellStamps[i] = s
		r := a.sheet.Pixels(cells[i].Area).Intersect(a.sheet.Image().Bounds())
		copyRect(a.sheet.Image(), a.still.Image(), r)
		a.cell(&cells[i])
		a.dirty = append(a.dirty, r)
	}
	return a.sheet.Image(), a.dirty
}

func (a *App) cell(c *Cell) {
	a.sheet.ClipTo(c.Area)
	c.Draw(a.sheet)
	a.sheet.Unclip()
}

func copyRect(dst, src *image.RGBA, r image.Rectangle) {
	for y := r.Min.Y; y < r.Max.Y; y++ {
		i, n := dst.PixOffset(r.Min.X, y), 4*r.Dx()
		copy(dst.Pix[i:i+n], src.Pix[i:i+n])
	}
}
