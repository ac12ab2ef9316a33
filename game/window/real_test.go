package window

import (
	"bufio"
	"errors"
	"fmt"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"evenwear/assets"
	"evenwear/game/scene"
)

// childEnv asks the test's own program to be the window: it is built as the
// game is, and the window must have the main goroutine.
const childEnv = "EVENWEAR_TEST_WINDOW"

func TestMain(m *testing.M) {
	if os.Getenv(childEnv) == "" {
		os.Exit(m.Run())
	}
	if err := child(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func child() error {
	kind := os.Getenv(childEnv)
	if kind != "1" {
		return rateChild(kind)
	}
	app, err := testApp()
	if err != nil {
		return err
	}
	return Run(app, Options{Title: "Evenwear", Ready: func() { fmt.Println("up") }})
}

func testApp() (*scene.App, error) {
	words, err := assets.English()
	if err != nil {
		return nil, err
	}
	fonts, err := assets.LoadFonts()
	if err != nil {
		return nil, err
	}
	return scene.NewApp(scene.Options{Words: words, Fonts: fonts, Cover: scene.Cover{
		Bench: func(*scene.App) (scene.Scene, error) { return nil, errors.New("the bench was asked for") },
		Jobs: []scene.Offer{{Name: "a job", Open: func(*scene.App) (scene.Scene, error) {
			return nil, errors.New("the job was asked for, which cannot be had here, and this sentence is long enough to be seen")
		}}},
	}}), nil
}

// A screen is a virtual one of 1280×720 whose memory can be read.
type screen struct{ display, file string }

// newScreen starts Xvfb, or says why it cannot: skipped here, a failure where
// everything is meant to be installed.
func newScreen(t testing.TB) screen {
	t.Helper()
	for _, need := range []string{"Xvfb", "xdotool"} {
		if _, err := exec.LookPath(need); err != nil {
			if os.Getenv("CI") == "true" {
				t.Fatalf("%s is not installed", need)
			}
			t.Skipf("%s is not installed", need)
		}
	}
	dir := t.TempDir()
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	cmd := exec.Command("Xvfb", "-displayfd", "3", "-screen", "0", "1280x720x24", "-fbdir", dir, "-nolisten", "tcp")
	cmd.ExtraFiles = []*os.File{w}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	w.Close()
	t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	line, err := bufio.NewReader(r).ReadString('\n')
	if err != nil {
		t.Fatalf("Xvfb named no display: %v", err)
	}
	return screen{":" + strings.TrimSpace(line), filepath.Join(dir, "Xvfb_screen0")}
}

// shot reads the screen's memory, an X window dump: 25 or more 32-bit numbers,
// a table of colours, then rows of pixels.
func (s screen) shot(t testing.TB) *image.RGBA {
	t.Helper()
	b, err := os.ReadFile(s.file)
	if err != nil {
		t.Fatal(err)
	}
	word := func(i int) int { return int(b[4*i])<<24 | int(b[4*i+1])<<16 | int(b[4*i+2])<<8 | int(b[4*i+3]) }
	w, h, stride := word(4), word(5), word(12)
	at := word(0) + 12*word(19)
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			p := b[at+y*stride+4*x:]
			copy(img.Pix[img.PixOffset(x, y):], []byte{p[2], p[1], p[0], 255})
		}
	}
	return img
}

// hand does one thing with xdotool.
func (s screen) hand(t testing.TB, args ...string) {
	t.Helper()
	cmd := exec.Command("xdotool", args...)
	cmd.Env = append(os.Environ(), "DISPLAY="+s.display)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("xdotool %v: %v\n%s", args, err, out)
	}
}

// A program is the window running on a screen.
type program struct {
	cmd *exec.Cmd
	up  time.Duration // from start to the first picture handed over
}

