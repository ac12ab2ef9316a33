package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"evenwear/scenarios"
)

// newCmd begins files of an author's own.
type newCmd struct {
	Job newJobCmd `cmd:"" help:"A job file with comments: FOLDER/jobs/NAME.yaml."`
}

type newJobCmd struct {
	File string `arg:"" help:"The file to write; it must not exist yet." type:"path"`
}

func (n *newJobCmd) Run(c *cli) error {
	folder, _, err := jobFile(n.File)
	if err != nil {
		return err
	}
	lib, err := c.library()
	if err != nil {
		return err
	}
	text, err := lib.NewJob()
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(n.File), 0o755); err != nil {
		return err
	}
	f, err := os.OpenFile(n.File, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s: this file is there already and was left alone; give another name", n.File)
	}
	if err != nil {
		return err
	}
	_, err = f.WriteString(text)
	if err := errors.Join(err, f.Close()); err != nil {
		return err
	}
	_, err = fmt.Printf("%s is written. Change it, then: game check %s, or: game play %s\n", n.File, quoted(folder), quoted(n.File))
	return err
}

// jobFile takes FOLDER/jobs/NAME.yaml apart.
func jobFile(file string) (folder, id string, err error) {
	dir, base := filepath.Split(filepath.Clean(file))
	dir = filepath.Clean(dir)
	if filepath.Base(dir) != "jobs" || filepath.Ext(base) != ".yaml" {
		return "", "", fmt.Errorf("%s: a job stands in a folder named jobs and ends in .yaml: FOLDER/jobs/NAME.yaml", file)
	}
	id = strings.TrimSuffix(base, ".yaml")
	if err := scenarios.CheckID(id); err != nil {
		return "", "", fmt.Errorf("%s: %w", file, err)
	}
	return filepath.Dir(dir), id, nil
}

// schemaCmd prints a schema for editors.
type schemaCmd struct {
	Kind string `arg:"" optional:"" default:"job" help:"A kind of file: job, cause, lesson …; a wrong one is answered with those there are."`
}

func (s *schemaCmd) Run(c *cli) error {
	lib, err := c.library()
	if err != nil {
		return err
	}
	text, err := lib.Schema(s.Kind)
	if err != nil {
		return err
	}
	_, err = fmt.Println(string(text))
	return err
}
