package fit

import (
	"fmt"

	"softloft/finding"
	"softloft/plan"
	"softloft/rig"
)

// leak tells which sides leak light at the ties because no wrap goes there.
func leak(r *rig.Rig) []finding.Finding {
	var bare string
	var covered, around float64
	for i, name := range plan.SideNames {
		length := r.Optics.Size[i/2]
		around += length
		if r.Optics.Leak[i] == 0 {
			covered += length
			continue
		}
		if bare != "" {
			bare += ", "
		}
		bare += name
	}
	if bare == "" || r.Optics.Depth == 0 {
		return nil
	}
	return []finding.Finding{finding.Unknown("fit.wrap", subject(r, "box", "box.sides"), fmt.Sprintf("The wrap covers %.2f m of %.2f m around the box", covered, around),
		"it is shorter than the box is around: the ties leak light at "+bare+", and how much is not worked out")}
}
