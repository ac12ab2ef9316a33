package play

// A PractiseView is what a learner's kept cars say of them, before the next one.
type PractiseView struct {
	Summary string
	Parts   []PractisePart
	Lesson  *Action // a lesson that confronts a wrong idea; nil: none
	Next    *Action // the next car
	Notice  string
	Cars    int // kept
	Met     int // causes met, of All
	All     int
	Nodes   []Node // all of it in reading order, in words
}

// A PractisePart is one thing they say, each in some sentences.
type PractisePart struct {
	ID, Heading string
	Lines       []string
}

// What can be done before the next car.
const (
	NextCar    Verb = "next_car"
	OpenLesson Verb = "open_lesson" // What is its id
)
