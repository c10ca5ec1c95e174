package fit

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// crown is how far the top of a head stands over its eyes, in m: common practice, as
// in the looks at a mark.
const crown = 0.11

// overHeads holds the box's lowest edge, in the planned pose, over the head of every
// performer whose mark stands under it.
func overHeads(r *rig.Rig) []finding.Finding {
	action := r.Plan.Action
	if action == nil {
		return nil
	}
	low := r.ClothAt - r.LowestBy
	var found []finding.Finding
	for i, m := range action.Marks {
		path := fmt.Sprintf("action.marks[%d]", i)
		at := r.Pose.In(r3.Vec{X: float64(m.At[0]), Y: float64(m.At[1]), Z: r.ClothAt})
		if math.Abs(at.X) > r.Optics.Size[0]/2 || math.Abs(at.Y) > r.Optics.Size[1]/2 || low >= float64(m.Eyes)+headroom {
			continue
		}
		found = append(found, finding.Check{
			ID: "fit.heads." + m.Name, Subject: subject(r, "box", path), Statement: fmt.Sprintf("Lowest edge of the box over the head at mark %s", m.Name),
			Relation: finding.AtLeast, Unit: "m",
			Value: finding.Given(finding.Input{Symbol: "z", Name: "lowest edge, level", Value: low, Unit: "m", Origin: r.Origin("box.trim")}),
			Limit: finding.Work{Formula: "h = e + c", Name: "top of the head", Inputs: []finding.Input{
				{Symbol: "e", Name: "eyes", Value: float64(m.Eyes), Unit: "m", Origin: r.Origin(path + ".eyes")},
				{Symbol: "c", Name: "top of a head over its eyes", Value: crown, Unit: "m", Origin: "common practice"},
			}},
			Source: source.Cite("common-practice", "nothing hangs at the height of heads"),
		}.Conclude())
	}
	return found
}

// headroom is how near over the eyes an edge must be to be looked at, in m.
const headroom = 1.0
