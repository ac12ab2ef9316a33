//go:build unix

package main

import (
	"os/signal"
	"syscall"
)

// bearPipe lets a reader that goes away show as an error of the write, not as a death.
func bearPipe() { signal.Ignore(syscall.SIGPIPE) }
