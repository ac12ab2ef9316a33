package play

// Title is what the title block carries.
type Title struct {
	Sheet, Car, Job, Place string // in words
	Km                     float64
	Minutes, Limit         float64 // spent and allowed
	Seed                   uint64
	Readings, Counters     int
}

// A PlanView is the car from above: where to go, what has been set up.
type PlanView struct {
	Places    []PlanPlace
	Chocked   [2]bool // wheels of the front and of the rear axle
	Handbrake bool    // handbrake on
	Lifted    [2]bool // front and rear end on the jack
	OnStand   [4]bool // by physics.Wheel
	NutsSlack [4]bool
	WheelOff  [4]bool
	DiscHot   [4]bool
	Stood     [2]bool     // chocks that stood until the work, at the front and the rear axle
	NewParts  [4][]string // parts renewed at each wheel, in words; after the work
}

// A PlanPlace is one place on the plan.
type PlanPlace struct {
	ID       string // "bonnet", "seat", "front_left" … "road", "ground"
	Readings int    // written down there
	Here     bool
	Action   Action
}

// An InstrumentView is what the eye sees of one instrument, not yet read. All
// positions are in the unit of its scale; no string here holds the figure,
// except a display that shows digits.
type InstrumentView struct {
	Check    string // instance
	Kind     string // drawing: "stepped_feeler", "dial_indicator", "thickness_gauge", "rule", "thermometer", "reservoir", "tester", "pull_gauge", "pendulum", "tape", "observation"
	Name     string
	Question string
	Unit     string
	Division float64 // smallest division drawn
	Long     float64 // numbered division
	Lo, Hi   float64
	Needle   []float64 // one position, or the swing of one turn, or two (at rest, pressed); of a steering wheel let go, −1 to the left, 1 to the right
	Pad      string    // "inner" or "outer" where a pad is meant
	Half     string    // "upper" or "lower"
	Marks    string    // the same in words, by its marks
	Digits   string    // only what a digital display shows
	Words    []Action  // the words to choose from, for observations: Write acts
	Write    Action    // the act that writes down; Text is the learner's
	Skip     Action
}

// A NoteView is one line of the notebook.
type NoteView struct {
	Check   string
	Where   string
	What    string
	Written string // the learner's figure or word; empty: being read; "not read" after a skip
	Unit    string
	Minutes float64
	Struck  bool
	Again   bool // taken after the work
}

// A CallView is the call sheet: belief and remedies.
type CallView struct {
	Groups   []GroupView
	Rows     []RowView
	Placed   int     // counters placed, of 20
	Says     string  // the spread said back in words
	Sure     float64 // 0 guess … 1 certain, for the scale under it
	Sealed   bool
	Ask      string     // asked once before it is sealed: counters are open; empty: nothing is to be asked
	Parts    []PartView // what can be done, by part
	Remedies []RemedyView
	Seal     Action
	Work     Action
}

// A GroupView is one of the nine groups of the catalogue, the same for every job.
type GroupView struct {
	ID, Name string
	Causes   []CauseView
}

// A CauseView is one cause with its places.
type CauseView struct {
	ID, Name, Explain string
	Places            []Action // Row acts; Label is the place
}

// A RowView is a row of the call: a rod with its nuts.
type RowView struct {
	ID, Cause, Place  string
	Counters          int
	More, Less, Clear Action
	Drop              Action
}

// A PartView is one part with what can be done to it.
type PartView struct {
	ID, Name string
	Chosen   bool // a remedy stands on it
	Remedies []RemedyChoice
}

// A RemedyChoice is one remedy of the full list with its places.
type RemedyChoice struct {
	ID, Name, Who string // Who can do it; empty where nothing is worked on the car
	Caution       string
	Minutes       float64
	Places        []Action // Remedy acts; Label is the place
}

// A RemedyView is a remedy chosen.
type RemedyView struct {
	ID, Name, Place, Who, Caution string
	Minutes                       float64
	Drop                          Action
}

// A WorkView is the hand-over sheet.
type WorkView struct {
	Done     []RemedyView
	Looks    []LookView // to look again
	Releases []Action   // Release acts with Chosen
	Told     string
	Tell     Action
	HandOver Action
}

