//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package record

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
)

// TestLocked: a record that is played can be neither opened nor forgotten by
// another, even with a line torn by a write under way, and is free afterwards.
func TestLocked(t *testing.T) {
	dir := t.TempDir()
	name := write(t, dir, 1)
	a, _, path, err := Open(dir, name)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, name+suffix), append(mustRead(t, path), `{"do"`...), 0o600); err != nil {
		t.Fatal(err)
	}
	before := mustRead(t, path)
	if _, _, _, err := Open(dir, name); !errors.Is(err, ErrShared) {
		t.Fatalf("opened twice: %v", err)
	}
	if err := Forget(dir, name); !errors.Is(err, ErrShared) {
		t.Fatalf("forgotten while it is played: %v", err)
	}
	if after := mustRead(t, path); string(after) != string(before) {
		t.Errorf("the refused changed %q to %q", before, after)
	}
	a.Close()
	b, s, _, err := Open(dir, name)
	if err != nil || !s.Torn {
		t.Fatalf("after it was closed: %v, torn %v", err, s.Torn)
	}
	b.Close()
	if err := Forget(dir, name); err != nil {
		t.Error(err)
	}
}

func mustRead(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}
