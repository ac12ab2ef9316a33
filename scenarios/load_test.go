package scenarios

import (
	"strings"
	"testing"

	"evenwear/physics"
)

func TestEmbedded(t *testing.T) {
	lib, err := Embedded()
	if err != nil {
		t.Fatal(err)
	}
	if len(lib.Cars) != 3 || len(lib.Groups) != 9 || len(lib.Causes) < 40 || len(lib.Remedies) < 30 || len(lib.Jobs) < 40 || len(lib.Lessons) < 6 {
		t.Errorf("%d cars, %d groups, %d causes, %d remedies, %d jobs, %d lessons", len(lib.Cars), len(lib.Groups), len(lib.Causes), len(lib.Remedies), len(lib.Jobs), len(lib.Lessons))
	}
	sound, two := 0, 0
	truth := map[string]bool{"honestly_worn": true} // of jobs without a fault
	for _, j := range lib.Jobs {
		if j.Sound() {
			sound++
		}
		if len(j.Faults) == 2 {
			two++
		}
		for _, f := range j.Faults {
			truth[f.Cause.ID] = true
			if strings.Contains(strings.ToLower(j.Title+" "+j.Complaint), strings.ToLower(f.Cause.Name)) {
				t.Errorf("job %s: the owner names %q", j.ID, f.Cause.Name)
			}
		}
	}
	if sound < 8 || two < 8 {
		t.Errorf("nothing is wrong in %d jobs, two faults are in %d; want eight of each", sound, two)
	}
	for _, c := range lib.Causes {
		if !truth[c.ID] {
			t.Errorf("no job has the cause %s", c.ID)
		}
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
