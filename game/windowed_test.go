package main

import (
	"errors"
	"testing"
	"time"

	"evenwear/scoring/record"
)

// What the cover offers to go on with: the session last written to, one that
// was handed over only until its debrief has been looked at, a damaged one never.
func TestLastLeft(t *testing.T) {
	at := func(minute int) time.Time { return time.Date(2026, 1, 1, 8, minute, 0, 0, time.UTC) }
	going, over := []byte(`{"do":"go","what":"seat"}`), []byte(`{"do":"handover"}`)
	list := []record.Entry{
		{Name: "half", Acts: 9, Changed: at(1), Last: going},
		{Name: "empty", Changed: at(9)},
		{Name: "handed", Acts: 90, Changed: at(5), Last: over},
		{Name: "of ten", Acts: 9, Changed: at(8), Last: going, Header: record.Header{For: &record.Purpose{Check: "selfcheck-1", Car: 3}}},
		{Name: "torn", Acts: 9, Changed: at(7), Last: going, Err: errors.New("damaged")},
	}
	for _, c := range []struct {
		read map[string]bool
		name string
		over bool
	}{{nil, "handed", true}, {map[string]bool{"handed": false}, "handed", true}, {map[string]bool{"handed": true}, "half", false}} {
		if name, over := lastLeft(list, c.read); name != c.name || over != c.over {
			t.Errorf("read %v: %q, over %t; want %q, %t", c.read, name, over, c.name, c.over)
		}
	}
	if name, _ := lastLeft(nil, nil); name != "" {
		t.Errorf("nothing kept, but %q is offered", name)
	}
}
