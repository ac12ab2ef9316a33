package physics

import "evenwear/physics/exact"

const (
	filmGrip  = 0.15  // [1] by which a closed rust film raises friction; assumed: discs bite on a damp morning
	filmWork  = 0.8e6 // [J/m²] of friction on both faces' swept area that leaves 37 % of it: gone after a few stops, common practice, no source
	filmStops = 3.0   // stops of a duty that do the same
	filmGone  = 1e-3  // [1] nobody sees it any more
)

// scrub is what friction work [J] leaves of a rust film [1]: film·e^(−work/(w·area)).
func (b *brakeHeat) scrub(film, work float64) float64 {
	return faded(film * exact.Exp(-work/float64(2*filmWork*b.area)))
}

// polish takes the rust films off that the stops of a way [km] rub away. What wears
// meanwhile is the film, not the lining.
func (c *Condition) polish(duty *Duty, km float64) {
	stops := 0.0
	for i := range duty.Stops {
		stops += float64(duty.Stops[i].PerThousandKm * km / 1000)
	}
	for w := range c.Wheels {
		if film := &c.Wheels[w].DiscFilm; *film > 0 {
			*film = faded(*film * exact.Exp(-stops/filmStops))
		}
	}
}

func faded(film float64) float64 {
	if film < filmGone {
		return 0
	}
	return film
}
