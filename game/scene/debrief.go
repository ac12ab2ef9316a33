package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// The panels of the debrief, in reading order. What was known, the fault and
// what comes of it are one panel, so that a paper can be laid over them.
const (
	endHead = headPanel + iota
	endLeft
	endMarks
	endFoot
	endTitle
)

// endSplit is where the marks begin.
const endSplit = 868.0 // [unit]

// debrief is the sheet at the end of a job; while the debrief is worked out it
// says how far that is.
type debrief struct {
	form
	section *bench // the bench's drawing with the fault shown
	shown   int    // fault in the section
	stop    int    // stop on the road, of those told as found
	paper   int    // what is laid over the left: one of the papers
	beliefs roll
	labels  roll
	marks   roll
	sheets  [2]roll // of the paper
}

// The papers that may be laid over the left of the sheet.
const (
	noPaper = iota
	trailPaper
	wordsPaper
)

func newDebrief(j *Job) Scene {
	s := &debrief{}
	s.beliefs = roll{id: "beliefs", area: beliefArea}
	s.labels = roll{id: "labels", area: labelArea}
	s.marks = roll{id: "marks"}
	s.sheets = [2]roll{{id: "paper1"}, {id: "paper2"}}
	s.own = func() stamp {
		n := newStamp.add(uint64(s.shown)).add(uint64(s.stop)).add(uint64(s.paper)).text(s.targets.Focus)
		for _, r := range s.rolls() {
			n = n.add(uint64(r.first))
		}
		return n
	}
	s.begin(j, s.lay,
		formPanel{headArea, s.drawHead},
		formPanel{draw.Rect{X: 20, Y: 66, W: endSplit - 21, H: 567}, s.drawLeft},
		formPanel{draw.Rect{X: endSplit + 1, Y: 66, W: 1261 - endSplit - 1, H: 567}, s.drawMarks},
		formPanel{draw.Rect{X: 20, Y: 635, W: 771, H: 66}, s.drawFoot},
		formPanel{titleBlock, func(c *draw.Canvas) {
			s.title(c, s.word("debrief_sheet.sheet"), s.word("call.scale_caption"), s.scale())
		}})
	return s
}

func (s *debrief) v() *play.DebriefView { return s.job.view.Debrief }

// fault is the fault in the section.
func (s *debrief) fault() *play.FaultView {
	if n := len(s.v().Faults); n > 0 {
		return &s.v().Faults[s.shown%n]
	}
	return &play.FaultView{}
}

// rolls are what scrolls as the sheet stands, in reading order.
func (s *debrief) rolls() []*roll {
	if s.v() == nil {
		return nil
	}
	if s.paper != noPaper {
		return []*roll{&s.sheets[0], &s.sheets[1], &s.marks}
	}
	return []*roll{&s.beliefs, &s.labels, &s.marks}
}

// lay lists what can be pressed as the sheet stands.
func (s *debrief) lay() {
	s.headKey("leave", 1157, 98, "sheet.leave", "Esc", false, s.leave)
	foot := draw.Rect{X: 29, Y: 651, W: 244, H: 44}
	next := func(id string, k widget.Key, do func()) {
		k.Rect = foot
		s.key(endFoot, id, k, do)
		foot.X += foot.W + 12
	}
	if s.v() == nil {
		s.layWait(next)
		return
	}
	next("trail", widget.Key{Label: s.word("debrief_sheet.trail"), Letter: "T", Chosen: s.paper == trailPaper}, func() { s.lift(trailPaper) })
	next("words", widget.Key{Label: s.word("debrief_sheet.words"), Letter: "W", Chosen: s.paper == wordsPaper}, func() { s.lift(wordsPaper) })
	if len(s.v().Faults) > 1 {
		next("fault", widget.Key{Label: s.word("debrief_sheet.other_fault"), Letter: "F", Off: s.paper != noPaper}, func() {
			s.shown, s.labels.first = (s.shown+1)%len(s.v().Faults), 0
			s.section = nil
		})
	}
	if n := len(s.stops()); n > 0 && s.paper == noPaper {
		s.key(endLeft, "stop", widget.Key{Rect: stopKey, Label: s.stops()[s.stop%n].Name, Letter: "S", Left: true}, func() { s.stop = (s.stop + 1) % n })
	}
	for _, r := range s.rolls() {
		panel := endLeft
		if r == &s.marks {
			panel = endMarks
		}
		if r.over() {
			s.targets.Add(r.target(panel))
		}
	}
}

