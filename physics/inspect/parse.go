package inspect

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Ids of what can be wrong with a written reading; the sentences for learners
// are looked up by them.
const (
	ReadingEmpty     = "reading.empty"
	ReadingNotNumber = "reading.not_number"
	ReadingOutside   = "reading.outside"
	ReadingBetween   = "reading.between" // Lo and Hi are the steps it lies between
	ReadingNotWord   = "reading.not_word"
)

// A ReadingError says why what was written is no reading of this meter.
type ReadingError struct {
	ID     string   // one of the Reading ids
	Text   string   // what was written, shortened
	Lo, Hi float64  // [unit] what the instrument can show
	Unit   string   // id of the unit
	Words  []string // ids of the words to choose from, for a meter with words
}

func (e *ReadingError) Error() string {
	switch e.ID {
	case ReadingEmpty:
		return "nothing was written"
	case ReadingNotWord:
		return fmt.Sprintf("%q is none of: %s", e.Text, strings.Join(e.Words, ", "))
	case ReadingBetween:
		return fmt.Sprintf("%s is between the steps %g and %g %s", e.Text, e.Lo, e.Hi, e.Unit)
	case ReadingOutside:
		return fmt.Sprintf("%s is outside the instrument: it shows %g to %g %s", e.Text, e.Lo, e.Hi, e.Unit)
	}
	return fmt.Sprintf("%q is not a number: want %g to %g %s", e.Text, e.Lo, e.Hi, e.Unit)
}

// longestReading is more characters than any figure or word needs.
const longestReading = 24

// Parse turns what a learner wrote into a display. A figure may have a decimal
// point or comma, a sign in front and a trailing unit id; a word is given by
// its id in any case. The error is a *[ReadingError].
func (m *Meter) Parse(text string) (int64, error) {
	t := strings.TrimSpace(text)
	if t == "" {
		return 0, m.bad(ReadingEmpty, t)
	}
	if len(m.Words) > 0 {
		for i, w := range m.Words {
			if strings.EqualFold(w, t) {
				return int64(i), nil
			}
		}
		return 0, m.bad(ReadingNotWord, t)
	}
	v, ok := Figure(strings.TrimSpace(strings.TrimSuffix(t, m.Unit)))
	switch {
	case !ok:
		return 0, m.bad(ReadingNotNumber, t)
	case !(m.Lo <= v && v <= m.Hi):
		return 0, m.bad(ReadingOutside, t)
	}
	if d := m.Show(v); math.Abs(m.Value(d)-v) <= 1e-6*m.Resolution {
		return d, nil
	}
	// What the instrument does not tell is not rounded behind the learner's back.
	below := float64(math.Floor(v/m.Resolution) * m.Resolution)
	return 0, &ReadingError{ID: ReadingBetween, Text: t, Lo: below, Hi: below + m.Resolution, Unit: m.Unit}
}

// Figure reads a plain decimal number, with at most one point or comma and a sign
// in front: no exponent, no hexadecimal, no name of an infinity, nothing an
// instrument could not show.
func Figure(t string) (float64, bool) {
	if len(t) > longestReading {
		return 0, false
	}
	t = strings.Replace(t, "−", "-", 1) // the typographic minus
	t = strings.Replace(t, ",", ".", 1)
	digits := strings.TrimLeft(t, "+-")
	if len(t)-len(digits) > 1 || digits == "" || strings.Trim(digits, "0123456789.") != "" {
		return 0, false
	}
	v, err := strconv.ParseFloat(t, 64)
	return v, err == nil
}

func (m *Meter) bad(id, text string) error {
	if r := []rune(text); len(r) > longestReading {
		text = string(r[:longestReading]) + "…"
	}
	return &ReadingError{ID: id, Text: text, Lo: m.Lo, Hi: m.Hi, Unit: m.Unit, Words: m.Words}
}
