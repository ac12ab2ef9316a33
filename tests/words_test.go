package tests

import (
	"go/ast"
	"go/parser"
	"go/token"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// facing are the packages whose words reach a learner: they ask assets for them.
var facing = []string{"game/play", "game/practice", "game/scene", "game/term", "game/widget", "game/window", "scoring", "scoring/evidence", "physics/inspect"}

// sentence matches two words in a row: what an id, a unit or a format never is.
var sentence = regexp.MustCompile(`[A-Za-z]{2,}[,;:.!?]? +[A-Za-z]{2,}`)

// spokenTo are calls whose strings go to authors and programmers, not learners.
var spokenTo = []string{"Errorf", "New", "panic", "Fatalf", "Sprintf", "Logf"}

// TestWordsLiveInAssets: no learner-facing string outside assets. A string with
// two words in a row may stand in Go only inside an error, a panic or an
// Error method, which speak to authors.
func TestWordsLiveInAssets(t *testing.T) {
	for _, f := range sources(t) {
		if f.test || !slices.Contains(facing, f.dir) {
			continue
		}
		file, fset := f.parsed(t, 0)
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.ImportSpec, *ast.Field:
				return n != nil && !isTagged(n)
			case *ast.FuncDecl:
				return n.Name.Name != "Error"
			case *ast.CallExpr:
				return !slices.Contains(spokenTo, called(n))
			case *ast.BasicLit:
				if n.Kind != token.STRING {
					return true
				}
				text, err := strconv.Unquote(n.Value)
				if err == nil && sentence.MatchString(text) {
					t.Errorf("%s: %q is learner-facing text outside assets", fset.Position(n.Pos()), text)
				}
			}
			return true
		})
	}
}

func isTagged(n ast.Node) bool {
	field, ok := n.(*ast.Field)
	return !ok || field.Tag != nil
}

func called(c *ast.CallExpr) string {
	switch fn := c.Fun.(type) {
	case *ast.Ident:
		return fn.Name
	case *ast.SelectorExpr:
		return fn.Sel.Name
	}
	return ""
}

// unitBracket is "[unit]" at the start of a field's comment.
var unitBracket = regexp.MustCompile(`^\[[^\]]+\]`)

// TestQuantitiesHaveUnits: every float64 field of the physics' three kinds of
// data says its unit in brackets.
func TestQuantitiesHaveUnits(t *testing.T) {
	typed := regexp.MustCompile(`(Spec|Condition|State|Load|Forces|Input|Plan|Result|Duty|Stop)$`)
	seen := 0
	for _, f := range sources(t) {
		if f.test || f.dir != "physics" {
			continue
		}
		file, fset := f.parsed(t, parser.ParseComments)
		ast.Inspect(file, func(n ast.Node) bool {
			spec, ok := n.(*ast.TypeSpec)
			if !ok || !spec.Name.IsExported() || !typed.MatchString(spec.Name.Name) {
				return true
			}
			st, ok := spec.Type.(*ast.StructType)
			if !ok {
				return true
			}
			for _, field := range st.Fields.List {
				if !floats(field.Type) {
					continue
				}
				seen++
				text := strings.TrimSpace(field.Comment.Text() + " " + field.Doc.Text())
				if !unitBracket.MatchString(text) && !strings.Contains(text, "[") {
					t.Errorf("%s: %s.%s says no [unit]", fset.Position(field.Pos()), spec.Name.Name, field.Names[0].Name)
				}
			}
			return true
		})
	}
	if seen < 80 {
		t.Fatalf("only %d quantities seen: the test looks in the wrong place", seen)
	}
}

func floats(e ast.Expr) bool {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name == "float64"
	case *ast.ArrayType:
		return floats(e.Elt)
	}
	return false
}

// TestPackagesAreDocumented: the package comment is the first page of the manual.
func TestPackagesAreDocumented(t *testing.T) {
	documented, all := map[string]bool{}, map[string]bool{}
	for _, f := range sources(t) {
		if f.test {
			continue
		}
		file, _ := f.parsed(t, parser.ParseComments|parser.PackageClauseOnly)
		all[f.dir] = true
		if file.Doc.Text() != "" {
			if documented[f.dir] {
				t.Errorf("%s: package %s is documented twice", f.path, f.dir)
			}
			documented[f.dir] = true
		}
	}
	for dir := range all {
		if !documented[dir] && dir != "tests" {
			t.Errorf("package %s has no package comment", dir)
		}
	}
}
