package scenarios

import (
	"slices"
	"strings"
)

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

// unlike is the edit distance of two names, halved in weight where one holds
// the other: who writes "mass" means "mass_kg".
func unlike(a, b string) int {
	if len(a) > 100 {
		a = a[:100] // a name this long is no name; do not spend quadratic time on it
	}
	d := 2 * distance(a, b)
	if a != "" && (strings.Contains(b, a) || strings.Contains(a, b)) {
		d /= 2
	}
	return d
}

// distance is the Levenshtein distance in bytes.
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diag := row[0]
		row[0] = i + 1
		for j := range len(b) {
			sub := diag
			if a[i] != b[j] {
				sub++
			}
			diag = row[j+1]
			row[j+1] = min(sub, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
