package play

import (
	"math"
	"strconv"

	"evenwear/physics"
)

// Numbers writes what moves into v and leaves its words alone. It does not
// allocate once v.Plot is long enough.
func (b *Bench) Numbers(v *BenchView) {
	s := &b.state
	v.Now = caliper(b.model, s, b.wheel)
	if !fits(&v.Now, b.axial) {
		b.axial = b.factor(v.Now)
	}
	v.Wheel, v.Foot, v.Axial, v.Notice = b.wheel.String(), b.foot, b.axial, b.notice
	v.Wanted, v.Down, v.Slow, v.Circuit = b.wanted, b.down, b.slow, b.model.Spec().Circuit[b.wheel]
	v.Pedal = b.model.PedalTravel(s) * perMm
	v.Rod = b.model.Spec().Pedal.Ratio * b.foot
	v.Booster = b.model.BoosterForce(v.Rod, s.Vacuum)
	for i := range 2 {
		v.Chamber[i] = s.Master.Pressure[i] / physics.Megapascal
		v.Stroke[i] = s.Master.Stroke[i] * perMm
	}
	v.Ratio = b.model.Spec().Pedal.Ratio
	spec, f := b.model.Spec().Corner(b.wheel), &s.Forces[b.wheel]
	v.Disc, v.Piston, v.Vented = spec.DiscDiameter*perMm, spec.PistonDiameter*perMm, spec.DiscVented
	v.PinAt, v.PadAt = spec.PinOffset*perMm, spec.PadOffset*perMm
	v.Balance[0] = (f.Inner() + f.Ear[physics.Inner]) * perKN
	v.Balance[1] = (f.Outer() + f.Ear[physics.Outer]) * perKN
	for i, u := range b.ends() {
		v.BodyEnds[i] = (u - b.rest[i]) * perMm
		v.Balance[2+i] = (f.Pin[i] + spec.Boot*u) * perKN
	}
	v.Level = b.model.Level(s)
	v.Turning, v.Turn, v.Time = b.turning, b.turn, float64(b.clock)/1000
	if b.odd {
		if v.Ghost == nil {
			v.Ghost = new(CaliperView)
		}
		*v.Ghost = caliper(b.healthy, &b.ghost, b.wheel)
	} else {
		v.Ghost = nil
	}
	v.Plot = v.Plot[:0]
	for i := range b.n {
		v.Plot = append(v.Plot, b.plot[(b.first+i)%plotLength])
	}
	v.Predict.Said, v.Predict.Computed, v.Predict.Open = b.said, b.computed, b.atRest()
	v.ByHand = b.pins != [2]string{"free", "free"}
	v.Pencil = v.Pencil[:0]
	if b.said >= 0 {
		v.Pencil = append(v.Pencil, b.said)
	}
}

// View is the whole bench, in numbers and in words.
func (b *Bench) View() *BenchView {
	v := &BenchView{}
	b.Numbers(v)
	v.Title = Title{Sheet: b.words.Say("sheet.bench"), Car: b.car.Name, Job: b.words.Say("bench.free_play"), Place: b.words.Say("place." + v.Wheel)}
	if b.cause != "" {
		v.Title.Km = drivenKm
	}
	v.Predict.Question = b.words.Say("bench.question."+b.stuckPins(), "force", whole(b.asked))
	v.Predict.Comment = b.comment(v)
	b.choices(v)
	b.nodes(v)
	return v
}

// stuckPins says which pins do not slide freely: "none", "upper", "lower", "both".
func (b *Bench) stuckPins() string {
	u, l := b.pins[physics.Upper] != "free", b.pins[physics.Lower] != "free"
	switch {
	case u && l:
		return "both"
	case u:
		return "upper"
	case l:
		return "lower"
	}
	return "none"
}

// comment compares what was predicted with what was computed.
func (b *Bench) comment(v *BenchView) string {
	if b.said >= 0 && b.computed < 0 && b.down && b.wanted != b.asked {
		return b.words.Say("bench.other_force", "force", whole(b.asked))
	}
	if b.said < 0 || b.computed < 0 {
		return ""
	}
	// Apart as shown: from the figures as they stand on the sheet.
	id, off := "bench.close", math.Round(b.said)-math.Round(b.computed)
	switch {
	case off > 3:
		id = "bench.too_high"
	case off < -3:
		id = "bench.too_low"
	}
	said := b.words.Say(id, "off", whole(math.Abs(off)), "computed", whole(b.computed), "force", whole(b.asked))
	if lost := v.Balance[2] + v.Balance[3]; lost > 0.05 {
		said += " " + b.words.Say("bench.pins_take", "force", fixed(lost, 2))
	}
	return said
}

func (b *Bench) act(key, id string, a Act) Action {
	return Action{Key: key, Label: b.words.Say(id), Act: a, Enabled: true}
}

