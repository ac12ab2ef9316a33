package window

import (
	"errors"
	"testing"
)

func TestNoDisplayIsSaid(t *testing.T) {
	none := func(string) string { return "" }
	if err := checkDisplay("linux", none); !errors.Is(err, ErrNoDisplay) {
		t.Errorf("linux without a display: got %v", err)
	}
	for _, goos := range []string{"windows", "darwin", "js"} {
		if err := checkDisplay(goos, none); err != nil {
			t.Errorf("%s needs no DISPLAY: got %v", goos, err)
		}
	}
	wayland := func(k string) string {
		if k == "WAYLAND_DISPLAY" {
			return "wayland-0"
		}
		return ""
	}
	if err := checkDisplay("linux", wayland); err != nil {
		t.Errorf("wayland alone is a display: got %v", err)
	}
}
