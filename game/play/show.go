package play

import (
	"slices"
	"strconv"

	"evenwear/physics"
	"evenwear/physics/inspect"
	"evenwear/scenarios"
)

// View is all a face may show now. It is built anew each time and shares
// nothing with the session.
func (s *Session) View() *View {
	v := &View{Stage: s.stage, Title: s.title(), Complaint: s.job.Complaint, OnPaper: s.away(), Notice: s.notice, Warns: s.warns}
	v.Plan = s.plan()
	v.Instrument = s.instrument()
	v.Notebook = s.notebook()
	v.add(Node{ID: "sheet", Role: "heading", Name: v.Title.Sheet, Value: v.Title.Job})
	v.add(Node{ID: "complaint", Role: "text", Name: s.say("view.owner"), Value: s.job.Complaint})
	switch s.stage {
	case Inspecting:
		s.showInspecting(v)
	case Calling, Deciding:
		s.showCall(v)
	case Handing:
		s.showHanding(v)
	case Debriefed:
		s.showDebrief(v)
	}
	return v
}

func (v *View) add(n ...Node) { v.Nodes = append(v.Nodes, n...) }

func (s *Session) title() Title {
	t := Title{
		Sheet: s.say("sheet." + string(s.stage)), Car: s.job.Car.Name, Job: s.job.Title,
		Place: s.say("place." + s.place), Km: s.job.Driven.Km,
		Minutes: s.minutes, Limit: s.job.Minutes, Seed: s.seed, Counters: s.placed(),
	}
	for _, n := range s.notes {
		if !n.skipped && !n.struck {
			t.Readings++
		}
	}
	return t
}

// act offers an act with its key, dimmed with the reason when it would be refused.
func (s *Session) act(key, label string, a Act) Action {
	n := s.refuse(a)
	return Action{Key: key, Label: label, Act: a, Enabled: n.allows(), Why: s.why(n)}
}

// plan is the car from above.
func (s *Session) plan() *PlanView {
	p := &PlanView{
		Stood:     s.stood,
		Chocked:   [2]bool{s.setup.stands("chock_front"), s.setup.stands("chock_rear")},
		Handbrake: s.setup.stands("handbrake_on"),
		Lifted:    [2]bool{s.setup.stands("lift_front"), s.setup.stands("lift_rear")},
	}
	for w := range physics.Wheel(physics.NumWheels) {
		p.OnStand[w] = s.setup.stands("stand@" + w.String())
		p.NutsSlack[w] = s.setup.stands("slacken_nuts@" + w.String())
		p.DiscHot[w] = !s.setup.stands("cool_disc@" + w.String())
		p.WheelOff[w] = s.setup.stands("wheel_off@" + w.String())
	}
	if s.repaired != nil {
		for _, c := range s.chosen {
			r, at, _ := s.desk.findRemedy(c)
			_, wheel := at.Wheel()
			if !r.Renews || !wheel && at != "front_axle" && at != "rear_axle" {
				continue
			}
			for _, w := range at.Wheels(&s.job.Car.Spec) {
				p.NewParts[w] = append(p.NewParts[w], r.Name)
			}
		}
	}
	for i, id := range places {
		n := 0
		for _, note := range s.notes {
			if !note.skipped && !note.struck && note.again == (s.repaired != nil) && placeOf(note.inst, note.check) == id {
				n++
			}
		}
		p.Places = append(p.Places, PlanPlace{ID: id, Readings: n, Here: s.place == id,
			Action: s.act(strconv.Itoa(i+1), s.say("place."+id), Act{Do: Go, What: id})})
	}
	return p
}

func (s *Session) notebook() []NoteView {
	var list []NoteView
	if s.stage != Inspecting { // there they stand with what is known
		for _, n := range s.given {
			list = append(list, s.noteView(n))
		}
	}
	for _, n := range s.notes {
		list = append(list, s.noteView(n))
	}
	if r := s.reading; r != nil {
		list = append(list, NoteView{Check: r.inst.String(), Where: s.say("place." + wherePut(r.inst, r.check)),
			What: s.say("check." + string(r.check.ID)), Unit: s.sayUnit(r.check.Meter.Unit), Minutes: r.minutes, Again: s.repaired != nil})
	}
	return list
}

func (s *Session) noteView(n note) NoteView {
	v := NoteView{Check: n.inst.String(), Where: s.say("place." + wherePut(n.inst, n.check)),
		What: s.say("check." + string(n.check.ID)), Unit: s.sayUnit(n.check.Meter.Unit), Minutes: n.minutes,
		Struck: n.struck, Again: n.again}
	v.Written = s.say("play.not_read")
	if !n.skipped {
		v.Written = s.sayDisplay(n.check, n.written)
	}
	return v
}

