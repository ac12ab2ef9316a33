package scenarios

import (
	"slices"
	"strings"
)

// NearestWords says which of the known names are most like name.
func NearestWords(name string, known []string) string {
	near := Nearest(name, known, 3)
	switch len(near) {
	case 0:
		return "there are none"
	case 1:
		return "the nearest known is " + near[0]
	}
	return "the nearest known are " + strings.Join(near, ", ")
}

// Nearest returns up to n of the known names that are most like name, the most
// alike first; equal ones in the order of known.
func Nearest(name string, known []string, n int) []string {
	type near struct {
		name string
		d    int
	}
	all := make([]near, 0, len(known))
	for _, k := range known {
		all = append(all, near{k, unlike(name, k)})
	}
	slices.SortStableFunc(all, func(a, b near) int { return a.d - b.d })
	out := make([]string, 0, n)
	for _, a := range all[:min(n, len(all))] {
		out = append(out, a.name)
	}
	return out
}

// unlike is the edit distance in bytes from what was written to a known name. A
// letter left out costs half of a wrong one: who writes "mass" means "mass_kg".
func unlike(a, b string) int {
	if len(a) > 100 {
		a = a[:100] // a name this long is no name; do not spend quadratic time on it
	}
	const missing, surplus, wrong = 1, 2, 2
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j * missing
	}
	for i := range len(a) {
		diag := row[0]
		row[0] = (i + 1) * surplus
		for j := range len(b) {
			sub := diag
			if a[i] != b[j] {
				sub += wrong
			}
			diag = row[j+1]
			row[j+1] = min(sub, row[j]+missing, row[j+1]+surplus)
		}
	}
	return row[len(b)]
}
