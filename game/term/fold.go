package term

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"evenwear/game/play"
)

// A fold is what is printed only when it is asked for: a group of a catalogue,
// one of its entries, the checks of a part.
type fold struct {
	token string // that reads it, lower case: "1", "1.2"
	name  string
	lines []string // unwrapped
}

// foldsID is the entry that says how folds are read.
const foldsID = "folds"

// A listed line is what a search finds: by its own words, or by what stands
// under it.
type listed struct {
	line, under string
}

// folder lays folded nodes out for a sheet.
type folder struct {
	s     *sheet
	words Words
	count map[string]int    // nodes under each heading
	token map[string]string // of a heading met
	told  bool              // how to read a fold has been said
}

func newFolder(s *sheet, nodes []play.Node, w Words) *folder {
	f := &folder{s: s, words: w, count: map[string]int{}, token: map[string]string{}}
	for _, n := range nodes {
		if n.Under != "" {
			f.count[n.Under]++
		}
	}
	return f
}

// folds tells whether a node is printed as one line with a number.
func (f *folder) folds(n *play.Node) bool {
	return f.count[n.ID] > 0 || n.Part != "" && len(n.Actions) > 0
}

// line is the one line in the place of a folded node, with how to read it before
// the first.
func (f *folder) line(id string, n *play.Node, number int) {
	token := strconv.Itoa(number)
	if !f.told {
		f.told = true
		f.s.entries = append(f.s.entries, entry{id: foldsID, lines: []string{f.words.Say("term.folds", "token", token)}})
	}
	e := entry{id: id, here: here(n)}
	if f.count[n.ID] > 0 {
		f.token[n.ID] = token
		e.lines = []string{f.words.Say("term.fold", "token", token, "name", n.Name, "n", f.count[n.ID])}
		f.s.folds = append(f.s.folds, fold{token, n.Name, []string{head(*n, f.words)}})
	} else {
		now := 0
		for _, a := range n.Actions {
			if a.Enabled {
				now++
			}
		}
		say := "term.fold_some"
		if now == len(n.Actions) {
			say = "term.fold"
		}
		e.lines = []string{f.words.Say(say, "token", token, "name", n.Name, "n", len(n.Actions), "now", now)}
		lines := f.offers(token, n)
		f.s.folds = append(f.s.folds, fold{token, n.Name, append([]string{head(*n, f.words)}, lines...)})
		for _, l := range lines {
			f.s.list = append(f.s.list, listed{line: l})
		}
	}
	f.s.entries = append(f.s.entries, e)
}

// under puts a node under its heading, as "1.2" under "1".
func (f *folder) under(n *play.Node) {
	var group *fold
	for i := range f.s.folds {
		if f.s.folds[i].token == f.token[n.Under] {
			group = &f.s.folds[i]
		}
	}
	if group == nil {
		return // its heading does not stand before it
	}
	token := group.token + "." + strconv.Itoa(len(group.lines))
	name := n.Name
	for _, a := range n.Actions {
		if a.Chosen {
			name = f.words.Say("term.chosen", "label", n.Name)
			break
		}
	}
	line := "  " + f.words.Say("term.offer", "token", token, "label", name)
	group.lines = append(group.lines, line)
	f.s.list = append(f.s.list, listed{line: line, under: n.Value})
	f.s.folds = append(f.s.folds, fold{token, n.Name, append([]string{head(*n, f.words)}, f.offers(token, n)...)})
}

// offers letters the actions of a folded node, however few.
func (f *folder) offers(token string, n *play.Node) (lines []string) {
	for i, a := range n.Actions {
		t := token + suffix(i)
		lines = append(lines, "  "+offer(strings.ToUpper(t), a, f.words))
		f.s.choices = append(f.s.choices, choice{token: t, action: a, folded: n.Under != ""})
	}
	return lines
}

// here tells whether a node is about the place where the learner stands.
func here(n *play.Node) bool {
	for _, a := range n.Actions {
		if a.Act.Do == play.Prepare || a.Act.Do == play.Check {
			return true
		}
	}
	return false
}

// unfold finds what a line asks to read: a fold by its number or its name.
func (s *sheet) unfold(line string) (lines []string, ok bool) {
	line = strings.TrimSpace(line)
	for _, f := range s.folds {
		if strings.EqualFold(f.token, line) || strings.EqualFold(f.name, line) {
			return f.lines, true
		}
	}
	return nil, false
}

// search finds the folded lines in which words begin with all these: those that
// have them themselves first, then those under which they stand. None find all.
func (s *sheet) search(words string) (lines []string) {
	wanted := split(words)
	all := func(text string) bool {
		has := split(text)
		return !slices.ContainsFunc(wanted, func(w string) bool {
			return !slices.ContainsFunc(has, func(h string) bool { return strings.HasPrefix(h, w) })
		})
	}
	for _, l := range s.list {
		if all(l.line) {
			lines = append(lines, l.line)
		}
	}
	for _, l := range s.list {
		if !all(l.line) && all(l.line+" "+l.under) {
			lines = append(lines, l.line)
		}
	}
	return lines
}

// split is the words of a text in lower case.
func split(text string) []string {
	return strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}
