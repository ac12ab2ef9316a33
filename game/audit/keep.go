package audit

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"io/fs"
	"os"
	"reflect"
	"strings"
)

// A Keep is a file of what has been worked out: a heading that says of which
// audit, then a line for each job, appended and synced when it is done.
//
//	CRC-32 of what follows, in hexadecimal, a blank, JSON, a line feed
type Keep struct {
	file  *os.File
	units map[string]*Unit // only looked up
	// Told is what there is to say about the file as it was found; may be empty.
	Told string
}

// heading says which audit a file belongs to.
type heading struct {
	Format   int
	Revision string // of the program, where it is known
	Library  string // hash
	Jobs     []string
	Options  Options // workers left out
}

const keepFormat = 1

// errDamaged is a line that is not what was written.
var errDamaged = errors.New("damaged")

// OpenKeep opens a file or begins it. A damaged one is set aside under another
// name, which Told tells; one of another audit is an error and left alone.
func OpenKeep(path string, h heading) (*Keep, error) {
	h.Format = keepFormat
	h.Options.Workers = 0
	k := &Keep{units: map[string]*Unit{}}
	data, err := os.ReadFile(path)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%s: what was worked out cannot be read: %w", path, err)
	}
	whole := 0
	if len(data) > 0 {
		whole, err = k.read(data, h)
		switch {
		case errors.Is(err, errDamaged):
			aside, err := setAside(path)
			if err != nil {
				return nil, err
			}
			k.units, whole = map[string]*Unit{}, 0
			k.Told = fmt.Sprintf("%s was damaged; it is kept as %s and all is worked out anew", path, aside)
		case err != nil:
			return nil, fmt.Errorf("%s %w", path, err)
		case whole < len(data):
			k.Told = fmt.Sprintf("%s ended within a line; jobs before it are kept: %d", path, len(k.units))
		}
	}
	if k.file, err = os.OpenFile(path, os.O_CREATE|os.O_WRONLY, 0o644); err != nil {
		return nil, fmt.Errorf("%s: what is worked out cannot be kept: %w", path, err)
	}
	if err := k.file.Truncate(int64(whole)); err != nil {
		return nil, errors.Join(fmt.Errorf("%s: %w", path, err), k.file.Close())
	}
	if _, err := k.file.Seek(int64(whole), 0); err != nil {
		return nil, errors.Join(fmt.Errorf("%s: %w", path, err), k.file.Close())
	}
	if whole == 0 {
		if err := k.write(h); err != nil {
			return nil, errors.Join(err, k.file.Close())
		}
	}
	return k, nil
}

// read takes the whole lines of a file in; whole is how many bytes they are. A
// last line without its end is what a kill leaves, and is left out.
func (k *Keep) read(data []byte, want heading) (whole int, err error) {
	first := true
	for {
		line, _, ended := bytes.Cut(data[whole:], []byte("\n"))
		if !ended {
			if first {
				return 0, errDamaged
			}
			return whole, nil
		}
		var sum uint32
		body, ok := cutSum(line, &sum)
		if !ok || crc32.ChecksumIEEE(body) != sum {
			return 0, errDamaged
		}
		if first {
			var have heading
			if json.Unmarshal(body, &have) != nil {
				return 0, errDamaged
			}
			if why := have.differs(&want); why != "" {
				return 0, fmt.Errorf("belongs to another audit: %s; give another file, or delete it", why)
			}
			first = false
		} else {
			u := &Unit{}
			if json.Unmarshal(body, u) != nil {
				return 0, errDamaged
			}
			k.units[u.Job] = u
		}
		whole += len(line) + 1
	}
}

func cutSum(line []byte, sum *uint32) (body []byte, ok bool) {
	head, body, ok := bytes.Cut(line, []byte(" "))
	if !ok || len(head) != 8 {
		return nil, false
	}
	_, err := fmt.Sscanf(string(head), "%08x", sum)
	return body, err == nil
}

// differs says how one audit differs from another; nothing when it does not.
func (h *heading) differs(want *heading) string {
	switch {
	case h.Format != want.Format:
		return fmt.Sprintf("its format is %d, this program writes %d", h.Format, want.Format)
	case h.Revision != want.Revision:
		return "the program has changed since"
	case h.Library != want.Library:
		return "cars, causes, remedies or jobs have changed since"
	case strings.Join(h.Jobs, " ") != strings.Join(want.Jobs, " "):
		return fmt.Sprintf("it is about the jobs %s", strings.Join(h.Jobs, ", "))
	case !reflect.DeepEqual(h.Options, want.Options):
		return "its seed or sizes are others"
	}
	return ""
}

// setAside renames a file to a name that is free.
func setAside(path string) (string, error) {
	for n := 1; ; n++ {
		aside := path + ".damaged"
		if n > 1 {
			aside = fmt.Sprintf("%s.damaged%d", path, n)
		}
		if _, err := os.Lstat(aside); errors.Is(err, fs.ErrNotExist) {
			return aside, os.Rename(path, aside)
		}
	}
}

// Has returns what was worked out about a job.
func (k *Keep) Has(job string) (*Unit, bool) {
	if k == nil {
		return nil, false
	}
	u, ok := k.units[job]
	return u, ok
}

// Put appends what was worked out about a job and sees it to the disk.
func (k *Keep) Put(u *Unit) error {
	if k == nil {
		return nil
	}
	return k.write(u)
}

func (k *Keep) write(v any) error {
	body, err := json.Marshal(v)
	if err != nil {
		return err
	}
	line := append(fmt.Appendf(nil, "%08x ", crc32.ChecksumIEEE(body)), body...)
	if _, err := k.file.Write(append(line, '\n')); err != nil {
		return fmt.Errorf("%s: what is worked out cannot be kept: %w", k.file.Name(), err)
	}
	return k.file.Sync()
}

// Close closes the file.
func (k *Keep) Close() error {
	if k == nil {
		return nil
	}
	return k.file.Close()
}
