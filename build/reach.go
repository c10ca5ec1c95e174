package build

import (
	"math"
	"slices"

	"softloft/rig"
)

// reach lets what lies inside the box go up before the sheet that covers it, and
// sheets go on from the inside out.
func (w *work) reach() {
	inside := w.of(lamps, loom)
	if i, ok := w.index["light"]; ok {
		inside = append(inside, i)
	}
	for _, i := range w.of(sheets) {
		w.afterAll(i, w.of(bones), "a skin goes on when the frame is closed and square")
		w.afterAll(i, inside, "out of reach once this is on")
	}
	for _, i := range w.of(burden) {
		w.afterAll(i, w.of(bones), "it hangs on the frame")
		for _, j := range w.of(sheets) {
			switch {
			case w.above(i) && w.steps[j].key != "skirts":
				w.after(j, i, "out of reach once this is on")
			case !w.above(i):
				w.after(i, j, "it hangs below it")
			}
		}
	}
	w.skins()
}

// above reports whether what a step hangs on the box is above the cloth plane.
func (w *work) above(i int) bool {
	return !slices.ContainsFunc(w.steps[i].parts, func(p *rig.Part) bool { return p.InRoom || p.Center.Z < 0 })
}

// skins orders the sheets: level ones from the top down, then the sides, whose wraps
// go past cloth and roof, then the skirts, which hide the crate's edge.
func (w *work) skins() {
	var level []int
	for _, i := range w.of(sheets) {
		if key := w.steps[i].key; key != "sides" && key != "skirts" && key != "roof" {
			level = append(level, i)
		}
	}
	slices.SortStableFunc(level, func(a, b int) int {
		za, zb := w.steps[a].parts[0].Center.Z, w.steps[b].parts[0].Center.Z
		switch {
		case za > zb:
			return -1
		case za < zb:
			return 1
		}
		return 0
	})
	for k := 1; k < len(level); k++ {
		w.after(level[k], level[k-1], "it lies under it and covers it from below")
	}
	sides, hasSides := w.index["sides"]
	skirts, hasSkirts := w.index["skirts"]
	for _, i := range level {
		if hasSides && w.steps[i].key != "crate" {
			w.after(sides, i, "a wrap goes past the cloth's edge")
		}
		if hasSkirts {
			w.after(skirts, i, "a skirt hides its edge")
		}
	}
	if hasSides {
		w.afterKey(sides, "roof", "a wrap goes past the roof's edge")
	}
	if hasSkirts && hasSides {
		w.after(skirts, sides, "it hangs over the wrap's lower edge")
	}
}

// rise is how far the box goes from the horses, or from its stands' lowest place, to
// its own height, in m.
func (w *work) rise() float64 {
	low := horses
	if !w.hung() {
		for i := range w.rig.Stands {
			if s := &w.rig.Stands[i]; s.Ear != nil {
				low = math.Max(low, s.Rises[0]-w.earHeight(s))
			}
		}
	}
	return math.Max(0, w.rig.ClothAt-low)
}

// earHeight is how far a stand's ear is over the cloth plane.
func (w *work) earHeight(s *rig.Stand) float64 { return s.Ear.At.Z }

// horses is the height at which a box is put together, in m: a waist's, and the height
// for which the rig measures the ropes.
const horses = 1.0

// levelEvery is how far a box goes between two stops to level, in m: 4 ft, common
// practice.
const levelEvery = 4 * 0.3048

// stops is how often a rise is stopped to level, the last stop at its end included.
func stops(rise float64) int { return int(math.Ceil(rise/levelEvery - 1e-9)) }
