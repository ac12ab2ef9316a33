package play_test

import (
	"regexp"
	"testing"

	"evenwear/game/play"
	"evenwear/game/play/playtest"
)

// clumsy is what no sentence may hold: one of many, a full stop run into a
// colon, a blank before a mark, a blank that was not filled in.
var clumsy = regexp.MustCompile(`\b1 (short |long |whole )?[a-z]+(marks|lines|ticks|minutes|counters|checks|acts|looks|cautions|cars|groups)\b|\b1 (marks|lines|ticks|minutes|counters|checks|acts|looks|cautions|cars|groups)\b|\?:| [;,.]( |$)|between past|\{|‹| $`)

// spoken reads every sentence that a player is shown.
type spoken struct {
	*play.Session
	t    *testing.T
	read *int
}

func (s spoken) Do(a play.Act) error {
	err := s.Session.Do(a)
	v := s.View()
	texts := []string{v.Notice}
	for _, n := range v.Nodes {
		texts = append(texts, n.Name, n.Value)
		if n.Name != "" && n.Value != "" {
			texts = append(texts, n.Name+": "+n.Value)
		}
		for _, a := range n.Actions {
			texts = append(texts, a.Label, a.Why)
		}
	}
	for _, text := range texts {
		*s.read++
		if m := clumsy.FindString(text); m != "" {
			s.t.Errorf("%q in %q", m, text)
		}
	}
	return err
}

// TestSentencesRead: nothing that is said from the complaint to the hand-over
// reads as put together by a machine.
func TestSentencesRead(t *testing.T) {
	d, words := playtest.Desk(t)
	for i, job := range []string{"warm_wheel", "like_a_sponge"} {
		s, err := d.Open(job, uint64(7+i))
		if err != nil {
			t.Fatal(err)
		}
		read := 0
		if _, err := playtest.Play(spoken{s, t, &read}, playtest.PlanOf(job), playtest.See(words)); err != nil {
			t.Fatal(err)
		}
		if read < 1000 {
			t.Errorf("%s: only %d sentences were read", job, read)
		}
	}
}

// TestOfOne: one of a thing is not called many. What is counted out of so many,
// as "3 of 20 counters", never has one to count out of.
func TestOfOne(t *testing.T) {
	_, words := playtest.Desk(t)
	for _, id := range words.IDs() {
		var args []any
		for _, name := range []string{"n", "of", "short", "lines", "left", "counters", "spent", "harms", "due", "kept", "done", "checks", "minutes", "causes", "groups", "readings", "limit"} {
			args = append(args, name, 1)
		}
		said := words.Say(id, args...)
		if m := regexp.MustCompile(`(?:^|[^f] )\b1 ((short|whole) )?(marks|lines|ticks|minutes|counters|checks|acts|looks|cautions|causes|groups)\b`).FindString(said); m != "" {
			t.Errorf("%s: %q in %q", id, m, said)
		}
	}
}
