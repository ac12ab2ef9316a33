package scenarios

import (
	"cmp"
	"embed"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"

	"gopkg.in/yaml.v3"
)

//go:embed catalogue.yaml owners.yaml pairs.yaml cars causes remedies jobs lessons
var embedded embed.FS

// Embedded loads the library that is part of the program.
func Embedded() (*Library, error) { return load(layer{files: embedded}) }

// Load loads a library from a folder of the same shape as this package's: all
// of it, or an error of type [Problems] that lists every mistake.
func Load(files fs.FS) (*Library, error) { return load(layer{files: files}) }

// Overlay loads the program's library with the files of a folder laid over it:
// a file of the same name takes the place of ours, others are added.
func Overlay(dir string) (*Library, error) {
	info, err := os.Stat(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("%s: there is no such folder", dir)
	case err != nil:
		return nil, fmt.Errorf("%s: cannot be read: %w", dir, err)
	case !info.IsDir():
		return nil, fmt.Errorf("%s: a file stands where a folder belongs", dir)
	}
	return load(layer{files: embedded}, layer{files: os.DirFS(dir), prefix: dir + "/"})
}

// A layer is one folder of files; prefix stands before its names in sentences.
type layer struct {
	files  fs.FS
	prefix string
}

// A source is one file to be read.
type source struct {
	id   string
	name string // as sentences call it
	node *yaml.Node
	r    *reader
}

var idPattern = regexp.MustCompile(`^[a-z][a-z0-9_]{0,39}$`)

// idAllowed is idPattern in words.
const idAllowed = "a small letter, then at most 39 small letters, digits and underscores"

// CheckID refuses a name that no file of a library can have, its ending left out.
func CheckID(name string) error {
	if !idPattern.MatchString(name) {
		return fmt.Errorf("%q cannot be an id; %s", clip(name), idAllowed)
	}
	return nil
}

// load reads every file of every layer, later layers over earlier ones.
func load(layers ...layer) (*Library, error) {
	var probs Problems
	for _, l := range layers {
		l.layout(&probs)
	}
	lib := &Library{}
	b := &builder{lib: lib}
	if src := one(layers, "catalogue.yaml", "it lists the groups of causes and the parts", &probs); src != nil {
		b.catalogue(src)
	}
	if src := one(layers, "owners.yaml", "it holds the sentences of the owners of drawn cars", &probs); src != nil {
		b.owners(src)
	}
	for _, src := range folder(layers, "cars", &probs) {
		b.car(src)
	}
	for _, src := range folder(layers, "causes", &probs) {
		b.cause(src)
	}
	if src := one(layers, "pairs.yaml", "it tells which two causes a car may have at once", &probs); src != nil {
		b.pairs(src)
	}
	for _, src := range folder(layers, "remedies", &probs) {
		b.remedy(src)
	}
	for _, src := range folder(layers, "jobs", &probs) {
		b.job(src)
	}
	for _, src := range folder(layers, "lessons", &probs) {
		b.lesson(src)
	}
	slices.SortStableFunc(lib.Lessons, func(a, b *Lesson) int { return cmp.Compare(a.Order, b.Order) })
	if len(probs) > 0 {
		probs.sort()
		return nil, probs
	}
	return lib, nil
}

// builder fills a library in the order cars, causes, remedies, jobs, lessons, so that
// each finds the names it uses. A broken file still lends its name.
type builder struct{ lib *Library }

// folder returns the parsed files of one folder, by id. A file that cannot be
// read has a nil node.
func folder(layers []layer, dir string, probs *Problems) []*source {
	where := map[string]int{}
	var names []string
	for i, l := range layers {
		for _, e := range l.list(dir, probs) {
			name := e.Name()
			ext := path.Ext(name)
			switch {
			case strings.HasPrefix(name, "."): // editors and systems leave these
			case e.IsDir():
				*probs = append(*probs, Problem{File: l.prefix + dir + "/" + name, What: "a folder in this folder is not read", Allowed: "files that end in .yaml"})
			case ext == ".yml":
				*probs = append(*probs, Problem{File: l.prefix + dir + "/" + name, What: "the name ends in .yml", Allowed: "name it " + strings.TrimSuffix(name, ext) + ".yaml"})
			case ext != ".yaml":
				*probs = append(*probs, Problem{File: l.prefix + dir + "/" + name, What: "this file is not read", Allowed: "files that end in .yaml"})
			case !idPattern.MatchString(strings.TrimSuffix(name, ext)):
				*probs = append(*probs, Problem{File: l.prefix + dir + "/" + name, What: "the file's name is the id and cannot be used as one",
					Allowed: idAllowed + ", then .yaml"})
			default:
				if _, ok := where[name]; !ok {
					names = append(names, name)
				}
				where[name] = i
			}
		}
	}
	slices.Sort(names)
	var out []*source
	for _, name := range names {
		out = append(out, read(layers[where[name]], dir+"/"+name, probs))
	}
	return out
}

// one returns a single file from the last layer that has it; holds says what it is for.
func one(layers []layer, name, holds string, probs *Problems) *source {
	for _, l := range slices.Backward(layers) {
		if _, err := fs.Stat(l.files, name); err == nil {
			return read(l, name, probs)
		}
	}
	*probs = append(*probs, Problem{File: layers[0].prefix + name, What: "the file is missing", Allowed: holds})
	return nil
}

func read(l layer, name string, probs *Problems) *source {
	src := &source{id: strings.TrimSuffix(path.Base(name), ".yaml"), name: l.prefix + name}
	src.r = &reader{file: src.name, probs: probs}
	// Opening a pipe waits for a writer, and a device has no end: look first.
	info, err := fs.Stat(l.files, name)
	if err != nil {
		src.r.failFile(0, 0, "the file cannot be read", cause(err))
		return src
	}
	if !info.Mode().IsRegular() {
		src.r.failFile(0, 0, "this is a "+kindOfFile(info.Mode()), "a file of text belongs here")
		return src
	}
	f, err := l.files.Open(name)
	if err != nil {
		src.r.failFile(0, 0, "the file cannot be read", cause(err))
		return src
	}
	defer f.Close()
	// One byte more than allowed tells a file that is too long without reading all of it.
	data, err := io.ReadAll(io.LimitReader(f, maxFile+1))
	if err != nil {
		src.r.failFile(0, 0, "the file cannot be read", cause(err))
		return src
	}
	src.node = src.r.parse(data)
	return src
}