// nodes are the bench in words with all that can be done.
func (b *Bench) nodes(v *BenchView) {
	say := b.words.Say
	v.Nodes = append(v.Nodes, Node{ID: "bench", Role: "heading", Name: v.Title.Sheet, Value: v.Title.Place})
	b.facts(v)
	pressing, turn := "bench.press_now", Act{Do: Turn, N: 1}
	if b.down {
		pressing = "bench.let_go"
	}
	if b.turning {
		turn.N = 0
	}
	v.Nodes = append(v.Nodes, Node{ID: "press", Role: "key", Name: say("bench.press"), Actions: []Action{
		b.act("N", "bench.foot_n", Act{Do: Foot}), b.act("P", pressing, Act{Do: Press}), b.act("T", "bench.turn", turn)}})
	v.Nodes[len(v.Nodes)-1].Actions[2].Chosen = b.turning
	predicting := b.act("S", "bench.predict", Act{Do: Say})
	predicting.Enabled, predicting.Why = b.atRest(), say("no.predict_pressed")
	predict := Node{ID: "predict", Role: "field", Name: v.Predict.Question, Value: v.Predict.Comment,
		Actions: []Action{predicting, b.act("Delete", "bench.rub_out", Act{Do: Rub})}}
	v.Nodes = append(v.Nodes, predict)
	for i, which := range [2]string{"upper", "lower"} {
		n := Node{ID: "pin_" + which + "_is", Role: "choice", Name: say("bench.which_" + which)}
		for k, f := range pinFriction {
			a := b.act([2]string{"U", "W"}[i]+strconv.Itoa(k+1), "bench.pin_"+f.id, Act{Do: Pin, What: which, Text: f.id})
			a.Chosen = b.pins[i] == f.id
			n.Actions = append(n.Actions, a)
		}
		v.Nodes = append(v.Nodes, n)
	}
	v.Nodes = append(v.Nodes, Node{ID: "wheel", Role: "choice", Name: say("bench.wheel"), Actions: v.Wheels})
	v.Nodes = append(v.Nodes, Node{ID: "cause_none", Role: "choice", Name: say("bench.no_cause"),
		Actions: []Action{{Label: say("bench.take_out"), Act: Act{Do: Put}, Enabled: !v.Healthy(), Why: say("bench.none_in"), Chosen: v.Healthy()}}})
	for _, g := range v.Groups {
		v.Nodes = append(v.Nodes, Node{ID: "group_" + g.ID, Role: "heading", Name: g.Name})
		for _, c := range g.Causes {
			v.Nodes = append(v.Nodes, Node{ID: "cause_" + c.ID, Role: "choice", Name: c.Name, Value: c.Explain, Actions: c.Places, Under: "group_" + g.ID})
		}
	}
}

// facts are the figures of the bench in words.
func (b *Bench) facts(v *BenchView) {
	fact := func(id, value, unit string) {
		v.Nodes = append(v.Nodes, Node{ID: id, Role: "reading", Name: b.words.Say("bench." + id), Value: b.words.Say("bench.value", "value", value, "unit", unit)})
	}
	fact("foot", fixed(v.Foot, 0), "N")
	fact("pedal", fixed(v.Pedal, 1), "mm")
	fact("pressure", fixed(v.Now.Pressure, 2), "MPa")
	fact("inner", fixed(v.Now.Half[0][0]+v.Now.Half[0][1], 2), "kN")
	fact("outer", fixed(v.Now.Half[1][0]+v.Now.Half[1][1], 2), "kN")
	fact("outer_upper", fixed(v.Now.Half[1][0], 2), "kN")
	fact("outer_lower", fixed(v.Now.Half[1][1], 2), "kN")
	fact("body_upper", fixed(v.BodyEnds[0], 2), "mm")
	fact("body_lower", fixed(v.BodyEnds[1], 2), "mm")
	fact("pin_upper", fixed(v.Balance[2], 2), "kN")
	fact("pin_lower", fixed(v.Balance[3], 2), "kN")
	if v.Ghost != nil {
		fact("healthy_outer", fixed(v.Ghost.Half[1][0]+v.Ghost.Half[1][1], 2), "kN")
	}
}

// choices are the wheels and the catalogue that can be put on the bench.
func (b *Bench) choices(v *BenchView) {
	for w := range physics.Wheel(physics.NumWheels) {
		a := b.act("F"+strconv.Itoa(int(w)+1), "place."+w.String(), Act{Do: Wheel, What: w.String()})
		a.Chosen = b.wheel == w
		v.Wheels = append(v.Wheels, a)
	}
	s := Session{words: b.words, desk: &Desk{lib: b.lib}}
	if b.cause != "" {
		v.Cause, _ = s.sayRow(b.cause)
	}
	for _, g := range b.lib.Groups {
		gv := GroupView{ID: g.ID, Name: g.Name}
		for _, c := range b.lib.Causes {
			if c.Group != g.ID {
				continue
			}
			cv := CauseView{ID: c.ID, Name: c.Name, Explain: explain(b.lib, b.words, c)}
			for _, p := range c.Places {
				id := rowID(c, p)
				cv.Places = append(cv.Places, Action{Label: s.sayWhere(c.Where, string(p)), Act: Act{Do: Put, What: id}, Enabled: true, Chosen: b.cause == id})
			}
			gv.Causes = append(gv.Causes, cv)
		}
		if len(gv.Causes) > 0 {
			v.Groups = append(v.Groups, gv)
		}
	}
}

func fixed(x float64, decimals int) string {
	s := strconv.FormatFloat(x, 'f', decimals, 64)
	if f, _ := strconv.ParseFloat(s, 64); f == 0 {
		return strconv.FormatFloat(0, 'f', decimals, 64) // no minus before nothing
	}
	return s
}

func whole(x float64) string { return fixed(x, 0) }
