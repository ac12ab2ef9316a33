package physics

import "fmt"

// New works a condition into a car. It refuses numbers that cannot work, in a
// sentence of the trade.
func New(spec *Spec, cond Condition) (*Model, error) {
	m := &Model{spec: spec, cond: cond}
	if err := spec.check(); err != nil {
		return nil, err
	}
	for w := range Wheel(NumWheels) {
		c, k := spec.Corner(w), &cond.Wheels[w]
		if err := k.check(c); err != nil {
			return nil, fmt.Errorf("%s: %w", w, err)
		}
		m.corners[w] = NewCorner(c, k, w.String())
	}
	m.workInHeat()
	return m, nil
}

func (s *Spec) check() error {
	for _, q := range []struct {
		what  string
		value float64
	}{
		{"mass", s.Body.Mass}, {"wheelbase", s.Body.Wheelbase}, {"tyre radius", s.Body.TyreRadius},
		{"pedal ratio", s.Pedal.Ratio}, {"master cylinder bore", s.Master.Bore}, {"efficiency", s.Master.Efficiency},
		{"primary stroke", s.Master.Stroke[0]}, {"secondary stroke", s.Master.Stroke[1]},
		{"master cylinder friction rate", s.Master.FrictionRate},
		{"bulk modulus of the fluid", s.Fluid.BulkModulus}, {"density of the fluid", s.Fluid.Density},
		{"reservoir between its marks", s.Reservoir.MinToMax},
	} {
		if !(q.value > 0) || !finite(q.value) {
			return fmt.Errorf("%s is %g: it must be above zero", q.what, q.value)
		}
	}
	for i, c := range s.Circuit {
		if c != 0 && c != 1 {
			return fmt.Errorf("%s is served by circuit %d: a tandem master cylinder has 0 and 1", Wheel(i), c)
		}
	}
	for i, c := range []*CornerSpec{&s.Front, &s.Rear} {
		if err := c.check(); err != nil {
			return fmt.Errorf("%s brakes: %w", [2]string{"front", "rear"}[i], err)
		}
	}
	return nil
}

func (c *CornerSpec) check() error {
	for _, q := range []struct {
		what  string
		value float64
	}{
		{"piston diameter", c.PistonDiameter}, {"pad stiffness", c.K1}, {"bridge stiffness", c.Bridge}, {"seal stiffness", c.SealRate},
		{"pin stiffness", c.PinRate}, {"pin offset", c.PinOffset}, {"ear stiffness", c.EarRate}, {"line resistance", c.LineResistance},
		{"disc diameter", c.DiscDiameter}, {"disc thickness", c.DiscThickness}, {"effective radius", c.EffectiveRadius},
		{"lining", c.LiningNew}, {"lining area", c.LiningArea}, {"lining friction", c.Mu},
	} {
		if !(q.value > 0) || !finite(q.value) {
			return fmt.Errorf("%s is %g: it must be above zero", q.what, q.value)
		}
	}
	switch {
	case c.PistonDiameter >= c.DiscDiameter/2:
		return fmt.Errorf("a piston of %.4g mm does not fit beside the hub of a disc of %.4g mm", c.PistonDiameter/Millimetre, c.DiscDiameter/Millimetre)
	case c.EffectiveRadius >= c.DiscDiameter/2:
		return fmt.Errorf("an effective radius of %.4g mm lies outside a disc of %.4g mm", c.EffectiveRadius/Millimetre, c.DiscDiameter/Millimetre)
	case c.Gap[Inner] < 0 || c.Gap[Outer] < 0:
		return fmt.Errorf("the clearance of a pad is negative: a new pad must fit in the caliper")
	}
	return nil
}

func (k *WheelCondition) check(c *CornerSpec) error {
	for i := range 2 {
		for j := range 2 {
			if w := k.Wear[i][j]; !(w >= 0 && w < c.LiningNew) {
				return fmt.Errorf("%.4g mm of a lining of %.4g mm are gone: there is no lining left to compute with", w/Millimetre, c.LiningNew/Millimetre)
			}
			if l := k.MuLoss[i][j]; !(l >= 0 && l <= 1) {
				return fmt.Errorf("a lining has lost %g of its friction: the share must lie between 0 and 1", l)
			}
		}
		if f := c.PinFriction + k.PinFriction[i]; !(f >= 0) || !finite(f) {
			return fmt.Errorf("a pin slides at %g N: a friction cannot be negative", f)
		}
	}
	if worn := k.DiscWear[Inner] + k.DiscWear[Outer]; !(worn >= 0 && worn < c.DiscThickness) {
		return fmt.Errorf("%.4g mm of a disc of %.4g mm are gone", worn/Millimetre, c.DiscThickness/Millimetre)
	}
	if !(k.Leak >= 0 && k.Air >= 0 && k.HoseHold >= 0) || !finite(k.Leak+k.Air+k.HoseHold) {
		return fmt.Errorf("leak, air and held pressure must be zero or more")
	}
	return nil
}
