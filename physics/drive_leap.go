package physics

import "math"

const (
	leapLongest = 12.0  // cycles taken by trend at most
	leapTrust   = 0.3   // [1] by which the wear of a cycle may change on the way
	leapSmall   = 0.1   // [1] of a wheel's greatest wear, below which a half pad's trend does not count
	leapSteady  = 0.002 // [1] of trend that is no trend: what solving the pressure leaves
)

// leap drives two cycles of km each and takes more by their trend, at most
// limit in all; it returns how many.
//
// From one cycle to the next everything slow (wear, where the pieces sit, where
// friction holds them) moves by Δ, which itself changes by Δ₂ − Δ₁, so after m
// more cycles it has moved by m·Δ₂ + ½m(m+1)·(Δ₂ − Δ₁). Positions and wear move
// together, so no force jumps. m is bounded by how much Δ would change.
func (d *trip) leap(km, limit float64) (float64, error) {
	start := d.wheels
	if err := d.cycle(km); err != nil {
		return 0, err
	}
	if limit < 2 {
		return 1, nil
	}
	middle, leaked := d.wheels, d.leaked
	if err := d.cycle(km); err != nil {
		return 0, err
	}
	change := 0.0
	for i := range d.count {
		change = max(change, d.wheels[i].trend(&middle[i], &start[i]))
	}
	m := min(limit-2, leapLongest, math.Floor(leapTrust/(float64(d.rounds)*max(change, leapSteady))))
	if m < 1 {
		return 2, nil
	}
	for i := range d.count {
		d.wheels[i].ahead(&middle[i], &start[i], m)
	}
	d.leaked += float64(m * (d.leaked - leaked))
	return 2 + m, nil
}

// trend is how much the wear of a half pad changed from one cycle to the next,
// as a share of itself, or the way of a piece as a share of the greatest wear;
// whichever is more.
func (w *wornWheel) trend(middle, start *wornWheel) float64 {
	most := 0.0
	for i := range 2 {
		for j := range 2 {
			most = max(most, w.cond.Wear[i][j]-middle.cond.Wear[i][j])
		}
	}
	if most == 0 {
		return 0
	}
	change := 0.0
	see := func(now, mid, old, whole float64) {
		change = max(change, math.Abs((now-mid)-(mid-old))/whole)
	}
	for i := range 2 {
		for j := range 2 {
			now, mid := w.cond.Wear[i][j], middle.cond.Wear[i][j]
			see(now, mid, start.cond.Wear[i][j], max(now-mid, leapSmall*most))
		}
		see(w.rest.PinAnchor[i], middle.rest.PinAnchor[i], start.rest.PinAnchor[i], most)
		see(w.rest.EarAnchor[i], middle.rest.EarAnchor[i], start.rest.EarAnchor[i], most)
	}
	see(w.rest.X, middle.rest.X, start.rest.X, most)
	see(w.rest.Y, middle.rest.Y, start.rest.Y, most)
	see(w.rest.SealAnchor, middle.rest.SealAnchor, start.rest.SealAnchor, most)
	return change
}

// ahead moves everything slow of a wheel by m cycles.
func (w *wornWheel) ahead(middle, start *wornWheel, m float64) {
	bend := m * (m + 1) / 2
	next := func(now *float64, mid, old float64) {
		delta := *now - mid
		*now += float64(m*delta) + float64(bend*(delta-(mid-old)))
	}
	next(&w.rest.X, middle.rest.X, start.rest.X)
	next(&w.rest.Y, middle.rest.Y, start.rest.Y)
	next(&w.rest.Tilt, middle.rest.Tilt, start.rest.Tilt)
	next(&w.rest.Bridge, middle.rest.Bridge, start.rest.Bridge)
	next(&w.rest.SealAnchor, middle.rest.SealAnchor, start.rest.SealAnchor)
	for i := range 2 {
		next(&w.rest.PinAnchor[i], middle.rest.PinAnchor[i], start.rest.PinAnchor[i])
		next(&w.rest.EarAnchor[i], middle.rest.EarAnchor[i], start.rest.EarAnchor[i])
		was := w.cond.DiscWear[i]
		next(&w.cond.DiscWear[i], middle.cond.DiscWear[i], start.cond.DiscWear[i])
		disc := w.cond.DiscWear[i] - was
		for j := range 2 {
			was := w.cond.Wear[i][j]
			next(&w.cond.Wear[i][j], middle.cond.Wear[i][j], start.cond.Wear[i][j])
			w.cond.Wear[i][j] = min(max(was, w.cond.Wear[i][j]), max(was, w.spec.LiningNew))
			w.corner.gap[i][j] += w.cond.Wear[i][j] - was + disc
		}
	}
}
