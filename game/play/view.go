package play

// A View is everything a face may show. It holds no condition, no state and no
// true figure of a check that has not been written down: nothing to leak.
type View struct {
	Stage     Stage
	Title     Title  // live facts of the title block
	Complaint string // the owner's sentence, always in sight
	OnPaper   bool   // only notes of the car are there
	Nodes     []Node // all of it in reading order, in words: what the terminal prints

	// What drawings need beyond words. Nil where a stage has none.
	Plan       *PlanView
	Instrument *InstrumentView
	Notebook   []NoteView
	Call       *CallView
	Work       *WorkView
	Debrief    *DebriefView
	Waiting    *WaitView // the debrief is being worked out
	Notice     string    // the last refusal or news, a sentence
	Warns      bool      // the notice says that a caution was not kept, or that harm was asked for
}

// A Stage is where a session stands.
type Stage string

// The stages in their order.
const (
	Inspecting Stage = "inspecting"
	Calling    Stage = "calling"  // belief not sealed
	Deciding   Stage = "deciding" // sealed, remedies open
	Handing    Stage = "handing"  // work done: look again, release
	Debriefed  Stage = "debriefed"
)

// A Node is one thing on the sheet in words.
type Node struct {
	ID      string
	Role    string // "heading", "text", "key", "field", "reading", "row", "choice", "caution", "instrument", "mark"
	Name    string
	Value   string
	Actions []Action
	Under   string   // of an entry of a catalogue: the heading that it stands under, by its ID
	Part    string   // of checks: the part of the brake that they look at, where a place has many
	At      []string // of a caution: the parts at whose checks it stands; none: at the whole place
}

// An Action is something a learner may do now, with its key.
type Action struct {
	Key     string // the letter or name shown on the key: "Q", "Enter"
	Label   string
	Act     Act // Text is empty where the learner must supply it
	Enabled bool
	Chosen  bool
	Why     string // why not, when it is not enabled
	Minutes float64
}
