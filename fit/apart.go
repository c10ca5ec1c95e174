package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// apart is the distance between two blocks, 0 where they meet. Blocks that don't meet are
// nearest at a corner of the one and somewhere on the other, or at an edge of each.
func apart(a, b block) float64 {
	if meet(a, b) {
		return 0
	}
	least := math.Inf(1)
	note := func(p, q r3.Vec) { least = math.Min(least, r3.Norm(r3.Sub(p, q))) }
	cornersA, cornersB := a.corners(), b.corners()
	for k := range cornersA {
		note(cornersA[k], b.near(cornersA[k]))
		note(cornersB[k], a.near(cornersB[k]))
	}
	for _, e := range edges {
		for _, f := range edges {
			note(nearest(cornersA[e[0]], cornersA[e[1]], cornersB[f[0]], cornersB[f[1]]))
		}
	}
	return least
}

// corners lists a block's corners: bit 0 of the index is x, bit 1 y, bit 2 z.
func (b block) corners() [8]r3.Vec {
	var all [8]r3.Vec
	for k := range all {
		sign := func(bit int) float64 { return float64(k>>bit&1)*2 - 1 }
		all[k] = b.Pose.Out(r3.Vec{X: sign(0) * b.Half[0], Y: sign(1) * b.Half[1], Z: sign(2) * b.Half[2]})
	}
	return all
}

// edges are the pairs of corners that differ in one bit.
var edges = [12][2]int{{0, 1}, {2, 3}, {4, 5}, {6, 7}, {0, 2}, {1, 3}, {4, 6}, {5, 7}, {0, 4}, {1, 5}, {2, 6}, {3, 7}}

// meet reports whether two blocks have a place in common: no axis of either, and none
// square to one of each, separates them (Gottschalk, Lin and Manocha, 1996).
func meet(a, b block) bool {
	axesA, axesB := [3]r3.Vec{a.Pose.X, a.Pose.Y, a.Pose.Z}, [3]r3.Vec{b.Pose.X, b.Pose.Y, b.Pose.Z}
	away := r3.Sub(b.Pose.Origin, a.Pose.Origin)
	apartAlong := func(axis r3.Vec) bool {
		reach := 0.0
		for k := range axesA {
			reach += a.Half[k]*math.Abs(r3.Dot(axesA[k], axis)) + b.Half[k]*math.Abs(r3.Dot(axesB[k], axis))
		}
		return math.Abs(r3.Dot(away, axis)) > reach
	}
	for k := range axesA {
		if apartAlong(axesA[k]) || apartAlong(axesB[k]) {
			return false
		}
		for j := range axesB {
			cross := r3.Cross(axesA[k], axesB[j])
			if length := r3.Norm(cross); length > 1e-9 && apartAlong(r3.Scale(1/length, cross)) {
				return false
			}
		}
	}
	return true
}

// nearest returns the two places of two segments that are nearest to each other.
func nearest(p, q, r, s r3.Vec) (r3.Vec, r3.Vec) {
	u, v, w := r3.Sub(q, p), r3.Sub(s, r), r3.Sub(p, r)
	uu, uv, vv, uw, vw := r3.Dot(u, u), r3.Dot(u, v), r3.Dot(v, v), r3.Dot(u, w), r3.Dot(v, w)
	clamp := func(x float64) float64 { return math.Max(0, math.Min(1, x)) }
	along := 0.0
	if det := uu*vv - uv*uv; det > 1e-12*uu*vv {
		along = clamp((uv*vw - vv*uw) / det)
	}
	other := 0.0
	if vv > 0 {
		other = clamp((uv*along + vw) / vv)
	}
	if uu > 0 {
		along = clamp((uv*other - uw) / uu)
	}
	return r3.Add(p, r3.Scale(along, u)), r3.Add(r, r3.Scale(other, v))
}