// A LookView is one thing to look at again: the old reading beside the new.
type LookView struct {
	Name, Detail  string
	Before, After string
	Unit          string
	Advised       bool // every hand-over should have it; else one more of the learner's own readings
	Action        Action
}

// A DebriefView is the end of a job.
type DebriefView struct {
	Truth   string // the cause, place and since, in a sentence
	Beliefs []BeliefView
	Marks   []MarkView
	Total   float64
	Capped  bool
	Cap     string       // why, in a sentence
	Next    []StopView   // stops as found and after the remedy
	Linings []LiningView // after 12 000 km
	Lasts   string       // when a lining reaches 3 mm, in a sentence
	Worth   string       // the check worth most for its minutes, in a sentence
	Trail   []string     // the model inspector's plan: where the owner's words left it, then a line a check
	Faults  []FaultView  // never none
	Drawn   string       // why the car was drawn, in a sentence; empty: it was chosen
}

// A BeliefView is one row of "what could be known", in percent.
type BeliefView struct {
	Cause, Place         string
	Counters             int
	Said, Support, Every float64 // [%]
	True                 bool
}

// A MarkView is one mark.
type MarkView struct {
	ID, Name string
	Weight   float64
	Value    float64 // may be negative for diagnosis
	Reason   string
}

// A StopView is one stop drawn on the road.
type StopView struct {
	ID       string  // "stop.80.cold"
	Leaves   bool    // as the car leaves; else as it was found
	Name     string  // of the stop
	When     string  // as found, as it leaves, in words
	Distance float64 // [m]
	Aside    float64 // [m] to the right
}

// A LiningView is what is left of one lining at the wheel of the first fault.
type LiningView struct {
	Pad    string  // "inner" or "outer"
	Name   string  // of the pad
	When   string  // as found, 12 000 km on, in words
	Onward bool    // 12 000 km on
	Leaves bool    // as the car leaves; else as it was found
	Km     float64 // [km] from now
	Left   float64 // [mm] the thinner half
}

// A FaultView is one place of the car as it came beside the same car honestly
// driven, under one press, for drawing. Lengths in mm, forces in kN.
type FaultView struct {
	Kind     string // what is drawn: "caliper", "fluid" (no one wheel), or "sound"
	Cause    string // in words; empty for a sound car
	Place    string // in words
	Wheel    string // by physics.Wheel
	Disc     float64
	Piston   float64 // diameter
	PinAt    float64 // each pin from the piston axis
	PadAt    float64 // centre of a half pad from the piston axis
	Vented   bool
	Healthy  CaliperView
	Faulty   CaliperView
	Axial    float64    // factor of the axial movement: 80, 40, 20, 10 or 1
	Released bool       // both are drawn let go after the press
	Vessel   string     // whose level is meant: "oil", "coolant", "steering", "washer"; empty for the brake reservoir
	Organ    string     // what is wrong between foot and pipes: "lamp", "booster", "master_cylinder"; empty: none of them
	Level    [2]float64 // [1] of that vessel, of the sound car and of this one, MIN 0 to MAX 1
	Air      float64    // [cm³] at one atmosphere
	Leak     float64    // [mm²] opening at the joint
	Labels   []FaultLabel
}

// A FaultLabel says what differs at one part.
type FaultLabel struct {
	Part string // "upper_pin", "lower_pin", "piston", "air", "joint", "disc", "inner_lining", "outer_lining", "linings", "force", "level", "pedal"
	Text string
}

// A CaliperView is where a caliper's parts sit. Lengths [mm], forces [kN].
type CaliperView struct {
	Pressure      float64 // [MPa]
	Piston, Body  float64
	Tilt          float64 // [mrad]
	Bridge        float64
	Gap           [2][2]float64 // clearance left, pad × half; negative: squeeze
	Lining        [2][2]float64 // thickness left
	DiscThickness float64
	Half          [2][2]float64 // [kN]
	Pin           [2]float64    // [kN]
	Pins          [2]string     // "free", "dry", "tight", "bent", "stuck": state of each pin for drawing
	Seal          float64       // [kN]
	PistonStuck   bool
}

// A WaitView is long work that goes on in the background.
type WaitView struct {
	Share float64 // [1] done
	Going bool    // it goes on; else it was stopped or failed
	Text  string
	Error string // why it failed; empty while it goes on
}
