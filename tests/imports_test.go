// Package tests holds what crosses packages: house rules, outside checks,
// replays, screens, budgets.
package tests

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// module is the path before our own packages in an import.
const module = "evenwear/"

// mayImport is policy, not a description. Do not widen it to mend a build: move
// the code, or change this table in a commit of its own that says why.
var mayImport = map[string][]string{
	"physics":             {"physics/exact"},
	"physics/exact":       {},
	"physics/physicstest": {"physics"},
	"physics/inspect":     {"physics", "physics/exact"},
	"assets":              {},
	// scenarios names checks: those whose readings somebody hands over.
	"scenarios":        {"physics", "physics/exact", "physics/inspect"},
	"scoring":          {"physics", "physics/exact", "physics/inspect", "scoring/evidence"},
	"scoring/evidence": {"physics", "physics/exact", "physics/inspect"},
	"scoring/learner":  {"physics/exact", "physics/inspect", "scoring/evidence"},
	"scoring/record":   {},
	// play puts acts and readings into words, so it reads the wording.
	"game/play":   {"assets", "physics", "physics/exact", "physics/inspect", "scenarios", "scoring", "scoring/evidence", "scoring/record"},
	"game/draw":   {"assets"},
	"game/widget": {"assets", "game/draw"},
	"game/scene":  {"assets", "game/draw", "game/play", "game/widget", "scenarios", "scoring/record"},
	"game/window": {"assets", "game/draw", "game/play", "game/scene", "game/widget"},
	"game/term":   {"assets", "game/play", "scenarios", "scoring/record"},
	// audit plays jobs by thousands, without a face.
	"game/audit": {"physics", "physics/exact", "physics/inspect", "game/play", "scenarios", "scoring", "scoring/evidence", "scoring/learner"},
	// practice chooses the next car; it has no face, no clock and no files.
	"game/practice": {"assets", "game/play", "scenarios", "scoring/learner", "scoring/record"},
	"game": {"assets", "game/audit", "game/draw", "game/play", "game/practice", "game/scene", "game/term", "game/widget", "game/window",
		"physics", "physics/exact", "physics/inspect", "scenarios", "scoring", "scoring/evidence", "scoring/record"},
}

// helpers are packages that only tests import.
var helpers = []string{"tests/published", "physics/physicstest", "game/play/playtest", "game/draw/drawtest", "game/scene/scenetest", "game/window/windowtest"}

func TestImportsPointDown(t *testing.T) {
	for _, f := range sources(t) {
		if f.test || slices.Contains(helpers, f.dir) || f.dir == "tests" {
			continue
		}
		allowed, known := mayImport[f.dir]
		if !known {
			t.Errorf("%s: package %q is not in the table of imports", f.path, f.dir)
			continue
		}
		for _, imp := range f.imports {
			own, ours := strings.CutPrefix(imp, module)
			switch {
			case ours && !slices.Contains(allowed, own):
				t.Errorf("%s imports %s: not allowed for %s", f.path, own, f.dir)
			case strings.Contains(imp, "ebiten") && f.dir != "game/window":
				t.Errorf("%s imports %s: only game/window may", f.path, imp)
			case f.dir == "physics" || f.dir == "physics/exact" || f.dir == "physics/inspect":
				if !ours && strings.Contains(imp, ".") {
					t.Errorf("%s imports %s: the physics use the standard library only", f.path, imp)
				}
			}
		}
	}
}

// forbidden are standard packages that a room must not use: they would bring
// clocks, chance or files into what must replay bit for bit.
var forbidden = map[string][]string{
	"physics":          {"time", "math/rand", "math/rand/v2", "os", "io", "sync"},
	"physics/exact":    {"time", "math/rand", "math/rand/v2", "os", "io"},
	"physics/inspect":  {"time", "math/rand", "math/rand/v2", "os", "io"},
	"scoring":          {"time", "math/rand", "os", "io"},
	"scoring/evidence": {"time", "math/rand", "os", "io"},
	"scoring/learner":  {"time", "math/rand", "os", "io"},
	"scenarios":        {"time", "math/rand"},
	"game/practice":    {"math/rand", "os", "io"}, // a time is an argument
}

func TestNoClockNoChance(t *testing.T) {
	for _, f := range sources(t) {
		if f.test {
			continue
		}
		for _, imp := range f.imports {
			if slices.Contains(forbidden[f.dir], imp) {
				t.Errorf("%s imports %q: what replays bit for bit may not", f.path, imp)
			}
		}
	}
}

// TestTopLevel holds the layout that DEVELOPERS.md names.
func TestTopLevel(t *testing.T) {
	want := []string{"README.md", "DEVELOPERS.md", "go.mod", "go.sum", ".gitignore", ".ci", ".git",
		"game", "physics", "scenarios", "assets", "scoring", "tests"}
	entries, err := os.ReadDir(root(t))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if !slices.Contains(want, e.Name()) && e.Name() != "out" {
			t.Errorf("%s stands at the top; allowed are %v", e.Name(), want)
		}
	}
}

// TestFilesStaySmall: split a file before it passes 400 lines.
func TestFilesStaySmall(t *testing.T) {
	for _, f := range sources(t) {
		if f.lines > 400 {
			t.Errorf("%s has %d lines, at most 400", f.path, f.lines)
		}
	}
}

// source is one Go file of ours.
type source struct {
	path, dir string // slash-separated, from the top
	test      bool
	lines     int
	imports   []string
}

// parsed is the file's syntax with what places its nodes.
func (f *source) parsed(t testing.TB, mode parser.Mode) (*ast.File, *token.FileSet) {
	t.Helper()
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, filepath.Join(root(t), f.path), nil, mode)
	if err != nil {
		t.Fatal(err)
	}
	return file, fset
}

func root(t testing.TB) string {
	t.Helper()
	_, here, _, ok := runtime.Caller(0)
	if !ok {
		t.Fatal("no caller")
	}
	return filepath.Dir(filepath.Dir(here))
}

func sources(t testing.TB) []source {
	t.Helper()
	top := root(t)
	var out []source
	err := filepath.WalkDir(top, func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && (d.Name() == ".git" || d.Name() == "testdata" || d.Name() == "out") {
			return filepath.SkipDir
		}
		if d.IsDir() || !strings.HasSuffix(p, ".go") {
			return nil
		}
		text, err := os.ReadFile(p)
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(top, p)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		s := source{path: rel, dir: path.Dir(rel), test: strings.HasSuffix(rel, "_test.go"), lines: strings.Count(string(text), "\n")}
		file, err := parser.ParseFile(token.NewFileSet(), p, text, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, i := range file.Imports {
			name, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				return err
			}
			s.imports = append(s.imports, name)
		}
		out = append(out, s)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}
