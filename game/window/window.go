package window

import (
	"errors"
	"fmt"
	"image"
	"image/png"
	"os"
	"time"

	"github.com/hajimehoshi/ebiten/v2"

	"evenwear/game/scene"
)

// Options say how a window is opened. The zero Options is what a learner uses.
type Options struct {
	Title string
	// Ready is called once, after the first picture was handed to the screen.
	Ready func()
	// Shot, when not empty, is a PNG file written after ShotFrame frames, upon
	// which the window closes.
	Shot      string
	ShotFrame int
}

// Run opens the window and returns when the learner leaves. Its error is
// [ErrNoDisplay] where no window can be opened, or says what failed.
func Run(app *scene.App, o Options) error {
	if err := checkDisplay(here, os.Getenv); err != nil {
		return err
	}
	ebiten.SetWindowTitle(o.Title)
	ebiten.SetWindowSize(1280, 720)
	ebiten.SetWindowResizingMode(ebiten.WindowResizingModeEnabled)
	ebiten.SetScreenClearedEveryFrame(false)
	ebiten.SetRunnableOnUnfocused(true)
	h := &host{app: app, opt: o}
	err := ebiten.RunGameWithOptions(h, &ebiten.RunGameOptions{X11ClassName: "evenwear", X11InstanceName: "evenwear"})
	switch {
	case h.err != nil:
		return h.err
	case err != nil:
		return fmt.Errorf("the window failed: %w", err)
	}
	return nil
}

// A host is the app as ebiten sees it.
type host struct {
	app     *scene.App
	opt     Options
	hands   hands
	clock   Clock
	last    time.Time
	w, h    int
	touch   bool
	whole   bool // the screen image is new: upload everything
	pending []image.Rectangle
	texture *ebiten.Image
	pix     []byte
	frames  int
	err     error
}

// Update gives hands and time to the app.
func (h *host) Update() error {
	if h.app.Over() || h.err != nil {
		return ebiten.Termination
	}
	h.hands.each(h.app)
	if h.hands.touched != h.touch && h.w > 0 {
		h.touch = h.hands.touched
		h.app.Resize(h.w, h.h, h.touch)
		h.whole = true
	}
	now := time.Now()
	if !h.last.IsZero() {
		if n := h.clock.Steps(now.Sub(h.last)); n > 0 {
			h.app.Advance(n)
		}
	}
	h.last = now
	return nil
}

// Draw uploads what has changed. The screen is not cleared, so a frame in which
// nothing moved costs nothing.
func (h *host) Draw(screen *ebiten.Image) {
	img, dirty := h.app.Draw()
	if h.texture != screen || h.whole {
		dirty = append(h.pending[:0], img.Rect)
		h.pending = dirty
		h.texture, h.whole = screen, false
	}
	for _, r := range dirty {
		h.upload(screen, img, r.Intersect(screen.Bounds()))
	}
	if h.frames++; h.frames == 1 && h.opt.Ready != nil {
		h.opt.Ready()
	}
	if h.opt.Shot != "" && h.frames == max(h.opt.ShotFrame, 1) {
		h.err = save(h.opt.Shot, screen)
		if h.err == nil {
			h.app.Leave()
		}
	}
}

// upload writes one rectangle of the picture to the screen.
func (h *host) upload(screen *ebiten.Image, img *image.RGBA, r image.Rectangle) {
	r = r.Intersect(img.Rect)
	if r.Empty() {
		return
	}
	if r == img.Rect && img.Stride == 4*r.Dx() && r == screen.Bounds() {
		screen.WritePixels(img.Pix)
		return
	}
	n := 4 * r.Dx()
	if need := n * r.Dy(); cap(h.pix) < need {
		h.pix = make([]byte, need)
	}
	pix := h.pix[:n*r.Dy()]
	for y := range r.Dy() {
		i := img.PixOffset(r.Min.X, r.Min.Y+y)
		copy(pix[y*n:(y+1)*n], img.Pix[i:i+n])
	}
	sub := screen.RecyclableSubImage(r)
	sub.WritePixels(pix)
	sub.Recycle()
}

// Layout makes one pixel of the picture one pixel of the screen.
func (h *host) Layout(w, ht int) (int, int) {
	s := ebiten.Monitor().DeviceScaleFactor()
	w, ht = max(int(float64(w)*s), 1), max(int(float64(ht)*s), 1)
	if w != h.w || ht != h.h {
		h.w, h.h, h.whole = w, ht, true
		h.app.Resize(w, ht, h.touch)
	}
	return w, ht
}

func save(name string, screen *ebiten.Image) error {
	b := screen.Bounds()
	img := image.NewRGBA(b)
	screen.ReadPixels(img.Pix)
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	return errors.Join(png.Encode(f, img), f.Close())
}
