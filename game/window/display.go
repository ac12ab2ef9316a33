package window

import (
	"errors"
	"runtime"
)

// ErrNoDisplay says that this machine offers no screen to open a window on.
var ErrNoDisplay = errors.New("no window can be opened here: neither DISPLAY nor WAYLAND_DISPLAY is set")

// checkDisplay looks before a window is tried: without a display the library
// would try the machine's bare frame buffer.
func checkDisplay(goos string, getenv func(string) string) error {
	switch goos {
	case "linux", "freebsd", "netbsd", "openbsd":
		if getenv("DISPLAY") == "" && getenv("WAYLAND_DISPLAY") == "" {
			return ErrNoDisplay
		}
	}
	return nil
}

const here = runtime.GOOS
