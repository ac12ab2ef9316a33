package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/signal"
	"runtime"
	"strings"
	"syscall"

	"evenwear/assets"
)

// unkept says that a session cannot be kept in a folder, why, and what helps.
func unkept(dir string, err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		err = at.Err // the folder is told already
	}
	return fmt.Errorf("%s: sessions cannot be kept there (%w); choose another folder with --sessions DIR", dir, err)
}

// kept says how to go on with a session.
func (c *cli) kept(words *assets.Words, name, dir string) string {
	return words.Say("term.kept", "name", name, "command", c.command("term --resume "+quoted(name), dir))
}

// keptCheck says how to go on with a self-check.
func (c *cli) keptCheck(words *assets.Words, name, dir string) string {
	return words.Say("check.kept", "name", name, "command", c.command("term "+checkWord, dir))
}

// command is what to type for something with the same library and sessions.
func (c *cli) command(what, dir string) string {
	command := "game"
	if c.Folder != "" {
		command += " --folder " + quoted(c.Folder)
	}
	command += " " + what
	if c.Sessions != "" {
		command += " --sessions " + quoted(dir)
	}
	return command
}

// quoted is a word as a shell takes it: in quotes where it has more than letters
// and what never means anything to a shell.
func quoted(s string) string {
	plain := func(r rune) bool {
		return r > 127 || strings.ContainsRune("/._-+:,@%=", r) ||
			'a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' || '0' <= r && r <= '9' || runtime.GOOS == "windows" && r == '\\'
	}
	switch {
	case s != "" && strings.IndexFunc(s, func(r rune) bool { return !plain(r) }) < 0:
		return s
	case runtime.GOOS == "windows":
		return `"` + s + `"` // no name of a file holds a double quote there
	}
	return "'" + strings.ReplaceAll(s, "'", `'\''`) + "'"
}

// interrupted says a sentence and ends the program when it is told to end, by
// Ctrl-C or otherwise. Every act is on disk by then. The function it returns
// ends the waiting.
func interrupted(sentence string) func() {
	told := make(chan os.Signal, 1)
	signal.Notify(told, os.Interrupt, syscall.SIGTERM)
	over := make(chan struct{})
	go func() {
		select {
		case <-over:
		case <-told:
			fmt.Fprintln(os.Stderr, "\n"+sentence)
			os.Exit(130)
		}
	}()
	return func() {
		signal.Stop(told)
		close(over)
	}
}
