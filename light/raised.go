package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// Raised returns by how many stops the area's mean changes where the whole box goes
// up by a height in m; NaN where there is no area. The room is meshed half as finely
// as for the answer: what it throws back is a small part of the area's light, and
// moves by well under 0.01 stop with that.
func Raised(r *rig.Rig, now Answer, by float64) float64 {
	if now.Area == nil || r.Plan.Action == nil {
		return math.NaN()
	}
	higher := *r
	higher.Pose.Origin = r3.Add(r.Pose.Origin, r3.Vec{Z: by})
	w := &work{rig: &higher, along: patchesAlong / 2}
	if err := w.prepare(); err != nil {
		return math.NaN()
	}
	w.level = 1 // what it would be at full level isn't asked
	w.area()
	return stops(float64(w.answer.Area.Mean), float64(now.Area.Mean))
}
