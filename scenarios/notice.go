package scenarios

import (
	"fmt"
	"math"
	"strings"

	"evenwear/physics"
)

// What an owner notices. None has a published source: all are assumed, for
// somebody who knows the car well but measures nothing.
const (
	// noticePull [m/s²]: half the side pull of a road's ordinary fall of 2 %; noticed
	// because it comes and goes with the pedal.
	noticePull = 0.10
	// noticeHotter [K]: a hand near two wheels tells tepid from hot.
	noticeHotter = 30.0
	// noticeDrag [N]: two thirds of this car's rolling resistance, so that a slope
	// on which it used to roll no longer moves it.
	noticeDrag = 100.0
	// noticeLong [m] of pedal at 150 N beyond a new car's: a fifth of its way.
	noticeLong = 10e-3
	// noticeHard [1] times the foot of a new car in an ordinary stop.
	noticeHard = 1.5
	// noticeWasher [1] of a full bottle: the pump's inlet lies a little above its bottom.
	noticeWasher = 0.05
	// noticeSoft [m] by which brisk pumping raises the pedal.
	noticeSoft = 8e-3
	// noticeSink [m] in ten seconds at a red light.
	noticeSink = 5e-3
	// noticePulse [m] of pedal movement, peak to peak, under a shoe's sole.
	noticePulse = 0.3e-3
	// noticeWet [m³] in ten seconds of braking: two drops, so that the wheel is wet inside.
	noticeWet = 0.1e-6
	// noticeFilm [1] of a closed rust film on a disc: half of it rasps under the pads.
	noticeFilm = 0.5
	// noticeSteel [m] of lining: steel that is pressed on the disc is heard for sure
	// when so much more than the lining is gone, and never with so much of it left.
	noticeSteel = 0.5e-3
	// noticeLamp [1] of a lamp's light.
	noticeLamp = 0.5
)

// An impression is what a car lets its owner notice, computed. SI.
type impression struct {
	ride
	long   float64                    // [m] pedal at 150 N beyond the new car's
	pumped float64                    // [m] by which three strokes raise it
	sunk   float64                    // [m] from 1 s to 11 s at 200 N
	wet    [physics.NumWheels]float64 // [m³] out of the wheel's brake in ten seconds at 200 N
	level  float64                    // [1] MIN 0, MAX 1
	steel  [physics.NumWheels]float64 // [m] of lining left before steel rubs on the disc
	film   [physics.NumWheels]float64 // [1] rust film on the disc
	washer float64                    // [1] of a full bottle
	lamp   float64                    // [1] light of the warning lamp, foot off or at 200 N
	float  float64                    // [1] level, MIN 0 and MAX 1, at which its switch closes
}

// ride is what driving shows. SI.
type ride struct {
	pull  float64                    // [m/s²] to the right, braking from 50 km/h at 3 m/s²
	pulse float64                    // [m]
	hard  float64                    // [1] foot for 3 m/s², over that of the new car
	hub   [physics.NumWheels]float64 // [°C] after ten kilometres
	drag  float64                    // [N] at the tyres, pedal free, after the same
}

// usual is what an owner is used to: the car when it was new.
type usual struct {
	foot float64 // [N] for 3 m/s²
	long float64 // [m] pedal at 150 N
}

// everyday is a stop as owners make them.
var everyday = physics.StopPlan{Speed: 50 * physics.KmPerHour, Decel: 3, Millis: 20}

// whenNew drives a new car as its owner would.
func whenNew(spec *physics.Spec) (u usual, err error) {
	m, err := physics.New(spec, physics.Condition{})
	if err != nil {
		return u, err
	}
	rest, err := m.Rest()
	if err != nil {
		return u, err
	}
	stop, err := m.Stop(rest, everyday)
	if err != nil {
		return u, err
	}
	u.foot = stop.Foot
	u.long, _, err = press(m, rest)
	return u, err
}

