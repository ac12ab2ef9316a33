package play

import (
	"testing"

	"evenwear/physics/inspect"
)

// TestSteeringWheelTurnsAsItIsDescribed: the drawing of a slow stop turns with the
// words that stand beside it.
func TestSteeringWheelTurnsAsItIsDescribed(t *testing.T) {
	lib, words := shelf(t)
	s, err := NewDesk(lib, words).Open("warm_wheel", 1)
	if err != nil {
		t.Fatal(err)
	}
	c, _ := inspect.Find("slow_stop")
	for i, word := range c.Meter.Words {
		s.reading = &reading{inst: inspect.Instance{Check: "slow_stop"}, check: c, display: int64(i)}
		v := s.instrument()
		want := map[string]float64{"pulls_left": -1, "straight": 0, "pulls_right": 1}[word]
		if len(v.Needle) != 1 || v.Needle[0] != want || v.Marks != s.say("see.slow_stop."+word) {
			t.Errorf("%s is drawn at %v, want %g, and described by %q", word, v.Needle, want, v.Marks)
		}
	}
}
