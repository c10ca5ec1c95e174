package stock

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// standIns names ropes that could stand in for one that is short: of the same kind,
// thicker, no weaker, and on the shelves. Weight and stretch change with the rope, so that it is
// a new plan, which goes the whole way again: nothing is counted for it.
func (w *serving) standIns(n Need, line *Line) {
	asked, ok := w.kit.Rope[n.Kit]
	if n.Kind != "rope" || line.Short == 0 || !ok || asked.Diameter == nil || asked.Breaks == nil {
		return
	}
	type thicker struct {
		id       string
		diameter float64
		pieces   float64
	}
	var found []thicker
	for i, item := range w.shop.Items {
		rope, ok := w.kit.Rope[item.Kit]
		if item.Kind != "rope" || w.left[i] == 0 || !ok || rope.Kind != asked.Kind || rope.Diameter == nil || rope.Breaks == nil {
			continue
		}
		if *rope.Diameter <= *asked.Diameter || *rope.Breaks < *asked.Breaks || item.length() < n.Length-touching {
			continue
		}
		k := slices.IndexFunc(found, func(t thicker) bool { return t.id == item.Kit })
		if k < 0 {
			k = len(found)
			found = append(found, thicker{item.Kit, float64(*rope.Diameter), 0})
		}
		each := 1.0
		if n.Length > 0 && item.cuttable() {
			each = math.Floor((item.length() + touching) / n.Length)
		}
		found[k].pieces += each * float64(w.left[i])
	}
	slices.SortStableFunc(found, func(a, b thicker) int { return cmp.Compare(a.diameter, b.diameter) })
	for _, t := range found[:min(len(found), 1)] {
		line.StandIn = append(line.StandIn, fmt.Sprintf("%s, the next rope up: enough for %.0f pieces; a new plan, weight and stretch change", t.id, t.pieces))
	}
}
