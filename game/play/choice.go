package play

import (
	"strings"

	"evenwear/physics/inspect"
)

// choiceID names remedies with their release in one id, as the marks carry it.
func choiceID(remedies []string, release string) string {
	return choicePrefix + strings.Join(append([]string{release}, remedies...), "+")
}

const (
	choicePrefix = "choice:"
	showedPrefix = "proof.showed:"
)

// sayChoice puts an id of [choiceID] into words: the remedies, then the release.
func (s *Session) sayChoice(id string) string {
	parts := strings.Split(strings.TrimPrefix(id, choicePrefix), "+")
	var said []string
	for _, id := range append(parts[1:], "") {
		one := s.say("short." + parts[0])
		if r, at, ok := s.desk.findRemedy(id); ok {
			one = s.words.Say("play.at", "what", r.Name, "place", s.sayWhere(r.Where, string(at)))
		}
		said = append(said, one)
	}
	return Joined(s.words, said)
}

// sayShowed names the reading that first showed the fault.
func (s *Session) sayShowed(id string) string {
	inst, err := inspect.ParseInstance(strings.TrimPrefix(id, showedPrefix))
	if err != nil {
		return s.say("proof.showed_none")
	}
	return s.words.Say("proof.showed", "what", s.sayCheck(inst))
}
