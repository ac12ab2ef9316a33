package scenarios

import (
	"testing"

	"evenwear/physics"
)

func TestEmbedded(t *testing.T) {
	lib, err := Embedded()
	if err != nil {
		t.Fatal(err)
	}
	if len(lib.Cars) < 1 || len(lib.Groups) != 9 || len(lib.Causes) < 40 || len(lib.Remedies) < 30 || len(lib.Jobs) < 8 {
		t.Errorf("%d cars, %d groups, %d causes, %d remedies, %d jobs", len(lib.Cars), len(lib.Groups), len(lib.Causes), len(lib.Remedies), len(lib.Jobs))
	}
	sound := 0
	for _, j := range lib.Jobs {
		if len(j.Faults) == 0 {
			sound++
		}
	}
	if sound != 2 {
		t.Errorf("%d jobs have nothing wrong, want 2", sound)
	}
}

func BenchmarkEmbedded(b *testing.B) {
	for b.Loop() {
		if _, err := Embedded(); err != nil {
			b.Fatal(err)
		}
	}
}

// TestMisfitsHavePaths: every number the physics may refuse beside another stands in a
// car's file: an empty car with a disc breaks as many rules as it can.
func TestMisfitsHavePaths(t *testing.T) {
	seen := 0
	for _, v := range []float64{-1, 1} {
		var s physics.Spec
		for i := range fields {
			if f := &fields[i]; f.OfCar() {
				*f.spec(&s) = v * float64(1+(i*7)%5)
			}
		}
		s.Front.DiscDiameter, s.Rear.DiscDiameter = 1, 1
		for _, bad := range s.Misfits() {
			seen++
			if f := fieldOf(bad.What); !f.OfCar() {
				t.Errorf("%s is no number of a car", bad.What)
			}
			for _, p := range bracedPath.FindAllString(bad.Allowed, -1) {
				if f := fieldOf(p[1 : len(p)-1]); !f.OfCar() {
					t.Errorf("%s is no number of a car", p)
				}
			}
		}
	}
	if seen < 15 {
		t.Errorf("only %d misfits", seen)
	}
}
