package audit

import (
	"fmt"
	"strings"
)

// String is the table in words for whoever writes jobs.
func (r *Report) String() string {
	var b strings.Builder
	line := func(l Line) {
		aim := ""
		if l.Aim != "" {
			aim = "  [" + l.Aim + "]"
		}
		fmt.Fprintf(&b, "%-11s %s: %s%s\n", l.Verdict, l.What, l.Measured, aim)
	}
	b.WriteString("Jobs, as the model inspector plays them: belief in the truth in the middle session (least to most)\n")
	for _, l := range r.Jobs {
		line(l)
	}
	b.WriteString("\nMarks, by simulated learners\n")
	for _, l := range r.Lines {
		line(l)
	}
	for _, p := range r.Twins {
		fmt.Fprintf(&b, "%-11s   %s and %s: %.3f\n", "", p.A, p.B, p.Sure)
	}
	if n := r.Failing(); n > 0 {
		fmt.Fprintf(&b, "\nJobs that fail: %d of %d\n", n, len(r.Jobs))
	}
	return b.String()
}