// look drives the car as its owner would.
func look(spec *physics.Spec, cond physics.Condition, duty physics.Duty) (impression, error) {
	m, err := physics.New(spec, cond)
	if err != nil {
		return impression{}, err
	}
	u, err := whenNew(spec)
	if err != nil {
		return impression{}, err
	}
	return u.look(m, duty)
}

// look drives a car that was used like this as its owner would, who knows it from new.
func (u *usual) look(m *physics.Model, duty physics.Duty) (im impression, err error) {
	rest, err := m.Rest()
	if err != nil {
		return im, err
	}
	r, err := u.drive(m, rest, duty)
	if err != nil {
		return im, err
	}
	return u.stand(m, rest, r)
}

// drive is what the owner notices on the road.
func (u *usual) drive(m *physics.Model, rest physics.State, duty physics.Duty) (r ride, err error) {
	stop, err := m.Stop(rest, everyday)
	if err != nil {
		return r, err
	}
	r.pull, r.pulse, r.hard = stop.Pull, stop.PedalPulse, stop.Foot/u.foot
	tour, err := m.Tour(rest, duty, 10)
	if err != nil {
		return r, err
	}
	for w := range physics.NumWheels {
		r.hub[w] = tour.Heat[w].Hat
		torque, err := m.TurnTorque(&tour, physics.Wheel(w))
		if err != nil {
			return r, err
		}
		r.drag += torque / m.Spec().Body.TyreRadius
	}
	return r, nil
}

// stand adds to a ride what the owner notices of the standing car.
func (u *usual) stand(m *physics.Model, rest physics.State, r ride) (im impression, err error) {
	spec, cond := m.Spec(), m.Condition()
	im.ride = r
	im.level = m.Level(&rest)
	im.float = -cond.FloatHigh / spec.Reservoir.MinToMax
	im.washer = m.WasherLevel(physics.Cold)
	im.film = rest.Film
	for w := range im.steel {
		im.steel[w] = m.SteelGap(physics.Wheel(w))
	}
	first, pumped, err := press(m, rest)
	if err != nil {
		return im, err
	}
	im.pumped, im.long = first-pumped, first-u.long
	held, sunk, _, err := hold(m, rest)
	if err != nil {
		return im, err
	}
	im.lamp, im.sunk = max(m.Lamp(&rest), m.Lamp(&held)), sunk
	for w := range physics.NumWheels {
		if cond.Wheels[w].Holes() == 0 {
			continue
		}
		alone := cond // the other wheels dry, so that what is lost came from here
		for v := range alone.Wheels {
			if v != w {
				alone.Wheels[v].Leak, alone.Wheels[v].SealLeak, alone.Wheels[v].ScrewLeak = 0, 0, 0
			}
		}
		am, err := physics.New(spec, alone)
		if err != nil {
			return im, err
		}
		as, err := am.Rest()
		if err != nil {
			return im, err
		}
		if _, _, im.wet[w], err = hold(am, as); err != nil {
			return im, err
		}
	}
	return im, nil
}

// foot keeps a force [N] on the pedal for ms milliseconds, engine running.
func foot(m *physics.Model, s physics.State, force float64, ms int64) (physics.State, error) {
	var err error
	for t := int64(0); t < ms && err == nil; t += 20 {
		s, err = m.Step(s, physics.Input{Foot: force, Engine: true}, 20)
	}
	return s, err
}

// press is the pedal's travel [m] at 150 N on the first and on the third brisk stroke.
func press(m *physics.Model, s physics.State) (first, third float64, err error) {
	for range 3 {
		if s, err = foot(m, s, 150, 500); err != nil {
			return 0, 0, err
		}
		third = m.PedalTravel(&s)
		if first == 0 {
			first = third
		}
		if s, err = foot(m, s, 0, 200); err != nil {
			return 0, 0, err
		}
	}
	return first, third, nil
}

