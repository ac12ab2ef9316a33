package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"math"
	"strconv"
	"strings"
	"testing"
)

// traced runs trace and returns its rows as numbers, the header checked.
func traced(t *testing.T, header string, args ...string) [][]float64 {
	t.Helper()
	var out, errs bytes.Buffer
	if code := runTrace(args, &out, &errs); code != 0 {
		t.Fatalf("trace %s: exit %d: %s", strings.Join(args, " "), code, errs.String())
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(rows[0], ","); got != header {
		t.Fatalf("header %s, want %s", got, header)
	}
	var all [][]float64
	for _, row := range rows[1:] {
		var nums []float64
		for _, c := range row {
			v, err := strconv.ParseFloat(c, 64)
			if err != nil {
				t.Fatal(err)
			}
			nums = append(nums, v)
		}
		all = append(all, nums)
	}
	return all
}

// TestTraceReference reproduces the reference points of the front corner
// (an independent program) from the command line alone: 0.1 %, 0.5 N or 1 µm.
func TestTraceReference(t *testing.T) {
	pins := func(f string) []string {
		return []string{"-set", "wheel.front_left.pin_friction_n=" + f}
	}
	const x, y, tilt = 7, 8, 9
	for _, r := range []struct {
		name string
		set  []string
		row  int // of 0, 1, 8, 0 MPa
		want map[int]float64
	}{
		{"healthy, rising", nil, 1, map[int]float64{1: 2115.2, 2: 2085.1, x: 0.324, y: 0.171}},
		{"healthy, rising", nil, 2, map[int]float64{1: 17831.8, 2: 17801.5, x: 0.692, y: 0.420}},
		{"healthy, released", nil, 3, map[int]float64{1: 0, 2: 29.9, x: 0.148, y: 0.121}},
		{"both pins 200 N, released", pins("185"), 3, map[int]float64{1: 0, 2: 399.9, x: 0.155, y: 0.130}},
		{"upper pin 20 kN", []string{"-set", "wheel.front_left.pin_upper_friction_n=19985"}, 2,
			map[int]float64{1: 17841.0, 2: 15253.9, 3: 9851, 4: 7990, 5: 4939, 6: 10315, x: 0.655, y: 0.383, tilt: -0.954}},
		{"both pins 20 kN", pins("19985"), 2, map[int]float64{1: 17845.5, 2: 12294.1, x: 0.619, y: 0.347}},
		{"seal 2500 N and 20 kN/mm, released", []string{"-set", "front.seal_friction_n=2500", "-set", "front.seal_rate_kn_per_mm=20"}, 3,
			map[int]float64{1: 2500, 2: 2529.9, x: 0.340, y: 0.181}},
	} {
		args := append([]string{"-pressure", "0,1,8,0", "-wheel", "front_left", "-set", "front.ear_friction_n=0"}, r.set...)
		rows := traced(t, pressureHeader, args...)
		for col, want := range r.want {
			tol := max(0.5, 1e-3*math.Abs(want))
			if col >= x {
				tol = 1e-3 // 1 µm, 1 µrad of what is stated to three decimals
			}
			if got := rows[r.row][col]; math.Abs(got-want) > tol {
				t.Errorf("%s, column %d: %g, want %g ± %.2g (independent program)", r.name, col+1, got, want, tol)
			}
		}
	}
}

// TestTraceSteps: a list reached in its own fine steps and one that leaves them
// to trace give the same, so large gaps really are walked.
func TestTraceSteps(t *testing.T) {
	coarse := traced(t, pressureHeader, "-pressure", "8,0")
	fine := traced(t, pressureHeader, "-pressure", "0.5,1,1.5,2,2.5,3,3.5,4,4.5,5,5.5,6,6.5,7,7.5,8,7.5,7,6.5,6,5.5,5,4.5,4,3.5,3,2.5,2,1.5,1,0.5,0")
	for i, pair := range [][2]int{{0, 15}, {1, 31}} {
		for c := range coarse[i] {
			if coarse[i][c] != fine[pair[1]][c] {
				t.Errorf("row %d, column %d: %g in one go, %g step by step", i, c+1, coarse[i][c], fine[pair[1]][c])
			}
		}
	}
}

// TestTracePedal holds the whole car to the independent program's figures with
// proportioning: 150 N give 7.34 MPa, 53 mm and 7.7 m/s².
func TestTracePedal(t *testing.T) {
	rows := traced(t, pedalHeader, "-pedal", "0,100,150,0")
	near := func(what string, got, want, tol float64) {
		if math.Abs(got-want) > tol {
			t.Errorf("%s %g, want %g ± %g", what, got, want, tol)
		}
	}
	near("pedal mm", rows[2][1], 53, 1)
	near("front MPa", rows[2][2], 7.34, 0.08)
	near("rear MPa", rows[2][3], 2.5+0.35*(rows[2][2]-2.5), 0.03)
	near("deceleration", rows[2][4], 7.7, 0.05)
	near("released front MPa", rows[3][2], 0, 0.02)
	// Without run-out the outer pads keep about 30 N each: four times 0.38·30 N·0.104/0.3 is 16 N.
	near("deceleration without a foot", rows[0][4], 0.012, 0.004)
	near("reservoir of the new car, at MAX", rows[0][5], 210, 0.1)
	worn := traced(t, pedalHeader, "-pedal", "0", "-set", "wheel.front_left.lining_loss_mm=8")
	// The piston follows both linings of its wheel: 2 · 8 mm · π/4 · (54 mm)².
	near("reservoir fallen by wear", rows[0][5]-worn[0][5], 2*0.8*math.Pi/4*5.4*5.4, 0.1)
	long := traced(t, pedalHeader, "-pedal", "150", "-set", "wheel.front_right.air_cm3=3")
	if long[0][1] < rows[2][1]+5 {
		t.Errorf("3 cm³ of air give %g mm of pedal, without %g", long[0][1], rows[2][1])
	}
}

func TestTraceRunout(t *testing.T) {
	none := traced(t, pressureHeader, "-pressure", "1,0")
	set := traced(t, pressureHeader, "-pressure", "1,0", "-set", "wheel.front_left.runout_um=200")
	// The disc stands 0.1 mm nearer the outer pad; the body floats after it, the piston need not.
	if d := set[0][8] - none[0][8]; math.Abs(d+0.1) > 0.002 {
		t.Errorf("200 µm of run-out move the body by %g mm at 1 MPa, want -0.1", d)
	}
}

// TestTraceBadInput: a sentence, exit code 2, no CSV.
func TestTraceBadInput(t *testing.T) {
	const list = "allowed are numbers from 0 to "
	for _, r := range []struct {
		want string
		args []string
	}{
		{"give either -pressure or -pedal", nil},
		{"give either -pressure or -pedal", []string{"-pressure", "1", "-pedal", "1"}},
		{`-pedal, value 1: NaN is out of range; ` + list + "2000 N", []string{"-pedal", "NaN"}},
		{`-pedal, value 2: Inf is out of range; ` + list, []string{"-pedal", "0,Inf"}},
		{`-pedal, value 1: -1 is out of range; ` + list, []string{"-pedal", "-1"}},
		{`-pedal, value 1: 1e9 is out of range; ` + list, []string{"-pedal", "1e9"}},
		{`-pedal, value 1: 1e999 is out of range; ` + list, []string{"-pedal", "1e999"}},
		{`-pedal, value 1: "hard" is not a number; ` + list, []string{"-pedal", "hard"}},
		{`-pedal, value 1: "0x10" is not a number; ` + list, []string{"-pedal", "0x10"}},
		{`-pressure: the list is empty; ` + list + "30 MPa", []string{"-pressure", ""}},
		{`-pressure, value 2: "" is not a number; ` + list, []string{"-pressure", "1,"}},
		{`-pressure, value 1: -Inf is out of range; ` + list, []string{"-pressure=-Inf"}},
		{`-pressure: 1001 values; at most 1000`, []string{"-pressure", strings.Repeat("1,", 1000) + "1"}},
		{`unknown wheel "front"; known are front_left, front_right, rear_left, rear_right`, []string{"-pressure", "1", "-wheel", "front"}},
		{`unknown car "hatch"; the nearest known are compact_hatchback, `, []string{"-pressure", "1", "-car", "hatch"}},
		{`-set front.piston_mm=9: unknown path "front.piston_mm"; the nearest known are front.piston_diameter_mm, `, []string{"-pressure", "1", "-set", "front.piston_mm=9"}},
		{`-set mass_kg: the = is missing; write path=value`, []string{"-pressure", "1", "-set", "mass_kg"}},
		{`-set mass_kg=heavy: "heavy" is not a number; allowed is 500 to 5000 kg`, []string{"-pressure", "1", "-set", "mass_kg=heavy"}},
		{`-set mass_kg=NaN: NaN is out of range; allowed is 500 to 5000 kg`, []string{"-pressure", "1", "-set", "mass_kg=NaN"}},
		{`-set wheel.front_left.air_cm3=-1: -1 is out of range; allowed is 0 to 50 cm³`, []string{"-pressure", "1", "-set", "wheel.front_left.air_cm3=-1"}},
		{`flag provided but not defined: -speed; known are -car`, []string{"-speed", "1"}},
		{`"2" stands alone; every value follows a flag`, []string{"-pressure", "1,", "2"}},
		{`nowhere: there is no such folder`, []string{"-pressure", "1", "-folder", "nowhere"}},
	} {
		var out, errs bytes.Buffer
		code := runTrace(r.args, &out, &errs)
		if code != 2 || out.Len() > 0 || !strings.HasPrefix(errs.String(), "trace: "+r.want) || strings.Count(errs.String(), "\n") != 1 {
			t.Errorf("trace %.80q: exit %d, out %q, said %q, want %q", r.args, code, out.String(), errs.String(), r.want)
		}
	}
}

// TestTraceImpossible: numbers each possible but not together are a sentence too.
func TestTraceImpossible(t *testing.T) {
	var out, errs bytes.Buffer
	code := runTrace([]string{"-pressure", "1", "-set", "wheel.front_left.lining_loss_mm=20"}, &out, &errs)
	if code == 0 || out.Len() > 0 || !strings.HasPrefix(errs.String(), "trace: ") {
		t.Errorf("exit %d, out %q, said %q", code, out.String(), errs.String())
	}
}

// closed is a reader that has gone away.
type closed struct{}

func (closed) Write([]byte) (int, error) { return 0, errors.New("broken pipe") }

func TestTraceClosedPipe(t *testing.T) {
	for _, args := range [][]string{{"-pressure", "0,8"}, {"-pedal", "0"}, {"-paths"}, {"-help"}} {
		var errs bytes.Buffer
		if code := runTrace(args, closed{}, &errs); code != 1 || !strings.Contains(errs.String(), "cannot be written: broken pipe") {
			t.Errorf("%v: exit %d, said %q", args, code, errs.String())
		}
	}
}
