package photometry

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"
)

// goniometer is how the angles of a table turn: the types of LM-63.
type goniometer byte

const (
	typeC goniometer = 'C' // planes share the axis of aim; V from the aim
	typeB goniometer = 'B' // planes share the axis to the right; H is latitude
	typeA goniometer = 'A' // planes share the axis up; V is latitude
)

// mirror says how what lies outside of a table's planes follows from them.
type mirror int

const (
	round    mirror = iota // one plane for all
	quadrant               // C: mirrored about both planes, from 0 to 90 deg
	about0                 // C: mirrored about the plane 0-180; A, B: about the upright plane
	about90                // C: mirrored about the plane 90-270
	whole                  // nothing follows
)

// Table is a distribution measured at angles. Between them the intensity is linear in
// either angle; outside of them it is 0.
type Table struct {
	kind    goniometer
	v, h    []float64 // rad, ascending
	cd      []float64 // plane by plane, all V of the first H first
	mirror  mirror
	mirrorV bool    // A, B: mirrored about the level plane
	flux    float64 // integral of cd
	scale   float64
	grain   grain
	aim     r3.Vec // of the peak
}

// slack is how far (rad) an angle may lie outside of a table and still be its edge.
const slack = 1e-9

// Intensity is cd per lumen toward a unit direction in lamp axes.
func (t *Table) Intensity(direction r3.Vec) float64 {
	h, v := t.kind.angles(direction)
	return t.at(h, v) / t.flux
}

// Scale is the angle over which the intensity changes by the peak at its steepest, but
// at least finest or half of the beam, and at most a radian.
func (t *Table) Scale() float64 { return t.scale }

// Round tells that the intensity is the same all around the aim.
func (t *Table) Round() bool { return t.kind == typeC && t.mirror == round }

// Grain is the least angle over which the intensity changes noticeably between two
// angles from the aim, all rad.
func (t *Table) Grain(from, to float64) float64 { return t.grain.between(from, to) }

// Peak is the direction of the table's largest value, the first of equals.
func (t *Table) Peak() r3.Vec { return t.aim }

// Reach is the largest angle from the aim at which a type C table has light; for the
// other types half a turn.
func (t *Table) Reach() float64 {
	if t.kind != typeC {
		return math.Pi
	}
	n := len(t.v)
	for j := n - 1; j >= 0; j-- {
		for i := range t.h {
			if t.cd[i*n+j] != 0 {
				return t.v[min(j+1, n-1)] + slack
			}
		}
	}
	return 0
}

// angles are those of a unit direction.
func (g goniometer) angles(d r3.Vec) (h, v float64) {
	switch g {
	case typeA:
		return math.Atan2(d.X, d.Z), math.Atan2(d.Y, math.Hypot(d.X, d.Z))
	case typeB:
		return math.Atan2(d.X, math.Hypot(d.Y, d.Z)), math.Atan2(d.Y, d.Z)
	}
	return math.Atan2(d.Y, d.X), math.Atan2(math.Hypot(d.X, d.Y), d.Z)
}

// direction is the unit vector of two angles:
//
//	C: (sin V cos H, sin V sin H, cos V)
//	B: (sin H, cos H sin V, cos H cos V)
//	A: (cos V sin H, sin V, cos V cos H)
func (g goniometer) direction(h, v float64) r3.Vec {
	sinH, cosH := math.Sincos(h)
	sinV, cosV := math.Sincos(v)
	switch g {
	case typeA:
		return r3.Vec{X: cosV * sinH, Y: sinV, Z: cosV * cosH}
	case typeB:
		return r3.Vec{X: sinH, Y: cosH * sinV, Z: cosH * cosV}
	}
	return r3.Vec{X: sinV * cosH, Y: sinV * sinH, Z: cosV}
}

// at is the table's value between its angles.
func (t *Table) at(h, v float64) float64 {
	if t.mirrorV {
		v = math.Abs(v)
	}
	j, g, ok := locate(t.v, v)
	if !ok {
		return 0
	}
	i, next, f, ok := t.planes(h)
	if !ok {
		return 0
	}
	n := len(t.v)
	along := func(plane int) float64 {
		row := t.cd[plane*n : plane*n+n]
		return row[j] + g*(row[min(j+1, n-1)]-row[j])
	}
	first := along(i)
	return first + f*(along(next)-first)
}

// planes finds the two planes beside an angle and how far it is from the first to the
// second.
func (t *Table) planes(h float64) (i, next int, f float64, ok bool) {
	if t.mirror == round {
		return 0, 0, 0, true
	}
	h = t.fold(h)
	last := len(t.h) - 1
	if t.kind == typeC && t.mirror == whole && h > t.h[last] {
		gap := t.h[0] + 2*math.Pi - t.h[last]
		if gap < slack {
			return last, last, 0, true
		}
		return last, 0, (h - t.h[last]) / gap, true
	}
	i, f, ok = locate(t.h, h)
	return i, min(i+1, last), f, ok
}

// fold brings an angle to where the table has planes.
func (t *Table) fold(h float64) float64 {
	if t.kind != typeC {
		if t.mirror == about0 {
			return math.Abs(h)
		}
		return h
	}
	h = turn(h)
	switch t.mirror {
	case quadrant:
		return math.Min(math.Min(h, math.Abs(math.Pi-h)), 2*math.Pi-h)
	case about0:
		if upper := t.h[0] > math.Pi/2; (h > math.Pi) != upper {
			h = 2*math.Pi - h
		}
		return h
	case about90:
		return t.from90(h)
	}
	return t.from(h)
}

// from adds turns until the angle is not under the table's first.
func (t *Table) from(h float64) float64 {
	if h < t.h[0]-slack {
		return h + 2*math.Pi
	}
	if h-2*math.Pi >= t.h[0]-slack {
		return h - 2*math.Pi
	}
	return h
}

// from90 mirrors at C90-C270, for planes from 90 to 270 or from -90 to 90 deg.
func (t *Table) from90(h float64) float64 {
	right := h <= math.Pi/2 || h >= 3*math.Pi/2
	if stored := t.h[0] < 0; right != stored {
		h = turn(math.Pi - h)
	}
	if t.h[0] < 0 && h > math.Pi {
		h -= 2 * math.Pi
	}
	return h
}

// turn brings an angle to 0 up to a full turn.
func turn(h float64) float64 {
	h = math.Mod(h, 2*math.Pi)
	if h < 0 {
		h += 2 * math.Pi
	}
	return h
}

// locate finds the step of an ascending axis that holds x and how far x is in it.
func locate(axis []float64, x float64) (i int, f float64, ok bool) {
	last := len(axis) - 1
	if !(x >= axis[0]-slack && x <= axis[last]+slack) {
		return 0, 0, false
	}
	x = math.Max(axis[0], math.Min(axis[last], x))
	i = int(float64(last) * (x - axis[0]) / (axis[last] - axis[0])) // right where steps are even
	i = min(i, last-1)
	if x < axis[i] || x > axis[i+1] {
		i = sort.SearchFloat64s(axis, x) - 1
		i = max(0, min(i, last-1))
	}
	return i, (x - axis[i]) / (axis[i+1] - axis[i]), true
}
