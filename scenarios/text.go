package scenarios

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// Text is the file that a job could have been loaded from: a drawn car as an author
// may go on with it. A job without a goal gets its title for one.
func (j *Job) Text() (string, error) {
	type fault struct {
		Cause    string  `yaml:"cause"`
		Place    Place   `yaml:"place"`
		Severity string  `yaml:"severity"`
		Since    float64 `yaml:"since_km"`
	}
	out := struct {
		Title     string              `yaml:"title"`
		Car       string              `yaml:"car"`
		Complaint string              `yaml:"complaint"`
		Notices   []map[string]string `yaml:"notices"`
		Facts     []map[string]string `yaml:"facts,omitempty"`
		Driven    struct {
			Km        float64 `yaml:"clock_km"`
			Pads      float64 `yaml:"pads_km"`
			Thinner   float64 `yaml:"pads_thinner_mm"`
			Harshness float64 `yaml:"harshness_ratio"`
			Room      float64 `yaml:"room_c"`
			Stood     string  `yaml:"stood_overnight,omitempty"`
		} `yaml:"driven"`
		Faults  []fault `yaml:"faults,omitempty"`
		Minutes float64 `yaml:"minutes_min"`
		Aim     float64 `yaml:"difficulty_bits"`
		Goal    string  `yaml:"goal"`
	}{Title: j.Title, Car: j.Car.ID, Complaint: j.Complaint, Minutes: j.Minutes, Aim: j.Aim, Goal: j.Goal}
	if out.Goal == "" {
		out.Goal = j.Title
	}
	for _, c := range j.Claims {
		out.Notices = append(out.Notices, map[string]string{c.ID: c.Value})
	}
	for _, f := range j.Facts {
		out.Facts = append(out.Facts, map[string]string{f.ID: strings.ReplaceAll(f.Text, j.Driven.figure(f.ID), "{"+f.ID+"}")})
	}
	d := &out.Driven
	d.Km, d.Pads, d.Thinner, d.Harshness, d.Room = j.Driven.Km, j.Driven.PadsKm, j.Driven.PadsThinnerMm, j.Driven.Harshness, j.Driven.RoomC
	if j.Driven.Stood {
		d.Stood = "yes"
	}
	for _, f := range j.Faults {
		out.Faults = append(out.Faults, fault{f.Cause.ID, f.Place, f.Severity.ID, f.SinceKm})
	}
	text, err := yaml.Marshal(&out)
	return string(text), err
}

// ReadJob reads one job from the text of its file, with the names of a library that
// is not changed; the error is of type [Problems].
func (l *Library) ReadJob(id, text string) (*Job, error) {
	var probs Problems
	src := &source{id: id, name: id + ".yaml"}
	src.r = &reader{file: src.name, probs: &probs}
	src.node = src.r.parse([]byte(text))
	lib := *l
	lib.Jobs = nil
	b := &builder{lib: &lib}
	b.job(src)
	if len(probs) > 0 {
		probs.sort()
		return nil, probs
	}
	return lib.Jobs[0], nil
}
