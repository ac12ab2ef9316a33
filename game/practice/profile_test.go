package practice

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenwear/scenarios"
	"evenwear/scoring/record"
)

// counted is the profile that the cars of a self-check have.
func counted(t *testing.T, lib *scenarios.Library, c *record.Check) (p Profile) {
	t.Helper()
	for _, car := range c.Cars {
		seed, ease, ok := scenarios.ParseDrawn(car.Job)
		if !ok || ease != scenarios.Fair {
			t.Fatalf("%s is in it", car.Job)
		}
		j, err := lib.Draw(seed, scenarios.Wish{Ease: ease})
		if err != nil {
			t.Fatal(err)
		}
		p.Bits += lib.Need(j)
		switch {
		case len(j.Faults) == 2:
			p.Two++
		case j.Sound():
			p.Sound++
		default:
			p.One++
			f := &j.Faults[0]
			switch {
			case len(f.Cause.Severities) == 1:
				p.Only++
			case f.Severity.ID == f.Cause.Severities[0].ID:
				p.Slight++
			default:
				p.Far++
			}
		}
	}
	return p
}

// TestEveryRoundIsAlike: whatever the luck, as many cars are sound, have one fault
// to each degree, and have two, and all need as many bits; ten fair cars that are
// drawn without that differ by more. The bits a car needs are those of the table of
// evidence, by [scenarios.Library.Need].
func TestEveryRoundIsAlike(t *testing.T) {
	lib := library(t)
	want := ProfileOf(lib)
	t.Logf("profile %+v", want)
	if want.Sound+want.One+want.Two != RoundCars || want.Slight+want.Only+want.Far != want.One || want.Two == 0 || want.Sound == 0 {
		t.Fatalf("profile %+v", want)
	}
	const lucks = 8
	sound := 0 // of the first cars
	for luck := range uint64(lucks) {
		c, err := Draw(lib, "ab", nil, monday, luck)
		if err != nil {
			t.Fatal(err)
		}
		got := counted(t, lib, &c)
		if math.Abs(got.Bits-want.Bits) > BitsWithin {
			t.Errorf("luck %d: %.2f bits, the profile has %.2f", luck, got.Bits, want.Bits)
		}
		if got.Bits = want.Bits; got != want {
			t.Errorf("luck %d: %+v, want %+v", luck, got, want)
		}
		one := record.Check{Cars: c.Cars[:1]}
		sound += counted(t, lib, &one).Sound
	}
	if sound == lucks {
		t.Error("the first car is always sound: its place tells what it is")
	}
}

// TestPlans: of many plans every one has the profile, and each kind of car comes
// about as often as among fair cars; drawn without it, the bits of ten cars spread
// several times as far.
func TestPlans(t *testing.T) {
	lib := library(t)
	p, all := ProfileOf(lib), outcomes(lib)
	rng := rand.New(rand.NewPCG(3, 4))
	const rounds = 600
	came, sum, square := map[string]float64{}, 0.0, 0.0
	for range rounds {
		list := plan(lib, rng)
		if !p.matches(list, BitsWithin) {
			t.Fatalf("a plan without the profile: %+v", list)
		}
		bits := 0.0
		for i := range list {
			came[list[i].cause]++
			bits += list[i].bits
		}
		sum, square = sum+bits/rounds, square+bits*bits/rounds
	}
	spread := math.Sqrt(square - sum*sum)
	plain, plainSquare := 0.0, 0.0
	for n := range uint64(rounds) {
		bits := 0.0
		for i := range uint64(RoundCars) {
			bits += lib.Need(lib.Sketch(1e6+n*RoundCars+i, scenarios.Wish{}))
		}
		plain, plainSquare = plain+bits/rounds, plainSquare+bits*bits/rounds
	}
	unmatched := math.Sqrt(plainSquare - plain*plain)
	t.Logf("bits of ten cars: %.2f ± %.2f with the profile, %.2f ± %.2f without", sum, spread, plain, unmatched)
	if spread > BitsWithin || unmatched < 5*spread {
		t.Errorf("bits spread by %.2f with the profile, %.2f without; want less than a fifth", spread, unmatched)
	}
	for _, c := range lib.Causes {
		if came[c.ID] == 0 {
			t.Errorf("%s never comes in %d self-checks", c.ID, rounds)
		}
	}
	for n := range all { // shares as among fair cars, within the rounding to whole cars
		for i := range all[n] {
			k := &all[n][i]
			if due := k.share * RoundCars * rounds; k.also == "" && len(lib.Cause(k.cause).Severities) == 1 && due > 60 && (came[k.cause] < due/2 || came[k.cause] > 2*due) {
				t.Errorf("%s comes %g times, as often as among fair cars would be %.0f", k.cause, came[k.cause], due)
			}
		}
	}
}
