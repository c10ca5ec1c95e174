package light

import (
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
	"softloft/shape"
)

// A grid reads what bounces by the lobe at few nodes; every node is what a meter there
// shows, within 0.15 %.
func TestGridOfBounces(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		what   string
		crate  *Crate
		skirts [4]float64
	}{{"open", nil, [4]float64{}}, {"crate", &Crate{CellX: 0.2, CellY: 0.3, Depth: 0.1}, [4]float64{}}, {"skirts", nil, [4]float64{0.3, 0, 0.6, 0}}} {
		s := whiteBox(forwardCloth(0.4, 0.2))
		s.Crate, s.Skirts = c.crate, c.skirts
		e := prepared(t, s)
		if len(e.bounces) == 0 {
			t.Fatal("nothing bounces")
		}
		pose := shape.At(r3.Vec{Z: 4}).Rotated(r3.Vec{X: 1}, 0.1)
		w := &work{rig: &rig.Rig{Pose: pose}}
		points := nodes(r3.Vec{Z: 1.5}, r3.Vec{X: 6}, r3.Vec{Y: 6}, [2]int{areaNodes, areaNodes})
		all := spread{reference: "the engine, point by point"}
		for i, lux := range w.grid(lighting{engine: e}, points, areaNodes, up) {
			if want := e.At(pose.In(points[i]), pose.InDirection(up), Flat); want > 0 {
				all.add(lux, want)
			}
		}
		all.check(t, "grid of what bounces by the lobe, "+c.what, 5e-4, 1.5e-3)
	}
}
