package window

import (
	"bufio"
	"errors"
	"fmt"
	"image"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"evenwear/assets"
	"evenwear/game/scene"
	"evenwear/game/window/windowtest"
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

// A program is the window running on a screen.
type program struct {
	cmd *exec.Cmd
	up  time.Duration // from start to the first picture handed over
}

func start(t testing.TB, s windowtest.Screen) *program {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self)
	cmd.Env = append(os.Environ(), childEnv+"=1", "DISPLAY="+s.Display)
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

// TestRealWindow opens the window on a virtual screen and works it with real
// key strokes and a real pointer.
func TestRealWindow(t *testing.T) {
	if testing.Short() {
		t.Skip("opens a window")
	}
	s := windowtest.New(t)
	p := start(t, s)
	t.Logf("window up after %v", p.up)
	paper, slate := [3]uint8{0xF5, 0xEF, 0xE0}, [3]uint8{0x1B, 0x22, 0x26}
	first := s.Until(t, "the paper sheet", func(i *image.RGBA) bool { return windowtest.Colours(i)[paper] > 400000 })
	if n := len(windowtest.Colours(first)); n < 20 {
		t.Errorf("the first picture has %d colours: no lettering", n)
	}
	// No window manager runs here, so the keyboard is given to the window by hand.
	s.Hand(t, "search", "--sync", "--name", "Evenwear", "windowfocus")
	s.Hand(t, "mousemove", "700", "690", "key", "F2")
	dark := s.Until(t, "slate after F2", func(i *image.RGBA) bool { return windowtest.Colours(i)[slate] > 400000 })
	s.Hand(t, "mousemove", "200", "150", "click", "1")
	said := s.Until(t, "answered to a click on the bench's key", func(i *image.RGBA) bool { return windowtest.Changed(i, dark) > 200 })
	if n := windowtest.Changed(said, dark); n > 100000 {
		t.Errorf("a click changed %d pixels, want a line of text and a ring", n)
	}
	// A quick click is down and up between two ticks; the list acts on the up.
	s.Hand(t, "mousemove", "700", "150", "click", "1")
	s.Until(t, "answered to a quick click on the list", func(i *image.RGBA) bool {
		return windowtest.Changed(i.SubImage(image.Rect(0, 600, 1280, 720)).(*image.RGBA), said.SubImage(image.Rect(0, 600, 1280, 720)).(*image.RGBA)) > 200
	})
	s.Hand(t, "key", "Escape")
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
	s := windowtest.New(b)
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
