package main

import (
	"slices"
	"strings"

	"evenwear/game/practice"
	"evenwear/scenarios"
)

// unseenWord is what stands for a car that nobody wrote down: alone, a fair one;
// with _gentle, _fair or _hard, one of that ease.
const unseenWord = "unseen"

// unseen is the id of a drawn car of which no session is kept in dir; ok tells
// that name asks for one. tell is told what is damaged there.
func unseen(dir, name string, tell func(error)) (id string, ok bool, err error) {
	ease := scenarios.Fair
	if rest, asked := strings.CutPrefix(name, unseenWord+"_"); asked {
		ease = scenarios.Ease(rest)
	} else if name != unseenWord {
		return "", false, nil
	}
	if !slices.Contains(scenarios.Eases, ease) {
		return "", false, nil // an id of a drawn car, or a wrong name: the desk knows which
	}
	played, err := playedHere(dir, tell)
	if err != nil {
		return "", true, err
	}
	id = firstUnseen(anySeed(), ease, played)
	if id == "" {
		return "", true, practice.ErrNoCar
	}
	return id, true, nil
}

// firstUnseen is the id of the first car from a seed on that was not played; empty:
// all were.
func firstUnseen(seed uint64, ease scenarios.Ease, played map[string]bool) string {
	for i := range uint64(practice.Seeds) {
		id := scenarios.DrawnID(practice.SeedLeast+(seed-practice.SeedLeast+i)%practice.Seeds, ease)
		if !played[id] {
			return id
		}
	}
	return ""
}
