package record

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"time"
)

// A Result is what a debrief came to. It names no person.
type Result struct {
	Version int       `json:"version"`
	When    time.Time `json:"when"`    // the debrief was worked out
	Session string    `json:"session"` // name of the record it came from
	Job     string    `json:"job"`
	Seed    uint64    `json:"seed"`
	Library string    `json:"library"`          // hash of the library the session was played with
	For     *Purpose  `json:"for,omitempty"`    // what the car was drawn for; nil: it was chosen
	Truth   []string  `json:"truth"`            // causes that were in the car
	Said    []Figure  `json:"said"`             // belief by cause [1], of those counters were put on
	Total   float64   `json:"total"`            // of 100
	Capped  bool      `json:"capped,omitempty"` // by an unsafe release
	Marks   []Figure  `json:"marks"`            // of 100 each, in the debrief's order
	// Ideas is how well the real table, first and without an id, and misconceptions
	// explain what was said; none: it was not asked, as in older results. A
	// misconception that is missing explains what the real table does.
	Ideas []Idea `json:"ideas,omitempty"`
	Model *Model `json:"model,omitempty"` // nil: not told, as in older results
}

// An Idea is ln P(what was said | it) [nat] at each of the points of skill and
// confidence that it was asked at.
type Idea struct {
	ID  string    `json:"id,omitempty"`
	LnP []float64 `json:"ln_p"`
}

// A Model is what the model inspector came to at the same car.
type Model struct {
	Minutes float64 `json:"minutes"` // [min] spent
	Bits    float64 `json:"bits"`    // of the truth
}

// A Figure is a number by its id.
type Figure struct {
	ID string  `json:"id"`
	N  float64 `json:"n"`
}

// Mark is the mark of an id; ok tells that there is one.
func (r *Result) Mark(id string) (mark float64, ok bool) {
	for _, m := range r.Marks {
		if m.ID == id {
			return m.N, true
		}
	}
	return 0, false
}

// resultVersion changes when stored results would mean something else.
const resultVersion = 1

// resultsName is the file of results in a folder of sessions, a line each.
const resultsName = "debriefs.jsonl"

// ResultsFile is where a folder keeps what debriefs came to.
func ResultsFile(dir string) string { return filepath.Join(dir, resultsName) }

// Results are what debriefs came to in a folder, in the order they were kept. A
// line that cannot be read is moved aside and told in damaged, a sentence each;
// the other lines stay usable. A folder without results has none.
func Results(dir string) (list []Result, damaged []error, err error) {
	f, err := openResults(dir, 0)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil, nil
	}
	if err != nil {
		return nil, nil, err
	}
	list, damaged, f, err = mended(dir, f)
	f.Close()
	return list, damaged, err
}

// KeepResult adds what a debrief came to, on disk when it returns. The same
// debrief opened again is not added again.
func KeepResult(dir string, r Result) error {
	r.Version = resultVersion
	if why := r.wrong(); why != "" {
		return fmt.Errorf("this result cannot be kept: %s", why)
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return err
	}
	f, err := openResults(dir, os.O_CREATE)
	if err != nil {
		return err
	}
	list, _, f, err := mended(dir, f)
	defer f.Close()
	if err != nil {
		return err
	}
	for i := range list {
		if list[i].same(&r) {
			return nil
		}
	}
	line, err := json.Marshal(r)
	if err != nil {
		return err
	}
	end, err := f.Seek(0, io.SeekEnd)
	if err != nil {
		return err
	}
	if _, err = f.Write(append(line, '\n')); err == nil {
		err = f.Sync()
	}
	if err != nil {
		return errors.Join(err, f.Truncate(end))
	}
	syncDir(dir)
	return nil
}

// ForgetResults deletes what debriefs came to; the sessions stay. Deleting what
// is not there is no error.
func ForgetResults(dir string) error {
	if err := os.Remove(ResultsFile(dir)); !errors.Is(err, os.ErrNotExist) {
		return err
	}
	return nil
}

// openResults opens the file of results for this program alone until it is
// closed. One that was replaced while it was waited for is opened again.
func openResults(dir string, flag int) (*os.File, error) {
	for {
		f, err := os.OpenFile(ResultsFile(dir), os.O_RDWR|flag, 0o600)
		if err != nil {
			return nil, err
		}
		if err := await(f); err != nil {
			f.Close()
			return nil, err
		}
		held, err := f.Stat()
		now, gone := os.Stat(ResultsFile(dir))
		if err == nil && gone == nil && os.SameFile(held, now) {
			return f, nil
		}
		f.Close()
		if err != nil {
			return nil, err
		}
	}
}

// mended reads an open file of results. When it holds what cannot be read, all of
// it is first kept beside and a file with the rest alone takes its place; f is the
// file to go on with.
func mended(dir string, f *os.File) (list []Result, damaged []error, _ *os.File, err error) {
	data, err := io.ReadAll(f)
	if err != nil {
		return nil, nil, f, err
	}
	path := ResultsFile(dir)
	var good []byte
	for n := 1; len(data) > 0; n++ {
		line, rest, whole := bytes.Cut(data, []byte{'\n'})
		data = rest
		var r Result
		why := ""
		if !whole {
			why = "the line is only half written"
		} else if err := json.Unmarshal(line, &r); err != nil {
			why = "the line is not what a debrief came to"
		} else if r.Version != resultVersion { // not damaged: another version reads it
			good = append(append(good, line...), '\n')
			continue
		} else {
			why = r.wrong()
		}
		if why != "" {
			damaged = append(damaged, &DamagedError{File: path, Line: n, What: why})
			continue
		}
		list, good = append(list, r), append(append(good, line...), '\n')
	}
	if damaged == nil {
		return list, nil, f, nil
	}
	aside, next, err := replaceResults(dir, good)
	if err != nil {
		return list, damaged, f, nil // it is read again the next time
	}
	f.Close()
	for _, d := range damaged {
		d.(*DamagedError).Aside = aside
	}
	return list, damaged, next, nil
}

// replaceResults puts a file of these lines in place of the results, which are
// kept under the name it returns.
func replaceResults(dir string, lines []byte) (aside string, f *os.File, err error) {
	path := ResultsFile(dir)
	old, err := os.ReadFile(path)
	if err != nil {
		return "", nil, err
	}
	for n := 1; aside == ""; n++ {
		name := fmt.Sprintf("%s.damaged-%d", path, n)
		if _, err := os.Lstat(name); err == nil {
			continue
		}
		if err := os.WriteFile(name, old, 0o600); err != nil {
			return "", nil, err
		}
		aside = name
	}
	if f, err = os.CreateTemp(dir, "new-*.part"); err != nil {
		return "", nil, err
	}
	_, err = f.Write(lines)
	if err = errors.Join(err, f.Sync(), await(f)); err == nil {
		err = os.Rename(f.Name(), path)
	}
	if err != nil {
		f.Close()
		os.Remove(f.Name())
		return "", nil, err
	}
	syncDir(dir)
	return aside, f, nil
}
