package play

import (
	"math"
	"strconv"
	"strings"

	"evenwear/physics/inspect"
)

func (s *Session) say(id string) string { return s.words.Say(id) }

// sayWork names a preparation: "take the wheel off, front left".
func (s *Session) sayWork(name string) string {
	id, at, wheel := strings.Cut(name, "@")
	if !wheel {
		return s.words.Say("prep." + id)
	}
	return s.words.Say("play.at", "what", s.words.Say("prep."+id), "place", s.words.Say("place."+at))
}

// sayCheck names a check with its place.
func (s *Session) sayCheck(inst inspect.Instance) string {
	name := s.words.Say("check." + string(inst.Check))
	if !inst.PerWheel {
		return name
	}
	return s.words.Say("play.at", "what", name, "place", s.words.Say("place."+inst.Wheel.String()))
}

func (s *Session) sayUnit(unit string) string {
	if unit == "word" {
		return ""
	}
	return s.words.Say("unit." + unit)
}

func (s *Session) sayWord(_ *inspect.Check, id string) string { return s.words.Say("word." + id) }

// sayDisplay is a display in words or figures, as a learner would write it.
func (s *Session) sayDisplay(c *inspect.Check, display int64) string {
	m := &c.Meter
	if len(m.Words) > 0 {
		return s.sayWord(c, m.Words[display])
	}
	return figure(m, display)
}

// figure writes a display with the decimals its steps need.
func figure(m *inspect.Meter, display int64) string {
	return strconv.FormatFloat(m.Value(display), 'f', decimals(m.Resolution), 64)
}

// grouped writes a whole number of five digits and more in groups of three: 12 000.
func grouped(x float64) string {
	s := whole(x)
	if len(s) < 5 {
		return s
	}
	for i := len(s) - 3; i > 0 && s[i-1] != '-'; i -= 3 {
		s = s[:i] + "\u00a0" + s[i:]
	}
	return s
}

// decimals is how many a multiple of step needs, at most four.
func decimals(step float64) int {
	for d := range 4 {
		scaled := step * math.Pow10(d)
		if math.Abs(scaled-math.Round(scaled)) < 1e-9 {
			return d
		}
	}
	return 4
}

// plain writes a number without needless digits.
func plain(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// Joined puts parts of a list into one sentence.
func Joined(words Words, parts []string) string {
	if len(parts) == 0 {
		return ""
	}
	said := parts[0]
	for _, p := range parts[1:] {
		said = words.Say("view.and", "list", said, "next", p)
	}
	return said
}

// Figure reads what a learner typed for a number, or says what is wrong with it.
func Figure(words Words, text string) (float64, error) {
	v, ok := inspect.Figure(strings.TrimSpace(text))
	if !ok {
		return 0, &Refusal{"no.figure", words.Say("no.figure", "text", short(text))}
	}
	return v, nil
}
