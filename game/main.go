// Command game is Evenwear: a window, a terminal, and the tools of whoever
// writes jobs.
package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"syscall"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/game/practice"
	"evenwear/game/term"
	"evenwear/scenarios"
)

// version is what the program calls itself; records carry their own.
const version = "0.1"

// cli is the command line.
type cli struct {
	Folder   string `help:"A folder of cars, causes, remedies and jobs laid over the program's own." type:"path"`
	Sessions string `help:"Folder where sessions are kept." type:"path" placeholder:"DIR"`

	Window  windowCmd  `cmd:"" default:"withargs" help:"Open the window, or the terminal where there is no display (the default)."`
	Term    termCmd    `cmd:"" help:"Play a job, or the bench, by words and numbers."`
	List    listCmd    `cmd:"" help:"List the jobs, the lessons, and the sessions that were kept."`
	Forget  forgetCmd  `cmd:"" help:"Delete a kept session, or what all debriefs came to."`
	Records recordsCmd `cmd:"" help:"Print what the debriefs came to, as CSV."`
	Check   checkCmd   `cmd:"" help:"Check a folder of cars, causes, remedies, jobs and lessons."`
	Audit   auditCmd   `cmd:"" help:"Prove the jobs of a folder by simulated learners."`
	Own     ownCmd     `cmd:"" help:"Say which causes would give what you measured on your own car."`
	New     newCmd     `cmd:"" help:"Write a job, with comments, to begin a job of your own with."`
	Play    playCmd    `cmd:"" help:"Play a job file of your own; it is read again whenever it is saved."`
	Schema  schemaCmd  `cmd:"" help:"Print the JSON Schema of a kind of file, for an editor."`
	Trace   traceCmd   `cmd:"" passthrough:"" help:"The bench without a picture, as CSV; trace -help tells more."`
	Version versionCmd `cmd:"" help:"Print the version."`
}

// errQuiet ends the program with a failure and nothing to add.
var errQuiet = errors.New("")

func main() {
	bearPipe()
	// trace has flags of its own, with one dash as its lists are short to type.
	if len(os.Args) > 1 && os.Args[1] == "trace" {
		os.Exit(runTrace(os.Args[2:], os.Stdout, os.Stderr))
	}
	var c cli
	k, err := c.read(os.Args[1:])
	if err == nil {
		err = k.Run(&c)
		if wrong := mistake(""); errors.As(err, &wrong) {
			where := typedCommand(k, os.Args[1:])
			err = mistake(where + ": " + string(wrong) + helps(where))
		}
	}
	os.Exit(end(err))
}

// end tells how a run ended and returns its exit code.
func end(err error) int {
	var wrong mistake
	switch {
	case err == nil:
		return 0
	case errors.Is(err, errQuiet):
	case errors.As(err, &wrong):
		fmt.Fprintln(os.Stderr, wrong)
		return wrongUse
	case errors.Is(err, syscall.EPIPE):
		fmt.Fprintln(os.Stderr, "game:", writing(syscall.EPIPE))
	default:
		fmt.Fprintln(os.Stderr, "game:", err)
	}
	return 1
}

// library is the program's own, or that with a folder laid over it.
func (c *cli) library() (*scenarios.Library, error) {
	if c.Folder == "" {
		return scenarios.Embedded()
	}
	return scenarios.Overlay(c.Folder)
}

// sessions is the folder where sessions are kept.
func (c *cli) sessions() (string, error) {
	if c.Sessions != "" {
		return c.Sessions, nil
	}
	base, err := os.UserConfigDir()
	if err != nil {
		return "", fmt.Errorf("no folder for sessions is known here, give one with --sessions: %w", err)
	}
	return filepath.Join(base, "evenwear"), nil
}

// desk lays the library and the words out.
func (c *cli) desk() (*play.Desk, *assets.Words, error) {
	lib, err := c.library()
	if err != nil {
		return nil, nil, err
	}
	words, err := assets.English()
	if err != nil {
		return nil, nil, err
	}
	return newDesk(lib, words), words, nil
}

// newDesk lays a desk whose debriefs are asked for misconceptions.
func newDesk(lib *scenarios.Library, words *assets.Words) *play.Desk {
	d := play.NewDesk(lib, words)
	d.Explain = practice.Explained
	return d
}

type versionCmd struct{}

func (versionCmd) Run() error {
	_, err := fmt.Println("Evenwear", version)
	return err
}

type checkCmd struct {
	Dir string `arg:"" name:"folder" help:"The folder."`
}

func (c *checkCmd) Run() error {
	lib, err := scenarios.Overlay(c.Dir)
	if err != nil {
		return err
	}
	var untrue []error
	for _, j := range lib.Jobs {
		untrue = append(untrue, j.Verify())
	}
	if err := errors.Join(untrue...); err != nil {
		return err
	}
	_, err = fmt.Printf("%s: cars %d, causes %d, remedies %d, jobs %d, lessons %d with the program's own; nothing wrong found\n",
		c.Dir, len(lib.Cars), len(lib.Causes), len(lib.Remedies), len(lib.Jobs), len(lib.Lessons))
	return err
}

type traceCmd struct {
	Args []string `arg:"" optional:"" help:"See trace -help."`
}

func (t *traceCmd) Run(c *cli) error {
	args := t.Args
	if c.Folder != "" {
		args = append([]string{"-folder", c.Folder}, args...)
	}
	if code := runTrace(args, os.Stdout, os.Stderr); code != 0 {
		return errQuiet
	}
	return nil
}

// left tells how a job that was left ended: whoever leaves has not failed, but
// what was piped in and ends before the job is over has, quietly.
func left(err error) error {
	switch {
	case errors.Is(err, term.ErrEnded) && !typed():
		return errQuiet
	case errors.Is(err, term.ErrLeft):
		return nil
	}
	return err
}
