package tests

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"evenwear/assets"
)

var (
	parted   = regexp.MustCompile(`(^|[^0-9\p{L}.,])[0-9][ \x{a0}\x{2009}][0-9]{3}([^0-9]|$)`) // 8 000
	unparted = regexp.MustCompile(`(^|[^0-9\p{L}.,_])[0-9]{5,}([^0-9]|$)`)                     // 12000
)

// badFigure is a figure of a text that is not grouped as all are: in threes from
// five digits on, as [assets.Figure] does; empty: there is none.
func badFigure(text string) string {
	if m := parted.FindString(text); m != "" {
		return strings.TrimSpace(m)
	}
	return strings.TrimSpace(unparted.FindString(text))
}

// TestFiguresAreWrittenAlike: whatever a learner reads writes 7000 km and 12 000 km,
// in every wording and in every text of the library.
func TestFiguresAreWrittenAlike(t *testing.T) {
	for text, bad := range map[string]bool{"for 8 000 km": true, "12000 km": true, "7000 km and 12 000 km": false, "12 345 678 N": false, "0.12345": false, "step 2 200 N": true} {
		if got := badFigure(text); (got != "") != bad {
			t.Errorf("%q: found %q, want one: %v", text, got, bad)
		}
	}
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	looked := 0
	look := func(at, text string) {
		looked++
		if bad := badFigure(text); bad != "" {
			t.Errorf("%s: %q in %q; write 7000 and 12 000", at, bad, text)
		}
	}
	for _, id := range words.IDs() {
		if id != "handover.pad" && id != "own.example" { // the keys of a keyboard; what is typed after a flag
			look(id, words.Say(id))
		}
	}
	dir := filepath.Join(root(t), "scenarios")
	err = filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".yaml" || filepath.Base(filepath.Dir(path)) == "template" {
			return err
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		var node yaml.Node
		if err := yaml.Unmarshal(data, &node); err != nil {
			return err
		}
		texts(&node, func(text string) { look(d.Name(), text) })
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if looked < 2000 {
		t.Errorf("%d texts were looked at, want 2000", looked)
	}
}

// texts calls f with every text of a file, keys and numbers left out.
func texts(n *yaml.Node, f func(string)) {
	if n.Kind == yaml.ScalarNode && n.Tag == "!!str" {
		f(n.Value)
	}
	for i, c := range n.Content {
		if n.Kind != yaml.MappingNode || i%2 == 1 {
			texts(c, f)
		}
	}
}
