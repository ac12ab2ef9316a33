package physics

// fadeFloor is the share of cold friction a sound lining keeps however hot it
// is; assumed.
const fadeFloor = 0.35

// Fade is the share of cold friction [1] a lining has at face temperature t [°C]:
//
//	1 below the knee, then 1 − slope·(t − knee), not below 0.35
//
// It is a function of the present temperature only, so what fades recovers when
// it cools; a glaze that stays is a condition, [WheelCondition.MuLoss].
func (c *CornerSpec) Fade(t float64) float64 {
	if t <= c.FadeKnee {
		return 1
	}
	return max(fadeFloor, 1-float64(c.FadeSlope*(t-c.FadeKnee)))
}
