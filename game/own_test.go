package main

import (
	"strings"
	"testing"

	"evenwear/game/play"
)

// TestOwnRange: a use that no job file may tell is refused of an own car too, in a
// sentence with what is allowed.
func TestOwnRange(t *testing.T) {
	for _, x := range []struct {
		own  play.Own
		want string
	}{
		{play.Own{ClockKm: 80000}, ""},
		{play.Own{ClockKm: 80000, PadsKm: 80000, RoomC: -20, RoomTold: true}, ""},
		{play.Own{ClockKm: 99}, "--clock 99: want 100 to 500000 km"},
		{play.Own{ClockKm: 400000, PadsKm: 300000}, "--pads 300000: want 100 to 200000 km"},
		{play.Own{ClockKm: 50000, PadsKm: 60000}, "no more than the clock shows, 50000"},
		{play.Own{ClockKm: 80000, RoomC: 46, RoomTold: true}, "--room 46: want -20 to 45 °C"},
	} {
		err := ownRange(x.own)
		if (err == nil) != (x.want == "") || err != nil && !strings.Contains(err.Error(), x.want) {
			t.Errorf("%+v: %v, want %q", x.own, err, x.want)
		}
	}
}
