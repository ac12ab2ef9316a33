package play

import (
	"math"
	"strconv"

	"evenwear/physics/inspect"
)

// marks describes an instrument by its marks, so that it must be read, not
// copied: "past the 4th long mark, 7 short marks on".
func (s *Session) marks(c *inspect.Check, f face, display int64, needle []float64) string {
	m := &c.Meter
	scale := s.words.Say("marks.scale", "long", plain(f.long), "division", plain(m.Division), "unit", s.sayUnit(m.Unit))
	switch f.kind {
	case "stepped_feeler":
		n := int(m.Value(display))
		switch {
		case n < int(f.lo):
			return s.words.Say("marks.feeler_none", "first", int(f.lo))
		case n >= int(f.hi):
			return s.words.Say("marks.feeler_all", "last", n)
		}
		return s.words.Say("marks.feeler", "clears", n, "proud", n+1)
	case "reservoir", "dipstick", "coolant", "cap_stick":
		return s.words.Say("marks."+f.kind, "at", s.level(m, needle[0]))
	case "dip_tube":
		return s.words.Say("marks.dip_tube", "at", s.position(m, f, needle[0])) + " " + scale
	case "blade_feeler":
		at := m.Value(display)
		switch next := plain(at + m.Resolution); {
		case display <= m.First():
			return s.words.Say("marks.blade_none", "first", next)
		case at >= f.hi:
			return s.words.Say("marks.blade_all", "last", plain(at))
		default:
			return s.words.Say("marks.blade", "goes", plain(at), "stays", next)
		}
	case "thickness_gauge":
		if len(needle) == 2 {
			return s.words.Say("marks.gauge_two", "first", s.sleeve(needle[0]), "second", s.sleeve(needle[1])) + " " + s.say("marks.gauge_scale")
		}
		return s.words.Say("marks.gauge", "at", s.sleeve(needle[0])) + " " + s.say("marks.gauge_scale")
	case "dial_indicator", "rule":
		lo, hi := needle[0], needle[len(needle)-1]
		id := "marks." + string(c.ID)
		if c.ID == "runout" {
			lo, hi = needle[0], needle[0]
			for _, x := range needle {
				lo, hi = min(lo, x), max(hi, x)
			}
		}
		return s.words.Say(id, "first", s.position(m, f, lo), "second", s.position(m, f, hi)) + " " + scale
	}
	return s.words.Say("marks.needle", "at", s.position(m, f, needle[0])) + " " + scale
}

// position says where a needle stands by long and short marks from zero.
func (s *Session) position(m *inspect.Meter, f face, x float64) string {
	// In half divisions, so that a needle between two marks is said so.
	halves := int(math.Round(x / m.Division * 2))
	side := ""
	if halves < 0 {
		side, halves = "_below", -halves
	}
	perLong := int(math.Round(f.long/m.Division)) * 2
	long, rest := halves/perLong, halves%perLong
	short, half := rest/2, rest%2 == 1
	args := []any{"long", long, "nth", s.nth(long), "short", short}
	part := "both"
	switch {
	case long == 0 && short == 0 && !half:
		return s.say("at." + "zero" + kindOf(f))
	case long == 0:
		part = "short"
	case short == 0 && !half:
		part = "long"
	}
	said := s.words.Say("at."+part+kindOf(f)+side, args...)
	if half {
		said = s.words.Say("at.half", "at", said)
	}
	return said
}

// kindOf picks the wording: a pendulum has a middle, others begin at zero.
func kindOf(f face) string {
	if f.kind == "pendulum" {
		return "." + f.kind
	}
	return ""
}

// level says where fluid stands [%] by ticks from MIN and MAX.
func (s *Session) level(m *inspect.Meter, x float64) string {
	// In half divisions, so that a level between two ticks is said so.
	halves := int(math.Round(x / m.Division * 2))
	full := int(math.Round(100/m.Division)) * 2
	part := "short.reservoir"
	switch {
	case halves == 0:
		return s.say("at.zero.reservoir")
	case halves == full:
		return s.say("at.long.reservoir")
	case halves > full:
		part, halves = "both.reservoir", halves-full
	case halves < 0:
		part, halves = "short.reservoir_below", -halves
	}
	said := s.words.Say("at."+part, "short", halves/2)
	if halves%2 == 1 {
		said = s.words.Say("at.half", "at", said)
	}
	return said
}

// sleeve reads a screw gauge as it is engraved: half millimetres on the sleeve,
// fifty lines round the thimble.
func (s *Session) sleeve(x float64) string {
	hundredths := int(math.Round(x * 100))
	whole, rest := hundredths/100, hundredths%100
	id := "at.sleeve"
	if rest >= 50 {
		id, rest = "at.sleeve_half", rest-50
	}
	return s.words.Say(id, "lines", whole, "thimble", rest)
}

// nth is an ordinal: 1st, 2nd, 3rd, 4th.
func (s *Session) nth(n int) string {
	end := "th"
	if n%100 < 11 || n%100 > 13 {
		switch n % 10 {
		case 1:
			end = "st"
		case 2:
			end = "nd"
		case 3:
			end = "rd"
		}
	}
	return strconv.Itoa(n) + s.say("nth."+end)
}
