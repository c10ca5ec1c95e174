package load

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

const degree = math.Pi / 180

// poseOf fits the box axes to the bottom frame's corners where they have moved to:
// the middle of the corners, x along the mean of the two sides that run along x, z
// along the normal of the diagonals. Without a bottom frame the pose is as planned.
func (m *model) poseOf(s *solved) shape.Pose {
	if m.corners == nil {
		return m.rig.Pose
	}
	var p [4]r3.Vec
	for i, node := range m.corners {
		p[i] = s.Position[node]
	}
	middle := r3.Scale(0.25, r3.Add(r3.Add(p[0], p[1]), r3.Add(p[2], p[3])))
	along := r3.Add(r3.Sub(p[0], p[1]), r3.Sub(p[3], p[2]))
	normal := r3.Unit(r3.Cross(r3.Sub(p[0], p[2]), r3.Sub(p[1], p[3])))
	x := r3.Unit(r3.Sub(along, r3.Scale(r3.Dot(along, normal), normal)))
	return shape.Pose{Origin: middle, X: x, Y: r3.Cross(normal, x), Z: normal}
}

// pose tells a pose as the answers do: turn about the vertical, then the tilt about
// the box's own x or y that gives its normal.
func (m *model) pose(s *solved) *Pose {
	p := m.poseOf(s)
	turn := math.Atan2(p.X.Y, p.X.X)
	sin, cos := math.Sincos(turn)
	// The normal as seen from axes that have turned with the box.
	nx, ny := cos*p.Z.X+sin*p.Z.Y, -sin*p.Z.X+cos*p.Z.Y
	return &Pose{
		At: vec(p.Origin), Turn: Number(turn / degree),
		Tilt:   [2]Number{Number(math.Atan2(-ny, p.Z.Z) / degree), Number(math.Atan2(nx, p.Z.Z) / degree)},
		Lowest: Number(m.lowest(s, p)),
	}
}

// lowest returns the height of the lowest edge: a corner of the bottom frame, or
// the edge of crate or skirt below it.
func (m *model) lowest(s *solved, p shape.Pose) float64 {
	low := math.Inf(1)
	if m.corners == nil {
		for _, t := range m.problem.Members {
			low = math.Min(low, math.Min(s.Position[t.I].Z, s.Position[t.J].Z))
		}
		return low
	}
	for _, node := range m.corners {
		edge := r3.Sub(s.Position[node], r3.Scale(m.rig.LowestBy, p.Z))
		low = math.Min(low, math.Min(edge.Z, s.Position[node].Z))
	}
	return low
}

// tiltOf is the angle between the box's normal and the vertical, in degrees.
func (m *model) tiltOf(s *solved) float64 {
	z := m.poseOf(s).Z
	return math.Atan2(math.Hypot(z.X, z.Y), z.Z) / degree
}
