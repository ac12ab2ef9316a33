package scenarios

import (
	"math"
	"math/rand/v2"
	"sync"

	"evenwear/physics"
	"evenwear/physics/exact"
)

// What is believed of owners who tell of their cars. All assumed.
const (
	// noticeSpread [1] is how far owners differ: one in four notices at 0.85 of the
	// threshold, three in four at 1.18. It also covers what the car's use, which is
	// not known, makes of a symptom.
	noticeSpread = 0.15
	// floatSpread [1] of the way from MIN to MAX: how well the level is known that a
	// fault and an unknown time make.
	floatSpread = 0.15
	// noticeOdd is the share of things an owner tells of that are not there, and of
	// things plainly there that they would not notice.
	noticeOdd = 0.002
)

// tellsMost is how many owners tell at most one, two, three of the things they
// notice; the rest tells all.
var tellsMost = [mostTold]float64{0.25, 0.4, 0.25}

// A Witness looks at imagined cars of one design as the owner of one would. It
// may be used by several goroutines.
type Witness struct {
	usual func() (usual, error)
}

// NewWitness prepares somebody who knows this car from new.
func NewWitness(spec *physics.Spec) *Witness {
	return &Witness{sync.OnceValues(func() (usual, error) { return whenNew(spec) })}
}

// An Impression is what one car lets its owner notice.
type Impression struct{ im impression }

// Look drives a car that was used like this as its owner would.
func (w *Witness) Look(m *physics.Model, duty physics.Duty) (*Impression, error) {
	u, err := w.usual()
	if err != nil {
		return nil, err
	}
	im, err := u.look(m, duty)
	return &Impression{im}, err
}

// LookLike is Look of a car that differs from the one of like only by the circuits
// of the brake, or of its mirror image, left and right changed. It stands on its
// own; it is driven as that one, which the circuits hardly move.
func (w *Witness) LookLike(m *physics.Model, like *Impression, mirrored bool) (*Impression, error) {
	u, err := w.usual()
	if err != nil {
		return nil, err
	}
	rest, err := m.Rest()
	if err != nil {
		return nil, err
	}
	r := like.im.ride
	if mirrored {
		r.pull = -r.pull
		for w := range physics.Wheel(physics.NumWheels) {
			r.hub[w] = like.im.hub[w.Mate()]
		}
	}
	im, err := u.stand(m, rest, r)
	return &Impression{im}, err
}

// Tells is what the owner tells of a drawn car.
func (i *Impression) Tells(ease Ease, rng *rand.Rand) []Claim { return told(&i.im, ease, rng) }

// LogLikelihood is ln P(claims | this car) [nat].
//
//	P = Π_told q · Σ_j P(j more are noticed) · P(these are told | all that is noticed)
//
// q is the chance that the owner notices one thing, and notices are independent
// when the car is known. Of n things noticed an owner who tells at most m tells
// all, or any m of them with equal chance; see [tellsMost]. Who notices nothing
// tells of nothing, so "none" says that nothing is noticed.
func (i *Impression) LogLikelihood(claims []Claim) float64 {
	sum, told := 0.0, 0
	more := []float64{1} // chance that so many things more are noticed
	for _, c := range everyClaim() {
		q := noticeOdd + float64((1-2*noticeOdd)*i.im.chance(c.ID, c.Value))
		if claimed(claims, c.ID, c.Value) {
			sum += exact.Log(q)
			told++
			continue
		}
		next := make([]float64, len(more)+1)
		for n, p := range more {
			next[n] += float64(p * (1 - q))
			next[n+1] += float64(p * q)
		}
		more = next
	}
	left := 0.0
	for n, p := range more {
		left += float64(p * chosen(told, told+n))
	}
	return sum + exact.Log(left)
}

func claimed(claims []Claim, id, value string) bool {
	for _, c := range claims {
		if c.ID == id && c.Value == value {
			return true
		}
	}
	return false
}

// chosen is the chance that an owner who notices n things tells just these t of them.
func chosen(t, n int) float64 {
	if t == 0 && n > 0 {
		return 0
	}
	all, most := 1.0, 0.0
	for i, share := range tellsMost {
		if m := i + 1; m < n {
			all -= share
			if m == t {
				most = share
			}
		}
	}
	if t == n {
		return all
	}
	ways := 1.0
	for i := range t {
		ways *= float64(n-i) / float64(i+1)
	}
	return most / ways
}

// chance is how likely an owner notices this [1]: a rise over the logarithm of
// what is there, one half at the threshold.
func (im *impression) chance(id, value string) float64 {
	if id == "lamp" && im.lamp < noticeLamp == (im.level > im.float) { // lit by the level, or dark by it
		return 1 / (1 + exact.Exp((im.level-im.float)/floatSpread))
	}
	r := im.felt(id, value)
	switch {
	case !(r > 0):
		return 0
	case math.IsInf(r, 1):
		return 1
	}
	return 1 / (1 + exact.Exp(-exact.Log(r)/noticeSpread))
}
