package fit

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/rig"
	"softloft/shape"
)

// crowd refuses lamps that take each other's place, today's and those that may still go
// up: more than fit.
func crowd(r *rig.Rig) []finding.Finding {
	var found []finding.Finding
	all := append(r.Optics.Lamps[:len(r.Optics.Lamps):len(r.Optics.Lamps)], r.Optics.Provided...)
	for i := range all {
		for j := range i {
			a, b := &all[j], &all[i]
			if apart(housing(r, a), housing(r, b)) > 0 {
				continue
			}
			found = append(found, finding.Refused(fmt.Sprintf("fit.crowd.%s.%s", a.Part, b.Part), subject(r, b.Part, crowdPath(r, b.Part)),
				fmt.Sprintf("Lamps %s and %s", a.Name, b.Name), "they are in each other's place: more lamps than fit"))
		}
	}
	return found
}

// crowdPath is the plan's key of a lamp, of a provided one the list's.
func crowdPath(r *rig.Rig, id string) string {
	if path := partPath(r, id); path != "" {
		return path
	}
	return "provision.lamps"
}

// housing is a lamp's body, or its opening where the kit gives none, less a hair on
// every side, so that lamps side by side don't meet.
func housing(r *rig.Rig, o *rig.Opening) block {
	size := [3]float64{o.Size[0], o.Size[1], 0}
	if o.Body != nil {
		size = *o.Body
	}
	const hair = 1e-3 // m
	out := r.Pose.OutDirection
	pose := shape.Pose{Origin: r.Pose.Out(r3.Sub(o.Center, r3.Scale(size[2]/2, o.Axis))), X: out(o.U), Y: out(o.V), Z: out(r3.Scale(-1, o.Axis))}
	b := block{name: o.Name, part: o.Part, Box: shape.Box{Pose: pose}}
	for axis := range size {
		b.Half[axis] = math.Max(0, size[axis]/2-hair)
	}
	return b
}
