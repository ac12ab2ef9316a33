//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package record

import (
	"errors"
	"os"
	"syscall"
)

// lock takes a record for this program until its file is closed, however the
// program ends. Where the file system has no locks, Append still notices another.
func lock(f *os.File) error {
	if errors.Is(syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB), syscall.EWOULDBLOCK) {
		return ErrShared
	}
	return nil
}

// await waits until no other program holds a file and takes it until it is closed.
func await(f *os.File) error {
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX)
		if errors.Is(err, syscall.EINTR) {
			continue
		}
		if errors.Is(err, syscall.ENOTSUP) || errors.Is(err, syscall.ENOSYS) || errors.Is(err, syscall.ENOLCK) {
			return nil // the file system has no locks
		}
		return err
	}
}
