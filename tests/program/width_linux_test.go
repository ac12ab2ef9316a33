package program

import (
	"fmt"
	"os"
	"strings"
	"syscall"
	"testing"
	"time"
	"unsafe"
)

// pseudo opens a pseudo-terminal: what a program writes to tty is read from host.
func pseudo(t *testing.T) (host, tty *os.File) {
	t.Helper()
	host, err := os.OpenFile("/dev/ptmx", os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skip("no pseudo-terminal here:", err)
	}
	t.Cleanup(func() { host.Close() })
	var n, unlock int32
	control(t, host, syscall.TIOCSPTLCK, unsafe.Pointer(&unlock))
	control(t, host, syscall.TIOCGPTN, unsafe.Pointer(&n))
	tty, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", n), os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skip("no pseudo-terminal here:", err)
	}
	t.Cleanup(func() { tty.Close() })
	return host, tty
}

func control(t *testing.T, f *os.File, what uintptr, arg unsafe.Pointer) {
	t.Helper()
	raw, err := f.SyscallConn()
	if err != nil {
		t.Fatal(err)
	}
	var no syscall.Errno
	raw.Control(func(fd uintptr) { _, _, no = syscall.Syscall(syscall.SYS_IOCTL, fd, what, uintptr(arg)) })
	if no != 0 {
		t.Skip("no pseudo-terminal here:", no)
	}
}

func resized(t *testing.T, host *os.File, columns uint16) {
	t.Helper()
	control(t, host, syscall.TIOCSWINSZ, unsafe.Pointer(&[4]uint16{24, columns}))
}

// TestTerminalsWidth: lines are as wide as the terminal is when they are printed.
func TestTerminalsWidth(t *testing.T) {
	host, tty := pseudo(t)
	resized(t, host, 40)
	cmd := command(t, "term", "warm_wheel", "--sessions", t.TempDir())
	cmd.Env = append(cmd.Env, "COLUMNS=120")
	in, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	cmd.Stdout = tty
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { cmd.Process.Kill() })
	lines := make(chan string, 1000)
	go func() {
		defer close(lines)
		buf := make([]byte, 1<<16)
		for {
			n, err := host.Read(buf)
			if err != nil {
				return
			}
			lines <- string(buf[:n])
		}
	}()
	// until reads up to what ends a sheet, which is not broken within itself.
	until := func(last string) string {
		said, late := "", time.After(30*time.Second)
		for !strings.Contains(said, last) {
			select {
			case l := <-lines:
				said += l
			case <-late:
				t.Fatalf("no %q in 30 s after\n%s", last, said)
			}
		}
		return said
	}
	const last = "To the call"
	narrow(t, strings.ReplaceAll(until(last), "\r", ""), 40)
	resized(t, host, 60)
	if _, err := in.Write([]byte(".\n")); err != nil {
		t.Fatal(err)
	}
	again := strings.ReplaceAll(until(last), "\r", "")
	narrow(t, again, 60)
	if n := widestOf(again); n <= 50 {
		t.Errorf("after the terminal was pulled to 60 the widest line has %d characters", n)
	}
}
