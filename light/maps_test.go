package light

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"

	"softloft/plan"
	"softloft/quantity"
	"softloft/rig"
)

// The cloth's map, added up by the trapezoidal rule, is the flux that the cloth's own
// points give: two routes to one number.
func TestClothMap(t *testing.T) {
	e := prepared(t, boxScene())
	w := &work{rig: &rig.Rig{Pose: shape.Identity(), Optics: rig.Optics{Cloths: make([]rig.Layer, 1)}}, now: lighting{engine: e}}
	m := w.clothMap()
	mean, low, high := trapezoid(m.Lux, clothNodes)
	report := e.Cloth()
	rel(t, "mean", mean, report.MeanLux, 5e-3)
	if low > report.MinLux || high < report.MaxLux*0.98 {
		t.Errorf("from %g to %g, the report has %g to %g", low, high, report.MinLux, report.MaxLux)
	}
}

// A wall's map runs from left to right as it is seen from inside: under a box that
// stands to the east, the north wall is brighter on the right, the south wall on the left.
func TestWallsFromInside(t *testing.T) {
	e := prepared(t, boxScene())
	room := &plan.Room{Size: &[3]quantity.Length{12, 12, 6}}
	r := &rig.Rig{Plan: &plan.Plan{Room: room}, Pose: shape.At(r3.Vec{X: 3, Z: 5})}
	w := &work{rig: r, now: lighting{engine: e}}
	for i, want := range map[int]bool{North: true, South: false} {
		center, across, up, inward := w.wall(i)
		if r3.Dot(r3.Cross(up, inward), across) < 0 {
			across = r3.Scale(-1, across)
		}
		m := w.mapOf("", center, across, up, inward)
		left, right := m.Lux[4*mapNodes+4], m.Lux[4*mapNodes+mapNodes-5]
		if (right > left) != want {
			t.Errorf("wall %s: %g on the left, %g on the right", wallNames[i], left, right)
		}
	}
}
