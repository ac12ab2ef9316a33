package tests

import (
	"fmt"
	"os/exec"
	"slices"
	"strconv"
	"strings"
	"testing"

	"evenwear/tests/published"
)

// quantities are the outside checks of hydraulics, torque, heat, road, fluids,
// inspection, wear and reliability, each with what it is about.
var quantities = map[int]string{
	1: "pedal lever", 2: "line pressure", 3: "wheel cylinder force", 4: "travel ratio", 5: "heated tank, open", 6: "heated tank, closed",
	7: "oil in a press", 8: "compressibilities", 9: "bulk modulus", 10: "fluid squeezed", 11: "air, slow", 12: "air, fast", 13: "leak jet",
	14: "floating caliper", 15: "dissolved air", 16: "hose swell", 17: "hose bores", 18: "two-face torque", 19: "uniform wear", 20: "uniform pressure",
	21: "face count", 22: "corner torque", 23: "linearity", 24: "friction code", 25: "truck brakes, 10 kg", 26: "truck brakes, 100 kg", 27: "speed law",
	28: "constant flux, surface", 29: "constant flux, depth", 30: "flux into a plate", 31: "grid number", 32: "interface", 33: "lumped cooling",
	34: "one stop's energy", 35: "one snub", 36: "steady descent", 37: "radiation", 38: "conduction", 39: "vane cooling", 40: "vane share",
	41: "iron's diffusivity", 42: "specific heat", 43: "stop from 30 m/s", 44: "with reaction", 45: "seat-belt stop", 46: "skid marks", 47: "MFDD",
	48: "MFDD with build-up", 49: "start of a stop", 50: "cold effectiveness", 51: "hot performance", 52: "recovery", 53: "regulation's sum",
	54: "old secondary rule", 55: "stopping chart", 56: "what it implies", 58: "statutory chart", 59: "statutory stop", 60: "statutory stop",
	61: "static balance", 62: "static balance", 63: "dynamic front share", 64: "ideal split", 65: "tyre adhesion", 66: "oiled face", 67: "highway stop",
	68: "old cars", 69: "old cars as physics", 70: "boiling minima", 71: "wet point", 72: "viscosity", 73: "boiling stability", 75: "fluid taken by wear",
	76: "reservoir's size", 80: "coolant density", 81: "coolant heat", 82: "coolant freezing", 83: "hot level", 84: "oil's growth", 85: "oil density", 86: "vessel's growth",
	92: "assist check", 93: "reserve of assistance", 97: "pedal reserve", 98: "pedal travel", 99: "pedal hold",
	150: "drag of a sound wheel",
	108: "Archard's law", 109: "energy form", 110: "pad life", 111: "trend with load",
	128: "Cronbach's alpha", 129: "item-rest, alpha if dropped", 130: "alpha by hand", 131: "interval of alpha", 132: "Spearman–Brown",
}

// unverified are bounds from memory: loose, and no limit of acceptance. Their rows
// are called OC-M1 and so on.
var unverified = map[int]string{
	1: "R13-H coefficients", 2: "part failure", 8: "fluid in the cold", 9: "boiling against water", 10: "brake fluid", 11: "disc convection", 12: "grey iron",
	13: "drag when released", 14: "caliper take-up", 15: "pad compressibility", 16: "thickness and run-out", 17: "pad wear rate", 18: "disc allowance, panic pressure",
}

// memory is added to the number of a row from memory, so that they stand last.
const memory = 1000

// TestOutside prints one table of every computed value that is held against one
// from outside, and misses none. The rows stand in the rooms' own tests.
func TestOutside(t *testing.T) {
	if testing.Short() {
		t.Skip("runs the tests of other packages")
	}
	goTool, err := exec.LookPath("go")
	if err != nil {
		t.Skip("no go command on the path")
	}
	cmd := exec.Command(goTool, "test", "-v", "-run", "Outside|OC98", "./physics", "./scoring", "./game/audit", "./tests/cars")
	cmd.Dir = root(t)
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Errorf("%v\n%s", err, tail(string(out), 30))
	}
	type row struct {
		id    int
		cells []string
	}
	var rows []row
	for line := range strings.Lines(string(out)) {
		_, line, ok := strings.Cut(strings.TrimRight(line, "\n"), published.Mark)
		if !ok {
			continue
		}
		cells := strings.Split(line, "\t")
		name, part, _ := strings.Cut(cells[0], " ")
		number, remembered := strings.CutPrefix(strings.Trim(strings.TrimPrefix(name, "OC-"), ","), "M")
		id, err := strconv.Atoi(number)
		if err != nil {
			t.Errorf("a row is called %q", cells[0])
		}
		what := quantities[id]
		if remembered {
			what = unverified[id]
			id += memory
			if !strings.Contains(cells[4], "unverified bound") {
				t.Errorf("%s: its source %q does not say that it is an unverified bound", cells[0], cells[4])
			}
		}
		rows = append(rows, row{id, append([]string{strings.TrimSpace(what + " " + part)}, cells[1:]...)})
	}
	slices.SortStableFunc(rows, func(a, b row) int { return a.id - b.id })
	var table strings.Builder
	fmt.Fprintf(&table, "\n%-7s %-40s %12s  %-26s %-10s %s\n", "id", "quantity", "ours", "published", "difference", "source")
	seen := map[int]bool{}
	for _, r := range rows {
		seen[r.id] = true
		name := fmt.Sprintf("OC-%02d", r.id)
		if r.id > memory {
			name = fmt.Sprintf("OC-M%d", r.id-memory)
		}
		fmt.Fprintf(&table, "%-7s %-40s %12s  %-26s %-10s %s\n", name, r.cells[0], r.cells[1], r.cells[2], r.cells[3], r.cells[4])
	}
	for id := range memory {
		if what, wanted := quantities[id]; wanted && !seen[id] {
			t.Errorf("OC-%02d, %s: no row", id, what)
		}
		if what, wanted := unverified[id]; wanted && !seen[id+memory] {
			t.Errorf("OC-M%d, %s: no row", id, what)
		}
	}
	t.Log(table.String())
}
