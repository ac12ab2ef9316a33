package scenarios

import (
	"math"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// NumBackgrounds is how many things an inspector cannot know, or only by being told.
const NumBackgrounds = 4

// Backgrounds names them, in the order of the coordinates of [Vary].
func Backgrounds() []string {
	return []string{"pads_km", "pads_thinner_mm", "harshness_ratio", "room_c"}
}

// belief is what an inspector holds of one background: a normal distribution
// cut off at lo and hi.
type belief struct{ mean, sd, lo, hi float64 }

// beliefs is the declared prior. What was told is held with a small doubt (an
// invoice rounds, a thermometer stands in the sun); the rest is not looked up
// in the job but believed of any such car. All assumed.
func (d *Driven) beliefs() [NumBackgrounds]belief {
	b := [NumBackgrounds]belief{
		{mean: min(18000, d.Km/2), lo: min(500, d.Km), hi: d.Km}, // pads last some 35 000 km: met half-way through
		{mean: 0.3, sd: 0.25, lo: 0, hi: 2},                      // makes differ by a few tenths of a millimetre
		{mean: 1, sd: 0.2, lo: 0.4, hi: 2},                       // town or country
		{mean: 18, sd: 5, lo: -20, hi: 45},                       // a workshop's air
	}
	b[0].sd = 0.4 * b[0].mean
	told := [NumBackgrounds][2]float64{{d.PadsKm, 0.02 * d.PadsKm}, {d.PadsThinnerMm, 0.05}, {d.Harshness, 0.08}, {d.RoomC, 1}}
	for i := range b {
		if d.Known[i] {
			b[i].mean, b[i].sd = told[i][0], told[i][1]
		}
	}
	return b
}

// Vary is the car's use as an inspector could imagine it: each background at b
// standard deviations from what is believed. It uses of d only the clock and
// what Known says was told, so it gives nothing of the truth away. Missing
// coordinates are 0.
func Vary(d Driven, b []float64) Driven {
	out := d
	at := [NumBackgrounds]*float64{&out.PadsKm, &out.PadsThinnerMm, &out.Harshness, &out.RoomC}
	for i, p := range d.beliefs() {
		z := 0.0
		if i < len(b) {
			z = b[i]
		}
		*at[i] = min(max(p.mean+float64(p.sd*z), p.lo), p.hi)
	}
	return out
}

// unlikely refuses a job whose truth an inspector would hardly think of: 2.5
// standard deviations from the belief is the limit.
func unlikely(r *reader, n *yaml.Node, j *Job) {
	d := &j.Driven
	have := [NumBackgrounds]float64{d.PadsKm, d.PadsThinnerMm, d.Harshness, d.RoomC}
	for i, p := range d.beliefs() {
		if d.Known[i] {
			continue
		}
		if lo, hi := p.mean-float64(2.5*p.sd), p.mean+float64(2.5*p.sd); have[i] < lo || have[i] > hi {
			name := Backgrounds()[i]
			r.fail(n, "driven."+name, show(have[i])+" is too unusual to be left untold",
				show(round3(max(lo, p.lo)))+" to "+show(round3(min(hi, p.hi)))+", or a fact that tells it")
		}
	}
}

// figure is a number of the car's use as facts show it.
func (d *Driven) figure(key string) string {
	switch key {
	case "clock_km":
		return grouped(d.Km)
	case "pads_km":
		return grouped(d.PadsKm)
	case "pads_thinner_mm":
		return show(d.PadsThinnerMm)
	case "harshness_ratio":
		return show(d.Harshness)
	}
	return show(d.RoomC)
}

// grouped writes whole kilometres with a space that does not break.
func grouped(v float64) string {
	s := strconv.FormatFloat(v, 'f', 0, 64)
	var b strings.Builder
	for i, c := range s {
		if i > 0 && (len(s)-i)%3 == 0 {
			b.WriteRune('\u00a0')
		}
		b.WriteRune(c)
	}
	return b.String()
}

// round3 keeps three decimals of a limit that is only to be read.
func round3(v float64) float64 { return math.Round(v*1000) / 1000 }
