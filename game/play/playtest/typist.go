package playtest

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/physics/inspect"
)

// See returns the eye of an [Inspector]: it finds the word whose perception is
// described, in the wording itself. What nothing describes is empty.
func See(words *assets.Words) func(check, perception string) string {
	return func(check, perception string) string {
		c, _ := inspect.Find(inspect.ID(check))
		for _, w := range c.Meter.Words {
			if words.Say("see."+check+"."+w) == perception {
				return words.Say("word." + w)
			}
		}
		return ""
	}
}

// A Typist turns acts into the lines that are typed for them in a terminal: it
// finds the choice in what is offered, by the same rules a learner follows.
type Typist struct {
	Player
	Lines io.Writer
}

// Do types an act before it is done.
func (k Typist) Do(a play.Act) error {
	line, err := typed(k.View(), a)
	if err != nil {
		return err
	}
	if _, err := fmt.Fprintln(k.Lines, line); err != nil {
		return err
	}
	return k.Player.Do(a)
}

// typed finds what to type for an act: the key of its action, the number of its
// node (under a heading, of the heading and of the node), or the text itself for
// a field.
func typed(v *play.View, a play.Act) (string, error) {
	next := 1
	for _, n := range v.Nodes {
		for _, x := range n.Actions {
			if d, err := strconv.Atoi(x.Key); err == nil {
				next = max(next, d+1)
			}
		}
	}
	under := map[string]int{} // nodes met under each heading
	for _, n := range v.Nodes {
		under[n.Under]++
		if n.Under != "" && under[n.Under] == 1 {
			next++ // its heading is numbered; no other heading is
		}
		var free []play.Action
		for _, x := range n.Actions {
			switch {
			case a.Do == play.Write && x.Act.Do == play.Write && x.Act.Text == "":
				return a.Text, nil
			case x.Key == "":
				free = append(free, x)
			case x.Act.Do == play.Counter && a.Do == play.Counter && x.Act.What == a.What && strings.HasSuffix(x.Key, "+"):
				return fmt.Sprintf("%s %g", strings.TrimSuffix(x.Key, "+"), a.N), nil
			case x.Act.Do == play.Tell && a.Do == play.Tell:
				return x.Key + " " + a.Text, nil
			case x.Act.Do == play.Write && a.Do == play.Write && x.Label == a.Text, x.Act == a:
				return x.Key, nil
			}
		}
		for i, x := range free {
			letter := string(rune('a' + i))
			switch {
			case x.Act != a:
			case n.Under != "":
				return fmt.Sprintf("%d.%d%s", next-1, under[n.Under], letter), nil
			case len(free) == 1 && n.Part == "":
				return strconv.Itoa(next), nil
			default:
				return strconv.Itoa(next) + letter, nil
			}
		}
		if len(free) > 0 && n.Under == "" {
			next++
		}
	}
	return "", fmt.Errorf("nothing on the sheet does %+v", a)
}
