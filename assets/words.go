package assets

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"regexp"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

//go:embed words
var wordFiles embed.FS

// Words is the wording of one language: a sentence for every id. A sentence may
// hold {names} that Say fills in, and {name|mark|marks}, which is the first word
// where the value is 1 and the second where it is not.
type Words struct {
	say map[string]string
}

// English returns the English wording. The error lists every mistake in its
// files.
func English() (*Words, error) { return loadWords(wordFiles, "words/en") }

// loadWords merges every file of one language. An id stands in one file only.
func loadWords(files fs.FS, dir string) (*Words, error) {
	entries, err := fs.ReadDir(files, dir)
	if err != nil {
		return nil, fmt.Errorf("wording %s is missing from the program: %w", dir, err)
	}
	w := &Words{say: map[string]string{}}
	where := map[string]string{}
	var bad []error
	for _, e := range entries {
		name := path.Join(dir, e.Name())
		text, err := fs.ReadFile(files, name)
		if err != nil {
			bad = append(bad, err)
			continue
		}
		bad = append(bad, w.merge(name, text, where)...)
	}
	if len(bad) > 0 {
		return nil, errors.Join(bad...)
	}
	return w, nil
}

// merge adds the entries of one file and returns what is wrong with it.
func (w *Words) merge(file string, text []byte, where map[string]string) (bad []error) {
	fail := func(n *yaml.Node, format string, args ...any) {
		bad = append(bad, fmt.Errorf("%s:%d:%d: %s", file, n.Line, n.Column, fmt.Sprintf(format, args...)))
	}
	dec := yaml.NewDecoder(strings.NewReader(string(text)))
	var doc, second yaml.Node
	if err := dec.Decode(&doc); err != nil {
		if len(strings.TrimSpace(string(text))) == 0 || err.Error() == "EOF" {
			return nil // an area without words yet
		}
		return []error{fmt.Errorf("%s: %w", file, err)}
	}
	if dec.Decode(&second) == nil {
		fail(&second, "a second document; one file is one list of words")
	}
	top := doc.Content[0]
	if top.Kind != yaml.MappingNode {
		fail(top, "want a list of id: sentence")
		return bad
	}
	for i := 0; i+1 < len(top.Content); i += 2 {
		k, v := top.Content[i], top.Content[i+1]
		id := k.Value
		switch {
		case k.Kind != yaml.ScalarNode || id == "":
			fail(k, "want an id: letters, digits, points and underscores")
			continue
		case v.Kind != yaml.ScalarNode || v.Anchor != "" || v.Alias != nil || v.Tag != "!!str":
			fail(v, "%s: want a sentence; put figures and yes/no in quotes", id)
		case strings.TrimSpace(v.Value) == "":
			fail(v, "%s: the sentence is empty", id)
		case where[id] != "":
			fail(k, "%s: stands already at %s", id, where[id])
		case strings.Count(v.Value, "{") != strings.Count(v.Value, "}"):
			fail(v, "%s: a brace is not closed", id)
		case strings.Contains(blank.ReplaceAllString(v.Value, ""), "{"):
			fail(v, "%s: want {name} or {name|one|many} in braces", id)
		}
		where[id] = fmt.Sprintf("%s:%d", file, k.Line)
		w.say[id] = v.Value
	}
	return bad
}

// Say returns the sentence of an id with its {names} filled in from name, value
// pairs. An id without a sentence comes back in angle quotes, so that it is seen
// and nothing is lost.
func (w *Words) Say(id string, args ...any) string {
	s, ok := w.say[id]
	if !ok {
		return "‹" + id + "›"
	}
	if len(args) < 2 {
		return s
	}
	return blank.ReplaceAllStringFunc(s, func(b string) string { // all at once: a value is never filled in again
		name, forms, counted := strings.Cut(b[1:len(b)-1], "|")
		for i := 0; i+1 < len(args); i += 2 {
			if fmt.Sprint(args[i]) != name {
				continue
			}
			value := valueText(args[i+1])
			if !counted {
				return value
			}
			one, many, _ := strings.Cut(forms, "|")
			if value == "1" {
				return one
			}
			return many
		}
		return b
	})
}

// blank is what Say fills in.
var blank = regexp.MustCompile(`\{[a-z_]+(\|[^{}|]+\|[^{}|]+)?\}`)

// Has says whether an id has a sentence.
func (w *Words) Has(id string) bool { _, ok := w.say[id]; return ok }

// IDs returns every id in order.
func (w *Words) IDs() []string { return slices.Sorted(maps.Keys(w.say)) }

func valueText(v any) string {
	if f, ok := v.(float64); ok {
		return Figure(f, -1)
	}
	return fmt.Sprint(v)
}
