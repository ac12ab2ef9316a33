package scenarios

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gopkg.in/yaml.v3"
)

const (
	maxFile  = 256 << 10 // [bytes] of one file
	maxDepth = 12        // of nesting
	maxText  = 2000      // [characters] of one text
	maxItems = 200       // of one list
)

// A reader walks one file's nodes and notes every mistake.
type reader struct {
	file  string
	probs *Problems
	noted *shape // what is asked for is noted here instead of being read; nil: read
}

func (r *reader) fail(n *yaml.Node, path, what, allowed string) {
	if r.noted != nil {
		return
	}
	*r.probs = append(*r.probs, Problem{File: r.file, Line: n.Line, Col: n.Column, Path: path, What: what, Allowed: allowed})
}

func (r *reader) failFile(line, col int, what, allowed string) {
	*r.probs = append(*r.probs, Problem{File: r.file, Line: line, Col: col, What: what, Allowed: allowed})
}

var yamlLine = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

var yamlAnchor = regexp.MustCompile(`^unknown anchor '(.*)' referenced$`)

// parse turns a file into its one document's mapping. It returns nil after
// noting why there is none.
func (r *reader) parse(data []byte) *yaml.Node {
	switch {
	case len(data) > maxFile:
		r.failFile(0, 0, "the file is too long", fmt.Sprintf("at most %d KiB are read", maxFile>>10))
		return nil
	case !utf8.Valid(data):
		line, col := badByte(data)
		r.failFile(line, col, "a byte that is not UTF-8", "save the file as UTF-8 text")
		return nil
	}
	dec := yaml.NewDecoder(bytes.NewReader(data))
	var doc yaml.Node
	err := dec.Decode(&doc)
	if errors.Is(err, io.EOF) || err == nil && (len(doc.Content) == 0 || doc.Content[0].Tag == "!!null") {
		r.failFile(1, 1, "the file is empty", "write keys with their values")
		return nil
	}
	if err != nil {
		line, what := 1, err.Error()
		if m := yamlLine.FindStringSubmatch(strings.SplitN(what, "\n", 2)[0]); m != nil {
			what = m[2]
			if n, err := strconv.Atoi(m[1]); err == nil {
				line = n
				if strings.HasPrefix(what, "did not find expected") {
					line++ // the library counts lines from 0 in these
				}
			}
		}
		col := 1
		if m := yamlAnchor.FindStringSubmatch(what); m != nil { // said without a place
			if i := bytes.Index(data, []byte("*"+m[1])); i >= 0 {
				line, col = position(data, i)
			}
		}
		r.failFile(line, col, "not YAML: "+what, "keys and values as in the files of the library, indented with spaces")
		return nil
	}
	var second yaml.Node
	if err := dec.Decode(&second); !errors.Is(err, io.EOF) {
		line, col := 1, 1
		if err == nil {
			line, col = second.Line, second.Column
		}
		r.failFile(line, col, "a second document", "one document a file, so no further line ---")
		return nil
	}
	if !r.plain(doc.Content[0], 1) {
		return nil
	}
	return doc.Content[0]
}

func badByte(data []byte) (line, col int) {
	i := 0
	for i < len(data) {
		c, n := utf8.DecodeRune(data[i:])
		if c == utf8.RuneError && n == 1 {
			break
		}
		i += n
	}
	return position(data, i)
}

// position is the line and column, in characters, of a byte.
func position(data []byte, at int) (line, col int) {
	before := data[:at]
	start := bytes.LastIndexByte(before, '\n') + 1
	return bytes.Count(before, []byte("\n")) + 1, utf8.RuneCount(before[start:]) + 1
}

// plain refuses what our files have no use for and readers of YAML stumble
// over: anchors, aliases, merge keys, tags, deep nesting.
func (r *reader) plain(n *yaml.Node, depth int) bool {
	ok := true
	if depth > maxDepth {
		r.fail(n, "", "nested too deep", fmt.Sprintf("at most %d levels", maxDepth))
		return false
	}
	if n.Kind == yaml.AliasNode {
		r.fail(n, "", "an alias (*"+clip(n.Value)+")", "write the value out")
		return false
	}
	if n.Anchor != "" {
		r.fail(n, "", "an anchor (&"+clip(n.Anchor)+")", "write values out where they belong")
		ok = false
	}
	if n.Style&yaml.TaggedStyle != 0 {
		r.fail(n, "", "a tag ("+clip(n.Tag)+")", "plain values without tags")
		ok = false
	}
	for i, c := range n.Content {
		if n.Kind == yaml.MappingNode && i%2 == 0 && c.Tag == "!!merge" {
			r.fail(c, "", "a merge key (<<)", "write the keys out")
			return false
		}
		if !r.plain(c, depth+1) {
			ok = false
		}
	}
	return ok
}

var (
	decimalNumber = regexp.MustCompile(`^[-+]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][-+]?[0-9]+)?$`)
	commaNumber   = regexp.MustCompile(`^[-+]?[0-9]+,[0-9]+$`)
	unitNumber    = regexp.MustCompile(`^[-+]?[0-9.]+ *[A-Za-z%°µ]+[0-9A-Za-z³²/·]*$`)
)

