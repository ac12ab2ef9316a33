package golden

import (
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// TestOtherMachines makes the same run, against the same kept hashes, as
// WebAssembly under Node and as 386: by itself, or where the kernel runs no 32-bit
// programs in QEMU's user mode, whose arithmetic is exact too. Elsewhere than on
// linux/amd64 the run itself is all there is to do.
func TestOtherMachines(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles for two other machines")
	}
	if runtime.GOOS != "linux" || runtime.GOARCH != "amd64" {
		t.Skipf("run from linux/amd64, not %s/%s", runtime.GOOS, runtime.GOARCH)
	}
	goTool := tool(t, "go")
	root := strings.TrimSpace(output(t, exec.Command(goTool, "env", "GOROOT")))
	t.Run("wasm", func(t *testing.T) {
		tool(t, "node")
		elsewhere(t, goTool, "js", "wasm", "-exec", filepath.Join(root, "lib", "wasm", "go_js_wasm_exec"))
	})
	t.Run("386", func(t *testing.T) {
		if runs386(t, goTool) {
			elsewhere(t, goTool, "linux", "386")
			return
		}
		// QEMU 7.2 delivers no signal to a second thread's own stack: one thread, no preemption.
		t.Setenv("GOMAXPROCS", "1")
		t.Setenv("GODEBUG", "asyncpreemptoff=1")
		elsewhere(t, goTool, "linux", "386", "-exec", tool(t, "qemu-i386"))
	})
}

// runs386 tells whether this kernel runs a 32-bit program.
func runs386(t *testing.T, goTool string) bool {
	t.Helper()
	source := filepath.Join(t.TempDir(), "main.go")
	if err := os.WriteFile(source, []byte("package main\n\nfunc main() {}\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(goTool, "run", source)
	cmd.Env = append(os.Environ(), "GOOS=linux", "GOARCH=386", "CGO_ENABLED=0")
	out, err := cmd.CombinedOutput()
	if err != nil && !strings.Contains(string(out), "exec format error") {
		t.Fatalf("%v\n%s", err, out)
	}
	return err == nil
}

func elsewhere(t *testing.T, goTool, system, machine string, flags ...string) {
	t.Helper()
	args := append([]string{"test", "-count=1", "-v", "-run", "^TestGolden$"}, flags...)
	cmd := exec.Command(goTool, append(args, ".")...)
	cmd.Env = append(os.Environ(), "GOOS="+system, "GOARCH="+machine, "CGO_ENABLED=0")
	if out := output(t, cmd); !strings.Contains(out, "--- PASS: TestGolden") {
		t.Errorf("%s/%s did not run:\n%s", system, machine, out)
	}
}

func output(t *testing.T, cmd *exec.Cmd) string {
	t.Helper()
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %v\n%s", strings.Join(cmd.Args, " "), err, out)
	}
	return string(out)
}

// tool finds a program; where everything must be tested its absence is a failure.
func tool(t *testing.T, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("no %s on the path", name)
		}
		t.Skipf("no %s on the path", name)
	}
	return path
}
