package rig

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	// perKnot is the rope that a knot takes with its tail, in m. Design assumption.
	perKnot = 0.5
	// haulTail is what must be left in hand at a tie-off, in m. Design assumption.
	haulTail = 3.0
	// waist is the height of the horses on which a box is put together, in m: a hauled
	// line reaches down to it. Design assumption.
	waist = 1.0
)

// spare is the rope that a line needs over what is taut at trim, and how it is made
// up: two knots, and on a hauled line a tail in hand and the way down to the horses.
// Nothing with derive: none, and nothing for a sling, which has its length.
func (d *deriver) spare(l *Line, top r3.Vec, load float64) (float64, string) {
	if !d.all() || !d.isRope(l) {
		return 0, "without tail and knots"
	}
	knots := 2 * perKnot
	if l.Pulley == nil {
		return knots, fmt.Sprintf("with %.1f m for two ends", knots)
	}
	down := math.Max(0, top.Z-waist-load)
	return knots + haulTail + down, fmt.Sprintf("with haul side %.3f m, tail %.1f m, knots %.1f m, and %.3f m to lower the box to %.1f m",
		d.HaulLength(l), haulTail, knots, down, waist)
}

func (d *deriver) isRope(l *Line) bool {
	piece, ok := d.Kit.Suspender(l.Rope.ID)
	return ok && piece.Rope != nil
}
