package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// Raised returns by how many stops the area's mean changes where the whole box goes
// up by a height in m; NaN where there is no area.
func Raised(r *rig.Rig, now Answer, by float64) float64 {
	if now.Area == nil || r.Plan.Action == nil {
		return math.NaN()
	}
	higher := *r
	higher.Pose.Origin = r3.Add(r.Pose.Origin, r3.Vec{Z: by})
	w := &work{rig: &higher}
	if err := w.prepare(); err != nil {
		return math.NaN()
	}
	w.full = w.now
	w.area()
	return stops(float64(w.answer.Area.Mean), float64(now.Area.Mean))
}
