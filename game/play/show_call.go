package play

import (
	"strconv"
	"strings"

	"evenwear/scenarios"
)

// call is the call sheet.
func (s *Session) call() *CallView {
	c := &CallView{Placed: s.placed(), Says: s.said(), Sure: s.sure(), Sealed: s.sealed,
		Seal: s.act("Enter", s.say("act.seal"), Act{Do: Seal}),
		Work: s.act("G", s.say("act.work"), Act{Do: Work}),
	}
	if open := Counters - c.Placed; open > 0 && !s.sealed {
		c.Ask = s.words.Say("play.ask_seal", "open", open)
	}
	for _, g := range s.desk.lib.Groups {
		gv := GroupView{ID: g.ID, Name: g.Name}
		for _, k := range s.desk.lib.Causes {
			if k.Group != g.ID {
				continue
			}
			cv := CauseView{ID: k.ID, Name: k.Name, Explain: explain(s.desk.lib, s.words, k)}
			for _, p := range k.Places {
				id := rowID(k, p)
				a := s.act("", s.sayWhere(k.Where, string(p)), Act{Do: Row, What: id})
				a.Chosen = s.row(id) != nil
				cv.Places = append(cv.Places, a)
			}
			gv.Causes = append(gv.Causes, cv)
		}
		if len(gv.Causes) > 0 { // a small library leaves some empty
			c.Groups = append(c.Groups, gv)
		}
	}
	for i, r := range s.rows {
		c.Rows = append(c.Rows, s.rowView(i, r))
	}
	for _, p := range s.desk.lib.Parts {
		if pv := s.partView(p.ID, p.Name); len(pv.Remedies) > 0 {
			c.Parts = append(c.Parts, pv)
		}
	}
	c.Remedies = s.remedyViews()
	return c
}

func (s *Session) rowView(i int, r row) RowView {
	cause, place := s.sayRow(r.id)
	k := rowKey(i)
	count := func(key string, label string, n int) Action {
		return s.act(key, label, Act{Do: Counter, What: r.id, N: float64(n)})
	}
	return RowView{ID: r.id, Cause: cause, Place: place, Counters: r.counters,
		More:  count(k+"+", s.say("act.more"), r.counters+1),
		Less:  count(k+"-", s.say("act.less"), r.counters-1),
		Clear: count(k+"0", s.say("act.clear"), 0),
		Drop:  s.act(k+"x", s.say("act.drop"), Act{Do: DropRow, What: r.id}),
	}
}

// rowKey is the letter of a row: A, B, C … Z, AA, AB.
func rowKey(i int) string {
	if i >= 26 {
		return rowKey(i/26-1) + letter(i%26)
	}
	return letter(i)
}

func (s *Session) partView(id, name string) PartView {
	pv := PartView{ID: id, Name: name}
	for _, r := range s.desk.lib.Remedies {
		if r.Part != id {
			continue
		}
		choice := RemedyChoice{ID: r.ID, Name: r.Name, Who: s.sayWho(r), Minutes: r.Minutes, Caution: strings.Join(r.Cautions, " ")}
		for _, p := range r.Places {
			what := r.ID + "@" + string(p)
			a := s.act("", s.sayWhere(r.Where, string(p)), Act{Do: Remedy, What: what})
			a.Minutes = r.Minutes
			for _, c := range s.chosen {
				a.Chosen = a.Chosen || c == what
			}
			pv.Chosen = pv.Chosen || a.Chosen
			choice.Places = append(choice.Places, a)
		}
		pv.Remedies = append(pv.Remedies, choice)
	}
	return pv
}

// sayWho says who can do a remedy; empty where nothing is worked on the car.
func (s *Session) sayWho(r *scenarios.Remedy) string {
	if r.Who == scenarios.NoWork {
		return ""
	}
	return s.say("who." + r.Who)
}

func (s *Session) remedyViews() []RemedyView {
	var list []RemedyView
	for _, c := range s.chosen {
		r, at, _ := s.desk.findRemedy(c)
		list = append(list, RemedyView{ID: c, Name: r.Name, Place: s.sayWhere(r.Where, string(at)), Who: s.sayWho(r),
			Caution: strings.Join(r.Cautions, " "), Minutes: r.Minutes, Drop: s.act("", s.say("act.unremedy"), Act{Do: DropRem, What: c})})
	}
	return list
}

// showCall is the call sheet in words. What can be picked stands before what
// has been picked, so that the numbers of choices stay when something is picked.
func (s *Session) showCall(v *View) {
	v.Call = s.call()
	c := v.Call
	if s.stage == Calling {
		v.add(Node{ID: "what_is_wrong", Role: "heading", Name: s.say("view.what_is_wrong")})
		for _, g := range c.Groups {
			v.add(Node{ID: "group_" + g.ID, Role: "heading", Name: g.Name})
			for _, k := range g.Causes {
				v.add(Node{ID: "cause_" + k.ID, Role: "choice", Name: k.Name, Value: k.Explain, Actions: k.Places, Under: "group_" + g.ID})
			}
		}
	} else {
		v.add(Node{ID: "what_to_do", Role: "heading", Name: s.say("view.what_to_do")})
		v.add(Node{ID: "who_may", Role: "text", Name: s.say("view.who_may")})
		for _, p := range c.Parts {
			v.add(Node{ID: "part_" + p.ID, Role: "heading", Name: p.Name})
			for _, r := range p.Remedies {
				v.add(Node{ID: "remedy_" + r.ID, Role: "choice", Name: r.Name, Value: r.Who, Actions: r.Places, Under: "part_" + p.ID})
			}
		}
		v.add(Node{ID: "chosen", Role: "heading", Name: s.say("view.chosen"), Value: strconv.Itoa(len(c.Remedies))})
		for _, r := range c.Remedies {
			v.add(Node{ID: "chosen_" + r.ID, Role: "row", Name: r.Name, Value: r.Place, Actions: []Action{r.Drop}})
			if r.Caution != "" {
				v.add(Node{ID: "caution_" + r.ID, Role: "caution", Name: r.Caution})
			}
		}
	}
	v.add(Node{ID: "belief", Role: "heading", Name: s.say("view.belief"),
		Value: s.words.Say("view.placed", "placed", c.Placed, "of", Counters)})
	for i, r := range c.Rows {
		n := Node{ID: "row_" + r.ID, Role: "row", Name: s.words.Say("view.row", "letter", rowKey(i), "cause", r.Cause, "place", r.Place),
			Value: s.words.Say("view.counters", "counters", r.Counters)}
		if !c.Sealed {
			n.Actions = []Action{r.More, r.Less, r.Clear, r.Drop}
		}
		v.add(n)
	}
	v.add(Node{ID: "says", Role: "text", Name: s.say("view.says"), Value: c.Says})
	if !c.Sealed {
		v.add(Node{ID: "seal", Role: "key", Name: s.say("view.seal"), Actions: []Action{c.Seal}})
		s.noteNodes(v)
		v.add(Node{ID: "back", Role: "key", Name: s.say("view.back"), Actions: []Action{s.act("Esc", s.say("act.back"), Act{Do: Back})}})
		return
	}
	s.noteNodes(v)
	v.add(Node{ID: "work", Role: "key", Name: s.say("view.work"), Actions: []Action{c.Work}})
}
