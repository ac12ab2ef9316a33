package term

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

// called is a job on its call sheet, and the sheet as it is printed.
func called(t *testing.T, d *play.Desk, words *assets.Words, job string) (*play.Session, sheet) {
	t.Helper()
	s, err := d.Open(job, 3)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Do(play.Act{Do: play.OpenCall}); err != nil {
		t.Fatal(err)
	}
	return s, read(s.View().Nodes, words)
}

// TestCallFitsAScreen: the call and the remedies begin with their groups, in no
// more lines than a small screen has, and whatever the car.
func TestCallFitsAScreen(t *testing.T) {
	const rows = 40
	d, words := playtest.Desk(t)
	var before sheet
	for _, job := range []string{"warm_wheel", "thirsty", "just_bought"} {
		s, calling := called(t, d, words, job)
		if before.list != nil && (!slices.Equal(calling.list, before.list) || len(calling.folds) != len(before.folds)) {
			t.Errorf("%s: the catalogue is not that of the other job", job)
		}
		before = calling
		if err := s.Do(play.Act{Do: play.Seal}); err != nil {
			t.Fatal(err)
		}
		for name, sh := range map[string]sheet{"call": calling, "remedies": read(s.View().Nodes, words)} {
			lines := 0
			for _, e := range sh.entries {
				for _, l := range e.lines {
					lines += len(wrap(l, 80, 4))
				}
			}
			if lines > rows {
				t.Errorf("%s: the %s takes %d lines of 80, want at most %d", job, name, lines, rows)
			}
		}
	}
}

// TestWholeCatalogueCanBePicked: every row of the catalogue and every remedy has
// its own number, its entry can be read by a number, and a search finds its name.
func TestWholeCatalogueCanBePicked(t *testing.T) {
	d, words := playtest.Desk(t)
	s, calling := called(t, d, words, "warm_wheel")
	c := s.View().Call
	names := map[string][]play.Action{}
	for _, g := range c.Groups {
		for _, k := range g.Causes {
			names[k.Name] = k.Places
		}
	}
	pickable(t, &calling, names)
	if err := s.Do(play.Act{Do: play.Seal}); err != nil {
		t.Fatal(err)
	}
	deciding := read(s.View().Nodes, words)
	names = map[string][]play.Action{}
	for _, p := range s.View().Call.Parts {
		for _, r := range p.Remedies {
			names[r.Name] = r.Places
		}
	}
	pickable(t, &deciding, names)
}

func pickable(t *testing.T, s *sheet, names map[string][]play.Action) {
	t.Helper()
	for name, places := range names {
		if found := s.search(name); !slices.ContainsFunc(found, func(l string) bool { return strings.HasSuffix(l, name) }) {
			t.Errorf("a search for %q finds %q", name, found)
		}
		lines, ok := s.unfold(name)
		if !ok || len(lines) != len(places)+1 {
			t.Fatalf("%q is read as %q, want its name and %d places", name, lines, len(places))
		}
		for i, p := range places {
			token, _, _ := strings.Cut(strings.TrimSpace(lines[i+1]), " ")
			if got, ok := s.pick(token); !ok || got.Act != p.Act {
				t.Errorf("%s picks %+v, want %+v", token, got.Act, p.Act)
			}
		}
	}
}

// TestSearch: own words before explanations, beginnings of words alone, page by page.
func TestSearch(t *testing.T) {
	s := sheet{list: []listed{{"1.1 Reservoir low", ""}, {"1.2 Seal worn", "the servo"}, {"1.3 Servo dead", ""}}}
	if got := s.search("servo"); !slices.Equal(got, []string{"1.3 Servo dead", "1.2 Seal worn"}) {
		t.Errorf("servo: %q", got)
	}
	if got := s.search("seal WORN"); len(got) != 1 {
		t.Errorf("two words: %q", got)
	}
	d, words := playtest.Desk(t)
	session, calling := called(t, d, words, "warm_wheel")
	var out bytes.Buffer
	if err := Run(t.Context(), session, words, strings.NewReader("/\n/\n/zzz\n"), &out, Options{}); err != ErrEnded {
		t.Fatal(err)
	}
	for i, l := range calling.list {
		if name := wrap(l.line, 80, 4)[0]; strings.Contains(out.String(), name+"\n") != (i < 2*page) {
			t.Errorf("two pages of %d: line %d is %q", page, i, name)
		}
	}
	if !strings.Contains(out.String(), words.Say("term.none_found", "words", "zzz")) {
		t.Error("a search that finds nothing says nothing")
	}
}

// TestReadingCoversTheSheet: while an instrument is read the sheet is covered, not
// gone: after it only what the reading has changed is printed, and a line of the
// notebook is struck out by the same token wherever the learner stands.
func TestReadingCoversTheSheet(t *testing.T) {
	d, words := playtest.Desk(t)
	s, err := d.Open("warm_wheel", 3)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := Run(t.Context(), s, words, strings.NewReader("1\nq\n40\n2\n-1\nquit\n"), &out, Options{}); err != ErrLeft {
		t.Fatal(err)
	}
	said := out.String()
	if n := strings.Count(said, words.Say("act.call")); n != 1 {
		t.Errorf("the way to the call is printed %d times, want once:\n%s", n, said)
	}
	if n := strings.Count(said, "-1 "+words.Say("act.strike")); n != 1 {
		t.Errorf("the way to strike the line out is printed %d times, want once", n)
	}
	if v := s.View(); len(v.Notebook) != 1 || !v.Notebook[0].Struck {
		t.Errorf("-1 left the notebook %+v", v.Notebook)
	}
}
