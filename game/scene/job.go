package scene

import (
	"evenwear/game/draw"
	"evenwear/game/play"
	"evenwear/game/widget"
)

// A Game is a session being played: acts in, view out. [play.Kept] is one.
type Game interface {
	View() *play.View
	Do(play.Act) error
	Await()  // begin to work the debrief out in the background
	Cancel() // stop it; Await goes on where it was left
}

// A Changing game can change without an act; Changed tells that it has since
// the last view.
type Changing interface{ Changed() bool }

// A Job shows one session, a sheet for each stage.
type Job struct {
	*lettering
	app   *App
	game  Game
	view  *play.View
	stamp stamp // of the view: counts what changed
	kind  sheetKind
	sheet Scene
	wait  int // [ms] until a waiting view is asked for again
	leave func()
	back  func() // shows what the job is one of; nil: the cover
	seal  bool   // it ends with the hand-over, without a debrief
}

// A sheetKind says which sheet a view asks for.
type sheetKind int

const (
	noSheet sheetKind = iota
	stationsSheet
	callSheet
	handoverSheet
	debriefSheet
)

// NewJob shows a session; leave is called when the learner goes back to the
// cover, so that what is open can be closed. It may be nil.
func NewJob(a *App, g Game, leave func()) *Job {
	j := &Job{lettering: newLettering(a.words), app: a, game: g, leave: leave}
	j.refresh()
	return j
}

// NewJobOf shows a session that is one of several: back shows these, instead of
// the cover. A sealed one ends with its hand-over and opens no debrief.
func NewJobOf(a *App, g Game, leave, back func(), sealed bool) *Job {
	j := &Job{lettering: newLettering(a.words), app: a, game: g, leave: leave, back: back, seal: sealed}
	j.refresh()
	return j
}

// do plays an act and shows what came of it; a refusal stands in the view's notice.
func (j *Job) do(a play.Act) bool {
	err := j.game.Do(a)
	j.refresh()
	if err != nil && j.view.Notice == "" {
		j.view.Notice = err.Error()
	}
	return err == nil
}

// refresh takes the view anew and turns to its sheet.
func (j *Job) refresh() {
	j.view = j.game.View()
	j.stamp = j.stamp.add(1)
	k := kindOf(j.view)
	if k == debriefSheet && j.seal && j.sheet != nil {
		j.out()
		return
	}
	if k == debriefSheet && j.kind != debriefSheet {
		j.game.Await()
		j.view = j.game.View()
	}
	if k == j.kind {
		if s, ok := j.sheet.(*debrief); ok {
			s.layout() // the waiting may be over: other keys
		}
		return
	}
	j.kind = k
	switch k {
	case callSheet:
		j.sheet = newCall(j)
	case handoverSheet:
		j.sheet = newHandover(j)
	case debriefSheet:
		j.sheet = newDebrief(j)
	default:
		j.sheet = newStations(j)
	}
	j.app.drawn = false
}

// kindOf is the sheet a view is shown on. An instrument is always read at its station.
func kindOf(v *play.View) sheetKind {
	switch {
	case v.Stage == play.Debriefed:
		return debriefSheet
	case v.Stage == play.Calling || v.Stage == play.Deciding:
		return callSheet
	case v.Stage == play.Handing && v.Instrument == nil:
		return handoverSheet
	}
	return stationsSheet
}

// out leaves the job for where it came from; the session stays kept.
func (j *Job) out() {
	j.game.Cancel()
	if j.leave != nil {
		j.leave()
	}
	if j.back != nil {
		j.back()
		return
	}
	j.app.ShowCover()
}

// Handle gives an event to the sheet.
func (j *Job) Handle(e widget.Event) { j.sheet.Handle(e) }

// Advance moves the sheet on, and asks five times a second how far a debrief is
// and whether the game has changed.
func (j *Job) Advance(ms int) {
	j.sheet.Advance(ms)
	c, changing := j.game.(Changing)
	if j.view.Waiting == nil && !changing {
		return
	}
	if j.wait -= ms; j.wait > 0 {
		return
	}
	j.wait = 200
	if j.view.Waiting != nil || c.Changed() {
		j.refresh()
	}
}

// Still, StillStamp and Cells are the sheet's.
func (j *Job) Still(c *draw.Canvas) { j.sheet.Still(c) }

// StillStamp is the sheet's stamp, with the view it stands on.
func (j *Job) StillStamp() uint64 {
	return uint64(stamp(j.sheet.StillStamp()).add(uint64(j.stamp)).add(uint64(j.kind)))
}

// Cells are the sheet's moving places.
func (j *Job) Cells() []Cell { return j.sheet.Cells() }

// node is the first of the view's nodes with an id; nil: none.
func node(v *play.View, id string) *play.Node {
	for i := range v.Nodes {
		if v.Nodes[i].ID == id {
			return &v.Nodes[i]
		}
	}
	return nil
}

// titleBlock letters the live facts of a session.
func (j *Job) titleBlock(c *draw.Canvas) {
	t := &j.view.Title
	drawTitle(c, j.lettering,
		[]Fact{{Caption: j.word("bench_sheet.fact_sheet"), Value: t.Sheet, Width: 88}, {Caption: j.word("bench_sheet.fact_car"), Value: t.Car, Width: 150}, {Caption: j.word("stations.km"), Value: j.num(t.Km, 0)}},
		[]Fact{{Caption: j.word("stations.place"), Value: t.Place, Width: 138},
			{Caption: j.word("stations.minutes"), Value: j.words.Say("stations.of", "n", j.minutes(t.Minutes), "all", j.minutes(t.Limit)), Width: 80},
			{Caption: j.word("bench_sheet.fact_seed"), Value: j.num(float64(t.Seed), 0), Width: 60},
			{Caption: j.word("bench_sheet.fact_job"), Value: t.Job}})
}
