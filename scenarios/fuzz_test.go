package scenarios

import (
	"errors"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
)

// FuzzLoad: whatever stands in a job, cause, remedy or car, loading ends in a
// library or in sentences with a place, never in a panic.
func FuzzLoad(f *testing.F) {
	f.Add(uint8(0), soundJob)
	for i, name := range []string{"jobs/warm_wheel.yaml", "causes/pins_dry.yaml", "remedies/clean_pins_petroleum.yaml", "cars/compact_hatchback.yaml", "catalogue.yaml"} {
		data, err := embedded.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(uint8(i), string(data))
	}
	for _, s := range []string{"", "\ufeff", "a: &x [*x]", "? {a: b}\n: c", "<<: {}", "--- !!map {}\n...\n---", "[[[[[[[[[[[[[[", "a:\n\tb", "{{}: 1}", "faults: [null, ~, {}]", "- - -", "%YAML 9.9\n---\na", "title: \"\\u0000\""} {
		f.Add(uint8(0), s)
	}
	// A small library, so that a second tries many texts.
	ours := fstest.MapFS{}
	for name, file := range with(f, "jobs/x.yaml", soundJob).(fstest.MapFS) {
		switch name {
		case "catalogue.yaml", "cars/compact_hatchback.yaml", "causes/pins_dry.yaml":
			ours[name] = file
		}
	}
	f.Fuzz(func(t *testing.T, which uint8, text string) {
		name := []string{"jobs/fuzz.yaml", "causes/fuzz.yaml", "remedies/fuzz.yaml", "cars/fuzz.yaml", "catalogue.yaml"}[which%5]
		lib, err := load(layer{files: ours}, layer{files: fstest.MapFS{name: {Data: []byte(text)}}})
		if (lib == nil) == (err == nil) {
			t.Fatal("neither a library nor an error, or both")
		}
		var probs Problems
		if err != nil && !errors.As(err, &probs) {
			t.Fatalf("%v is not a list of problems", err)
		}
		for _, p := range probs {
			if !fs.ValidPath(p.File) || p.What == "" || strings.ContainsAny(p.Error(), "\n\r") {
				t.Errorf("%q is no sentence with a place", p.Error())
			}
		}
	})
}
