package assets

import (
	"strings"
	"testing"
	"testing/fstest"
)

func files(m map[string]string) fstest.MapFS {
	fs := fstest.MapFS{}
	for name, text := range m {
		fs["words/xx/"+name] = &fstest.MapFile{Data: []byte(text)}
	}
	return fs
}

// TestBadWording: every mistake is told with its place.
func TestBadWording(t *testing.T) {
	for _, x := range []struct{ name, text, want string }{
		{"list", "- a\n", "words/xx/a.yaml:1:1: want a list of id: sentence"},
		{"twice", "a: one\na: two\n", "words/xx/a.yaml:2:1: a: stands already at words/xx/a.yaml:1"},
		{"number", "a: 5\n", "words/xx/a.yaml:1:4: a: want a sentence"},
		{"yes", "a: true\n", "words/xx/a.yaml:1:4: a: want a sentence"},
		{"empty", "a: \"\"\n", "words/xx/a.yaml:1:4: a: the sentence is empty"},
		{"nothing", "a:\n", "a: want a sentence"},
		{"nested", "a:\n  b: c\n", "words/xx/a.yaml:2:3: a: want a sentence"},
		{"brace", "a: spent {n of {m}\n", "words/xx/a.yaml:1:4: a: a brace is not closed"},
		{"forms", "a: spent {n|minute}\n", "words/xx/a.yaml:1:4: a: want {name} or {name|one|many} in braces"},
		{"alias", "a: &x one\nb: *x\n", "b: want a sentence"},
		{"documents", "a: one\n---\nb: two\n", "a second document"},
		{"syntax", "a: [\n", "words/xx/a.yaml: yaml:"},
	} {
		_, err := loadWords(files(map[string]string{"a.yaml": x.text}), "words/xx")
		if err == nil || !strings.Contains(err.Error(), x.want) {
			t.Errorf("%s: got %v, want it to hold %q", x.name, err, x.want)
		}
	}
	_, err := loadWords(files(map[string]string{"a.yaml": "x: one\n", "b.yaml": "y: two\nx: three\n"}), "words/xx")
	if want := "words/xx/b.yaml:2:1: x: stands already at words/xx/a.yaml:1"; err == nil || !strings.Contains(err.Error(), want) {
		t.Errorf("an id in two files: got %v, want %q", err, want)
	}
	if _, err := loadWords(fstest.MapFS{}, "words/xx"); err == nil {
		t.Error("a language that is not there must be an error")
	}
}

func TestSay(t *testing.T) {
	w, err := loadWords(files(map[string]string{
		"a.yaml": "spent: spent {n} of {limit} min\nplain: no names\nmarks: \"{n} {n|mark|marks} on\"\n", "b.yaml": "# nothing yet\n",
	}), "words/xx")
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct{ got, want string }{
		{w.Say("spent", "n", 34, "limit", 60.5), "spent 34 of 60.5 min"},
		{w.Say("spent", "n", "{limit}", "limit", 60), "spent {limit} of 60 min"},
		{w.Say("spent", "n"), "spent {n} of {limit} min"},
		{w.Say("plain"), "no names"},
		{w.Say("marks", "n", 0), "0 marks on"},
		{w.Say("marks", "n", 1), "1 mark on"},
		{w.Say("marks", "n", "1"), "1 mark on"},
		{w.Say("marks", "n", 1.0), "1 mark on"},
		{w.Say("marks", "n", 1.5), "1.5 marks on"},
		{w.Say("marks", "n", 21), "21 marks on"},
		{w.Say("missing"), "‹missing›"},
	} {
		if x.got != x.want {
			t.Errorf("got %q, want %q", x.got, x.want)
		}
	}
}

func TestEnglish(t *testing.T) {
	w, err := English()
	if err != nil {
		t.Fatal(err)
	}
	fonts, err := LoadFonts()
	if err != nil {
		t.Fatal(err)
	}
	for _, id := range w.IDs() {
		for _, r := range w.Say(id) {
			if _, i := fonts.Outline(Lettering, r); i == 0 && r != '\n' {
				t.Errorf("%s: no font has a glyph for %q", id, r)
			}
		}
	}
}

func TestFigure(t *testing.T) {
	for _, x := range []struct {
		v        float64
		decimals int
		want     string
	}{
		{8.7, 1, "8.7"}, {8, 1, "8.0"}, {-0.14, 2, "−0.14"}, {-0.001, 2, "0.00"}, {61400, 0, "61\u2009400"},
		{4117, 0, "4117"}, {1234567.5, 1, "1\u2009234\u2009567.5"}, {0.25, -1, "0.25"}, {12, -1, "12"},
	} {
		if got := Figure(x.v, x.decimals); got != x.want {
			t.Errorf("Figure(%v, %d) = %q, want %q", x.v, x.decimals, got, x.want)
		}
	}
}
