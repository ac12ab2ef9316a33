// Package drawtest compares pictures with golden files, byte for byte.
package drawtest

import (
	"bytes"
	"flag"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"testing"
)

var update = flag.Bool("update", false, "rewrite the golden pictures; look at them afterwards")

// Golden compares img with testdata/<name>.png. When they differ the new picture
// is kept among the test's artifacts and the failure says where.
func Golden(t *testing.T, name string, img *image.RGBA) {
	t.Helper()
	golden := filepath.Join("testdata", name+".png")
	if *update {
		if err := os.MkdirAll("testdata", 0o755); err != nil {
			t.Fatal(err)
		}
		write(t, golden, img)
		return
	}
	want, err := read(golden)
	if err != nil {
		keep(t, name, img)
		t.Errorf("no golden picture: %v; run with -update and look at it", err)
		return
	}
	if n, at := differ(want, img); n > 0 {
		keep(t, name, img)
		t.Errorf("%s: %d pixels differ from the golden picture, the first at %v (sizes %v and %v)",
			name, n, at, img.Rect.Size(), want.Rect.Size())
	}
}

// differ counts the pixels that differ and returns the first.
func differ(a, b *image.RGBA) (n int, first image.Point) {
	if a.Rect != b.Rect {
		return max(len(a.Pix), len(b.Pix)) / 4, image.Point{}
	}
	for y := a.Rect.Min.Y; y < a.Rect.Max.Y; y++ {
		for x := a.Rect.Min.X; x < a.Rect.Max.X; x++ {
			i, j := a.PixOffset(x, y), b.PixOffset(x, y)
			if !bytes.Equal(a.Pix[i:i+4], b.Pix[j:j+4]) {
				if n == 0 {
					first = image.Pt(x, y)
				}
				n++
			}
		}
	}
	return n, first
}

func read(name string) (*image.RGBA, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		return nil, err
	}
	if rgba, ok := img.(*image.RGBA); ok {
		return rgba, nil
	}
	b := img.Bounds()
	rgba := image.NewRGBA(b)
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			rgba.Set(x, y, img.At(x, y))
		}
	}
	return rgba, nil
}

func keep(t *testing.T, name string, img *image.RGBA) {
	t.Helper()
	path := filepath.Join(t.ArtifactDir(), name+".png")
	write(t, path, img)
	t.Logf("the new picture is %s (go test -artifacts keeps it)", path)
}

func write(t *testing.T, path string, img *image.RGBA) {
	t.Helper()
	var b bytes.Buffer
	enc := png.Encoder{CompressionLevel: png.BestCompression}
	if err := enc.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
}
