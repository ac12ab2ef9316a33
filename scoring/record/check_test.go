package record

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestDamagedCheck: a self-check that cannot be read is set aside with a sentence;
// the others stay, in the order they were begun.
func TestDamagedCheck(t *testing.T) {
	dir := t.TempDir()
	began := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	for i := range 2 {
		c, err := CreateCheck(dir, Check{Began: began.Add(-time.Duration(i) * time.Hour), Library: "ab", Cars: []CheckCar{{"unseen_fair_48213", 7}}})
		if err != nil || c.Name == "" {
			t.Fatalf("%+v, %v", c, err)
		}
	}
	for _, bad := range []string{"half a l", `{"version":1}`, `{"version":1,"began":"2026-03-01T09:00:00Z","cars":[{"seed":3}]}`} {
		path := filepath.Join(dir, "selfcheck-9"+checkSuffix)
		if err := os.WriteFile(path, []byte(bad), 0o600); err != nil {
			t.Fatal(err)
		}
		list, damaged, err := Checks(dir)
		if err != nil || len(list) != 2 || len(damaged) != 1 || list[0].Name != "selfcheck-2" || list[1].Cars[0].Seed != 7 {
			t.Fatalf("%q: %+v, damaged %v, %v", bad, list, damaged, err)
		}
		var d *DamagedError
		if !errors.As(damaged[0], &d) || d.Aside == "" || !strings.Contains(d.Error(), "selfcheck-9") {
			t.Errorf("%q: %v", bad, damaged[0])
		}
		if _, damaged, _ := Checks(dir); damaged != nil {
			t.Errorf("%q: told twice", bad)
		}
	}
	if err := Forget(dir, "selfcheck-1"); err != nil {
		t.Fatal(err)
	}
	if list, _, _ := Checks(dir); len(list) != 1 {
		t.Errorf("one forgotten, %d left", len(list))
	}
	if err := Forget(dir, "selfcheck-1"); !errors.Is(err, ErrNone) {
		t.Errorf("forgotten again: %v", err)
	}
}
