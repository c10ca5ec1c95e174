package sight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// looker looks from places, one after the other, and keeps the memory for it. It is for
// one goroutine.
type looker struct {
	scene  *scene
	way    *way
	cutter shape.Cutter
	faces  []shape.Polygon
	pieces []shape.Polygon
}

// visible are what of a solid nothing else hides from the eye: convex polygons that
// don't overlap.
func (l *looker) visible(of *solid, eye r3.Vec) []shape.Polygon {
	l.pieces = of.surface(eye, l.pieces[:0])
	for _, other := range l.scene.hiders {
		if len(l.pieces) == 0 {
			break
		}
		if other == of || !mayHide(other, of, eye) {
			continue
		}
		l.faces = other.faces(eye, l.faces[:0])
		for _, face := range l.faces {
			l.pieces = l.cutter.Hide(l.pieces, eye, face)
		}
	}
	return l.pieces
}

// mayHide is false where one solid is wholly beyond another, or wholly beside it, as
// seen from the eye: by the spheres that hold them.
func mayHide(front, back *solid, eye r3.Vec) bool {
	a, b := r3.Sub(front.center, eye), r3.Sub(back.center, eye)
	da, db := r3.Norm(a), r3.Norm(b)
	if da-front.radius > db+back.radius {
		return false
	}
	if da <= front.radius || db <= back.radius {
		return true
	}
	apart := math.Acos(math.Max(-1, math.Min(1, r3.Dot(a, b)/(da*db))))
	return apart <= math.Asin(front.radius/da)+math.Asin(back.radius/db)
}

// staysHidden proves that a solid is hidden from every place within shift (m) of the
// eye: it lies in the closed shell, or one large face is before it. A place x is hidden
// by a convex face for an eye e where the tetrahedra of e, x and each edge all turn the
// same way; their volumes are linear in e, so that the bound over a ball is exact.
func (s *scene) staysHidden(of *solid, eye r3.Vec, shift float64) bool {
	if s.shell != nil && s.shell.hides(eye, shift) && s.inShell(of) {
		return true
	}
	for _, wall := range s.walls {
		if staysBehind(of.corners, wall, eye, shift) {
			return true
		}
	}
	return false
}

func (s *scene) inShell(of *solid) bool {
	for _, x := range of.corners {
		if !s.shell.holds(x) {
			return false
		}
	}
	return true
}

// leastBehind is how far (m) beyond a face a corner lies at least to count as behind.
const leastBehind = 1e-6

func staysBehind(corners []r3.Vec, wall shape.Polygon, eye r3.Vec, shift float64) bool {
	normal := wall.Normal()
	size := r3.Norm(normal)
	if size == 0 {
		return false
	}
	normal = r3.Scale(1/size, normal)
	height := r3.Dot(normal, r3.Sub(eye, wall[0]))
	sign := 1.0
	if height < 0 {
		height, sign = -height, -1
	}
	if height <= shift {
		return false
	}
	for _, x := range corners {
		if sign*r3.Dot(normal, r3.Sub(x, wall[0])) > -leastBehind || !staysIn(x, wall, eye, sign, shift) {
			return false
		}
	}
	return true
}

// staysIn tells whether x stays in the cone through a face's edges; sign is 1 where the
// corners run counter-clockwise from the eye.
func staysIn(x r3.Vec, wall shape.Polygon, eye r3.Vec, sign, shift float64) bool {
	for i, a := range wall {
		b := wall[(i+1)%len(wall)]
		n := r3.Cross(r3.Sub(b, a), r3.Sub(x, a))
		if sign*r3.Dot(n, r3.Sub(eye, a)) < shift*math.Sqrt(r3.Norm2(n)) {
			return false
		}
	}
	return true
}