// noteNodes are the notebook in words, each line with its way out.
func (s *Session) noteNodes(v *View) {
	v.add(Node{ID: "notebook", Role: "heading", Name: s.say("view.notebook"),
		Value: s.words.Say("view.readings", "readings", v.Title.Readings, "minutes", plain(v.Title.Minutes), "limit", plain(v.Title.Limit))})
	if s.stage != Inspecting { // there they stand with what is known
		s.givenNodes(v)
	}
	for i, n := range s.notes {
		nv := s.noteView(n)
		value := nv.Written
		if nv.Unit != "" && !n.skipped {
			value += " " + nv.Unit
		}
		if n.struck {
			value = s.words.Say("view.struck", "value", value)
		}
		if n.again {
			value = s.words.Say("view.again", "value", value)
		}
		node := Node{ID: "note" + strconv.Itoa(i+1), Role: "reading",
			Name: s.words.Say("play.at", "what", nv.What, "place", nv.Where), Value: value}
		a := s.act("-"+strconv.Itoa(i+1), s.say("act.strike"), Act{Do: Strike, N: float64(i + 1)})
		if a.Enabled {
			node.Actions = []Action{a}
		}
		v.add(node)
	}
}

// instrumentNodes are the instrument that waits to be read, in words.
func (s *Session) instrumentNodes(v *View) {
	i := v.Instrument
	if i == nil {
		return
	}
	v.add(Node{ID: "instrument", Role: "instrument", Name: i.Name, Value: i.Marks})
	if i.Digits != "" {
		v.add(Node{ID: "digits", Role: "instrument", Name: s.say("view.digits"), Value: i.Digits})
	}
	n := Node{ID: "field", Role: "field", Name: i.Question}
	if i.Unit != "" {
		n.Name = s.words.Say("view.ask_in", "question", i.Question, "unit", i.Unit)
	}
	n.Actions = append(n.Actions, i.Words...)
	if len(i.Words) == 0 {
		n.Actions = append(n.Actions, i.Write)
	}
	n.Actions = append(n.Actions, i.Skip)
	v.add(n)
}

// checkKeys and workKeys are the letters of checks and preparations, in the
// order in which a place offers them. C calls; digits up to 8 are places.
const (
	checkKeys = "QWERTYASDFGHJKLUIOP"
	workKeys  = "ZXVBMN90"
)

func key(keys string, i int) string {
	if i < len(keys) {
		return keys[i : i+1]
	}
	return ""
}

// showInspecting is the stations: the plan, what can be done here, the notebook.
func (s *Session) showInspecting(v *View) {
	s.instrumentNodes(v)
	if s.reading != nil {
		return // one thing at a time: it is to be read
	}
	for _, f := range s.job.Facts {
		v.add(Node{ID: "fact_" + f.ID, Role: "text", Name: s.say("view.fact"), Value: f.Text})
	}
	s.givenNodes(v)
	toCall := Node{ID: "to_call", Role: "key", Name: s.say("view.call"), Actions: []Action{s.act("C", s.say("act.call"), Act{Do: OpenCall})}}
	if s.away() {
		v.add(toCall)
		return
	}
	if s.place == string(inspect.Bonnet) || s.place == "ground" { // where one comes to it, and where it tells
		v.add(Node{ID: "fact_stands", Role: "text", Name: s.say("view.stands"), Value: s.sayStand()})
	}
	places := Node{ID: "places", Role: "choice", Name: s.say("view.places"), Value: s.words.Say("view.you_are", "place", v.Title.Place)}
	for _, p := range v.Plan.Places {
		a := p.Action
		a.Chosen = p.Here
		places.Actions = append(places.Actions, a)
	}
	v.add(places)
	v.add(s.setupNode())
	checks, cautions := s.checkNodes()
	for _, w := range s.worksHere() {
		for _, id := range w.Cautions {
			cautions = stands(cautions, id, "")
		}
	}
	for _, c := range cautions { // read before what they are about
		c.Role, c.Name = "caution", s.say(c.ID)
		v.add(c)
	}
	works := Node{ID: "prepare", Role: "choice", Name: s.say("view.prepare")}
	for i, w := range s.worksHere() {
		a := s.act(key(workKeys, i), s.say("prep."+w.ID), Act{Do: Prepare, What: w.String()})
		a.Minutes, a.Chosen = s.minutesOf(w), s.setup.stands(w.String())
		works.Actions = append(works.Actions, a)
	}
	if len(works.Actions) > 0 {
		v.add(works)
	}
	v.add(checks...)
	s.noteNodes(v)
	v.add(toCall)
}

// worksHere are the preparations of the place where the learner stands.
func (s *Session) worksHere() []inspect.Work {
	var list []inspect.Work
	for i := range inspect.Preparations() {
		w := inspect.Work{Preparation: &inspect.Preparations()[i]}
		if w.PerWheel {
			at, ok := scenarios.Place(s.place).Wheel()
			if !ok {
				continue
			}
			w.Wheel = at
		}
		if placeOfWork(w) == s.place {
			list = append(list, w)
		}
	}
	return list
}

// setupNode says how the car stands.
func (s *Session) setupNode() Node {
	n := Node{ID: "setup", Role: "text", Name: s.say("view.setup"), Value: s.say("view.on_wheels")}
	first := true
	for _, name := range s.setup {
		// Of a parked car only the handbrake is worth saying: tight nuts and cool discs are no work done.
		if name != "handbrake_on" && slices.Contains(s.arrived(), name) {
			continue
		}
		if first {
			first = false
			n.Value = s.sayWork(name)
			continue
		}
		n.Value = s.words.Say("view.and", "list", n.Value, "next", s.sayWork(name))
	}
	return n
}

func addNew(list []string, id string) []string {
	for _, l := range list {
		if l == id {
			return list
		}
	}
	return append(list, id)
}
