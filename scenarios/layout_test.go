package scenarios

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// laid is a folder with these files; a name that ends in / is a folder.
func laid(t *testing.T, names ...string) string {
	t.Helper()
	dir := t.TempDir()
	for _, n := range names {
		path := filepath.Join(dir, n)
		var err error
		if strings.HasSuffix(n, "/") {
			err = os.MkdirAll(path, 0o755)
		} else if err = os.MkdirAll(filepath.Dir(path), 0o755); err == nil {
			err = os.WriteFile(path, []byte(soundJob), 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// TestLayout: what would be passed over without being read is refused where it
// stands, with the name that was meant.
func TestLayout(t *testing.T) {
	const known = "; known are catalogue.yaml, owners.yaml, pairs.yaml, cars, causes, remedies, jobs, lessons"
	for _, row := range []struct {
		name string
		want string
	}{
		{"job/x.yaml", "/job: this folder is not read" + known},
		{"Jobs/", "/Jobs: this folder is not read" + known},
		{"x.yaml", "/x.yaml: this file is not read here" + known},
		{"jobs", "/jobs: this is a file; a folder belongs here"},
		{"jobs/x.yaml/", "/jobs/x.yaml: a folder in this folder is not read; files that end in .yaml"},
		{"jobs/x.yaml.txt", "/jobs/x.yaml.txt: this file is not read; files that end in .yaml"},
	} {
		dir := laid(t, row.name)
		_, err := Overlay(dir)
		sameSentences(t, err, []string{dir + row.want})
	}
	dir := laid(t, "catalogue.yaml/")
	if _, err := Overlay(dir); err == nil || !strings.HasPrefix(err.Error(), dir+"/catalogue.yaml: this is a folder; a file of text belongs here") {
		t.Errorf("a folder as catalogue: %v", err)
	}
	if _, err := Overlay(laid(t, ".git/", ".DS_Store", "jobs/.x.yaml.swp", "jobs/mine.yaml")); err != nil {
		t.Errorf("names that begin with a point are left alone, got %v", err)
	}
}

// TestTooLong: a file far too long is refused without being read to its end.
func TestTooLong(t *testing.T) {
	dir := laid(t, "jobs/x.yaml")
	if err := os.Truncate(filepath.Join(dir, "jobs", "x.yaml"), 1<<40); err != nil {
		t.Skip(err) // not every file system has holes
	}
	_, err := Overlay(dir)
	sameSentences(t, err, []string{dir + "/jobs/x.yaml: the file is too long; at most 256 KiB are read"})
}
