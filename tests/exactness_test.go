package tests

import (
	"go/ast"
	"os"
	"os/exec"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// bitExact are the packages whose numbers are the same bits on every machine.
var bitExact = []string{"physics", "physics/exact", "physics/inspect", "scenarios", "scoring", "scoring/evidence", "scoring/learner"}

// exactMath are the functions of package math that are exactly rounded or only
// move bits, so that every platform agrees.
var exactMath = []string{"Abs", "Sqrt", "Floor", "Ceil", "Trunc", "Round", "RoundToEven", "Copysign", "Signbit", "Max", "Min",
	"Inf", "IsInf", "IsNaN", "NaN", "Float64bits", "Float64frombits", "Frexp", "Ldexp", "Mod", "Modf",
	"MaxFloat64", "SmallestNonzeroFloat64", "MaxInt64", "MaxInt", "MinInt64", "MaxInt32", "MaxUint32", "Pi", "Ln2", "E", "Sqrt2", "SqrtPi", "Log2E", "Ln10"}

// TestOnlyExactMath: Exp, Pow, Tanh and the like differ in the last bits
// between amd64 and wasm (measured), so physics/exact has its own.
func TestOnlyExactMath(t *testing.T) {
	for _, f := range sources(t) {
		if f.test || !slices.Contains(bitExact, f.dir) {
			continue
		}
		file, fset := f.parsed(t, 0)
		ast.Inspect(file, func(n ast.Node) bool {
			sel, ok := n.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			if pkg, ok := sel.X.(*ast.Ident); ok && pkg.Name == "math" && pkg.Obj == nil && !slices.Contains(exactMath, sel.Sel.Name) {
				t.Errorf("%s: math.%s is not the same bits everywhere; use physics/exact", fset.Position(n.Pos()), sel.Sel.Name)
			}
			return true
		})
	}
}

// fused matches the arm64 instructions that multiply and add with one rounding.
var fused = regexp.MustCompile(`\bFN?M(ADD|SUB)[DS]\b`)

// TestNoFusedMultiplyAdd compiles the bit-exact packages for arm64 and looks
// for fused instructions in the listing.
func TestNoFusedMultiplyAdd(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles five packages for another machine")
	}
	goTool, err := exec.LookPath("go")
	if err != nil {
		t.Skip("no go command on the path")
	}
	for _, dir := range bitExact {
		cmd := exec.Command(goTool, "build", "-gcflags=-S", "./"+dir)
		cmd.Dir = root(t)
		cmd.Env = append(os.Environ(), "GOOS=linux", "GOARCH=arm64", "CGO_ENABLED=0")
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("%s for arm64: %v\n%s", dir, err, tail(string(out), 20))
		}
		if dir == "physics" && !strings.Contains(string(out), "FMULD") {
			t.Fatalf("%s for arm64 gave a listing without any multiplication: the check would see nothing", dir)
		}
		seen := 0
		for line := range strings.Lines(string(out)) {
			if fused.MatchString(line) && strings.Contains(line, "evenwear") || fused.MatchString(line) && strings.Contains(line, ".go:") {
				if seen++; seen <= 8 {
					t.Errorf("%s: fused multiply-add: %s", dir, strings.TrimSpace(line))
				}
			}
		}
		if seen > 8 {
			t.Errorf("%s: and %d more fused instructions", dir, seen-8)
		}
	}
}

func tail(s string, lines int) string {
	all := strings.Split(strings.TrimSpace(s), "\n")
	return strings.Join(all[max(0, len(all)-lines):], "\n")
}
