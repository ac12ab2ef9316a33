package scenarios

import (
	"errors"
	"io/fs"
	"slices"
	"strings"
)

// topNames are the names at the top of a folder of ours.
var topNames = []string{"catalogue.yaml", "owners.yaml", "pairs.yaml", "cars", "causes", "remedies", "jobs", "lessons"}

// layout refuses what stands at the top of a layer under a name that is never
// read: a misspelt folder would be passed over without a word.
func (l layer) layout(probs *Problems) {
	for _, e := range l.list(".", probs) {
		name := e.Name()
		if strings.HasPrefix(name, ".") || slices.Contains(topNames, name) {
			continue
		}
		what := "this file is not read here"
		if e.IsDir() {
			what = "this folder is not read"
		}
		*probs = append(*probs, Problem{File: l.prefix + name, What: what, Allowed: nearestWords(name, topNames)})
	}
}

// list is what stands in a folder of a layer; nothing where there is none.
func (l layer) list(dir string, probs *Problems) []fs.DirEntry {
	info, err := fs.Stat(l.files, dir)
	var entries []fs.DirEntry
	if err == nil && !info.IsDir() { // a pipe would be waited for
		*probs = append(*probs, Problem{File: l.prefix + dir, What: "this is a " + kindOfFile(info.Mode()), Allowed: "a folder belongs here"})
		return nil
	}
	if err == nil {
		entries, err = fs.ReadDir(l.files, dir)
	}
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		*probs = append(*probs, Problem{File: strings.TrimSuffix(l.prefix+dir, "/."), What: "the folder cannot be read", Allowed: cause(err)})
	}
	return entries
}

// kindOfFile names what is no file of text.
func kindOfFile(m fs.FileMode) string {
	switch {
	case m.IsDir():
		return "folder"
	case m&fs.ModeNamedPipe != 0:
		return "pipe"
	case m&fs.ModeDevice != 0:
		return "device"
	case m&fs.ModeSocket != 0:
		return "socket"
	}
	return "file"
}

// cause is an error of the file system without the path, which is told already.
func cause(err error) string {
	var at *fs.PathError
	if errors.As(err, &at) {
		return at.Err.Error()
	}
	return err.Error()
}
