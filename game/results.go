package main

import (
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"
	"time"

	"evenwear/assets"
	"evenwear/game/play"
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

type recordsCmd struct{}

func (recordsCmd) Run(c *cli) error {
	dir, err := c.sessions()
	if err != nil {
		return err
	}
	list, err := results(dir, aloud)
	if err != nil {
		return err
	}
	return writeResults(os.Stdout, list)
}

// The marks in the order of their columns.
var markColumns = []string{scoring.Diagnosis, scoring.Decision, scoring.Evidence, scoring.Consistency, scoring.Reading, scoring.Safety, scoring.ProofMark, scoring.Minutes}

// writeResults writes results as CSV by RFC 4180: a row a debrief, truth and
// belief in one column each, apart by a space.
func writeResults(out io.Writer, list []record.Result) error {
	w := csv.NewWriter(out)
	w.UseCRLF = true
	w.Write(append([]string{"when", "session", "job", "seed", "library", "truth", "total", "capped"}, append(markColumns, "belief")...))
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
