package assets

import (
	"errors"
	"strings"
	"testing"
)

// TestBrokenFonts: a font that is missing, cut short or not TrueType is a
// sentence with its name, never a panic.
func TestBrokenFonts(t *testing.T) {
	const name = "fonts/routed-gothic-wide.ttf"
	whole, err := fontFiles.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	try := func(b []byte, readErr error) error {
		_, err := loadFonts(func(n string) ([]byte, error) {
			if n == name {
				return b, readErr
			}
			return fontFiles.ReadFile(n)
		})
		return err
	}
	if err := try(nil, errors.New("no such file")); err == nil || !strings.Contains(err.Error(), name+" is missing") {
		t.Errorf("missing: got %v", err)
	}
	for _, b := range [][]byte{{}, []byte("OTTO and no more"), whole[:11], whole[:200], make([]byte, 4000)} {
		if err := try(b, nil); err == nil || !strings.Contains(err.Error(), name+" cannot be read") {
			t.Errorf("%d bytes: got %v", len(b), err)
		}
	}
	for i := 0; i < 4000; i += 7 { // damaged tables may load or not, but must not panic
		b := append([]byte(nil), whole...)
		b[i] ^= 0xff
		_ = try(b, nil)
	}
}

// TestFallBack: what the lettering lacks comes from the plain face.
func TestFallBack(t *testing.T) {
	f, err := LoadFonts()
	if err != nil {
		t.Fatal(err)
	}
	for _, face := range []Face{Lettering, Wide, Plain, Bold, Hand, faces + 3} {
		for _, r := range "≤≥√Ωαμ×°−–“”0Az…" {
			if _, i := f.Outline(face, r); i == 0 {
				t.Errorf("face %d has no %q and nothing to fall back on", face, r)
			}
		}
	}
	if o, _ := f.Outline(Lettering, 'A'); o == f.outlines[Plain] {
		t.Error("an A of the lettering comes from the plain face")
	}
}
