package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// meter is a receptor with the unit direction in which it faces.
type meter struct {
	receptor Receptor
	faces    r3.Vec
}

// weigh is the receptor's response to light from a unit direction.
func (m meter) weigh(direction r3.Vec) float64 {
	cos := r3.Dot(direction, m.faces)
	switch m.receptor {
	case Flat:
		return math.Max(0, cos)
	case Dome:
		return (1 + cos) / 2
	case Cylinder:
		return math.Sqrt(math.Max(0, 1-cos*cos)) / math.Pi
	}
	return 0.25
}

// closed tells whether the response to a uniform polygon has a closed form.
func (m meter) closed() bool { return m.receptor != Cylinder }

// uniform is the response to a Lambertian polygon of luminance 1 cd/m2 that
// lies wholly before a flat receptor's horizon, lx.
func (m meter) uniform(p shape.Polygon, eye r3.Vec) float64 {
	switch m.receptor {
	case Flat:
		return r3.Dot(edgeVector(p, eye), m.faces)
	case Dome:
		return (solidAngle(p, eye) + r3.Dot(edgeVector(p, eye), m.faces)) / 2
	}
	return solidAngle(p, eye) / 4
}

// horizon cuts off what a flat receptor does not see.
func (m meter) horizon(w *sight, p shape.Polygon, eye r3.Vec) shape.Polygon {
	if m.receptor != Flat || p == nil {
		return p
	}
	return w.cut.Clip(p, eye, m.faces)
}
