package window

import "time"

// catchUp is the most that is made up for after a late frame. Beyond it the
// bench runs slow for a moment instead of falling further behind.
const catchUp = 100 * time.Millisecond

// A Clock turns elapsed time into whole milliseconds. It never reads the time
// itself, so a test can own the clock.
type Clock struct{ owed time.Duration }

// Steps returns how many milliseconds are due after elapsed more time.
func (c *Clock) Steps(elapsed time.Duration) int {
	c.owed = min(c.owed+max(elapsed, 0), catchUp)
	n := c.owed / time.Millisecond
	c.owed -= n * time.Millisecond
	return int(n)
}