func start(t testing.TB, s screen) *program {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), childEnv+"=1", "DISPLAY="+s.display)
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	from := time.Now()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { cmd.Process.Kill() })
	line := make(chan string, 1)
	go func() {
		l, _ := bufio.NewReader(out).ReadString('\n')
		line <- strings.TrimSpace(l)
	}()
	select {
	case l := <-line:
		if l != "up" {
			t.Fatalf("the window said %q, want up", l)
		}
	case <-time.After(30 * time.Second):
		t.Fatal("no window after 30 s")
	}
	return &program{cmd, time.Since(from)}
}

// until waits for a picture that satisfies ok.
func (s screen) until(t testing.TB, what string, ok func(*image.RGBA) bool) *image.RGBA {
	t.Helper()
	for deadline := time.Now().Add(15 * time.Second); ; time.Sleep(50 * time.Millisecond) {
		img := s.shot(t)
		if ok(img) {
			return img
		}
		if time.Now().After(deadline) {
			t.Fatalf("after 15 s: not %s", what)
		}
	}
}

func colours(img *image.RGBA) map[[3]uint8]int {
	n := map[[3]uint8]int{}
	for i := 0; i < len(img.Pix); i += 4 {
		n[[3]uint8(img.Pix[i:i+3])]++
	}
	return n
}

func changed(a, b *image.RGBA) int {
	n := 0
	for i := 0; i < len(a.Pix); i += 4 {
		if [3]uint8(a.Pix[i:i+3]) != [3]uint8(b.Pix[i:i+3]) {
			n++
		}
	}
	return n
}

// TestRealWindow opens the window on a virtual screen and works it with real
// key strokes and a real pointer.
func TestRealWindow(t *testing.T) {
	if testing.Short() {
		t.Skip("opens a window")
	}
	s := newScreen(t)
	p := start(t, s)
	t.Logf("window up after %v", p.up)
	paper, slate := [3]uint8{0xF5, 0xEF, 0xE0}, [3]uint8{0x1B, 0x22, 0x26}
	first := s.until(t, "the paper sheet", func(i *image.RGBA) bool { return colours(i)[paper] > 400000 })
	if n := len(colours(first)); n < 20 {
		t.Errorf("the first picture has %d colours: no lettering", n)
	}
	// No window manager runs here, so the keyboard is given to the window by hand.
	s.hand(t, "search", "--sync", "--name", "Evenwear", "windowfocus")
	s.hand(t, "mousemove", "700", "690", "key", "F2")
	dark := s.until(t, "slate after F2", func(i *image.RGBA) bool { return colours(i)[slate] > 400000 })
	s.hand(t, "mousemove", "200", "150", "click", "1")
	said := s.until(t, "answered to a click on the bench's key", func(i *image.RGBA) bool { return changed(i, dark) > 200 })
	if n := changed(said, dark); n > 100000 {
		t.Errorf("a click changed %d pixels, want a line of text and a ring", n)
	}
	// A quick click is down and up between two ticks; the list acts on the up.
	s.hand(t, "mousemove", "700", "150", "click", "1")
	s.until(t, "answered to a quick click on the list", func(i *image.RGBA) bool {
		return changed(i.SubImage(image.Rect(0, 600, 1280, 720)).(*image.RGBA), said.SubImage(image.Rect(0, 600, 1280, 720)).(*image.RGBA)) > 200
	})
	s.hand(t, "key", "Escape")
	done := make(chan error, 1)
	go func() { done <- p.cmd.Wait() }()
	select {
	case err := <-done:
		if err != nil {
			t.Errorf("Esc left with %v", err)
		}
	case <-time.After(10 * time.Second):
		t.Error("Esc did not end the program")
	}
}

// BenchmarkWindowUp is the time from the start of the program to its first
// picture, on a screen without a graphics card. Budget: 0.8 s.
func BenchmarkWindowUp(b *testing.B) {
	s := newScreen(b)
	total := time.Duration(0)
	n := 0
	for b.Loop() {
		p := start(b, s)
		total += p.up
		n++
		p.cmd.Process.Kill()
		p.cmd.Wait()
	}
	b.ReportMetric(total.Seconds()/float64(n), "s/up")
}
