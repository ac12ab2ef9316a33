//go:build !js

package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestBadAudit: each mistake of a command is a sentence.
func TestBadAudit(t *testing.T) {
	empty := t.TempDir()
	file := filepath.Join(empty, "file")
	if err := os.WriteFile(file, []byte("rubbish\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	broken := t.TempDir()
	if err := os.Mkdir(filepath.Join(broken, "jobs"), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(broken, "jobs", "odd.yaml"), []byte("title: [\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for want, a := range map[string]*auditCmd{
		"there is no such folder":             {Dir: filepath.Join(empty, "nowhere")},
		"a file stands where a folder":        {Dir: file},
		"there are no jobs in it; they stand": {Dir: t.TempDir()},
		"odd.yaml:":                           {Dir: broken},
		"--sample -1: want 0 or more":         {Sample: -1},
		"--workers -2: want 0 or more":        {Workers: -2},
		"--drawn -5: want 0 or more":          {Drawn: -5},
		"cannot be kept":                      {Resume: filepath.Join(empty, "no", "such", "file")},
	} {
		err := a.run(t.Context(), &cli{}, &bytes.Buffer{}, &bytes.Buffer{})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%+v: got %v, want it to say %q", a, err, want)
		}
	}
}

// TestAuditStopped: an audit that is stopped says how to go on, and a damaged file
// of an earlier one is told of.
func TestAuditStopped(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	stop()
	kept := filepath.Join(t.TempDir(), "kept")
	if err := os.WriteFile(kept, []byte("rubbish\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	var told bytes.Buffer
	err := (&auditCmd{Sample: 1, Resume: kept}).run(ctx, &cli{}, &bytes.Buffer{}, &told)
	if err == nil || !strings.Contains(err.Error(), "goes on from there") {
		t.Errorf("got %v", err)
	}
	if !strings.Contains(told.String(), kept+".damaged") {
		t.Errorf("told %q", told.String())
	}
	if err := (&auditCmd{Drawn: 9}).run(ctx, &cli{}, &bytes.Buffer{}, &told); err == nil || !strings.Contains(err.Error(), "the drawing was stopped") {
		t.Errorf("got %v", err)
	}
	if err := (&auditCmd{Sample: 1}).run(ctx, &cli{}, &bytes.Buffer{}, &told); err == nil || !strings.Contains(err.Error(), "with --resume FILE") {
		t.Errorf("got %v", err)
	}
}
