package play

// A CheckView is a self-check as a face may show it. Nothing of what its cars
// came to stands in it before all of them are handed over.
type CheckView struct {
	Name     string
	Cars     []CheckCarView
	Columns  []string // names of the marks
	Handed   int      // cars handed over
	Over     bool     // all of them are
	Complete bool     // and marked
	Mean     float64  // of the totals, once complete
	Error    float64  // [of 100] the standard error of that mean
	Alike    string   // what this self-check has in common with others and what not; empty once all cars are handed over
	Model    string   // what the model inspector needed for these cars, once complete; empty: not kept
	Summary  string   // how far it is, or what it came to, in a sentence
	Stale    string   // why no car of it can be played any more, in a sentence; empty: they can
	Next     *Action  // the car to be played next; nil: none
	Mark     *Action  // work the marks out; nil: nothing to work out, or it goes on
	Renew    *Action  // begin another self-check; nil: this one is not over
	Waiting  *WaitView
	Notice   string
	Nodes    []Node // all of it in reading order, in words
}

// A CheckCarView is one car of a self-check.
type CheckCarView struct {
	Name   string // "Car 3"
	What   string // what it was, or how far it is, in words
	Marked bool   // what follows is there
	Marks  []float64
	Total  float64
	Open   *Action // its debrief; nil: not yet, or it cannot be opened any more
}

// What can be done with a self-check.
const (
	OpenCar  Verb = "open_car" // N is its number, from 1
	MarkAll  Verb = "mark_all"
	NewCheck Verb = "new_check"
)
