package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// An egg-crate of thin black walls passes, of the light in a direction at theta
// from its normal and phi from the x walls, averaged over a cell:
//
//	[1 - (depth/cellX) tan theta |cos phi|]+ [1 - (depth/cellY) tan theta |sin phi|]+
//
// exactly, because the cell's opening is seen shifted sideways by depth tan
// theta. Thick walls take their share of the area. (Elementary geometry; it
// agrees with the flux between opposite faces of a cell, C-11.)

// openShare is the clear share of the crate's area.
func (c *Crate) openShare() float64 {
	return c.CellX / (c.CellX + c.Wall) * c.CellY / (c.CellY + c.Wall)
}

// passes is the share in a unit direction from the receiver up to the source.
func (c *Crate) passes(d r3.Vec) float64 {
	if d.Z <= 0 {
		return 0
	}
	x := 1 - c.Depth/c.CellX*math.Abs(d.X)/d.Z
	y := 1 - c.Depth/c.CellY*math.Abs(d.Y)/d.Z
	if x <= 0 || y <= 0 {
		return 0
	}
	return x * y * c.openShare()
}

// split cuts pieces where the share has its kinks, seen from eye, and drops
// what is cut off altogether. The kinks are planes through the eye.
func (c *Crate) split(w *sight, pieces []shape.Polygon, eye r3.Vec) []shape.Polygon {
	ax, ay := c.CellX/c.Depth, c.CellY/c.Depth
	w.parts = w.parts[:0]
	for _, p := range pieces {
		for _, side := range [4]r3.Vec{{X: -1, Z: ax}, {X: 1, Z: ax}, {Y: -1, Z: ay}, {Y: 1, Z: ay}} {
			if p == nil {
				break
			}
			p = w.cut.Clip(p, eye, side)
		}
		if p == nil {
			continue
		}
		for _, x := range [2]float64{1, -1} {
			half := w.cut.Clip(p, eye, r3.Vec{X: x})
			if half == nil {
				continue
			}
			for _, y := range [2]float64{1, -1} {
				if quarter := w.cut.Clip(half, eye, r3.Vec{Y: y}); quarter != nil {
					w.parts = append(w.parts, quarter)
				}
			}
		}
	}
	return w.parts
}
