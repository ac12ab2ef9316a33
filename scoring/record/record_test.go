package record

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

type act struct {
	Do string `json:"do"`
	N  int    `json:"n"`
}

func write(t *testing.T, dir string, n int) string {
	t.Helper()
	l, name, err := Create(dir, Header{Job: "../pull", Seed: 7, Library: "ab"})
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	for i := range n {
		if err := l.Append(act{"go", i}); err != nil {
			t.Fatal(err)
		}
	}
	return name
}

// TestKilledAtAnyByte cuts a record at every length: what was written whole comes back.
func TestKilledAtAnyByte(t *testing.T) {
	dir := t.TempDir()
	name := write(t, dir, 3)
	path := filepath.Join(dir, name+suffix)
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	header := strings.IndexByte(string(data), '\n') + 1
	for cut := header; cut <= len(data); cut++ {
		if err := os.WriteFile(path, data[:cut], 0o600); err != nil {
			t.Fatal(err)
		}
		l, s, _, err := Open(dir, name)
		if err != nil {
			t.Fatalf("cut at %d of %d: %v", cut, len(data), err)
		}
		want := strings.Count(string(data[:cut]), "\n") - 1
		torn := data[cut-1] != '\n'
		if len(s.Acts) != want || s.Torn != torn {
			t.Errorf("cut at %d: got %d acts, torn %v; want %d, %v", cut, len(s.Acts), s.Torn, want, torn)
		}
		if err := l.Append(act{"more", 9}); err != nil {
			t.Fatal(err)
		}
		l.Close()
		l, s, _, err = Open(dir, name)
		if err != nil || len(s.Acts) != want+1 || string(s.Acts[want]) != `{"do":"more","n":9}` {
			t.Fatalf("cut at %d, then gone on: %v, acts %s", cut, err, s.Acts)
		}
		l.Close()
	}
}

func TestDamageIsSetAside(t *testing.T) {
	for _, c := range []struct{ name, data, want string }{
		{"middle", "{\"version\":1,\"job\":\"a\"}\nrust\n{\"do\":\"go\"}\n", ":2: this line is not an act"},
		{"middle before a torn line", "{\"version\":1,\"job\":\"a\"}\nrust\n{\"do\"", ":2: this line is not an act"},
		{"header", "rust\n", ":1: the first line is not a session's header"},
		{"empty", "", ":1: there is no header"},
		{"no line end at all", "{\"version\":1", ":1: there is no header"},
	} {
		t.Run(c.name, func(t *testing.T) {
			dir := t.TempDir()
			path := filepath.Join(dir, "x"+suffix)
			if err := os.WriteFile(path, []byte(c.data), 0o600); err != nil {
				t.Fatal(err)
			}
			_, _, _, err := Open(dir, "x")
			var d *DamagedError
			if !errors.As(err, &d) || !strings.Contains(err.Error(), c.want) {
				t.Fatalf("got %v, want %q", err, c.want)
			}
			kept, err := os.ReadFile(d.Aside)
			if err != nil || string(kept) != c.data {
				t.Errorf("set aside as %q: %v, %q", d.Aside, err, kept)
			}
			if _, err := os.Stat(path); !errors.Is(err, os.ErrNotExist) {
				t.Errorf("still at %s", path)
			}
		})
	}
}

func TestGarbledLastLine(t *testing.T) {
	dir := t.TempDir()
	name := write(t, dir, 2)
	path := filepath.Join(dir, name+suffix)
	f, err := os.OpenFile(path, os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	f.WriteString("\x00\x00\x00\n")
	f.Close()
	l, s, _, err := Open(dir, name)
	if err != nil || len(s.Acts) != 2 || !s.Torn {
		t.Fatalf("got %v, %d acts, torn %v", err, len(s.Acts), s.Torn)
	}
	l.Close()
}

func TestOtherVersion(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "x"+suffix)
	os.WriteFile(path, []byte("{\"version\":99,\"job\":\"a\"}\n"), 0o600)
	if _, _, _, err := Open(dir, "x"); !errors.Is(err, ErrVersion) {
		t.Fatalf("got %v, want %v", err, ErrVersion)
	}
	if _, err := os.Stat(path); err != nil {
		t.Error("a record of another version was moved:", err)
	}
}

func TestListAndForget(t *testing.T) {
	dir := t.TempDir()
	if list, err := List(filepath.Join(dir, "none")); err != nil || list != nil {
		t.Fatalf("missing folder: %v, %v", list, err)
	}
	a, b := write(t, dir, 1), write(t, dir, 2)
	if a == b {
		t.Fatal("two sessions share a name")
	}
	os.WriteFile(filepath.Join(dir, "zz"+suffix), []byte("rust\n"), 0o600)
	list, err := List(dir)
	if err != nil || len(list) != 3 || list[0].Acts != 1 || list[1].Acts != 2 || list[2].Err == nil {
		t.Fatalf("got %+v, %v", list, err)
	}
	if err := Forget(dir, a); err != nil {
		t.Fatal(err)
	}
	if list, _ = List(dir); len(list) != 2 {
		t.Errorf("after forgetting: %d", len(list))
	}
}

func TestTwoWriters(t *testing.T) {
	dir := t.TempDir()
	name := write(t, dir, 1)
	a, _, _, err := Open(dir, name)
	if err != nil {
		t.Fatal(err)
	}
	defer a.Close()
	if err := a.Append(act{"go", 1}); err != nil {
		t.Fatal(err)
	}
	// Who writes past the lock, or where there is none, is noticed at the next act.
	f, err := os.OpenFile(filepath.Join(dir, name+suffix), os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		t.Fatal(err)
	}
	f.WriteString("{\"do\":\"go\",\"n\":2}\n")
	f.Close()
	if err := a.Append(act{"go", 3}); !errors.Is(err, ErrShared) {
		t.Fatalf("got %v, want %v", err, ErrShared)
	}
	a.Close()
	b, s, _, err := Open(dir, name)
	if err != nil || len(s.Acts) != 3 || string(s.Acts[2]) != `{"do":"go","n":2}` {
		t.Fatalf("of both writers is kept %s, %v", s.Acts, err)
	}
	b.Close()
}
