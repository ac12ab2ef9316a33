package scenarios

import (
	"fmt"
	"slices"
	"strings"

	"evenwear/physics"
)

// apply works one change into cond. part scales what it adds (a fault that has
// not yet grown).
func (ch *Change) apply(spec *physics.Spec, cond *physics.Condition, p Place, part float64) error {
	switch ch.Op {
	case Pour:
		return pour(spec, cond)
	case AtMost:
		ch.leave(spec, cond, p)
		return nil
	case StandsAt, FillTo, DrawTo:
		vesselAt(ch.Path).move(ch.Op, spec, cond, ch.Value)
		return nil
	}
	fs, err := p.at(spec, ch.Path)
	if err != nil {
		return err
	}
	for _, f := range fs {
		at, v := f.cond(cond), ch.Value*f.SI
		switch ch.Op {
		case Set:
			*at = v
		case Add:
			*at += float64(part * v)
		case Scale:
			kept := f.keeps(cond)
			*at = kept + float64((*at-kept)*ch.Value)
		case AtLeast:
			*at = max(*at, v)
		default:
			return fmt.Errorf("scenarios: unknown operation %q", ch.Op)
		}
		if f.mark != nil && ch.Op != Scale {
			*f.mark(cond) = true
		}
	}
	return nil
}

// pour fills the reservoir to MAX: what stands in it follows from the physics,
// the missing rest is added.
func pour(spec *physics.Spec, cond *physics.Condition) error {
	m, err := physics.New(spec, *cond)
	if err != nil {
		return err
	}
	s, err := m.Rest()
	if err != nil {
		return err
	}
	cond.Fluid += float64((1 - m.Level(&s)) * spec.Reservoir.MinToMax)
	return nil
}

// grown lists what months make of a number: renewing the part takes that away too.
var grown = []struct {
	of string // end of the path
	to []string
}{
	{"pin_upper_swelling_n", []string{"pin_upper_friction_n", "pin_upper_soaked_n"}},
	{"pin_lower_swelling_n", []string{"pin_lower_friction_n", "pin_lower_soaked_n"}},
	{"pin_upper_rusting_n_per_month", []string{"pin_upper_friction_n"}},
	{"pin_lower_rusting_n_per_month", []string{"pin_lower_friction_n"}},
	{"seal_swelling_n", []string{"seal_friction_n", "seal_rate_kn_per_mm"}},
	{"seal_rusting_n_per_month", []string{"seal_friction_n", "seal_rate_kn_per_mm"}},
	{"water_uptake_share_per_month", []string{"water_share"}},
}

// swollenByOil is the same for the whole car's rubber.
var swollenByOil = []string{"rubber_swollen_share", "master.primary_play_lost_mm", "master.secondary_play_lost_mm",
	"front_wheels.seal_friction_n", "front_wheels.seal_rate_kn_per_mm", "rear_wheels.seal_friction_n", "rear_wheels.seal_rate_kn_per_mm"}

// clear sets a field and what months made of it to a new part's.
func (f *Field) clear(spec *physics.Spec, cond *physics.Condition) error {
	*f.cond(cond) = 0
	if f.mark != nil {
		*f.mark(cond) = false
	}
	if f.Path == "mineral_oil_share" {
		for _, path := range swollenByOil {
			fs, err := Place("car").at(spec, path)
			if err != nil {
				return err
			}
			for _, g := range fs {
				*g.cond(cond) = 0
			}
		}
	}
	for _, g := range grown {
		if head, ok := strings.CutSuffix(f.Path, g.of); ok {
			for _, key := range g.to {
				*fieldIndex[head+key].cond(cond) = 0
			}
		}
	}
	return nil
}

// MakeGood sets the numbers that the fault changed, and what months made of
// them, back to a new part's. Wear short of its end and brake fluid that is gone
// stay: they are the history, not the fault.
func (f *Fault) MakeGood(spec *physics.Spec, cond *physics.Condition) error {
	for _, list := range [][]Change{f.Severity.Start, f.Severity.End} {
		for i := range list {
			switch list[i].Op {
			case Pour:
				continue
			case AtMost:
				list[i].restore(spec, cond, f.Place)
				continue
			case StandsAt, FillTo, DrawTo:
				v := vesselAt(list[i].Path)
				v.fill(spec, cond, v.rest)
				continue
			}
			fs, err := f.Place.at(spec, list[i].Path)
			if err != nil {
				return fmt.Errorf("%s at %s: %w", f.Cause.ID, f.Place, err)
			}
			for _, field := range fs {
				if strings.HasSuffix(field.Path, "_loss_mm") || field.Path == "fluid_added_cm3" {
					continue
				}
				if err := field.clear(spec, cond); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// keeps is what no cleaning takes away of a number: of what holds a pin, what
// its swollen rubber does.
func (f *Field) keeps(cond *physics.Condition) float64 {
	if f.kept == nil {
		return 0
	}
	return min(*f.kept(cond), *f.cond(cond))
}

// Excludes tells whether two remedies cannot both be chosen at a place: they are
// for one part. Vessels under the bonnet are filled each by itself, so of those
// only two for one vessel exclude each other.
func (r *Remedy) Excludes(other *Remedy) bool {
	if r.Part != other.Part {
		return false
	}
	mine, others := r.vessels(), other.vessels()
	if len(mine)+len(others) == 0 {
		return true
	}
	return slices.ContainsFunc(mine, func(path string) bool { return slices.Contains(others, path) })
}

// vessels are the paths of the levels that a remedy sets.
func (r *Remedy) vessels() (paths []string) {
	for i := range r.Changes {
		switch r.Changes[i].Op {
		case StandsAt, FillTo, DrawTo:
			paths = append(paths, r.Changes[i].Path)
		}
	}
	return paths
}

// Apply does the remedy's work on a car at a place.
func (r *Remedy) Apply(spec *physics.Spec, cond *physics.Condition, place Place) error {
	for i := range r.Changes {
		if err := r.Changes[i].apply(spec, cond, place, 1); err != nil {
			return fmt.Errorf("%s at %s: %w", r.ID, place, err)
		}
	}
	return nil
}
