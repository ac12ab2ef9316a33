package inspect

// A Meter turns a true value into a display and knows how likely each display
// is. A display is a whole number of steps, so that records compare exactly;
// for a meter with Words it is the index of the word.
type Meter struct {
	Instrument string  // id shared by checks made with one instrument: they share its bias
	Unit       string  // id of the unit shown: "mm", "degC", "word"
	PerUnit    float64 // [SI per unit]
	Resolution float64 // [unit] one display step
	Division   float64 // [unit] the smallest division drawn, for marking a reading
	Floor      bool    // the display is the last step not above the value (a stepped feeler)
	Sigma      float64 // [unit] repeatability, one standard deviation
	Bias       float64 // [unit] standard deviation of this instrument's constant error
	Slip       float64 // [1] chance of a worthless reading
	Lo, Hi     float64 // [unit] what can be displayed
	// Words are the ids a learner chooses from, in rising order of the value;
	// Cuts are the len(Words)−1 values [unit] between them.
	Words []string
	Cuts  []float64
}
