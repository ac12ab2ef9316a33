package playtest

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"evenwear/game/play"
)

// Read is what a faultless eye writes down before an instrument: worked out
// from its marks in words, as a screen reader would give them.
func Read(v *play.InstrumentView, choose func(perception string) string) (string, error) {
	switch v.Kind {
	case "observation":
		return choose(v.Marks), nil
	case "thermometer", "boil_tester":
		return v.Digits, nil
	case "stepped_feeler":
		return feeler(v)
	case "blade_feeler":
		return blades(v)
	case "thickness_gauge":
		return sleeves(v)
	}
	at, err := positions(v)
	if err != nil {
		return "", err
	}
	x := at[0]
	if len(at) == 2 {
		// Two places on one scale: the reading is how far they are apart.
		x = at[1] - at[0]
		if check, _, _ := strings.Cut(v.Check, "@"); check == "pedal_travel" || check == "assist_reserve" || check == "hold_sink" || check == "assist" || check == "free_travel" {
			x = -x
		}
	}
	return strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64), nil
}

var steps = regexp.MustCompile(`[Ss]tep (\d+)(?:, the longest, still)? (clears|stands)`)

func feeler(v *play.InstrumentView) (string, error) {
	m := steps.FindStringSubmatch(v.Marks)
	switch {
	case m == nil:
		return "", fmt.Errorf("no step in %q", v.Marks)
	case m[2] == "clears":
		return m[1], nil
	}
	n, err := strconv.Atoi(m[1])
	return strconv.Itoa(n - 1), err // even the first stands proud
}

var packs = regexp.MustCompile(`pack of ([\d.]+) mm goes|together, ([\d.]+) mm|thinnest`)

func blades(v *play.InstrumentView) (string, error) {
	m := packs.FindStringSubmatch(v.Marks)
	switch {
	case m == nil:
		return "", fmt.Errorf("no blades in %q", v.Marks)
	case m[1]+m[2] == "":
		return "0", nil // not even the thinnest goes in
	}
	return m[1] + m[2], nil
}

var sleeve = regexp.MustCompile(`sleeve (\d+) whole lines?(?: and the)? ?(half|show)[^;]*; the thimble stands at line (\d+)`)

func sleeves(v *play.InstrumentView) (string, error) {
	var at []float64
	for _, m := range sleeve.FindAllStringSubmatch(v.Marks, -1) {
		lines, _ := strconv.ParseFloat(m[1], 64)
		thimble, _ := strconv.ParseFloat(m[3], 64)
		if m[2] == "half" {
			lines += 0.5
		}
		at = append(at, lines+thimble/100)
	}
	switch len(at) {
	case 1:
		return strconv.FormatFloat(at[0], 'f', 2, 64), nil
	case 2:
		return strconv.FormatFloat(at[0]-at[1], 'f', 2, 64), nil
	}
	return "", fmt.Errorf("no sleeve in %q", v.Marks)
}

// place matches one position on a scale.
var place = regexp.MustCompile(`at zero|at MIN|at MAX|in the middle|(below zero )?past the (\d+)\w\w long mark( below zero| to the right| to the left)?, (\d+) short marks? on|at the (\d+)\w\w long mark( below zero| to the right| to the left)?|(\d+) (?:short marks?|ticks?) (past zero|below zero|to the right|to the left|above MIN|below MIN|above MAX)`)

func positions(v *play.InstrumentView) ([]float64, error) {
	body, _, _ := strings.Cut(v.Marks, "Long marks")
	body = strings.Replace(body, "Ten ticks from MIN to MAX.", "", 1)
	var at []float64
	all := place.FindAllStringSubmatchIndex(body, -1)
	for i, ix := range all {
		m := make([]string, len(ix)/2)
		for k := range m {
			if ix[2*k] >= 0 {
				m[k] = body[ix[2*k]:ix[2*k+1]]
			}
		}
		end := len(body)
		if i+1 < len(all) {
			end = all[i+1][0]
		}
		x, err := value(v, m, strings.HasPrefix(body[ix[1]:end], " and half way"))
		if err != nil {
			return nil, err
		}
		at = append(at, x)
	}
	if len(at) == 0 || len(at) > 2 {
		return nil, fmt.Errorf("%d places in %q", len(at), v.Marks)
	}
	return at, nil
}

// value puts a place into the instrument's unit.
func value(v *play.InstrumentView, m []string, half bool) (float64, error) {
	n := func(s string) float64 { f, _ := strconv.ParseFloat(s, 64); return f }
	var x float64
	switch {
	case m[0] == "at zero" || m[0] == "at MIN" || m[0] == "in the middle":
		return 0, nil
	case m[0] == "at MAX":
		x = v.Long
	case m[2] != "":
		x = n(m[2])*v.Long + n(m[4])*v.Division
	case m[5] != "":
		x = n(m[5]) * v.Long
	case m[8] == "above MAX":
		x = v.Long + n(m[7])*v.Division
	case m[8] == "below MIN":
		x = -n(m[7]) * v.Division
	default:
		x = n(m[7]) * v.Division
	}
	if half {
		x += math.Copysign(v.Division/2, x)
	}
	if strings.Contains(m[0], "below zero") || strings.Contains(m[0], "to the left") {
		x = -math.Abs(x)
	}
	return x, nil
}
