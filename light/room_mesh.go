package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// roomSide is one of the room's six faces: across an axis, cut evenly into patches.
type roomSide struct {
	u, v, normal  int // axes; u and v in rising order
	level, toward float64
	lineU, lineV  []float64
	first         int // its first patch; u runs fastest
}

// The room's faces, before the four walls in their order.
const (
	roomFloor = iota
	roomCeiling
	roomWalls
)

func (s *roomSide) nu() int      { return len(s.lineU) - 1 }
func (s *roomSide) nv() int      { return len(s.lineV) - 1 }
func (s *roomSide) patches() int { return s.nu() * s.nv() }

func (s *roomSide) patchArea() float64 {
	last := len(s.lineU) - 1
	return (s.lineU[last] - s.lineU[0]) * (s.lineV[len(s.lineV)-1] - s.lineV[0]) / float64(s.patches())
}

// place is the point of a face at u, v.
func (s *roomSide) place(u, v float64) r3.Vec { return s.vector(u, v, s.level) }

// cell is a patch by two opposite corners.
func (s *roomSide) cell(patch int) (p, q r3.Vec) {
	i, j := patch%s.nu(), patch/s.nu()
	return s.place(s.lineU[i], s.lineV[j]), s.place(s.lineU[i+1], s.lineV[j+1])
}

// vector has parts along the face's two axes and across it.
func (s *roomSide) vector(u, v, n float64) r3.Vec {
	var x [3]float64
	x[s.u], x[s.v], x[s.normal] = u, v, n
	return r3.Vec{X: x[0], Y: x[1], Z: x[2]}
}

// inward is the unit normal into the room.
func (s *roomSide) inward() r3.Vec { return s.vector(0, 0, s.toward) }

// outline is the rectangle between two opposite corners on a face, running so that its
// Normal() points out of the room.
func (s *roomSide) outline(p, q r3.Vec) shape.Polygon {
	a, b := components(p), components(q)
	return s.outward(shape.Polygon{p, s.place(b[s.u], a[s.v]), q, s.place(a[s.u], b[s.v])})
}

// outward turns a polygon that runs counter-clockwise in u, v so that its Normal()
// points out of the room. u x v points along the normal axis, but for y against it.
func (s *roomSide) outward(p shape.Polygon) shape.Polygon {
	up := 1.0
	if s.normal == 1 {
		up = -1
	}
	if up*s.toward > 0 {
		for i, j := 0, len(p)-1; i < j; i, j = i+1, j-1 {
			p[i], p[j] = p[j], p[i]
		}
	}
	return p
}

// leaf is a patch by itself: of a set wall, one of its two faces, or a piece of a
// room's patch on which a set wall stands.
type leaf struct {
	polygon shape.Polygon // its Normal() points against looks
	looks   r3.Vec
	onFace  bool // a piece of a room's patch
}

// mesh cuts the room's faces and the set walls into patches.
func (h *Hall) mesh(along int) {
	low, high := components(h.room.Low), components(h.room.High)
	longest := 0.0
	for i := range low {
		longest = math.Max(longest, high[i]-low[i])
	}
	var lines [3][]float64
	for i := range lines {
		n := int(math.Ceil(float64(along)*(high[i]-low[i])/longest - 1e-9))
		lines[i] = even(low[i], high[i], max(n, along/4, 1))
	}
	for k, face := range [6]struct {
		normal int
		upper  bool
	}{{2, false}, {2, true}, roomWalls + North: {1, true}, roomWalls + South: {1, false}, roomWalls + East: {0, true}, roomWalls + West: {0, false}} {
		s := roomSide{normal: face.normal, level: low[face.normal], toward: 1, first: h.count}
		if face.upper {
			s.level, s.toward = high[face.normal], -1
		}
		s.u, s.v = spanning(face.normal)
		s.lineU, s.lineV = lines[s.u], lines[s.v]
		h.sides[k] = s
		h.count += s.patches()
		for range s.patches() {
			h.area = append(h.area, s.patchArea())
			h.reflect = append(h.reflect, h.reflectance(k))
		}
	}
	h.first = h.count
	for i := range h.room.Surfaces {
		h.meshWall(i, longest/float64(along))
	}
	h.void = make([]bool, h.first)
	for k := range h.sides {
		h.meshFeet(k)
	}
	h.count += len(h.leaves)
}

// sliver (m2) is under what a piece gives and takes no light that could be told.
const sliver = 1e-9

