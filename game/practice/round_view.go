package practice

import (
	"fmt"

	"evenwear/assets"
	"evenwear/game/play"
	"evenwear/scenarios"
)

// View puts a self-check into words; hash is that of the library in use. What
// cars came to is told only when all are handed over.
func (r *Round) View(lib *scenarios.Library, hash string, words play.Words) *play.CheckView {
	v := &play.CheckView{Name: r.Name, Handed: r.Count(Handed), Over: r.Over(), Complete: r.Complete()}
	playable := r.Library == hash
	for _, id := range marks {
		v.Columns = append(v.Columns, words.Say("mark."+id))
	}
	for i := range r.Cars {
		v.Cars = append(v.Cars, r.car(i, lib, v.Over, playable, words))
	}
	v.Summary = words.Say("check.far", "handed", v.Handed, "all", len(r.Cars))
	if !v.Over && playable {
		v.Alike = words.Say("check.alike")
	}
	switch {
	case v.Complete:
		var spread float64
		v.Mean, spread, v.Error = r.Marks()
		v.Summary = words.Say("check.came_to", "all", len(r.Cars), "mean", assets.Figure(v.Mean, 1), "error", assets.Figure(v.Error, 1), "spread", assets.Figure(spread, 1))
		if m, ok := r.Model(); ok {
			v.Model = words.Say("check.model", "minutes", assets.Figure(m.Minutes, 0), "bits", assets.Figure(m.Bits, 1))
		}
	case v.Over:
		v.Summary = words.Say("check.to_mark", "marked", r.Count(Marked), "all", len(r.Cars))
	}
	if !playable {
		v.Stale = words.Say("check.stale")
	}
	action := func(id, key string, act play.Act) *play.Action {
		return &play.Action{Key: key, Label: words.Say("check."+id, "n", act.N), Act: act, Enabled: true}
	}
	if n := r.Next(); n >= 0 && playable {
		id := "begin"
		if r.Cars[n].Stage == Going {
			id = "go_on"
		}
		v.Next = action(id, "N", play.Act{Do: play.OpenCar, N: float64(n + 1)})
	}
	if v.Over && !v.Complete && playable {
		v.Mark = action("mark", "M", play.Act{Do: play.MarkAll})
	}
	if v.Complete || !playable {
		v.Renew = action("new", "B", play.Act{Do: play.NewCheck})
	}
	r.nodes(v, words)
	return v
}

// marks are the debrief's, in its order.
var marks = []string{"diagnosis", "decision", "evidence", "consistency", "reading", "safety", "proof", "minutes"}

// car is one car in words.
func (r *Round) car(i int, lib *scenarios.Library, over, playable bool, words play.Words) play.CheckCarView {
	car := &r.Cars[i]
	v := play.CheckCarView{Name: words.Say("check.car", "n", i+1), What: words.Say([]string{"check.waits", "check.going", "check.handed", "check.handed"}[car.Stage])}
	if car.Stage == Waits && car.Lost != "" {
		v.What = words.Say("check.lost", "why", car.Lost)
	}
	if !over || car.Stage != Marked {
		return v
	}
	v.Marked, v.Total, v.What = true, car.Result.Total, ""
	for _, id := range marks {
		m, _ := car.Result.Mark(id)
		v.Marks = append(v.Marks, m)
	}
	var truth []string
	for _, id := range car.Result.Truth {
		if c := lib.Cause(id); c != nil {
			id = c.Name
		}
		truth = append(truth, id)
	}
	v.What = play.Joined(words, truth)
	if car.Kept && playable {
		v.Open = &play.Action{Label: words.Say("check.debrief", "n", i+1), Act: play.Act{Do: play.OpenCar, N: float64(i + 1)}, Enabled: true}
	}
	return v
}

// nodes is all of it in reading order.
func (r *Round) nodes(v *play.CheckView, words play.Words) {
	add := func(id, role, name, value string, actions ...*play.Action) {
		n := play.Node{ID: id, Role: role, Name: name, Value: value}
		for _, a := range actions {
			if a != nil {
				n.Actions = append(n.Actions, *a)
			}
		}
		v.Nodes = append(v.Nodes, n)
	}
	add("check", "heading", words.Say("check.name"), v.Summary)
	if v.Stale != "" {
		add("stale", "caution", v.Stale, "")
	}
	for i := range v.Cars {
		c := &v.Cars[i]
		value := c.What
		if c.Marked {
			value = words.Say("check.total", "what", c.What, "total", assets.Figure(c.Total, 0))
			for k, m := range c.Marks {
				value = words.Say("check.with", "list", value, "mark", v.Columns[k], "value", assets.Figure(m, 0))
			}
		}
		add(fmt.Sprintf("car%d", i+1), "reading", c.Name, value, c.Open)
	}
	if v.Alike != "" {
		add("alike", "text", v.Alike, "")
	}
	if v.Model != "" {
		add("model", "text", v.Model, "")
	}
	for _, a := range []*play.Action{v.Next, v.Mark, v.Renew} {
		if a != nil {
			add("do_"+a.Key, "key", "", "", a)
		}
	}
}
