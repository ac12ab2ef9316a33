package scoring

import (
	"testing"

	"evenwear/physics"
	"evenwear/physics/physicstest"
)

func BenchmarkLook(b *testing.B) {
	for b.Loop() {
		if _, err := Look(physicstest.Hatchback(), physics.Condition{}, physics.MixedDuty()); err != nil {
			b.Fatal(err)
		}
	}
}
