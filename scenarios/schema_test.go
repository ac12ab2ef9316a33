package scenarios

import (
	"bytes"
	"fmt"
	"io/fs"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"
)

// schemas compiles all of them with a validator that knows nothing of ours.
func schemas(t *testing.T) map[string]*jsonschema.Schema {
	t.Helper()
	lib := library(t)
	out := map[string]*jsonschema.Schema{}
	for _, kind := range SchemaKinds() {
		text, err := lib.Schema(kind)
		if err != nil {
			t.Fatal(err)
		}
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		c := jsonschema.NewCompiler()
		if err := c.AddResource(kind+".json", doc); err != nil {
			t.Fatal(err)
		}
		if out[kind], err = c.Compile(kind + ".json"); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// against validates a YAML text.
func against(s *jsonschema.Schema, text []byte) error {
	var v any
	if err := yaml.Unmarshal(text, &v); err != nil {
		return err
	}
	return s.Validate(v)
}

// kindOfName is the kind of the file of this name.
func kindOfName(name string) string {
	dir, _, in := strings.Cut(name, "/")
	if !in {
		return strings.TrimSuffix(name, ".yaml")
	}
	if dir == "remedies" {
		return "remedy"
	}
	return strings.TrimSuffix(dir, "s")
}

// TestSchemaTakesOurFiles: whatever the loader takes, the schema takes. The
// validator is github.com/santhosh-tekuri/jsonschema.
func TestSchemaTakesOurFiles(t *testing.T) {
	all := schemas(t)
	files := 0
	err := fs.WalkDir(embedded, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := embedded.ReadFile(path)
		if err != nil {
			return err
		}
		s := all[kindOfName(path)]
		if s == nil {
			return fmt.Errorf("%s has no schema", path)
		}
		files++
		if err := against(s, text); err != nil {
			t.Errorf("%s: %v", path, err)
		}
		return nil
	})
	if err != nil || files < 30 {
		t.Fatal(files, err)
	}
}

// TestSchemaRefuses: mistakes of form that the loader refuses, an editor shows.
func TestSchemaRefuses(t *testing.T) {
	s := schemas(t)["job"]
	if err := against(s, []byte(soundJob)); err != nil {
		t.Fatal(err)
	}
	for _, change := range [][2]string{
		{"goal: Look", "gaol: Look"},
		{"minutes_min: 75\n", ""},
		{"minutes_min: 75", "minutes_min: 1e9"},
		{"minutes_min: 75", "minutes_min: soon"},
		{"since_km: 7000", "since: 7000"},
		{"since_km: 7000", "since_km: -1"},
		{"cause: pins_dry", "cause: pins_dri"},
		{"place: front_left", "place: front_lift"},
		{"severity: heavy", "severity: heavily"},
		{"hotter: front_left", "hotter: left"},
		{"- hotter: front_left", "- {hotter: front_left, rolls: badly}"},
		{"- pads_km:", "- clock:"},
		{"title: A warm wheel", "title: [A warm wheel]"},
		{"title: A warm wheel", "title: " + strings.Repeat("long ", 500)},
		{"faults:\n", "faults: none\nsymptoms:\n"},
		{"room_c: 17", "room_c: 170"},
	} {
		text := strings.Replace(soundJob, change[0], change[1], 1)
		if text == soundJob {
			t.Fatalf("%q does not occur", change[0])
		}
		if _, err := Load(with(t, "jobs/x.yaml", text)); err == nil {
			t.Errorf("%q: the loader takes it", change[1])
		}
		if err := against(s, []byte(text)); err == nil {
			t.Errorf("%q: the schema takes it", change[1])
		}
	}
	if _, err := library(t).Schema("jobs"); err == nil || err.Error() != `there is no schema for "jobs"; known are job, cause, remedy, lesson, car, catalogue, owners, pairs` {
		t.Error(err)
	}
}

// TestSchemaLeavesTheLibrary: writing a schema changes nothing.
func TestSchemaLeavesTheLibrary(t *testing.T) {
	lib := library(t)
	before := fmt.Sprint(lib.Groups, lib.Parts, len(lib.Cars), len(lib.Causes), len(lib.Remedies), len(lib.Jobs), lib.owners.opens)
	for _, kind := range SchemaKinds() {
		if _, err := lib.Schema(kind); err != nil {
			t.Fatal(err)
		}
	}
	if after := fmt.Sprint(lib.Groups, lib.Parts, len(lib.Cars), len(lib.Causes), len(lib.Remedies), len(lib.Jobs), lib.owners.opens); after != before {
		t.Errorf("%s, before %s", after, before)
	}
}