// hold is the car after a second at 200 N, and how far the pedal sinks [m] and what
// it loses [m³] in the ten seconds after it: in steps of a second, by which a pedal
// that is held loses nothing; see physics/inspect/foot.go.
func hold(m *physics.Model, s physics.State) (held physics.State, sunk, lost float64, err error) {
	if held, err = foot(m, s, 200, 1000); err != nil {
		return held, 0, 0, err
	}
	s = held
	for range 10 {
		if s, err = m.Step(s, physics.Input{Foot: 200, Engine: true}, 1000); err != nil {
			return held, 0, 0, err
		}
	}
	return held, m.PedalTravel(&s) - m.PedalTravel(&held), s.Lost - held.Lost, nil
}

// felt is how much of a thing is there, as a share of what an owner notices.
func (im *impression) felt(id, value string) float64 {
	w, _ := Place(value).Wheel()
	switch id + "." + value {
	case "pull.right":
		return im.pull / noticePull
	case "pull.left":
		return -im.pull / noticePull
	case "pedal.long":
		return im.long / noticeLong
	case "pedal.soft":
		return im.pumped / noticeSoft
	case "pedal.hard":
		return (im.hard - 1) / (noticeHard - 1)
	case "pedal.sinks":
		return im.sunk / noticeSink
	case "pedal.pulses":
		return im.pulse / noticePulse
	case "lamp.level":
		return im.lamp / noticeLamp
	case "rolls.badly":
		return im.drag / noticeDrag
	case "washer.dry":
		return noticeWasher / max(0, im.washer)
	case "scrapes.front", "scrapes.rear":
		film, steel := im.rubs(value)
		return max(film/noticeFilm, noticeSteel/max(0, noticeSteel+steel))
	}
	if id == "wet" {
		return im.wet[w] / noticeWet
	}
	return (im.hub[w] - im.hub[w.Mate()]) / noticeHotter
}

// judge says whether an owner would notice this, with the figure it rests on.
func (im *impression) judge(id, value string) (bool, string) {
	switch id {
	case "pull":
		side, other := im.pull, "left"
		if value == "left" {
			side, other = -side, "right"
		}
		to := value
		if side < 0 {
			to = other
		}
		return im.felt(id, value) >= 1, fmt.Sprintf("the car pulls %.2f m/s² to the %s in a stop from 50 km/h; an owner notices %.2f", math.Abs(side), to, noticePull)
	case "hotter":
		w, _ := Place(value).Wheel()
		by := im.hub[w] - im.hub[w.Mate()]
		return im.felt(id, value) >= 1, fmt.Sprintf("its hub is %.0f K %s than the other on the axle after 10 km; an owner notices %.0f K hotter",
			math.Abs(by), either(by, "hotter", "cooler"), noticeHotter)
	case "pedal":
		return im.judgePedal(value)
	case "lamp":
		return im.felt(id, value) >= 1, fmt.Sprintf("the fluid stands at %.0f %% of the way from MIN to MAX and the lamp gives %.0f %% of its light; an owner notices %.0f %%",
			100*im.level, 100*im.lamp, 100*noticeLamp)
	case "wet":
		w, _ := Place(value).Wheel()
		return im.felt(id, value) >= 1, fmt.Sprintf("%.3f cm³ come out in ten seconds of braking; an owner notices %.1f", im.wet[w]*1e6, noticeWet*1e6)
	case "rolls":
		return im.felt(id, value) >= 1, fmt.Sprintf("the brakes hold the rolling car with %.0f N; an owner notices %.0f", im.drag, noticeDrag)
	case "scrapes":
		film, steel := im.rubs(value)
		return im.felt(id, value) >= 1, fmt.Sprintf("%.1f mm of lining are left at the %s before steel rubs, and rust covers %.0f %% of a disc; an owner hears bare steel, or rust on %.0f %%",
			max(0, steel/physics.Millimetre), value, 100*film, 100*noticeFilm)
	case "washer":
		return im.felt(id, value) >= 1, fmt.Sprintf("the washer bottle is %.0f %% full; an owner notices when the pump draws air at %.0f", 100*im.washer, 100*noticeWasher)
	case "none":
		for _, c := range im.noticed() {
			_, why := im.judge(c.ID, c.Value)
			return false, fmt.Sprintf("the owner would notice %s %s: %s", c.ID, c.Value, why)
		}
		return true, ""
	}
	return false, "nothing computes this"
}

