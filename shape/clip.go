package shape

import "gonum.org/v1/gonum/spatial/r3"

// touching is the distance (m) under which two planes count as one: a face
// hides nothing that lies in its own plane.
const touching = 1e-9

// Cutter cuts convex polygons and keeps the memory for it. The polygons it
// gives are valid until Reset. It is for one goroutine.
type Cutter struct {
	corners []r3.Vec
	heights []float64
	cone    []r3.Vec
	spare   []Polygon
}

// Reset takes back all polygons given so far.
func (c *Cutter) Reset() { c.corners = c.corners[:0] }

// Clip is the part of a convex polygon where normal . (x - through) >= 0: the
// polygon itself where nothing is cut off, nil where nothing is left. The
// order of the corners is kept.
func (c *Cutter) Clip(p Polygon, through, normal r3.Vec) Polygon {
	heights, below, above := c.measure(p, through, normal)
	if !below {
		return p
	}
	if !above {
		return nil
	}
	start := len(c.corners)
	for i := range p {
		j := i + 1
		if j == len(p) {
			j = 0
		}
		if heights[i] >= 0 {
			c.corners = append(c.corners, p[i])
		}
		if (heights[i] > 0 && heights[j] < 0) || (heights[i] < 0 && heights[j] > 0) {
			t := heights[i] / (heights[i] - heights[j])
			c.corners = append(c.corners, r3.Add(p[i], r3.Scale(t, r3.Sub(p[j], p[i]))))
		}
	}
	if len(c.corners)-start < 3 {
		c.corners = c.corners[:start]
		return nil
	}
	return Polygon(c.corners[start:len(c.corners):len(c.corners)])
}

// measure gives each corner's height over the plane and whether any lies on
// either side.
func (c *Cutter) measure(p Polygon, through, normal r3.Vec) (heights []float64, below, above bool) {
	c.heights = c.heights[:0]
	for _, x := range p {
		h := r3.Dot(normal, r3.Sub(x, through))
		c.heights = append(c.heights, h)
		below = below || h < 0
		above = above || h > 0
	}
	return c.heights, below, above
}

// Window is the part of a convex polygon that is seen from eye through a
// convex frame, whether it lies before or beyond the frame's plane. Seen edge
// on, the frame shows nothing, except what lies in its own plane: of that the
// part inside the frame.
func (c *Cutter) Window(p Polygon, eye r3.Vec, frame Polygon) Polygon {
	if !c.aim(eye, frame) {
		return nil
	}
	for _, side := range c.cone {
		if p = c.Clip(p, eye, side); p == nil {
			return nil
		}
	}
	return p
}

// aim sets the planes through eye and the edges of a convex polygon, normals
// inward; false where the eye lies in its plane.
func (c *Cutter) aim(eye r3.Vec, frame Polygon) bool {
	n := frame.Normal()
	size := length(n)
	if size == 0 {
		return false
	}
	height := r3.Dot(n, r3.Sub(eye, frame[0])) / size
	if height < touching && height > -touching {
		return false
	}
	c.cone = c.cone[:0]
	last := r3.Sub(frame[len(frame)-1], eye)
	for _, corner := range frame {
		next := r3.Sub(corner, eye)
		side := r3.Cross(last, next)
		if height > 0 { // counter-clockwise from the eye: the inside is where it turns away
			side = r3.Scale(-1, side)
		}
		c.cone = append(c.cone, side)
		last = next
	}
	return true
}

// Hide takes away from convex pieces what a convex face hides from eye: what
// lies beyond the face's plane and in the cone through its edges. Pieces are
// changed in place and grow; they stay convex.
func (c *Cutter) Hide(pieces []Polygon, eye r3.Vec, face Polygon) []Polygon {
	if len(pieces) == 0 || len(face) < 3 || !c.aim(eye, face) {
		return pieces
	}
	n := face.Normal()
	if length(n) < noArea {
		return pieces
	}
	n = r3.Scale(1/length(n), n)
	if r3.Dot(n, r3.Sub(eye, face[0])) < 0 {
		n = r3.Scale(-1, n)
	}
	before := r3.Sub(face[0], r3.Scale(touching, n)) // what touches the face is before it
	away := r3.Scale(-1, n)
	count := len(pieces)
	out := c.spare[:0]
	for _, piece := range pieces[:count] {
		if c.misses(piece, eye, before, n) || c.hidden(piece, eye, before, away) == nil {
			out = append(out, piece)
			continue
		}
		if near := c.Clip(piece, before, n); near != nil {
			out = append(out, near)
		}
		rest := c.Clip(piece, before, away)
		for _, side := range c.cone {
			if rest == nil {
				break
			}
			if outside := c.Clip(rest, eye, r3.Scale(-1, side)); outside != nil {
				out = append(out, outside)
			}
			rest = c.Clip(rest, eye, side)
		}
	}
	c.spare = out
	return append(pieces[:0], out...)
}

// noArea is twice the area (m2) under which a face hides nothing: a skirt rolled up to
// a hair has no normal that could be told.
const noArea = 1e-12

// misses tells whether the whole piece lies before the face or outside of one
// side of the cone.
func (c *Cutter) misses(piece Polygon, eye, before, n r3.Vec) bool {
	if _, below, _ := c.measure(piece, before, n); !below {
		return true
	}
	for _, side := range c.cone {
		if _, _, above := c.measure(piece, eye, side); !above {
			return true
		}
	}
	return false
}

// hidden is the part of a piece beyond the face and in the cone.
func (c *Cutter) hidden(piece Polygon, eye, before, away r3.Vec) Polygon {
	piece = c.Clip(piece, before, away)
	for _, side := range c.cone {
		if piece == nil {
			return nil
		}
		piece = c.Clip(piece, eye, side)
	}
	return piece
}
