package play

import (
	"slices"
	"testing"
)

// TestEmptyGroupsAreLeftOut: a group without a cause and a part without a remedy,
// as a small library of one's own has, open nothing and are not offered.
func TestEmptyGroupsAreLeftOut(t *testing.T) {
	lib, words := shelf(t)
	small := *lib
	small.Groups = append(slices.Clone(lib.Groups), lib.Groups[0])
	small.Groups[len(lib.Groups)].ID = "bare"
	small.Parts = append(slices.Clone(lib.Parts), lib.Parts[0])
	small.Parts[len(lib.Parts)].ID = "bare"
	s, err := NewDesk(&small, words).Open("warm_wheel", 1)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Do(Act{Do: OpenCall}); err != nil {
		t.Fatal(err)
	}
	c := s.View().Call
	if len(c.Groups) != len(lib.Groups) || len(c.Parts) != len(lib.Parts) {
		t.Errorf("the call offers %d groups and %d parts, of which %d and %d hold something", len(c.Groups), len(c.Parts), len(lib.Groups), len(lib.Parts))
	}
	b, err := NewBench(&small, words, lib.Cars[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	if n := len(b.View().Groups); n != len(lib.Groups) {
		t.Errorf("the bench offers %d groups, of which %d hold something", n, len(lib.Groups))
	}
}