// lift lays a paper over the left of the sheet, or takes it away.
func (s *debrief) lift(paper int) {
	if s.paper == paper {
		paper = noPaper
	}
	s.paper = paper
	s.sheets[0].first, s.sheets[1].first = 0, 0
	s.targets.Focus = s.sheets[0].id
	if paper == noPaper {
		s.targets.Focus = ""
	}
}

// leave takes the paper away, or goes back to the cover.
func (s *debrief) leave() {
	if s.paper != noPaper {
		s.lift(s.paper)
		return
	}
	s.job.out()
}

// Handle answers one event.
func (s *debrief) Handle(e widget.Event) {
	if s.scrolls(e) {
		s.local++
		s.layout()
		return
	}
	if e.Kind == widget.KeyDown && (e.Key == "Left" || e.Key == "Right") && s.v() != nil && s.paper == noPaper {
		if n := len(s.stops()); n > 0 {
			step := 1
			if e.Key == "Left" {
				step = n - 1
			}
			s.stop = (s.stop + step) % n
		}
		return
	}
	s.handle(e)
}

// scrolls gives an event to what scrolls: keys to the roll in focus, or to the
// first that has more than is in sight; a hand to the one under it.
func (s *debrief) scrolls(e widget.Event) bool {
	var first *roll
	for _, r := range s.rolls() {
		if e.Kind == widget.KeyDown {
			if r.over() && (first == nil || s.targets.Focus == r.id) {
				first = r
			}
			continue
		}
		if r.hand(e) {
			if r.over() {
				s.targets.Focus = r.id
			}
			return true
		}
	}
	return first != nil && e.Kind == widget.KeyDown && first.key(e.Key)
}

// StillStamp changes when the waiting is over.
func (s *debrief) StillStamp() uint64 {
	return uint64(newStamp.text("debrief").flag(s.v() == nil))
}

// Still draws the lines of the sheet and what never changes on it.
func (s *debrief) Still(c *draw.Canvas) {
	c.Sheet()
	rule(c, 18, 62, 1262, 62)
	rule(c, 18, 634, 1262, 634)
	if s.v() == nil {
		return
	}
	rule(c, endSplit, 62, endSplit, 634)
}

func (s *debrief) drawHead(c *draw.Canvas) {
	sentence := s.job.view.Title.Job
	if d := s.v(); d != nil {
		n := 0
		for i := range d.Beliefs {
			if d.Beliefs[i].True {
				n += d.Beliefs[i].Counters
			}
		}
		sentence = s.words.Say("debrief_sheet.sentence", "job", sentence, "truth", d.Truth, "n", n)
	}
	if n := node(s.job.view, "unkept"); n != nil {
		sentence = n.Name
	}
	s.head(c, s.word("debrief_sheet.name"), sentence, 1146)
}

// drawLeft draws what was known, the fault and what comes of it, or the paper
// laid over them.
func (s *debrief) drawLeft(c *draw.Canvas) {
	switch {
	case s.v() == nil:
		s.drawWait(c)
	case s.paper != noPaper:
		s.drawPaper(c)
	default:
		rule(c, 20, beliefFoot, endSplit, beliefFoot)
		rule(c, nextLeft, beliefFoot, nextLeft, 634)
		s.drawBeliefs(c)
		s.drawFault(c)
		s.drawNext(c)
	}
}

const drawnRoom = 754.0 // [unit] beside the title block

// drawFoot tells why the car was drawn, above the keys.
func (s *debrief) drawFoot(c *draw.Canvas) {
	if d := s.v(); d != nil && d.Drawn != "" {
		c.Text(draw.Pt{X: 29, Y: 647}, draw.SmallText, c.Theme.Ink, fit(c, s.lettering, d.Drawn, draw.SmallText, drawnRoom))
	}
}

// Advance does nothing: the job asks how far the debrief is.
func (s *debrief) Advance(int) {}

// scale says what the drawings are enlarged by.
func (s *debrief) scale() string {
	if s.v() == nil || s.fault().Kind == "fluid" {
		return s.word("debrief_sheet.no_scale")
	}
	return s.words.Say("debrief_sheet.scale", "axial", s.num(s.sectionOf(s.fault()).axial, 0))
}
