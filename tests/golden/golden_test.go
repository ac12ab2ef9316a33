// Package golden pins one long run of everything that must be the same bits on
// every machine: physics, checks, jobs, evidence, marks. Each stage of the run
// is hashed by itself, so that a change names the stage it moved.
//
//	go test ./tests/golden            compares with game/play/hashes.txt
//	go test ./tests/golden -update    keeps new hashes; say why in the commit
package golden

import (
	"encoding/binary"
	"flag"
	"fmt"
	"hash"
	"hash/fnv"
	"math"
	"os"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"evenwear/physics"
)

var update = flag.Bool("update", false, "keep the hashes of this run: sessions recorded before will replay differently")

// kept is where the hashes stand: in the program, which tells by them a session that
// would replay differently.
const kept = "../../game/play/hashes.txt"

// A sum is the running hash of one stage.
type sum struct {
	t testing.TB
	h hash.Hash64
}

func newSum(t testing.TB) *sum { return &sum{t, fnv.New64a()} }

// put adds numbers, or structs of them by their fields' names, bit for bit. What
// is zero is left out, so that a field added later moves nothing until it is used.
func (s *sum) put(values ...any) {
	s.t.Helper()
	for i, v := range values {
		s.walk(strconv.Itoa(i), reflect.ValueOf(v))
	}
}

func (s *sum) walk(path string, v reflect.Value) {
	var bits uint64
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			s.walk(path+"."+v.Type().Field(i).Name, v.Field(i))
		}
		return
	case reflect.Array, reflect.Slice:
		for i := range v.Len() {
			s.walk(path+"."+strconv.Itoa(i), v.Index(i))
		}
		return
	case reflect.Float64:
		bits = math.Float64bits(v.Float())
	case reflect.Int, reflect.Int64:
		bits = uint64(v.Int())
	case reflect.Bool:
		if v.Bool() {
			bits = 1
		}
	default:
		s.t.Fatalf("%s: a %v cannot be hashed", path, v.Type())
	}
	if bits == 0 {
		return
	}
	s.h.Write([]byte(path))
	s.h.Write(binary.LittleEndian.AppendUint64(nil, bits))
}

// text adds an id.
func (s *sum) text(id string) {
	s.put(len(id))
	s.h.Write([]byte(id))
}

// must stops the run at an error.
func must[T any](s *sum) func(T, error) T {
	return func(v T, err error) T {
		s.t.Helper()
		if err != nil {
			s.t.Fatal(err)
		}
		return v
	}
}

// TestGolden runs every stage and compares. A stage that differs on one machine
// only has lost its bits there; one that differs everywhere has been changed.
func TestGolden(t *testing.T) {
	var got strings.Builder
	for _, st := range stages() {
		s := newSum(t)
		st.run(s)
		fmt.Fprintf(&got, "%016x %s\n", s.h.Sum64(), st.name)
	}
	if *update {
		if err := os.WriteFile(kept, []byte(got.String()), 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(kept)
	if err != nil {
		t.Fatal(err)
	}
	a, b := strings.Split(got.String(), "\n"), strings.Split(string(want), "\n")
	if len(a) != len(b) {
		t.Errorf("%d stages, %d are kept", len(a)-1, len(b)-1)
	}
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			t.Errorf("stage %d: got  %q\n         want %q: recorded sessions replay differently; if that is meant, keep it with -update and say why", i+1, a[i], b[i])
		}
	}
}

// TestGoldenBites: one unit in the last place of one number of the car moves
// every stage that uses it, and the same run twice moves none.
func TestGoldenBites(t *testing.T) {
	for _, st := range []stage{{"hydraulics", hydraulics(healthy, normal)}, {"stop", stops}, {"descent", descents}} {
		a, b, c := newSum(t), newSum(t), newSum(t)
		st.run(a)
		st.run(b)
		if a.h.Sum64() != b.h.Sum64() {
			t.Errorf("%s: the same run gives another hash", st.name)
		}
		nudge = true
		st.run(c)
		nudge = false
		if a.h.Sum64() == c.h.Sum64() {
			t.Errorf("%s: a brake radius one unit in the last place greater leaves the hash as it is", st.name)
		}
	}
}

// TestGoldenCarsUseEveryNumber: between them the cars of the run have every number of a
// condition, so that each equation's bits are pinned.
func TestGoldenCarsUseEveryNumber(t *testing.T) {
	used, all := map[string]bool{}, map[string]bool{}
	var walk func(name string, v reflect.Value)
	walk = func(name string, v reflect.Value) {
		switch v.Kind() {
		case reflect.Struct:
			for i := range v.NumField() {
				walk(name+"."+v.Type().Field(i).Name, v.Field(i))
			}
		case reflect.Array: // of wheels, pads, pins: one for all
			for i := range v.Len() {
				walk(name, v.Index(i))
			}
		default:
			all[name] = true
			used[name] = used[name] || !v.IsZero()
		}
	}
	for _, car := range []func() physics.Condition{healthy, airy, leaking, hosed, covered, low, worn, vented, patched, swelling} {
		walk("", reflect.ValueOf(car()))
	}
	for name := range all {
		if !used[name] {
			t.Errorf("no car of the run has a%s", name)
		}
	}
}