// number reads n as a number within lo to hi, both included; unit is for the sentence.
func (r *reader) number(n *yaml.Node, path, unit string, lo, hi float64) (float64, bool) {
	if r.noted != nil {
		r.noted.at(path).number(lo, hi, unit)
		return lo, true
	}
	within := strings.TrimSpace("a number from " + show(lo) + " to " + show(hi) + " " + unit)
	if n.Kind != yaml.ScalarNode {
		r.fail(n, path, "a "+kindName(n)+" stands where a number belongs", within)
		return 0, false
	}
	v := n.Value
	switch {
	case n.Tag == "!!null" && n.Style == 0:
		r.fail(n, path, "no value", within)
		return 0, false
	case commaNumber.MatchString(v):
		r.fail(n, path, fmt.Sprintf("%q has a decimal comma", clip(v)), "write "+strings.Replace(v, ",", ".", 1))
		return 0, false
	case n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0:
		r.fail(n, path, fmt.Sprintf("%q is text", clip(v)), within+" without quotes")
		return 0, false
	case !decimalNumber.MatchString(v):
		what := fmt.Sprintf("%q is not a number", clip(v))
		switch strings.ToLower(strings.TrimLeft(v, "+-")) {
		case ".nan", "nan", ".inf", "inf", "infinity":
			what = fmt.Sprintf("%q is not a finite number", clip(v))
		default:
			if unitNumber.MatchString(v) {
				within += "; the unit stands in the key"
			}
		}
		r.fail(n, path, what, within)
		return 0, false
	}
	x, err := strconv.ParseFloat(v, 64)
	if err != nil || !(lo <= x && x <= hi) {
		r.fail(n, path, clip(v)+" is out of range", within)
		return 0, false
	}
	return x, true
}

// text reads n as a text of at most maxText characters.
func (r *reader) text(n *yaml.Node, path string) (string, bool) {
	if r.noted != nil {
		r.noted.at(path).kind = "string"
		return "x", true
	}
	switch {
	case n.Kind != yaml.ScalarNode:
		r.fail(n, path, "a "+kindName(n)+" stands where text belongs", "text")
		return "", false
	case n.Tag == "!!null" && n.Style == 0:
		r.fail(n, path, "no value", "text")
		return "", false
	case n.Tag != "!!str":
		r.fail(n, path, fmt.Sprintf("%q is not text", clip(n.Value)), "text; put it in quotes if it is meant as text")
		return "", false
	}
	s := strings.TrimSpace(n.Value)
	switch {
	case s == "":
		r.fail(n, path, "the text is empty", "at least one word")
		return "", false
	case utf8.RuneCountInString(s) > maxText:
		r.fail(n, path, fmt.Sprintf("the text has %d characters", utf8.RuneCountInString(s)), fmt.Sprintf("at most %d", maxText))
		return "", false
	}
	return s, true
}

// name reads n as one of the known names; what says whose names they are.
func (r *reader) name(n *yaml.Node, path, what string, known []string) (int, bool) {
	if r.noted != nil {
		r.noted.at(path).oneOf(known)
		return 0, len(known) > 0
	}
	s, ok := r.text(n, path)
	if !ok {
		return -1, false
	}
	for i, k := range known {
		if k == s {
			return i, true
		}
	}
	r.fail(n, path, fmt.Sprintf("unknown %s %q", what, clip(s)), nearestWords(s, known))
	return -1, false
}

// nearestWords names the nearest known ones, or all when they are few.
func nearestWords(s string, known []string) string {
	switch {
	case len(known) == 1:
		return "known is " + known[0]
	case 0 < len(known) && len(known) <= 8:
		return "known are " + strings.Join(known, ", ")
	}
	return NearestWords(s, known)
}

// yes reads n as yes or no.
func (r *reader) yes(n *yaml.Node, path string) (bool, bool) {
	if r.noted != nil {
		r.noted.at(path).kind = "boolean"
		return false, true
	}
	if n.Kind == yaml.ScalarNode {
		switch n.Value {
		case "yes", "true":
			return true, true
		case "no", "false":
			return false, true
		}
	}
	r.fail(n, path, fmt.Sprintf("%q is neither yes nor no", clip(n.Value)), "yes or no")
	return false, false
}

// list returns the items of n.
func (r *reader) list(n *yaml.Node, path string) []*yaml.Node {
	if r.noted != nil {
		r.noted.at(path + "[0]")
		return []*yaml.Node{everything}
	}
	switch {
	case n.Kind != yaml.SequenceNode:
		r.fail(n, path, "a "+kindName(n)+" stands where a list belongs", "a list, each item after a dash")
		return nil
	case len(n.Content) > maxItems:
		r.fail(n, path, fmt.Sprintf("the list has %d items", len(n.Content)), fmt.Sprintf("at most %d", maxItems))
		return nil
	}
	return n.Content
}

func kindName(n *yaml.Node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "mapping"
	case yaml.SequenceNode:
		return "list"
	}
	return "single value"
}