// rubs is the most rust film [1] and the least lining [m] before steel at an axle's wheels.
func (im *impression) rubs(axle string) (film, steel float64) {
	steel = math.Inf(1)
	for w := range physics.Wheel(physics.NumWheels) {
		if w.Front() == (axle == "front") {
			film, steel = max(film, im.film[w]), min(steel, im.steel[w])
		}
	}
	return film, steel
}

// noticed is every claim that is so of the car, in the order of their kinds.
func (im *impression) noticed() (all []Claim) {
	for _, k := range claimKinds {
		if k.id == "none" {
			continue
		}
		for _, v := range k.values {
			if yes, _ := im.judge(k.id, v); yes {
				all = append(all, Claim{ID: k.id, Value: v})
			}
		}
	}
	return all
}

// allowed names the notices that would be so.
func (im *impression) allowed() string {
	var said []string
	for _, c := range im.noticed() {
		said = append(said, c.ID+": "+c.Value)
	}
	if said == nil {
		none := claimKinds[len(claimKinds)-1]
		return "of this car nothing is noticed; " + none.id + " is " + strings.Join(none.values, ", ")
	}
	return "of this car is noticed " + strings.Join(said, ", ")
}

// either picks the word for what is measured or for its opposite.
func either(by float64, more, less string) string {
	if by < 0 {
		return less
	}
	return more
}

func (im *impression) judgePedal(value string) (bool, string) {
	mm := func(v float64) float64 { return v / physics.Millimetre }
	there := im.felt("pedal", value) >= 1
	switch value {
	case "long":
		return there, fmt.Sprintf("the pedal goes %.1f mm %s than a new car's at 150 N; an owner notices %.0f further",
			math.Abs(mm(im.long)), either(im.long, "further", "less far"), mm(noticeLong))
	case "soft":
		return there, fmt.Sprintf("pumping %s the pedal by %.1f mm; an owner notices %.0f of rise",
			either(im.pumped, "raises", "lowers"), math.Abs(mm(im.pumped)), mm(noticeSoft))
	case "hard":
		return there, fmt.Sprintf("an ordinary stop needs %.1f times the foot of a new car; an owner notices %.1f times", im.hard, noticeHard)
	case "sinks":
		return there, fmt.Sprintf("the pedal sinks %.1f mm in ten seconds; an owner notices %.0f", mm(max(0, im.sunk)), mm(noticeSink))
	}
	return there, fmt.Sprintf("the pedal moves %.2f mm with the wheels; an owner notices %.1f", mm(im.pulse), mm(noticePulse))
}

// Verify builds the job's car and computes every claim of its owner. A false
// one is an error of type [Problems] that says where it stands and what the
// physics give instead. The work is done once for a loaded job.
func (j *Job) Verify() error {
	if j.verified == nil { // a job that was not loaded from a file
		return j.verify()
	}
	return j.verified()
}

func (j *Job) verify() error {
	where := Problem{File: j.file, Line: 1, Col: 1}
	cond, err := Build(&j.Car.Spec, j.Driven, j.Faults)
	if err != nil {
		where.What, where.Allowed = "the car cannot be built: "+err.Error(), "milder faults or fewer kilometres"
		return Problems{where}
	}
	im, err := look(&j.Car.Spec, cond, j.Driven.Duty())
	if err != nil {
		where.What, where.Allowed = "the car cannot be driven: "+err.Error(), "milder faults or fewer kilometres"
		return Problems{where}
	}
	var probs Problems
	for _, c := range j.Claims {
		if yes, why := im.judge(c.ID, c.Value); !yes {
			p := c.at
			p.What, p.Allowed = "not so: "+why, im.allowed()
			probs = append(probs, p)
		}
	}
	if len(probs) > 0 {
		return probs
	}
	return nil
}
