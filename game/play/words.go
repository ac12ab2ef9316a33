package play

// A Words says a sentence by its id; pairs of name and value fill its blanks.
type Words interface {
	Say(id string, args ...any) string
}

// A Refusal is why an act was not done, in a sentence for the learner. The
// session is as it was before.
type Refusal struct {
	ID       string // of the sentence
	Sentence string
}

func (r *Refusal) Error() string { return r.Sentence }

// no is a refusal not yet put into words; its zero value allows the act.
type no struct {
	id   string
	args []any
}

func because(id string, args ...any) no { return no{id, args} }

func (n no) allows() bool { return n.id == "" }

func (s *Session) why(n no) string {
	if n.allows() {
		return ""
	}
	return s.words.Say(n.id, n.args...)
}
