package load

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// OnBox reports whether a part's weight hangs on the lines: everything but the
// lines themselves, their hardware, and what stands on the floor.
func OnBox(r *rig.Rig, p *rig.Part) bool {
	if p.Body == rig.LinesBody {
		return false
	}
	for _, w := range r.Weights {
		if w.Part == p.ID && w.Elsewhere {
			return false
		}
	}
	return true
}

// takeOff sums what the box weighs by kind of part, in the order in which the rig
// places them, and names the parts whose mass nobody gave.
func takeOff(r *rig.Rig) (rows []TakeOff, total float64, unknown []string) {
	index := map[string]int{}
	for i := range r.Parts {
		p := &r.Parts[i]
		if !OnBox(r, p) || p.Weightless {
			continue
		}
		if p.Mass == nil {
			unknown = append(unknown, p.ID)
			continue
		}
		k, ok := index[p.What]
		if !ok {
			k = len(rows)
			index[p.What] = k
			rows = append(rows, TakeOff{What: p.What})
		}
		rows[k].Count++
		rows[k].Mass += Number(*p.Mass)
		if p.Measured {
			rows[k].Note = "measured"
		}
		total += *p.Mass
	}
	sort.Strings(unknown)
	return rows, total, unknown
}

// plannedCenter is the center of gravity in the planned pose, in the room, from the
// parts alone. It stands in where the box does not hang yet.
func plannedCenter(r *rig.Rig) *Vec {
	var sum r3.Vec
	var total float64
	for i := range r.Parts {
		p := &r.Parts[i]
		if p.Mass != nil && OnBox(r, p) {
			sum = r3.Add(sum, r3.Scale(*p.Mass, r.CenterInRoom(p)))
			total += *p.Mass
		}
	}
	if total == 0 || math.IsNaN(total) {
		return nil
	}
	v := vec(r3.Scale(1/total, sum))
	return &v
}
