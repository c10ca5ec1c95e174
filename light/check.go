package light

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// check finds what cannot be computed at all.
func (s *Scene) check() error {
	for i, side := range s.Size {
		if !(side > 0) || math.IsInf(side, 0) {
			return fmt.Errorf("box size %g m: it must be above 0", side)
		}
		if !(s.Clear[i] > 0) || s.Clear[i] > side*(1+1e-9) {
			return fmt.Errorf("clear width %g m: it must be above 0 and at most the box's %g m", s.Clear[i], side)
		}
	}
	if !(s.Depth >= 0) || math.IsInf(s.Depth, 0) {
		return fmt.Errorf("box depth %g m: it must be 0 or more", s.Depth)
	}
	for _, c := range s.Cloths {
		if err := c.check(); err != nil {
			return err
		}
	}
	if c := s.Crate; c != nil && !(c.CellX > 0 && c.CellY > 0 && c.Depth > 0 && c.Wall >= 0 && share(c.Reflectance)) {
		return fmt.Errorf("crate of cells %g x %g m, %g m deep: cells and depth must be above 0 and the reflectance 0 to 1", c.CellX, c.CellY, c.Depth)
	}
	for _, side := range s.Sides {
		if !share(side.Inner) || !share(side.Outer) {
			return fmt.Errorf("a side's reflectance must be 0 to 1")
		}
	}
	if !share(s.Roof.Reflectance) {
		return fmt.Errorf("roof reflectance %g: it must be 0 to 1", s.Roof.Reflectance)
	}
	for i := range s.Lamps {
		if err := s.Lamps[i].check(); err != nil {
			return fmt.Errorf("lamp %d: %w", i+1, err)
		}
	}
	return nil
}

func share(x float64) bool { return x >= 0 && x <= 1 }

func (c *Cloth) check() error {
	sum := c.Through + c.ForwardPart + c.Diffuse + c.Back
	if !(c.Through >= 0 && c.ForwardPart >= 0 && c.Diffuse >= 0 && c.Back >= 0) || sum > 1+1e-9 {
		return fmt.Errorf("cloth shares add up to %g: each must be 0 or more and all together at most 1", sum)
	}
	if c.ForwardPart > 0 && !(c.ForwardSigma > 0) {
		return fmt.Errorf("cloth lobe of width %g rad: it must be above 0", c.ForwardSigma)
	}
	if !(c.Gap >= 0) {
		return fmt.Errorf("cloth gap %g m: it must be 0 or more", c.Gap)
	}
	return nil
}

func (l *Lamp) check() error {
	if !(l.Size[0] > 0 && l.Size[1] > 0) {
		return fmt.Errorf("opening of %g x %g m: both must be above 0", l.Size[0], l.Size[1])
	}
	if !(l.Lumens >= 0) || math.IsInf(l.Lumens, 0) {
		return fmt.Errorf("%g lm: it must be 0 or more", l.Lumens)
	}
	if l.Distribution == nil {
		return fmt.Errorf("no distribution is given")
	}
	if at := r3.Norm(l.Centre); math.IsNaN(at) || math.IsInf(at, 0) {
		return fmt.Errorf("its place is no number")
	}
	for _, pair := range [3][2]r3.Vec{{l.Axis, l.U}, {l.U, l.V}, {l.V, l.Axis}} {
		if !(math.Abs(r3.Dot(pair[0], pair[1])) < 1e-9) || !(math.Abs(r3.Norm(pair[0])-1) < 1e-9) {
			return fmt.Errorf("its axes must be unit vectors at right angles")
		}
	}
	return nil
}
