package play_test

import (
	"math"
	"slices"
	"strings"
	"testing"
	"time"

	"evenwear/game/play"
	"evenwear/scoring/record"
)

// TestDebriefIsKept: what a debrief came to is kept once, however often it is
// opened; why the car was drawn is told after it and never before.
func TestDebriefIsKept(t *testing.T) {
	if testing.Short() {
		t.Skip("works a debrief out")
	}
	d, dir := desk(t), t.TempDir()
	s, err := d.Open("warm_wheel", 4)
	if err != nil {
		t.Fatal(err)
	}
	k, err := s.KeepFor(dir, &record.Purpose{Why: "pair", Causes: []string{"pin_seized", "piston_corroded"}, N: 37})
	if err != nil {
		t.Fatal(err)
	}
	sealed := func(v *play.View) bool {
		return !slices.ContainsFunc(v.Nodes, func(n play.Node) bool { return n.ID == "drawn" || strings.Contains(n.Name+n.Value, "37 %") })
	}
	for _, a := range []play.Act{
		{Do: play.Go, What: "seat"}, {Do: play.Check, What: "hold_sink"}, {Do: play.Write, Text: "0"},
		{Do: play.OpenCall}, {Do: play.Row, What: "honestly_worn@car"}, {Do: play.Counter, What: "honestly_worn@car", N: 9},
		{Do: play.Seal}, {Do: play.Remedy, What: "leave@car"}, {Do: play.Work}, {Do: play.Release, What: "release.use"}, {Do: play.HandOver},
	} {
		if err := k.Do(a); err != nil {
			t.Fatal(err)
		}
		if !sealed(k.View()) {
			t.Fatalf("after %+v the sheet says why the car was drawn", a)
		}
	}
	now := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	if err := k.KeepResult(now); err != nil {
		t.Fatal(err)
	}
	if list, _, err := record.Results(dir); len(list) != 0 || err != nil {
		t.Fatalf("before the debrief %v is kept, %v", list, err)
	}
	if err := k.Close(); err != nil {
		t.Fatal(err)
	}
	for hour := range 2 {
		r, err := d.Resume(dir, k.Name)
		if err != nil {
			t.Fatal(err)
		}
		if err := r.Settle(t.Context(), nil); err != nil {
			t.Fatal(err)
		}
		if err := r.KeepResult(now.Add(time.Duration(hour) * time.Hour)); err != nil {
			t.Fatal(err)
		}
		if said := r.View().Debrief.Drawn; !strings.Contains(said, "37 %") || strings.Contains(said, "‹") {
			t.Errorf("the debrief says %q of why", said)
		}
		r.Close()
	}
	list, damaged, err := record.Results(dir)
	if err != nil || damaged != nil || len(list) != 1 {
		t.Fatalf("%d results, %v, %v", len(list), damaged, err)
	}
	r, sum, worn := list[0], 0.0, 0.0
	for _, f := range r.Said {
		sum += f.N
		if f.ID == "honestly_worn" {
			worn = f.N
		}
	}
	if math.Abs(sum-0.45) > 1e-9 || worn != 0.45 {
		t.Errorf("belief adds to %g, %g of it on honest wear; want 0.45 both: the rest was left open", sum, worn)
	}
	if len(r.Truth) != 1 || d.Library().Cause(r.Truth[0]) == nil || len(r.Marks) != 8 || r.Session != k.Name || !r.When.Equal(now) || r.Library != d.Hash() {
		t.Errorf("kept is %+v", r)
	}
}
