package record

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// A Header is the first line of a record.
type Header struct {
	Version int    `json:"version"`
	Job     string `json:"job"`
	Seed    uint64 `json:"seed"`
	Library string `json:"library"` // hash of the library the session was played with
	// For says what the car was drawn for; nil: the learner chose it.
	For *Purpose `json:"for,omitempty"`
}

// A Purpose says why a car was drawn. A learner may know after the debrief.
type Purpose struct {
	Why    string   `json:"why"`              // a word of the practice or the self-check
	Causes []string `json:"causes,omitempty"` // that the car was drawn for
	N      float64  `json:"n,omitempty"`      // the figure that told so
	Idea   string   `json:"idea,omitempty"`   // misconception that the car was drawn to confront
	Check  string   `json:"check,omitempty"`  // name of the self-check
	Car    int      `json:"car,omitempty"`    // its place in the self-check, from 1
}

// A Log is one record open for appending. It is not for use by several
// goroutines.
type Log struct {
	file *os.File
	size int64 // bytes we know to be whole lines
}

const suffix = ".session"

// ErrShared says that something else plays or has written to the same record.
var ErrShared = errors.New("another program is playing this session; end it there, or begin a new one")

// Create starts a record in dir and returns it with its name. The header is
// written beside and moved into place, so that no record without one exists.
func Create(dir string, h Header) (*Log, string, error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return nil, "", err
	}
	h.Version = Version
	line, err := json.Marshal(h)
	if err != nil {
		return nil, "", err
	}
	name, err := place(dir, fmt.Sprintf("%s-%d", safe(h.Job), h.Seed), suffix, line)
	if err != nil {
		return nil, "", err
	}
	l, _, _, err := Open(dir, name)
	return l, name, err
}

// place puts a file of one line under the first free of the names begin-1,
// begin-2 … and returns that name.
func place(dir, begin, suffix string, line []byte) (string, error) {
	tmp, err := os.CreateTemp(dir, "new-*.part")
	if err != nil {
		return "", err
	}
	defer os.Remove(tmp.Name()) // gone already when all went well
	_, err = tmp.Write(append(line, '\n'))
	if err = errors.Join(err, tmp.Sync(), tmp.Close()); err != nil {
		return "", err
	}
	for n := 1; ; n++ {
		name := fmt.Sprintf("%s-%d", begin, n)
		path := filepath.Join(dir, name+suffix)
		// The empty file reserves the name: two programs cannot both create it.
		f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
		if errors.Is(err, os.ErrExist) {
			continue
		}
		if err != nil {
			return "", err
		}
		f.Close()
		if err := os.Rename(tmp.Name(), path); err != nil {
			return "", err
		}
		syncDir(dir)
		return name, nil
	}
}

// Append writes one act as a line and syncs it. When it fails the act has not
// been kept, and what reached the file of it is cut off again.
func (l *Log) Append(act any) error {
	line, err := json.Marshal(act)
	if err != nil {
		return err
	}
	info, err := l.file.Stat()
	if err != nil {
		return err
	}
	if info.Size() != l.size {
		return ErrShared
	}
	n, err := l.file.WriteAt(append(line, '\n'), l.size)
	if err == nil {
		err = l.file.Sync()
	}
	if err != nil {
		return errors.Join(err, l.file.Truncate(l.size))
	}
	l.size += int64(n)
	return nil
}

// Close closes the file. Every act is on disk already.
func (l *Log) Close() error { return l.file.Close() }

// safe keeps a job's id from naming anything but a file in the folder.
func safe(job string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '_':
			return r
		}
		return '_'
	}, job)
}

// syncDir makes a rename last. Not every system can sync a folder; there the
// rename is as durable as it gets.
func syncDir(dir string) {
	if d, err := os.Open(dir); err == nil {
		d.Sync()
		d.Close()
	}
}
