package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/practice"
	"evenwear/scoring"
	"evenwear/scoring/record"
)

// A recorded session keeps what its debrief came to as soon as it is seen.
type recorded struct {
	*play.Kept
	words *assets.Words
	wrong string // why it could not be kept
}

// View is the session's; that its result could not be kept is told in it.
func (r *recorded) View() *play.View {
	v := r.Kept.View()
	if v.Debrief != nil && r.wrong == "" {
		if err := r.KeepResult(time.Now()); err != nil {
			r.wrong = err.Error()
		}
	}
	if r.wrong != "" {
		v.Nodes = append(v.Nodes, play.Node{ID: "unkept", Role: "caution", Name: r.words.Say("records.unkept", "why", r.wrong)})
	}
	return v
}

// results are what debriefs came to in a folder; tell is told what is damaged.
func results(dir string, tell func(error)) ([]record.Result, error) {
	list, damaged, err := record.Results(dir)
	if err != nil {
		return nil, unkept(dir, err)
	}
	for _, d := range damaged {
		tell(d)
	}
	return list, nil
}

// aloud tells what is damaged to whoever sits at a terminal.
func aloud(err error) { fmt.Fprintln(os.Stderr, "game:", err) }

type recordsCmd struct {
	Mixed bool `xor:"what" help:"What is said of each cause when another is true, instead: the mean belief over the last three cars of it."`
	Due   bool `xor:"what" help:"When each cause that was met comes back to practice, instead."`
	Ideas bool `xor:"what" help:"By how much each wrong idea explains the last ten cars better than slips do, instead: one is named from 3 nats on."`
}

func (r recordsCmd) Run(c *cli) error {
	dir, err := c.sessions()
	if err != nil {
		return err
	}
	list, err := results(dir, aloud)
	if err != nil {
		return err
	}
	switch {
	case r.Mixed:
		return writeMixed(os.Stdout, list)
	case r.Due:
		return writeDue(os.Stdout, list)
	case r.Ideas:
		return writeIdeas(os.Stdout, list)
	}
	return writeResults(os.Stdout, list)
}

// writeIdeas writes by how much misconceptions explain better what was said.
func writeIdeas(out io.Writer, list []record.Result) error {
	w := table(out, "idea", "nats")
	for _, f := range practice.Ideas(list) {
		w.Write([]string{f.ID, strconv.FormatFloat(f.N, 'f', 3, 64)})
	}
	w.Flush()
	return w.Error()
}

// writeMixed writes a learner's table of confusion, a row for each two causes of
// which the second was said, if only a little, when the first was true.
func writeMixed(out io.Writer, list []record.Result) error {
	w := table(out, "true", "said", "belief", "cars")
	t := practice.Confused(list)
	for i, truth := range t.Causes {
		for j, said := range t.Causes {
			if t.Mean[i][j] > 0 {
				w.Write([]string{truth, said, strconv.FormatFloat(t.Mean[i][j], 'f', 6, 64), strconv.Itoa(t.Cars[i])})
			}
		}
	}
	w.Flush()
	return w.Error()
}

// writeDue writes when causes were met last and come back.
func writeDue(out io.Writer, list []record.Result) error {
	w := table(out, "cause", "met", "due")
	for _, c := range practice.Cards(list) {
		w.Write([]string{c.Cause, c.Met.UTC().Format(time.RFC3339), c.Due.UTC().Format(time.RFC3339)})
	}
	w.Flush()
	return w.Error()
}

// table begins CSV by RFC 4180 with the names of its columns.
func table(out io.Writer, columns ...string) *csv.Writer {
	w := csv.NewWriter(out)
	w.UseCRLF = true
	w.Write(columns)
	return w
}

// The marks in the order of their columns.
var markColumns = []string{scoring.Diagnosis, scoring.Decision, scoring.Evidence, scoring.Consistency, scoring.Reading, scoring.Safety, scoring.ProofMark, scoring.Minutes}

// writeResults writes results: a row a debrief, truth and
// belief in one column each, apart by a space.
func writeResults(out io.Writer, list []record.Result) error {
	w := table(out, slices.Concat([]string{"when", "session", "job", "seed", "library", "truth", "total", "capped"}, markColumns, []string{"belief"})...)
	figure := func(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
	for i := range list {
		r := &list[i]
		row := []string{r.When.Format(time.RFC3339), r.Session, r.Job, strconv.FormatUint(r.Seed, 10), r.Library,
			strings.Join(r.Truth, " "), figure(r.Total), strconv.FormatBool(r.Capped)}
		for _, id := range markColumns {
			cell := ""
			if m, ok := r.Mark(id); ok {
				cell = figure(m)
			}
			row = append(row, cell)
		}
		said := make([]string, len(r.Said))
		for k, s := range r.Said {
			said[k] = s.ID + "=" + strconv.FormatFloat(s.N, 'f', 6, 64)
		}
		w.Write(append(row, strings.Join(said, " ")))
	}
	w.Flush()
	return w.Error()
}
