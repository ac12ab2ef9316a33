package scenarios

import (
	"fmt"
	"math"
	"strings"

	"evenwear/physics"
)

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
	there := im.felt(id, value) >= 1
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
		return there, fmt.Sprintf("the car pulls %.2f m/s² to the %s in a stop from 50 km/h; an owner notices %.2f", math.Abs(side), to, noticePull)
	case "hotter":
		w, _ := Place(value).Wheel()
		by := im.hub[w] - im.hub[w.Mate()]
		return there, fmt.Sprintf("its hub is %.0f K %s than the other on the axle after 10 km; an owner notices %.0f K hotter",
			math.Abs(by), either(by, "hotter", "cooler"), noticeHotter)
	case "pedal":
		return there, im.sayPedal(value)
	case "lamp":
		return there, fmt.Sprintf("the fluid stands at %.0f %% of the way from MIN to MAX and the lamp gives %.0f %% of its light; an owner notices %.0f %%",
			100*im.level, 100*im.lamp, 100*noticeLamp)
	case "wet":
		w, _ := Place(value).Wheel()
		return there, fmt.Sprintf("%.3f cm³ come out in ten seconds of braking; an owner notices %.1f", im.wet[w]*1e6, noticeWet*1e6)
	case "rolls":
		return there, fmt.Sprintf("the brakes hold the rolling car with %.0f N; an owner notices %.0f", im.drag, noticeDrag)
	case "scrapes":
		film, steel := im.rubs(value)
		return there, fmt.Sprintf("%.1f mm of lining are left at the %s before steel rubs, and rust covers %.0f %% of a disc; an owner hears bare steel, or rust on %.0f %%",
			max(0, steel/physics.Millimetre), value, 100*film, 100*noticeFilm)
	case "washer":
		return there, fmt.Sprintf("the washer bottle is %.0f %% full; an owner notices when the pump draws air at %.0f", 100*im.washer, 100*noticeWasher)
	case "none":
		all := im.noticed()
		if len(all) == 0 {
			return true, ""
		}
		_, why := im.judge(all[0].ID, all[0].Value)
		return false, fmt.Sprintf("the owner would notice %s %s: %s", all[0].ID, all[0].Value, why)
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
	for _, c := range everyClaim() {
		if im.felt(c.ID, c.Value) >= 1 {
			all = append(all, c)
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

// sayPedal is the figure on which a claim about the pedal rests.
func (im *impression) sayPedal(value string) string {
	mm := func(v float64) float64 { return v / physics.Millimetre }
	switch value {
	case "long":
		return fmt.Sprintf("the pedal goes %.1f mm %s than a new car's at 150 N; an owner notices %.0f further",
			math.Abs(mm(im.long)), either(im.long, "further", "less far"), mm(noticeLong))
	case "soft":
		return fmt.Sprintf("pumping %s the pedal by %.1f mm; an owner notices %.0f of rise",
			either(im.pumped, "raises", "lowers"), math.Abs(mm(im.pumped)), mm(noticeSoft))
	case "hard":
		return fmt.Sprintf("an ordinary stop needs %.1f times the foot of a new car; an owner notices %.1f times", im.hard, noticeHard)
	case "sinks":
		return fmt.Sprintf("the pedal sinks %.1f mm in ten seconds; an owner notices %.0f", mm(max(0, im.sunk)), mm(noticeSink))
	}
	return fmt.Sprintf("the pedal moves %.2f mm with the wheels; an owner notices %.1f", mm(im.pulse), mm(noticePulse))
}
