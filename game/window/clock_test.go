package window

import (
	"testing"
	"time"
)

func TestClockLosesNothing(t *testing.T) {
	var c Clock
	n := 0
	for range 60 { // sixty frames of a sixtieth make one second
		n += c.Steps(time.Second / 60)
	}
	if n != 999 && n != 1000 { // 60 × 16 666 666 ns is 40 ns short of a second
		t.Errorf("sixty frames gave %d ms, want 999 or 1000", n)
	}
	for range 1000 {
		n += c.Steps(300 * time.Microsecond)
	}
	if n < 1299 || n > 1300 {
		t.Errorf("then 1000 × 0.3 ms gave %d ms in all, want 1299 or 1300", n)
	}
}

func TestClockIsBounded(t *testing.T) {
	var c Clock
	if n := c.Steps(time.Hour); n != 100 {
		t.Errorf("an hour owed %d ms, want 100", n)
	}
	if n := c.Steps(-time.Hour); n != 0 {
		t.Errorf("a clock set back gave %d ms, want 0", n)
	}
	if n := c.Steps(10 * time.Millisecond); n != 10 {
		t.Errorf("after that 10 ms gave %d ms", n)
	}
}
