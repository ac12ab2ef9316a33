package physics

import (
	"fmt"
	"math"
)

// A Duty is how a car is driven: what every 1000 km holds.
type Duty struct {
	Stops   [4]DutyStop
	Speed   float64 // [m/s] between stops, where drag rubs and cools
	Ambient float64 // [°C] change of the air from 20 °C
	Monthly float64 // [km/month] driven; 0 means 1000
}

// A DutyStop is one class of stops.
type DutyStop struct {
	PerThousandKm float64 // [1/1000 km]
	From, To      float64 // [m/s]
	Decel         float64 // [m/s²] wanted
}

// time is how long one stop takes [s].
func (d *DutyStop) time() float64 { return (d.From - d.To) / d.Decel }

// way is how far one stop goes [m]; a pad slides way·r_e/R.
func (d *DutyStop) way() float64 {
	return (float64(d.From*d.From) - float64(d.To*d.To)) / (2 * d.Decel)
}

// MixedDuty is the demo duty: about 0.18 mm of front lining per 1000 km. It is
// mostly town with some open road; the counts are assumed, and make about
// 25 kJ of friction work per front pad and kilometre, the example of OC-109.
func MixedDuty() Duty {
	return Duty{
		Stops: [4]DutyStop{
			{PerThousandKm: 800, From: 50 * KmPerHour, To: 0, Decel: 2},
			{PerThousandKm: 300, From: 60 * KmPerHour, To: 30 * KmPerHour, Decel: 1.5},
			{PerThousandKm: 70, From: 90 * KmPerHour, To: 40 * KmPerHour, Decel: 3},
			{PerThousandKm: 10, From: 100 * KmPerHour, To: 0, Decel: 6},
		},
		Speed: 50 * KmPerHour,
	}
}

// check refuses a duty or a way that means nothing.
func (d *Duty) check(km float64) error {
	const most = 1e6
	if !(km >= 0 && km <= most) {
		return fmt.Errorf("drive: %g km: want 0 to %g km", km, most)
	}
	if !(d.Speed > 0 && d.Speed <= 100) {
		return fmt.Errorf("duty: speed between stops %g m/s: want above 0, at most 100 m/s", d.Speed)
	}
	if !(math.Abs(d.Ambient) <= 80) {
		return fmt.Errorf("duty: ambient %g K from 20 °C: want −80 to 80 K", d.Ambient)
	}
	if !(d.Monthly == 0 || d.Monthly >= 10 && d.Monthly <= 50000) {
		return fmt.Errorf("duty: %g km a month: want 10 to 50000, or 0 for 1000", d.Monthly)
	}
	braked := 0.0
	for i, s := range d.Stops {
		if s.PerThousandKm == 0 {
			continue
		}
		switch {
		case !(s.PerThousandKm > 0 && s.PerThousandKm <= most):
			return fmt.Errorf("duty: stops[%d]: %g per 1000 km: want 0 to %g", i, s.PerThousandKm, most)
		case !(s.To >= 0 && s.From > s.To && s.From <= 100):
			return fmt.Errorf("duty: stops[%d]: from %g to %g m/s: want 100 ≥ from > to ≥ 0", i, s.From, s.To)
		case !(s.Decel > 0 && s.Decel <= 15):
			return fmt.Errorf("duty: stops[%d]: deceleration %g m/s²: want above 0, at most 15 m/s²", i, s.Decel)
		}
		braked += float64(s.PerThousandKm * s.way())
	}
	if braked > 1e6 {
		return fmt.Errorf("duty: its stops need %.0f m of every 1000 km: want at most 1000 km", braked)
	}
	return nil
}
