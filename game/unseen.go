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
// that name asks for one.
func unseen(dir, name string) (id string, ok bool, err error) {
	ease := scenarios.Fair
	if rest, asked := strings.CutPrefix(name, unseenWord+"_"); asked {
		ease = scenarios.Ease(rest)
	} else if name != unseenWord {
		return "", false, nil
	}
	if !slices.Contains(scenarios.Eases, ease) {
		return "", false, nil // an id of a drawn car, or a wrong name: the desk knows which
	}
	played, err := playedHere(dir)
	if err != nil {
		return "", true, err
	}
	for {
		id = scenarios.DrawnID(anySeed(), ease)
		if !played[id] || len(played) > practice.Seeds/2 { // nearly every number has been played
			return id, true, nil
		}
	}
}
