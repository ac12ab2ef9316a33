package term

import (
	"strconv"
	"strings"

	"evenwear/game/play"
)

// A Words says a sentence by its id.
type Words interface {
	Say(id string, args ...any) string
}

// A choice is an action with what is typed to take it.
type choice struct {
	token  string // lower case
	action play.Action
	folded bool // not on the sheet until its fold is read
}

// An entry is one node as it is printed.
type entry struct {
	id    string
	lines []string // unwrapped
	here  bool     // about the place where the learner stands
}

// A sheet is one view as it is printed, with what can be typed.
type sheet struct {
	entries []entry
	choices []choice
	folds   []fold
	list    []listed     // what is folded, line by line
	write   *play.Action // the field that takes what is not a choice
	reading bool         // an instrument waits to be read
	words   Words
	wrong   error // what was typed for a number is none, in a sentence
}

// read lays a list of nodes out. Actions with a key are chosen by it. Other
// nodes with actions are numbered, above any key that is a number; a node with
// several actions letters them: 12a, 12b. What stands under a heading, and the
// checks of a part, are folded.
func read(nodes []play.Node, w Words) sheet {
	s := sheet{words: w}
	next := 1
	for _, n := range nodes {
		for _, a := range n.Actions {
			if k, err := strconv.Atoi(a.Key); err == nil && k >= next {
				next = k + 1
			}
		}
	}
	seen := map[string]int{}
	folder := newFolder(&s, nodes, w)
	for _, n := range nodes {
		s.reading = s.reading || n.Role == "instrument"
		if n.Under != "" {
			folder.under(&n)
			continue
		}
		id := n.ID
		if seen[n.ID]++; seen[n.ID] > 1 {
			id += "#" + strconv.Itoa(seen[n.ID])
		}
		if folder.folds(&n) {
			folder.line(id, &n, next)
			next++
			continue
		}
		e := entry{id: id, lines: []string{head(n, w)}, here: here(&n)}
		free := 0
		for _, a := range n.Actions {
			if a.Key == "" && !field(a) {
				free++
			}
		}
		letter := 0
		for _, a := range n.Actions {
			var token string
			switch {
			case a.Act.Do == play.Write && a.Act.Text == "":
				s.write = &a
				e.lines = append(e.lines, "  "+w.Say("term.field", "label", a.Label))
				continue
			case a.Key != "":
				token = strings.ToLower(a.Key)
			default:
				token = strconv.Itoa(next)
				if free > 1 {
					token += suffix(letter)
				}
				letter++
			}
			e.lines = append(e.lines, "  "+offer(strings.ToUpper(token), a, w))
			s.choices = append(s.choices, choice{token: token, action: a})
		}
		if free > 0 {
			next++
		}
		s.entries = append(s.entries, e)
	}
	return s
}

func field(a play.Action) bool { return a.Act.Do == play.Write && a.Act.Text == "" }

// suffix is a, b … z, aa, ab …
func suffix(n int) string {
	if n >= 26 {
		return suffix(n/26-1) + suffix(n%26)
	}
	return string(rune('a' + n))
}

// head is a node's own line.
func head(n play.Node, w Words) string {
	s := n.Name
	if n.Value != "" {
		s = w.Say("term.name_value", "name", n.Name, "value", n.Value)
		if n.Name == "" {
			s = n.Value
		}
	}
	switch n.Role {
	case "heading":
		return w.Say("term.heading", "text", s)
	case "caution":
		return w.Say("term.caution", "text", s)
	}
	return s
}

// offer is the line of one action.
func offer(token string, a play.Action, w Words) string {
	label := a.Label
	if a.Minutes > 0 {
		label = w.Say("term.minutes", "label", label, "minutes", strconv.FormatFloat(a.Minutes, 'f', -1, 64))
	}
	if a.Act.Do == play.Tell {
		label = w.Say("term.then_text", "label", label, "token", token)
	}
	switch {
	case a.Chosen && a.Act.Do == play.Prepare: // why it cannot be done again says nothing more
		return w.Say("term.offer", "token", token, "label", w.Say("term.done", "label", label))
	case a.Chosen:
		label = w.Say("term.chosen", "label", label)
	}
	if !a.Enabled {
		return w.Say("term.not_now", "token", token, "label", label, "why", a.Why)
	}
	return w.Say("term.offer", "token", token, "label", label)
}

// pick finds what a line asks for: an action with its number or text filled in.
func (s *sheet) pick(line string) (play.Action, bool) {
	token, rest, _ := strings.Cut(strings.TrimSpace(line), " ")
	token, rest = strings.ToLower(token), strings.TrimSpace(rest)
	s.wrong = nil
	for _, c := range s.choices {
		if c.token != token {
			continue
		}
		a := c.action
		switch a.Act.Do {
		case play.Tell:
			a.Act.Text = rest
		case play.Foot, play.Say, play.Slow, play.Answer:
			if a.Act.Do == play.Answer && a.Act.N != 0 { // one of a choice
				return a, rest == ""
			}
			if a.Act.N, s.wrong = play.Figure(s.words, rest); s.wrong != nil {
				return a, false
			}
		default:
			if rest != "" {
				return a, false
			}
		}
		return a, true
	}
	if a, ok := s.counter(token, rest); ok {
		return a, true
	}
	return s.called(line)
}

// called finds the one action that is called what the line says, such as a word
// an instrument asks for.
func (s *sheet) called(line string) (a play.Action, ok bool) {
	for _, c := range s.choices {
		if c.folded || !strings.EqualFold(c.action.Label, strings.TrimSpace(line)) {
			continue
		}
		if ok {
			return a, false // two are called so
		}
		a, ok = c.action, true
	}
	return a, ok
}

// counter reads "A 11" or "a11": so many counters on row A.
func (s *sheet) counter(token, rest string) (play.Action, bool) {
	if i := strings.IndexAny(token, "0123456789"); i > 0 && rest == "" {
		token, rest = token[:i], token[i:]
	}
	n, err := strconv.Atoi(rest)
	if err != nil {
		return play.Action{}, false
	}
	for _, c := range s.choices {
		if c.token == token+"+" && c.action.Act.Do == play.Counter {
			a := c.action
			a.Act.N, a.Enabled = float64(n), true
			return a, true
		}
	}
	return play.Action{}, false
}
