package rig

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
)

// wrapPanel is how far around a box one wrap panel goes, in m: 26 ft, a design
// assumption between two facts of the trade: a 4 × 8 ft box (24 ft around) takes one
// panel, a 12 × 12 ft box (48 ft) two.
const wrapPanel = 26 * 0.3048

// tieGap is the gap in m that ties leave between cloth and tube where no wrap covers
// it: 1 in, a design assumption; frames leave a thin leak at the ties (common practice).
const tieGap = 0.0254

// wraps places the wrap panels that the sides of one color are cut from. A panel goes
// on past the cloth plane and so covers the leak at the ties. It reports whether the
// kit has such a wrap; then the sides themselves weigh nothing more.
func (d *deriver) wraps(color, on string, sides []int) bool {
	id, wrap, ok := d.wrapFor(color)
	if !ok || wrap.Mass == nil {
		return false
	}
	var around float64
	for _, i := range sides {
		around += d.sideLength(i)
	}
	count := max(1, int(math.Ceil(around/wrapPanel-1e-9)))
	for k := range count {
		p := Part{ID: fmt.Sprintf("wrap.%s.%d", color, k+1), What: "wrap", Name: wrap.Label(id), KitKind: "wrap", KitID: id, Body: d.bodyOf(on),
			Demo: wrap.Source.Demo("mass"), Mass: mass(float64(*wrap.Mass) * d.depth() * around / float64(count)), MassFrom: "mass per area × area of the sides that it covers",
			Center: r3.Vec{Z: d.depth() / 2}, Path: "box.sides",
			Why: fmt.Sprintf("wrap panel %d of %d around %.2f m of the box, past the cloth, so that the ties leak no light there", k+1, count, around)}
		d.add(p)
		per := *p.Mass / around
		for _, i := range sides {
			d.hangOnSide(on, plan.SideNames[i], p.ID, per*d.sideLength(i))
		}
	}
	return true
}

func (d *deriver) bodyOf(prefix string) string {
	if prefix == "upper" {
		return string(UpperFrame)
	}
	return string(BottomFrame)
}

// sideLength returns the length of a side: north and south run along x.
func (d *deriver) sideLength(i int) float64 { return float64(d.box.Size[i/2]) }

// leaks settles the gap at the ties of each side that no wrap covers: what the plan
// says, none with derive: none, else the ties' gap where the side is open.
func (d *deriver) leaks() {
	for i := range plan.SideNames {
		switch {
		case d.box.Leak != nil:
			d.Optics.Leak[i] = float64(*d.box.Leak)
		case d.all() && len(d.box.Cloth) > 0 && !(d.depth() > 0 && d.box.Sides[i].Word != "none"):
			d.Optics.Leak[i] = tieGap
		}
	}
}
