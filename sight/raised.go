package sight

import "softloft/rig"

// Raised names the cameras that have something of the rig in shot with the box raised by
// so much (m) over its plan. Cameras of which that is not known are named in unknown.
func Raised(r *rig.Rig, by float64) (inShot, unknown []string) {
	inShot, unknown = []string{}, []string{}
	if len(r.Plan.Cameras) == 0 {
		return inShot, unknown
	}
	s := newScene(r, by)
	for i := range r.Plan.Cameras {
		c := &r.Plan.Cameras[i]
		w, err := wayOf(c)
		if err != nil {
			unknown = append(unknown, c.Name)
			continue
		}
		for j := range s.bodies {
			if s.bodies[j].ofRig && seenWith(s, w, &s.bodies[j], 1) {
				inShot = append(inShot, c.Name)
				break
			}
		}
	}
	return inShot, unknown
}
