package assets

import (
	"embed"
	"fmt"

	"github.com/golang/freetype/truetype"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
)

// A Face is one kind of lettering on the sheet.
type Face uint8

// The faces. Lettering and Wide are for labels and headings, Plain and Bold for
// sentences and keys, Hand for what the learner wrote.
const (
	Lettering Face = iota
	Wide
	Plain
	Bold
	Hand
	faces
)

//go:embed fonts/*.ttf
var fontFiles embed.FS

// Fonts holds the parsed outlines of every face. It is read-only and may be
// shared between canvases.
type Fonts struct {
	outlines [faces]*truetype.Font
}

// LoadFonts parses the embedded fonts. The error says which font is missing or
// broken in a sentence.
func LoadFonts() (*Fonts, error) {
	return loadFonts(fontFiles.ReadFile)
}

// loadFonts takes the reader as an argument so that a broken file can be tried.
func loadFonts(read func(name string) ([]byte, error)) (*Fonts, error) {
	f := new(Fonts)
	for face, name := range [faces]string{
		Lettering: "fonts/routed-gothic.ttf",
		Wide:      "fonts/routed-gothic-wide.ttf",
		Hand:      "fonts/architects-daughter.ttf",
	} {
		var ttf []byte
		switch Face(face) {
		case Plain:
			name, ttf = "Go Regular", goregular.TTF
		case Bold:
			name, ttf = "Go Bold", gobold.TTF
		default:
			b, err := read(name)
			if err != nil {
				return nil, fmt.Errorf("font %s is missing from the program: %w", name, err)
			}
			ttf = b
		}
		outline, err := parse(ttf)
		if err != nil {
			return nil, fmt.Errorf("font %s cannot be read: %w; want a TrueType font with glyf outlines", name, err)
		}
		f.outlines[face] = outline
	}
	return f, nil
}

// parse guards the parser: it indexes by what the file says and panics on some
// truncated tables.
func parse(ttf []byte) (f *truetype.Font, err error) {
	defer func() {
		if r := recover(); r != nil {
			f, err = nil, fmt.Errorf("its tables contradict each other (%v)", r)
		}
	}()
	return truetype.Parse(ttf)
}

// Outline returns the face that has a glyph for r: the one asked for, or Plain
// where it lacks the glyph.
func (f *Fonts) Outline(face Face, r rune) (*truetype.Font, truetype.Index) {
	if face >= faces {
		face = Plain
	}
	if i := f.outlines[face].Index(r); i != 0 {
		return f.outlines[face], i
	}
	return f.outlines[Plain], f.outlines[Plain].Index(r)
}
