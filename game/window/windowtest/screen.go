// Package windowtest lends tests a virtual screen, with a keyboard and a pointer
// that real programs see.
package windowtest

import (
	"bufio"
	"image"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A Screen is a virtual one of 1280×720 whose memory can be read.
type Screen struct {
	Display string // as in the environment: ":99"
	file    string
}

// New starts Xvfb, or says why it cannot: skipped here, a failure where
// everything is meant to be installed.
func New(t testing.TB) Screen {
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
	return Screen{":" + strings.TrimSpace(line), filepath.Join(dir, "Xvfb_screen0")}
}

// Shot reads the screen's memory, an X window dump: 25 or more 32-bit numbers,
// a table of colours, then rows of pixels.
func (s Screen) Shot(t testing.TB) *image.RGBA {
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

// Hand does one thing with xdotool.
func (s Screen) Hand(t testing.TB, args ...string) {
	t.Helper()
	cmd := exec.Command("xdotool", args...)
	cmd.Env = append(os.Environ(), "DISPLAY="+s.Display)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("xdotool %v: %v\n%s", args, err, out)
	}
}

// Until waits for a picture that satisfies ok.
func (s Screen) Until(t testing.TB, what string, ok func(*image.RGBA) bool) *image.RGBA {
	t.Helper()
	for deadline := time.Now().Add(30 * time.Second); ; time.Sleep(50 * time.Millisecond) {
		img := s.Shot(t)
		if ok(img) {
			return img
		}
		if time.Now().After(deadline) {
			t.Fatalf("after 30 s: not %s", what)
		}
	}
}

// Colours counts the pixels of each colour.
func Colours(img *image.RGBA) map[[3]uint8]int {
	n := map[[3]uint8]int{}
	for i := 0; i < len(img.Pix); i += 4 {
		n[[3]uint8(img.Pix[i:i+3])]++
	}
	return n
}

// Changed counts the pixels in which two pictures of a size differ.
func Changed(a, b *image.RGBA) int {
	n := 0
	for i := 0; i < len(a.Pix); i += 4 {
		if [3]uint8(a.Pix[i:i+3]) != [3]uint8(b.Pix[i:i+3]) {
			n++
		}
	}
	return n
}
