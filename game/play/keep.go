package play

import (
	"encoding/json"
	"fmt"

	"evenwear/scoring/record"
)

// A Kept is a session that is written as it happens: an act counts only once it
// is on disk.
type Kept struct {
	*Session
	Name string
	Torn bool // a last, half written act was dropped when it was resumed
	log  *record.Log
}

// Keep begins to keep a session that has no acts yet in a folder.
func (s *Session) Keep(dir string) (*Kept, error) {
	log, name, err := record.Create(dir, record.Header{Job: s.job.ID, Seed: s.seed, Library: s.desk.Hash()})
	if err != nil {
		return nil, err
	}
	return &Kept{Session: s, Name: name, log: log}, nil
}

// Resume goes on with a kept session at its last act.
func (d *Desk) Resume(dir, name string) (*Kept, error) {
	log, rec, path, err := record.Open(dir, name)
	if err != nil {
		return nil, err
	}
	if rec.Library != d.Hash() {
		log.Close()
		return nil, fmt.Errorf("%s: it was played with other cars, causes or jobs than these; its readings would come out differently", path)
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
	return &Kept{Session: s, Name: name, Torn: rec.Torn, log: log}, nil
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

// Close ends the keeping. All of it is on disk already.
func (k *Kept) Close() error { return k.log.Close() }
