//go:build unix

package scenarios

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"
)

// TestNoFile: a pipe or a device is refused at once; reading it would never end.
func TestNoFile(t *testing.T) {
	pipes := laid(t, "jobs/")
	if err := syscall.Mkfifo(filepath.Join(pipes, "jobs", "x.yaml"), 0o644); err != nil {
		t.Skip(err)
	}
	if err := syscall.Mkfifo(filepath.Join(pipes, "cars"), 0o644); err != nil {
		t.Skip(err)
	}
	devices := laid(t, "jobs/")
	if err := os.Symlink("/dev/zero", filepath.Join(devices, "jobs", "x.yaml")); err != nil {
		t.Skip(err)
	}
	for dir, want := range map[string][]string{
		pipes:   {pipes + "/cars: this is a pipe; a folder belongs here", pipes + "/jobs/x.yaml: this is a pipe; a file of text belongs here"},
		devices: {devices + "/jobs/x.yaml: this is a device; a file of text belongs here"},
	} {
		done := make(chan error, 1)
		go func() {
			_, err := Overlay(dir)
			done <- err
		}()
		select {
		case err := <-done:
			sameSentences(t, err, want)
		case <-time.After(20 * time.Second):
			t.Fatalf("%s hangs", dir)
		}
	}
}
