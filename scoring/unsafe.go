package scoring

import "evenwear/physics"

// Findings lists every way in which a car of this outlook is unsafe, in a fixed
// order. explained tells that the cause of a low level is known and put right.
func (o *Outlook) Findings(explained bool) []Finding {
	var all []Finding
	add := func(l limit, value float64, wheel string) {
		if f, bad := l.check(value, wheel); bad {
			all = append(all, f)
		}
	}
	add(limitDecel, o.Decel, "")
	for axle, v := range o.Imbalance {
		add(limitImbalance, v, [2]string{"front_axle", "rear_axle"}[axle])
	}
	add(limitTravel, o.Travel, "")
	add(limitSink, o.Sink/physics.Millimetre, "")
	for w, a := range o.Leak {
		add(limitLeak, a/1e-6, physics.Wheel(w).String())
	}
	if !explained {
		add(limitLevel, o.Level, "")
	}
	add(limitAssist, o.Assist, "")
	thin, at := least(&o.Lining)
	before := len(all)
	if add(limitLining, thin/physics.Millimetre, at.String()); len(all) == before {
		add(limitSoon, o.Soon/physics.Millimetre, o.SoonWheel.String())
	}
	add(limitVapour, o.DescentWay, "")
	add(limitBurnt, o.BrakePeak, "")
	for w, v := range o.Hose {
		add(limitHose, v/physics.CubicCentimetre, physics.Wheel(w).String())
	}
	for w, v := range o.Crack {
		add(limitCrack, v/physics.Millimetre, physics.Wheel(w).String())
	}
	return all
}

// tripMatters are what a short, slow trip may not have: pedal, leak, lining, crack.
func tripMatters(id string) bool {
	switch id {
	case UnsafeTravel, UnsafeSink, UnsafeLeak, UnsafeLevel, UnsafeLining, UnsafeDecel, UnsafeCrack:
		return true
	}
	return false
}

// The releases.
const (
	ReleaseUse     = "release.use"     // nothing found that limits its use
	ReleaseTrip    = "release.trip"    // a short, slow trip to a workshop
	ReleaseCarried = "release.carried" // do not drive
)

// Danger is what of the findings a release lets on the road.
func Danger(findings []Finding, release string) []Finding {
	var all []Finding
	for _, f := range findings {
		if release == ReleaseUse || release == ReleaseTrip && tripMatters(f.ID) {
			all = append(all, f)
		}
	}
	return all
}
