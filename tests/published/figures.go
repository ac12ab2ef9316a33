package published

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"
)

// Figures reads a CSV of numbers with a heading line.
func Figures(t testing.TB, file string) (heading []string, rows [][]float64) {
	t.Helper()
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range all[1:] {
		row := make([]float64, len(line))
		for i, cell := range line {
			if row[i], err = strconv.ParseFloat(cell, 64); err != nil {
				t.Fatal(err)
			}
		}
		rows = append(rows, row)
	}
	return all[0], rows
}
