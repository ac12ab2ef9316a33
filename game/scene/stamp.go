package scene

import "math"

// A stamp gathers everything a drawing depends on into one number: two drawings
// of equal stamps are equal (FNV-1a, 64 bit; offset and prime as published by
// Fowler, Noll and Vo).
type stamp uint64

const newStamp stamp = 14695981039346656037

func (s stamp) add(x uint64) stamp {
	for range 8 {
		s = (s ^ stamp(x&0xff)) * 1099511628211
		x >>= 8
	}
	return s
}

// num adds x to the nearest multiple of step: what cannot be seen does not count.
func (s stamp) num(x, step float64) stamp { return s.add(uint64(int64(math.Round(x / step)))) }

func (s stamp) text(t string) stamp {
	for i := range len(t) {
		s = (s ^ stamp(t[i])) * 1099511628211
	}
	return s.add(uint64(len(t)))
}

func (s stamp) flag(b bool) stamp {
	if b {
		return s.add(1)
	}
	return s.add(0)
}
