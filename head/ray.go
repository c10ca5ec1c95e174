package head

import "gonum.org/v1/gonum/spatial/r3"

// Blocked tells whether any triangle stands on the way from a place in a direction, no
// matter how far. What touches the place itself does not count.
func (b *Blocks) Blocked(from, direction r3.Vec) bool {
	r := ray{from, direction, r3.Vec{X: 1 / direction.X, Y: 1 / direction.Y, Z: 1 / direction.Z}}
	var stack [48]int32
	top := 1
	for top > 0 {
		top--
		at := stack[top]
		n := &b.nodes[at]
		if !r.meets(n) {
			continue
		}
		if n.count == 0 {
			stack[top], stack[top+1] = at+1, n.first
			top += 2
			continue
		}
		for i := n.first; i < n.first+n.count; i++ {
			if r.hits(&b.edges[i]) {
				return true
			}
		}
	}
	return false
}

type ray struct{ from, way, inverse r3.Vec }

// meets tells whether the ray goes through a box.
func (r *ray) meets(n *node) bool {
	low, high := (n.low.X-r.from.X)*r.inverse.X, (n.high.X-r.from.X)*r.inverse.X
	if low > high {
		low, high = high, low
	}
	enter, leave := low, high
	low, high = (n.low.Y-r.from.Y)*r.inverse.Y, (n.high.Y-r.from.Y)*r.inverse.Y
	if low > high {
		low, high = high, low
	}
	if low > enter {
		enter = low
	}
	if high < leave {
		leave = high
	}
	low, high = (n.low.Z-r.from.Z)*r.inverse.Z, (n.high.Z-r.from.Z)*r.inverse.Z
	if low > high {
		low, high = high, low
	}
	if low > enter {
		enter = low
	}
	if high < leave {
		leave = high
	}
	return enter <= leave && leave >= 0
}

// hits tells whether the ray meets a triangle, from either side.
func (r *ray) hits(c *corner) bool {
	px := r.way.Y*c.v.Z - r.way.Z*c.v.Y
	py := r.way.Z*c.v.X - r.way.X*c.v.Z
	pz := r.way.X*c.v.Y - r.way.Y*c.v.X
	det := c.u.X*px + c.u.Y*py + c.u.Z*pz
	if det > -1e-14 && det < 1e-14 {
		return false
	}
	sx, sy, sz := r.from.X-c.at.X, r.from.Y-c.at.Y, r.from.Z-c.at.Z
	inverse := 1 / det
	a := (sx*px + sy*py + sz*pz) * inverse
	if a < 0 || a > 1 {
		return false
	}
	qx, qy, qz := sy*c.u.Z-sz*c.u.Y, sz*c.u.X-sx*c.u.Z, sx*c.u.Y-sy*c.u.X
	b := (r.way.X*qx + r.way.Y*qy + r.way.Z*qz) * inverse
	if b < 0 || a+b > 1 {
		return false
	}
	return (c.v.X*qx+c.v.Y*qy+c.v.Z*qz)*inverse > 1e-6
}

// Free tells whether nothing of the mesh stands before the plane through a place at a
// right angle to a direction: then no ray from there into that half of space is blocked.
func (b *Blocks) Free(from, direction r3.Vec) bool {
	level := r3.Dot(from, direction)
	var stack [48]int32
	top := 1
	for top > 0 {
		top--
		at := stack[top]
		n := &b.nodes[at]
		if n.reaches(direction) <= level {
			continue
		}
		if n.count == 0 {
			stack[top], stack[top+1] = at+1, n.first
			top += 2
			continue
		}
		for _, c := range b.edges[n.first : n.first+n.count] {
			base := r3.Dot(c.at, direction) - level
			if base > 0 || base+r3.Dot(c.u, direction) > 0 || base+r3.Dot(c.v, direction) > 0 {
				return false
			}
		}
	}
	return true
}

// reaches is how far a box goes along a direction.
func (n *node) reaches(d r3.Vec) float64 {
	far := func(d, low, high float64) float64 {
		if d > 0 {
			return d * high
		}
		return d * low
	}
	return far(d.X, n.low.X, n.high.X) + far(d.Y, n.low.Y, n.high.Y) + far(d.Z, n.low.Z, n.high.Z)
}
