package play

import (
	"hash/fnv"
	"math/rand/v2"

	"evenwear/physics/exact"
	"evenwear/physics/inspect"
)

// luck is a source of its own for one name in one session: asking in another
// order shows the same readings.
func luck(seed uint64, job, name string, try uint64) *rand.Rand {
	h := fnv.New64a()
	h.Write([]byte(job))
	h.Write([]byte{0})
	h.Write([]byte(name))
	return rand.New(rand.NewPCG(seed, h.Sum64()+try*0x9e3779b97f4a7c15))
}

// normal is a standard normal draw. rand's own uses logarithms whose last bits
// differ between machines.
func normal(r *rand.Rand) float64 {
	u := r.Float64()
	for u == 0 {
		u = r.Float64()
	}
	return exact.NormalQuantile(u)
}

// look takes one look through a check's meter: what it displays at the given
// try in this session.
func look(seed uint64, job string, inst inspect.Instance, c *inspect.Check, truth float64, try uint64) int64 {
	bias := normal(luck(seed, job, "instrument "+c.Meter.Instrument, 0))
	r := luck(seed, job, inst.String(), try)
	z, slip, at := normal(r), r.Float64(), r.Float64()
	_, display := c.Meter.Sample(truth, bias, z, slip, at)
	return display
}
