package scenarios

import "testing"

func TestEmbedded(t *testing.T) {
	lib, err := Embedded()
	if err != nil {
		t.Fatal(err)
	}
	if len(lib.Cars) < 1 || len(lib.Groups) != 9 || len(lib.Causes) < 10 || len(lib.Remedies) < 12 || len(lib.Jobs) < 8 {
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
