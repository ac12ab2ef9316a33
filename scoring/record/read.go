package record

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sort"
	"strings"
	"time"
)

// A Session is what a record holds.
type Session struct {
	Header
	Acts []json.RawMessage
	// Torn tells that a last, half written line was dropped.
	Torn bool
}

// An Entry is one record in a folder.
type Entry struct {
	Name string
	Header
	Acts    int
	Last    json.RawMessage // the last act; nil: none yet
	Changed time.Time       // when it was last written
	Err     error           // why it cannot be read; the rest is empty then
}

// A DamagedError says that a record cannot be read and where it is kept now.
type DamagedError struct {
	File  string
	Line  int
	What  string
	Aside string // empty when it could not be moved
}

func (e *DamagedError) Error() string {
	s := fmt.Sprintf("%s:%d: %s", e.File, e.Line, e.What)
	if e.Aside != "" {
		s += "; the file is kept as " + e.Aside
	}
	return s
}

// ErrVersion says that a record was written by another version.
var ErrVersion = errors.New("written by another version of the program")

// maxBytes is far above any session and far below what would hurt.
const maxBytes = 16 << 20

// Open reads a record and opens it to go on. A torn last line is cut off; a
// record damaged elsewhere is set aside and the error is a *DamagedError; one that
// another program plays is left alone and the error is [ErrShared].
func Open(dir, name string) (*Log, Session, string, error) {
	path := filepath.Join(dir, safeName(name)+suffix)
	f, err := os.OpenFile(path, os.O_RDWR, 0)
	if err != nil {
		return nil, Session{}, path, none(path, err)
	}
	if err := lock(f); err != nil {
		f.Close()
		return nil, Session{}, path, fmt.Errorf("%s: %w", path, err)
	}
	s, size, err := read(f, path)
	var damaged *DamagedError
	if errors.As(err, &damaged) {
		f.Close()
		damaged.Aside = setAside(path)
		return nil, Session{}, path, damaged
	}
	if err == nil && s.Torn {
		err = errors.Join(f.Truncate(size), f.Sync())
	}
	if err != nil {
		f.Close()
		return nil, Session{}, path, err
	}
	return &Log{file: f, size: size}, s, path, nil
}

// read parses a whole record and returns the length of its whole lines.
func read(r io.Reader, path string) (Session, int64, error) {
	var s Session
	data, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return s, 0, err
	}
	bad := func(line int, what string) (Session, int64, error) {
		return s, 0, &DamagedError{File: path, Line: line, What: what}
	}
	if len(data) > maxBytes {
		return bad(1, "longer than any session")
	}
	whole := bytes.LastIndexByte(data, '\n') + 1
	s.Torn = whole < len(data)
	size := int64(0)
	for n := 1; size < int64(whole); n++ {
		end := bytes.IndexByte(data[size:], '\n') + 1
		line := data[size : size+int64(end)]
		last := size+int64(end) == int64(whole)
		switch {
		case n == 1:
			if err := json.Unmarshal(line, &s.Header); err != nil || s.Job == "" {
				return bad(1, "the first line is not a session's header")
			}
			if s.Version != Version {
				return s, 0, fmt.Errorf("%s: version %d: %w", path, s.Version, ErrVersion)
			}
		case json.Valid(line) && bytes.HasPrefix(bytes.TrimSpace(line), []byte("{")):
			s.Acts = append(s.Acts, json.RawMessage(bytes.TrimSpace(bytes.Clone(line))))
		case last && !s.Torn:
			// A crash of the machine can leave a last line of the right length with the wrong bytes.
			s.Torn = true
			return s, size, nil
		default:
			return bad(n, "this line is not an act")
		}
		size += int64(end)
	}
	if size == 0 {
		return bad(1, "there is no header")
	}
	return s, size, nil
}

// List returns the records of a folder, sorted by name. A folder that does not
// exist holds none.
func List(dir string) ([]Entry, error) {
	files, err := os.ReadDir(dir)
	if errors.Is(err, os.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	var list []Entry
	for _, f := range files {
		name, ok := strings.CutSuffix(f.Name(), suffix)
		if !ok || f.IsDir() {
			continue
		}
		e := Entry{Name: name}
		file, err := os.Open(filepath.Join(dir, f.Name()))
		if err == nil {
			var s Session
			s, _, err = read(file, f.Name())
			file.Close()
			e.Header, e.Acts = s.Header, len(s.Acts)
			if e.Acts > 0 {
				e.Last = s.Acts[e.Acts-1]
			}
		}
		if info, err := f.Info(); err == nil {
			e.Changed = info.ModTime()
		}
		e.Err = err
		list = append(list, e)
	}
	sort.Slice(list, func(i, j int) bool { return list[i].Name < list[j].Name })
	return list, nil
}

// Forget deletes a record, unless a program plays it, or a self-check of that
// name; its sessions stay.
func Forget(dir, name string) error {
	path := filepath.Join(dir, safeName(name)+suffix)
	if check := filepath.Join(dir, safeName(name)+checkSuffix); missing(path) && !missing(check) {
		return os.Remove(check)
	}
	if f, err := os.Open(path); err == nil {
		err = lock(f)
		f.Close() // an open file cannot be deleted everywhere
		if err != nil {
			return fmt.Errorf("%s: %w", path, err)
		}
	}
	return none(path, os.Remove(path))
}

func missing(path string) bool {
	_, err := os.Stat(path)
	return errors.Is(err, os.ErrNotExist)
}

// ErrNone says that no record has this name.
var ErrNone = errors.New("there is no such session")

// none puts the absence of a file into words.
func none(path string, err error) error {
	if errors.Is(err, os.ErrNotExist) {
		return fmt.Errorf("%s: %w", path, ErrNone)
	}
	return err
}

// setAside gives a damaged file a name that is free and returns it.
func setAside(path string) string {
	for n := 1; n < 1000; n++ {
		aside := fmt.Sprintf("%s.damaged-%d", path, n)
		if _, err := os.Lstat(aside); err == nil {
			continue
		}
		if os.Rename(path, aside) != nil {
			return ""
		}
		return aside
	}
	return ""
}

// safeName lets a name be typed with or without its suffix, and stay in the folder.
func safeName(name string) string {
	return strings.TrimSuffix(filepath.Base(name), suffix)
}
