package play

import (
	"fmt"

	"evenwear/physics/inspect"
	"evenwear/scenarios"
	"evenwear/scoring"
	"evenwear/scoring/record"
)

// A Session is one job from its complaint to its debrief. It is its job, its
// seed and its acts; everything else here is worked out from them, so that
// replaying the acts gives the same session bit for bit. It is for one
// goroutine.
type Session struct {
	desk  *Desk
	words Words
	job   *scenarios.Job
	seed  uint64
	acts  []Act

	found    *inspect.World // the car as it came
	repaired *inspect.World // after the work; nil before
	table    *table

	stage   Stage
	place   string
	setup   setup
	minutes float64 // [min] spent
	opened  bool    // the reservoir's cap
	ran     float64 // [min] spent when the engine last ran
	tries   map[string]uint64
	reading *reading // made, not yet written down
	notes   []note
	given   []note            // that somebody else took
	due     []scoring.Caution // cautions that were due, each once, in their order
	harmful []string          // rules broken with harm, each once

	rows     []row
	sealed   bool
	chosen   []string         // remedies "remedy@place"
	first    inspect.Instance // the own reading that first showed what was called …
	showed   bool             // … if one did
	stood    [2]bool          // chocks at the front and the rear axle when the work began
	release  string
	told     string
	sealedAt float64 // [min] spent when the belief was sealed
	await    *settling
	settled  *outcome
	drawn    *record.Purpose // what the car was drawn for; nil: it was chosen
	notice   string
	warns    bool // the notice is a warning
	catalog  catalog
}

// Open begins a job.
func Open(lib *scenarios.Library, words Words, jobID string, seed uint64) (*Session, error) {
	return NewDesk(lib, words).Open(jobID, seed)
}

// Open begins a job at a desk, which keeps what sessions of the same car share.
func (d *Desk) Open(jobID string, seed uint64) (*Session, error) {
	job, err := d.job(jobID)
	if err != nil {
		return nil, err
	}
	if err := job.Verify(); err != nil { // the owner must not say what the physics deny
		return nil, err
	}
	s := &Session{
		desk: d, words: d.words, job: job, seed: seed,
		stage: Inspecting, place: "ground", tries: map[string]uint64{},
		catalog: d.catalog,
	}
	s.setup = s.arrived()
	if s.found, err = buildWorld(job.Car, job.Driven, job.Faults); err != nil {
		return nil, fmt.Errorf("job %s: %w", job.ID, err)
	}
	if s.table, err = d.table(job); err != nil {
		return nil, fmt.Errorf("job %s: %w", job.ID, err)
	}
	if err := s.takeNotes(); err != nil {
		return nil, fmt.Errorf("job %s: %w", job.ID, err)
	}
	return s, nil
}

// Replay begins a job and does acts again. An act that is refused is left out,
// as it was when it was first tried.
func (d *Desk) Replay(jobID string, seed uint64, acts []Act) (*Session, error) {
	s, err := d.Open(jobID, seed)
	if err != nil {
		return nil, err
	}
	for _, a := range acts {
		if err := s.Do(a); err != nil {
			var r *Refusal
			if !asRefusal(err, &r) {
				return nil, err
			}
		}
	}
	return s, nil
}

// Job is the id of the session's job.
func (s *Session) Job() string { return s.job.ID }

// Seed is the session's seed.
func (s *Session) Seed() uint64 { return s.seed }

// Acts are what has been done so far. They must not be changed.
func (s *Session) Acts() []Act { return s.acts }

// Stage is where the session stands.
func (s *Session) Stage() Stage { return s.stage }

// Refuses says in a sentence why an act cannot be done now, or nothing.
func (s *Session) Refuses(a Act) error {
	if n := s.refuse(a); !n.allows() {
		return &Refusal{n.id, s.why(n)}
	}
	return nil
}

// Do does one act. The error is a *[Refusal] when the act cannot be done now:
// a sentence for the learner, and nothing has changed but the view's notice.
func (s *Session) Do(a Act) error {
	s.warns = false
	if err := s.Refuses(a); err != nil {
		s.notice = err.Error()
		return err
	}
	notice, n := s.apply(a)
	if !n.allows() {
		s.notice = s.why(n)
		return &Refusal{n.id, s.notice}
	}
	s.notice = notice
	s.acts = append(s.acts, a)
	return nil
}

// refuse says why an act cannot be done now. It changes nothing.
func (s *Session) refuse(a Act) no {
	if s.stage == Debriefed {
		return because("no.job_is_over")
	}
	if a.N != a.N || a.N > 1e6 || a.N < -1e6 {
		return because("no.not_a_number")
	}
	if s.reading != nil && a.Do != Write && a.Do != Skip {
		return because("no.write_first")
	}
	if s.away() && (a.Do == Go || a.Do == Prepare || a.Do == Check) {
		return because("no.car_away")
	}
	switch a.Do {
	case Go:
		return s.refuseGo(a.What)
	case Prepare:
		return s.refusePrepare(a.What)
	case Check:
		return s.refuseCheck(a.What)
	case Write, Skip:
		return s.refuseWrite(a)
	case Strike:
		return s.refuseStrike(a.N)
	case OpenCall:
		return s.only(Inspecting)
	case Back:
		return s.refuseBack()
	case Row, DropRow, Counter, Seal:
		return s.refuseBelief(a)
	case Remedy, DropRem, Work:
		return s.refuseRemedy(a)
	case Release, Tell, HandOver:
		return s.refuseHand(a)
	}
	return because("no.unknown_act", "act", short(string(a.Do)))
}

// apply does an act that is not refused. It returns what is to be told, or a
// refusal when the car could not be computed; then nothing has changed.
func (s *Session) apply(a Act) (string, no) {
	switch a.Do {
	case Go:
		s.place = a.What
	case Prepare:
		return s.prepare(a.What)
	case Check:
		return s.check(a.What)
	case Write, Skip:
		s.write(a)
	case Strike:
		s.notes[int(a.N)-1].struck = true
	case OpenCall:
		s.stage = Calling
		return s.sayLeft("play.left"), no{}
	case Back:
		s.stage = Inspecting
	case Row, DropRow, Counter, Seal:
		return s.belief(a)
	case Remedy, DropRem:
		s.remedy(a)
	case Work:
		return s.work()
	case Release:
		s.release = a.What
	case Tell:
		s.told = a.Text
	case HandOver:
		return s.handOver()
	}
	return "", no{}
}

// only allows an act in these stages.
func (s *Session) only(stages ...Stage) no {
	for _, g := range stages {
		if s.stage == g {
			return no{}
		}
	}
	return because("no.stage."+string(s.stage), "job", s.job.ID)
}

// short keeps what was sent by others from filling a sentence.
func short(text string) string {
	const most = 40
	if r := []rune(text); len(r) > most {
		return string(r[:most]) + "…"
	}
	return text
}
