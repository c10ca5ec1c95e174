package answer

import (
	"math"

	"softloft/finding"
	"softloft/plan"
)

// unknown is a number that nobody knows.
var unknown = finding.Number(math.NaN())

// cautions are the usual ones for what the plan does, for every place that shows a
// load. They are common practice; the standards that they lean on are named in
// docs/method.md.
func cautions(p *plan.Plan) []string {
	told := []string{
		"A planning aid, not a certificate. Building, welds, wear and workmanship are not checked; a building point is its owner's statement.",
		"A competent person and the venue's engineer decide. Local law, codes and the marking on the gear override what is printed here.",
		"Unmarked hardware is not to be used. Check again after any change.",
	}
	if p.Hang != nil {
		told = append(told,
			"Nobody beneath during lift, move or tilt. The secondary is on before anything is released. One caller, one stop word.")
	}
	if p.Room != nil && p.Room.Outdoors != nil {
		told = append(told,
			"Outdoors: a named person watches an anemometer at the height of the cloth, knows the two speeds, and may stop the work. Cloth out first, then down; nobody beneath meanwhile. Gusts count, not the mean and not the forecast.",
			"Power lines: nothing that stands, leans, falls or blows may come near them; the line's owner states the distance (OSHA 1926.1408: 10 ft up to 50 kV, more above; from memory). Down at the first thunder, and everybody away from metal.")
	}
	if len(p.Lamps) > 0 {
		told = append(told, "A licensed electrician ties in. Keep exits and sprinklers clear; keep each lamp's own distance to cloth.")
	}
	return told
}