// meshFeet takes apart the patches of a face on which set walls stand: light on one
// side of a wall is none on the other.
func (h *Hall) meshFeet(k int) {
	s := &h.sides[k]
	for i := range s.patches() {
		p, q := s.cell(i)
		pieces := []shape.Polygon{s.outline(p, q)}
		for b := h.boxes; b < len(h.blocks); b++ {
			if by := &h.blocks[b]; by.distance(p, q) < touches {
				pieces = cutAtFoot(pieces, by.polygon, s)
			}
		}
		if len(pieces) < 2 {
			continue
		}
		h.void[s.first+i] = true
		h.reflect[s.first+i] = 0
		for _, piece := range pieces {
			if piece.Area() < sliver {
				continue
			}
			h.leaves = append(h.leaves, leaf{piece, s.inward(), true})
			h.area, h.reflect = append(h.area, piece.Area()), append(h.reflect, h.reflectance(k))
		}
	}
}

// spanning are the two axes across an axis, in rising order.
func spanning(normal int) (u, v int) { return [3]int{1, 0, 0}[normal], [3]int{2, 2, 1}[normal] }

// reflectance of the room's kth face.
func (h *Hall) reflectance(k int) float64 {
	switch k {
	case roomFloor:
		return h.room.Floor
	case roomCeiling:
		return h.room.Ceiling
	}
	return h.room.Walls[k-roomWalls]
}

// meshWall cuts what of a set wall stands in the room, both faces.
func (h *Hall) meshWall(index int, target float64) {
	s := &h.room.Surfaces[index]
	for _, part := range s.Corners.Convex() {
		part = h.inRoom(part)
		if part == nil || part.Area() < onFace {
			continue
		}
		normal := r3.Unit(part.Normal())
		for _, piece := range cutEvenly(part, target) {
			if piece.Area() < sliver {
				continue
			}
			back := append(shape.Polygon(nil), piece...)
			for i, j := 0, len(back)-1; i < j; i, j = i+1, j-1 {
				back[i], back[j] = back[j], back[i]
			}
			h.leaves = append(h.leaves, leaf{piece, r3.Scale(-1, normal), false}, leaf{back, normal, false})
			h.area = append(h.area, piece.Area(), piece.Area())
			h.reflect = append(h.reflect, s.Reflectance, s.Reflectance)
		}
	}
}

// inRoom is what of a convex polygon lies in the room; nil for nothing.
func (h *Hall) inRoom(p shape.Polygon) shape.Polygon {
	var cut shape.Cutter
	for i := range h.sides {
		s := &h.sides[i]
		if p == nil {
			return nil
		}
		p = cut.Clip(p, s.vector(0, 0, s.level), s.inward())
	}
	return append(shape.Polygon(nil), p...)
}

const (
	// leastAlongWall and mostAlongWall bound the patches along a set wall's edge.
	leastAlongWall, mostAlongWall = 4, 10
)

// cutEvenly cuts a convex polygon of four corners into such, any other into triangles,
// about as wide as the target.
func cutEvenly(p shape.Polygon, target float64) []shape.Polygon {
	steps := func(length float64) int {
		return min(max(int(math.Ceil(length/target)), leastAlongWall), mostAlongWall)
	}
	edge := func(i, j int) float64 { return norm(r3.Sub(p[j], p[i])) }
	var out []shape.Polygon
	if len(p) == 4 {
		nu, nv := steps(math.Max(edge(0, 1), edge(3, 2))), steps(math.Max(edge(0, 3), edge(1, 2)))
		at := func(i, j int) r3.Vec {
			u, v := float64(i)/float64(nu), float64(j)/float64(nv)
			low := r3.Add(r3.Scale(1-u, p[0]), r3.Scale(u, p[1]))
			high := r3.Add(r3.Scale(1-u, p[3]), r3.Scale(u, p[2]))
			return r3.Add(r3.Scale(1-v, low), r3.Scale(v, high))
		}
		for j := range nv {
			for i := range nu {
				out = append(out, shape.Polygon{at(i, j), at(i+1, j), at(i+1, j+1), at(i, j+1)})
			}
		}
		return out
	}
	for i := 2; i < len(p); i++ {
		longest := math.Max(edge(0, i-1), math.Max(edge(i-1, i), edge(0, i)))
		depth := int(math.Log2(float64(steps(longest))))
		for _, piece := range split([3]r3.Vec{p[0], p[i-1], p[i]}, depth) {
			out = append(out, shape.Polygon{piece[0], piece[1], piece[2]})
		}
	}
	return out
}
