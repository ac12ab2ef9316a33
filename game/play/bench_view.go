package play

// A BenchView is the bench: free play, so everything computed may be shown.
type BenchView struct {
	Title    Title
	Wheel    string
	Circuit  int     // chamber that serves the wheel: 0 primary, 1 secondary
	Ratio    float64 // [1] of the pedal
	Disc     float64 // [mm] diameter
	Piston   float64 // [mm] diameter
	PinAt    float64 // [mm] each pin from the piston axis
	PadAt    float64 // [mm] centre of a half pad from the piston axis
	Vented   bool
	Now      CaliperView
	Ghost    *CaliperView // the healthy caliper under the same pedal, when a cause is in
	Foot     float64      // [N] on the pedal now
	Wanted   float64      // [N] set on the slider
	Down     bool         // the pedal is pressed
	Pedal    float64      // [mm] travel
	Rod      float64      // [N]
	Booster  float64      // [N] added
	Chamber  [2]float64   // [MPa]
	Stroke   [2]float64   // [mm]
	BodyEnds [2]float64   // [mm] slide of the body at upper and lower pin since the pedal was last at rest
	Balance  [4]float64   // [kN] fluid, fingers, upper pin, lower pin (with boots and ears)
	Level    float64      // [1] reservoir, MIN 0 to MAX 1
	Turning  bool         // the disc turns
	Turn     float64      // [1] of a turn
	Time     float64      // [s] since this press; it stands while the pedal is at rest
	Axial    float64      // factor of the axial movement: 80, 40, 20, 10 or 1
	Plot     []BenchSample
	Pencil   []float64 // the learner's predicted share at points, empty before
	Predict  PredictView
	ByHand   bool        // a pin is set by hand
	Cause    string      // the cause that is in, in words, without its place; empty: none
	Groups   []GroupView // the catalogue; its places are Put acts
	Wheels   []Action    // Wheel acts
	Slow     float64     // how many times slower than the car
	Lesson   *LessonView // nil: free play
	Nodes    []Node      // all of it in words with its actions
	Notice   string
}

// A BenchSample is one point of the plots.
type BenchSample struct {
	Time         float64 // [s]
	Pressure     float64 // [MPa]
	Inner, Outer float64 // [kN]
}

// A PredictView is the question asked before the pedal is let go.
type PredictView struct {
	Question string
	Said     float64 // [%] the learner's; below 0: nothing yet
	Computed float64 // [%]; below 0: not shown yet
	Comment  string
	Open     bool // the pedal is at rest: a share can be said
}

// Healthy reports whether nothing has been put in, by hand or as a cause.
func (v *BenchView) Healthy() bool { return v.Cause == "" && !v.ByHand }
