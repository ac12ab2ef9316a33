package tests

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenwear/assets"
)

// placeholder is a {name} or {name|one|many} in a sentence.
var placeholder = regexp.MustCompile(`\{([a-z_]+)(?:\|[^{}]*)?\}`)

// opening is how an id that is put together begins: "part." or "bench.pin_".
var opening = regexp.MustCompile(`^[a-z][a-z0-9_.]*[._]$`)

// TestWordingIsComplete: every id that is said literally has a sentence, is given
// every name the sentence fills in, and every sentence is said somewhere: by its
// id, or by an id that is put together from a literal beginning such as "part.".
func TestWordingIsComplete(t *testing.T) {
	words, err := assets.English()
	if err != nil {
		t.Fatal(err)
	}
	var literals []string
	for _, f := range sources(t) {
		if f.test {
			continue
		}
		fset := token.NewFileSet()
		file, err := parser.ParseFile(fset, filepath.Join(root(t), f.path), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BasicLit:
				if s, ok := text(n); ok {
					literals = append(literals, s)
				}
			case *ast.CallExpr:
				if called(n) == "Say" && len(n.Args) > 0 {
					said(t, fset, words, n)
				}
			}
			return true
		})
	}
	for _, id := range words.IDs() {
		if !slices.ContainsFunc(literals, func(s string) bool {
			return s == id || opening.MatchString(s) && strings.HasPrefix(id, s)
		}) {
			t.Errorf("wording %q is said nowhere", id)
		}
	}
}

// said checks one call of Say whose id is a literal.
func said(t *testing.T, fset *token.FileSet, words *assets.Words, call *ast.CallExpr) {
	id, ok := text(call.Args[0])
	if !ok {
		return
	}
	at := fset.Position(call.Pos())
	if !words.Has(id) {
		t.Errorf("%s: %q has no sentence", at, id)
		return
	}
	var given []string
	for i := 1; i < len(call.Args); i += 2 {
		name, ok := text(call.Args[i])
		if !ok || call.Ellipsis.IsValid() {
			return // put together elsewhere
		}
		given = append(given, name)
	}
	for _, m := range placeholder.FindAllStringSubmatch(words.Say(id), -1) {
		if !slices.Contains(given, m[1]) {
			t.Errorf("%s: %q wants {%s}, given %q", at, id, m[1], given)
		}
	}
}

func text(e ast.Expr) (string, bool) {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return "", false
	}
	s, err := strconv.Unquote(lit.Value)
	return s, err == nil
}
