package physics

import (
	"math"
	"testing"

	"evenwear/tests/published"
)

const (
	milesPerHour = 0.44704 // [m/s] exact
	foot         = 0.3048  // [m] exact
)

// fit returns a and b of least squares y = a·p + b·q.
func fit(p, q, y []float64) (a, b float64) {
	var pp, pq, qq, py, qy float64
	for i := range y {
		pp += p[i] * p[i]
		pq += p[i] * q[i]
		qq += q[i] * q[i]
		py += p[i] * y[i]
		qy += q[i] * y[i]
	}
	det := pp*qq - pq*pq
	return (py*qq - qy*pq) / det, (qy*pp - py*pq) / det
}

// TestOutsideChart: one reaction time and one deceleration on the stepped road
// give a whole chart, to the half metre to which it is printed.
func TestOutsideChart(t *testing.T) {
	const chart, implied = "GB Highway Code, rule 126 chart", "computed from the chart"
	speeds := []float64{20, 30, 40, 50, 60, 70}
	thinking := []float64{6, 9, 12, 15, 18, 21}
	braking := []float64{6, 14, 24, 38, 55, 75}
	const feetSquare = 20 * milesPerHour * milesPerHour / (2 * foot) // v²/20 in feet and mph [m/s²]
	v, zero := make([]float64, 6), make([]float64, 6)
	for i := range speeds {
		v[i], zero[i] = speeds[i]*milesPerHour, float64(i%2)*1e-9
	}
	reaction, _ := fit(v, zero, thinking)
	outside{id: "OC-56 reaction, s", source: implied, got: reaction, want: 0.671, tol: 1e-3, wrong: 0.7, absolute: true}.check(t)
	for i, mph := range speeds {
		s, _ := coast(t, 1500, v[i], 0, feetSquare)
		outside{id: "OC-55 thinking, m", source: chart, got: reaction * v[i], want: thinking[i], tol: 0.5, absolute: true, wrong: thinking[i] * 1.1}.check(t)
		// A tenth less deceleration is seen from 30 mph on.
		outside{id: "OC-55 braking, m", source: chart, got: s.Distance, want: braking[i], tol: 0.5, absolute: true, wrong: braking[i] + max(0.6, braking[i]/9)}.check(t)
		outside{id: "OC-55 total, m", source: chart, got: reaction*v[i] + s.Distance, want: []float64{12, 23, 36, 53, 73, 96}[i], tol: 0.5, absolute: true, wrong: s.Distance + 0.1}.check(t)
		outside{id: "OC-56 v + v²/20, ft", source: implied, got: mph + s.Distance/foot, want: []float64{40, 75, 120, 175, 240, 315}[i], tol: 1e-3, wrong: mph + 1.1*s.Distance/foot}.check(t)
		bracketed{"OC-56 implied, m/s²", implied, v[i] * v[i] / (2 * braking[i]), 6.42 - 0.005, 6.66 + 0.005, 5.9}.check(t)
	}
}

// TestOutsideStatutes: what the texts demand, driven on the stepped road.
func TestOutsideStatutes(t *testing.T) {
	for i, ft := range []float64{9.3, 20.8, 37.0, 58.0, 83.3} {
		mph := 10 + 5*float64(i)
		s, _ := coast(t, 1500, mph*milesPerHour, 0, 3.54)
		outside{id: "OC-58 way, ft", source: "American Samoa Code Ann. § 22.1109", got: s.Distance / foot, want: ft, tol: 6e-3, wrong: ft * 1.02}.check(t)
	}
	for _, r := range []struct {
		id, source string
		decel, ft  float64
	}{
		{"OC-59 car", "California Vehicle Code § 26454(b), § 26456", 6.56, 20},
		{"OC-59 light truck", "California Vehicle Code § 26454(b), § 26456", 5.25, 25},
		{"OC-60", "Ohio Admin. Code 4501:2-1-08", 4.37, 30},
	} {
		s, _ := coast(t, 1500, 20*milesPerHour, 0, r.decel)
		outside{id: r.id + " way, ft", source: r.source, got: s.Distance / foot, want: r.ft, tol: 2e-3, wrong: r.ft * 1.01}.check(t)
	}
	s, _ := coast(t, 1500, 80*KmPerHour, 0, 2.9)
	outside{id: "OC-54 2v²/150, m", source: "UN R13 rev. 4 Annex 4 §2.2", got: s.Distance, want: 2 * 80 * 80 / 150.0, tol: 1e-2, wrong: 80 * 80 / 150.0}.check(t)
}

// TestOutsideOldCars: 50 stops measured in the 1920s, the straight line that
// statistics put through them and the driver and brakes that physics do.
func TestOutsideOldCars(t *testing.T) {
	const src = "R datasets::cars (Ezekiel 1930)"
	_, pairs := published.Figures(t, "testdata/cars.csv")
	var one, speed, dist, lnv, lnd, v, v2, d []float64
	for _, x := range pairs {
		one, speed, dist = append(one, 1), append(speed, x[0]), append(dist, x[1])
		lnv, lnd = append(lnv, math.Log(x[0])), append(lnd, math.Log(x[1]))
		v, v2, d = append(v, x[0]*milesPerHour), append(v2, math.Pow(x[0]*milesPerHour, 2)), append(d, x[1]*foot)
	}
	a, b := fit(one, speed, dist)
	mean, left, all := 0.0, 0.0, 0.0
	for _, y := range dist {
		mean += y / float64(len(dist))
	}
	for i, y := range dist {
		left += math.Pow(y-a-b*speed[i], 2)
		all += math.Pow(y-mean, 2)
	}
	_, power := fit(one, lnv, lnd)
	outside{id: "OC-68 pairs", source: src, got: float64(len(dist)), want: 50, tol: 1e-9, wrong: 49}.check(t)
	outside{id: "OC-68 intercept, ft", source: src, got: a, want: -17.5791, tol: 1e-5, wrong: -17.58}.check(t)
	outside{id: "OC-68 slope, ft/mph", source: src, got: b, want: 3.9324, tol: 1e-4, wrong: 3.93}.check(t)
	outside{id: "OC-68 R²", source: src, got: 1 - left/all, want: 0.6511, tol: 1e-4, wrong: 0.65}.check(t)
	outside{id: "OC-68 residual, ft", source: src, got: math.Sqrt(left / 48), want: 15.38, tol: 1e-4, wrong: math.Sqrt(left / 50)}.check(t)
	outside{id: "OC-68 log–log slope", source: src, got: power, want: 1.602, tol: 5e-4, wrong: 1.61}.check(t)
	reaction, half := fit(v, v2, d)
	outside{id: "OC-69 reaction, s", source: "computed", got: reaction, want: 0.845, tol: 5e-3, wrong: 0.86}.check(t)
	outside{id: "OC-69 deceleration, m/s²", source: "computed", got: 1 / (2 * half), want: 3.64, tol: 5e-3, wrong: 3.7}.check(t)
	s, _ := coast(t, 1500, 20*milesPerHour, 0, 1/(2*half))
	outside{id: "OC-69 stepped from 20 mph, m", source: "computed", got: s.Distance, want: half * math.Pow(20*milesPerHour, 2), tol: 1e-3, wrong: half * math.Pow(20.2*milesPerHour, 2)}.check(t)
}
