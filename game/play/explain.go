package play

import "evenwear/scenarios"

// explain is what a cause means, with those that look the same from outside.
func explain(lib *scenarios.Library, words Words, c *scenarios.Cause) string {
	said := c.Explain
	for i := range lib.Twins {
		t := &lib.Twins[i]
		for k, one := range t.Causes {
			if one == c {
				said += " " + words.Say("cause.twin", "other", t.Causes[1-k].Name, "why", t.Why)
			}
		}
	}
	return said
}
