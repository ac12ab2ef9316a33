package play

import (
	"encoding/json"
	"fmt"
	"time"

	"evenwear/scoring/record"
)

// A Kept is a session that is written as it happens: an act counts only once it
// is on disk.
type Kept struct {
	*Session
	Name string
	Torn bool // a last, half written act was dropped when it was resumed
	log  *record.Log
	dir  string
	told bool // the result is kept
}

// Keep begins to keep a session that has no acts yet in a folder.
func (s *Session) Keep(dir string) (*Kept, error) { return s.KeepFor(dir, nil) }

// KeepFor is Keep of a car that was drawn for something, which its debrief tells.
func (s *Session) KeepFor(dir string, drawn *record.Purpose) (*Kept, error) {
	log, name, err := record.Create(dir, record.Header{Job: s.job.ID, Seed: s.seed, Library: s.desk.Hash(), For: drawn})
	if err != nil {
		return nil, err
	}
	s.drawn = drawn
	return &Kept{Session: s, Name: name, log: log, dir: dir}, nil
}

// Resume goes on with a kept session at its last act.
func (d *Desk) Resume(dir, name string) (*Kept, error) {
	log, rec, path, err := record.Open(dir, name)
	if err != nil {
		return nil, err
	}
	if rec.Library != d.Hash() {
		log.Close()
		return nil, fmt.Errorf("%s: it was played with other cars, causes or jobs than these, or with another version of the program; its readings would come out differently", path)
	}
	acts := make([]Act, len(rec.Acts))
	for i, raw := range rec.Acts {
		if err := json.Unmarshal(raw, &acts[i]); err != nil {
			log.Close()
			return nil, fmt.Errorf("%s:%d: this act cannot be read: %w", path, i+2, err)
		}
	}
	s, err := d.Replay(rec.Job, rec.Seed, acts)
	if err != nil {
		log.Close()
		return nil, err
	}
	s.drawn = rec.For
	return &Kept{Session: s, Name: name, Torn: rec.Torn, log: log, dir: dir}, nil
}

// Do does one act once it has been kept. An error that is no *[Refusal] says
// that it could not be kept; then it was not done.
func (k *Kept) Do(a Act) error {
	if err := k.Refuses(a); err != nil {
		k.notice = err.Error()
		return err
	}
	if err := k.log.Append(a); err != nil {
		return fmt.Errorf("the act was not kept and so not done: %w", err)
	}
	return k.Session.Do(a)
}

// KeepResult keeps what the debrief came to beside the sessions, once it is
// worked out; before that, and the second time, it does nothing.
func (k *Kept) KeepResult(now time.Time) error {
	r, ok := k.Result(k.Name, now)
	if !ok || k.told {
		return nil
	}
	if err := record.KeepResult(k.dir, r); err != nil {
		return err
	}
	k.told = true
	return nil
}

// Drawn is what the car was drawn for; nil: it was chosen.
func (k *Kept) Drawn() *record.Purpose { return k.drawn }

// Close ends the keeping. All of it is on disk already.
func (k *Kept) Close() error { return k.log.Close() }
