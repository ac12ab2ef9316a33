package scenarios

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

// schemaLoaders are the kinds of files there is a schema for, with their loaders.
var schemaLoaders = []struct {
	kind string
	load func(*builder, *source)
}{{"job", (*builder).job}, {"cause", (*builder).cause}, {"remedy", (*builder).remedy}, {"lesson", (*builder).lesson},
	{"car", (*builder).car}, {"catalogue", (*builder).catalogue}, {"owners", (*builder).owners}, {"pairs", (*builder).pairs}}

// SchemaKinds are their names.
func SchemaKinds() []string {
	var out []string
	for _, s := range schemaLoaders {
		out = append(out, s.kind)
	}
	return out
}

// Schema is the JSON Schema (draft 2020-12) of one kind of file, for editors.
// Nothing is written down twice: the loader itself is run over a file that holds
// everything, and what it asks for is noted. Names of cars, causes and places are
// this library's.
func (l *Library) Schema(kind string) ([]byte, error) {
	lib := *l // the loader appends to its lists
	lib.Cars, lib.Groups, lib.Causes = slices.Clip(l.Cars), slices.Clip(l.Groups), slices.Clip(l.Causes)
	lib.Parts, lib.Remedies, lib.Jobs = slices.Clip(l.Parts), slices.Clip(l.Remedies), slices.Clip(l.Jobs)
	at := slices.Index(SchemaKinds(), kind)
	if at < 0 {
		return nil, fmt.Errorf("there is no schema for %q; %s", clip(kind), nearestWords(kind, SchemaKinds()))
	}
	root := &shape{}
	var probs Problems
	schemaLoaders[at].load(&builder{lib: &lib}, &source{id: kind, name: kind, node: everything, r: &reader{file: kind, probs: &probs, noted: root}})
	s := root.schema()
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"] = kind
	return json.MarshalIndent(s, "", "  ")
}

// dotted stands for a point within a key, which in a path parts keys.
const dotted = "\x00"

// everything stands for whatever a loader asks for while it is noted.
var everything = &yaml.Node{Kind: yaml.ScalarNode}

// A shape is what a loader wants at one place of a file.
type shape struct {
	kind     string // as JSON Schema calls it; empty: not asked for yet
	keys     []string
	values   []*shape // of keys
	required []string
	lone     bool // exactly one of the keys
	item     *shape
	lo, hi   float64
	unit     string
	names    []string // allowed words; yes and no when kind is "boolean"
}

// at is the shape at a path such as "faults[0].since_km".
func (s *shape) at(path string) *shape {
	if path == "" {
		return s
	}
	for part := range strings.SplitSeq(path, ".") {
		name, _, list := strings.Cut(part, "[")
		s = s.key(strings.ReplaceAll(name, dotted, "."))
		if list {
			s.kind = "array"
			if s.item == nil {
				s.item = &shape{}
			}
			s = s.item
		}
	}
	return s
}

// key is the shape under one key.
func (s *shape) key(name string) *shape {
	s.kind = "object"
	i := slices.Index(s.keys, name)
	if i < 0 {
		i = len(s.keys)
		s.keys, s.values = append(s.keys, name), append(s.values, &shape{})
	}
	return s.values[i]
}

func (s *shape) need(name string) {
	s.key(name)
	if !slices.Contains(s.required, name) {
		s.required = append(s.required, name)
	}
}

// number notes a range; of two ranges at one place, which depend on something
// else in the file, both are allowed.
func (s *shape) number(lo, hi float64, unit string) {
	if s.kind != "number" {
		s.kind, s.lo, s.hi, s.unit = "number", lo, hi, unit
	}
	s.lo, s.hi = min(s.lo, lo), max(s.hi, hi)
}

func (s *shape) oneOf(names []string) {
	s.kind = "string"
	for _, n := range names {
		if !slices.Contains(s.names, n) {
			s.names = append(s.names, n)
		}
	}
}

// schema is the shape as JSON Schema has it.
func (s *shape) schema() map[string]any {
	out := map[string]any{}
	if s.kind == "" {
		return out
	}
	out["type"] = s.kind
	switch s.kind {
	case "object":
		properties := map[string]any{}
		for i, k := range s.keys {
			properties[k] = s.values[i].schema()
		}
		out["properties"], out["additionalProperties"] = properties, false
		if len(s.required) > 0 {
			out["required"] = s.required
		}
		if s.lone {
			out["minProperties"], out["maxProperties"] = 1, 1
		}
	case "array":
		out["items"], out["maxItems"] = s.item.schema(), maxItems
	case "number":
		out["minimum"], out["maximum"] = s.lo, s.hi
		if s.unit != "" {
			out["description"] = s.unit
		}
	case "boolean": // YAML 1.2 reads yes and no as words
		return map[string]any{"enum": []any{true, false, "yes", "no"}}
	case "string":
		if len(s.names) > 0 {
			return map[string]any{"enum": s.names}
		}
		out["minLength"], out["maxLength"] = 1, maxText
	}
	return out
}

// noteChanges notes every path of the condition that a change may write.
func noteChanges(s *shape, op Op) {
	switch op {
	case StandsAt, FillTo, DrawTo:
		for _, v := range vessels {
			s.key(v.key).number(v.least, mostStand, "of the way from MIN to MAX")
		}
		return
	case AtMost:
		for _, path := range leftPaths() {
			_, l := leftAt(&anyCar, "car", path)
			s.key(path).number(l.lo, l.hi, "mm")
		}
		return
	}
	for _, path := range slices.Concat(changePaths, Paths()) {
		fs, err := Place("front_axle").at(&anyCar, path)
		if err != nil || len(fs) == 0 || fs[0].cond == nil {
			continue
		}
		if op == Scale {
			s.key(path).number(0, mostScale, "times")
			continue
		}
		s.key(path).number(fs[0].Lo, fs[0].Hi, fs[0].Unit)
	}
}
