package scenarios

// A Range is what a figure of a car's use can be, ends included.
type Range struct {
	Lo, Hi float64
	Unit   string
}

// What a car's use can be, told in a file or by somebody of their own car. The pads
// are no older than the car.
var (
	ClockRange = Range{100, 500000, "km"}
	PadsRange  = Range{100, 200000, "km"}
	RoomRange  = Range{-20, 45, "°C"}
)

// Has tells that a figure is in it; what is no number is not.
func (r Range) Has(x float64) bool { return x >= r.Lo && x <= r.Hi }

// String says it: "100 to 500000 km".
func (r Range) String() string { return show(r.Lo) + " to " + show(r.Hi) + " " + r.Unit }

// within reads a number that must be there and in a range.
func (o *object) within(key string, r Range) float64 { return o.number(key, r.Unit, r.Lo, r.Hi) }
