package plan

import (
	"fmt"
	"math"

	"softloft/document"
)

// box checks the source.
func (c *checker) box() {
	b := c.Plan.Box
	if b == nil {
		return
	}
	sizes(c, "box.size", "a size", b.Size[:])
	c.height(b)
	if b.Tilt != nil {
		c.demand("box.tilt.by", "a tilt", math.Abs(float64(b.Tilt.By)) <= float64(90*degree), "from -90 deg to 90 deg")
	}
	c.known("box.frame", "tube", b.Frame, ids(c.Kit.Tube))
	if b.Upper != nil && c.Doc.Has("box.upper.tube") {
		c.known("box.upper.tube", "tube", b.Upper.Tube, ids(c.Kit.Tube))
	}
	c.boxJoin(b)
	c.ribs(b)
	c.depth(b)
	c.cloths(b)
	c.clear(b)
	given(c, reach, "box.leak", "a gap", b.Leak)
	c.skirts(b)
	c.crate(b)
}

// height: exactly one of trim and cloth_at says how high the box is.
func (c *checker) height(b *Box) {
	given(c, reach, "box.trim", "a height", b.Trim)
	given(c, reach, "box.cloth_at", "a height", b.ClothAt)
	switch trim, cloth := c.Doc.Has("box.trim"), c.Doc.Has("box.cloth_at"); {
	case trim && cloth:
		c.wrong("box.cloth_at", "the box's height is given by trim and by cloth_at", "leave one of them out")
	case !trim && !cloth:
		c.wrong("box", "nothing says how high the box is", "give trim, the height of its lowest edge, or cloth_at, the height of the cloth plane")
	}
}

func (c *checker) boxJoin(b *Box) {
	if u := b.Join.Uprights; u != nil {
		c.known("box.join.uprights.tube", "tube", u.Tube, ids(c.Kit.Tube))
		count(c, "box.join.uprights.count", "a count", u.Count, 1, mostJoints)
	}
	if d := b.Join.Drops; d != nil {
		c.known("box.join.drops.kit", "sling, webbing, safety or rope", d.Kit, c.suspenders())
		count(c, "box.join.drops.count", "a count", d.Count, 1, mostJoints)
		given(c, size, "box.join.drops.length", "a length", d.Length)
	}
}

func (c *checker) ribs(b *Box) {
	r := b.Ribs
	if r == nil {
		return
	}
	c.known("box.ribs.tube", "tube", r.Tube, ids(c.Kit.Tube))
	switch at, n := c.Doc.Has("box.ribs.at"), c.Doc.Has("box.ribs.count"); {
	case at && n:
		c.wrong("box.ribs.count", "ribs with at and count", "leave one of them out")
	case !at && !n:
		c.wrong("box.ribs", "nothing says where the ribs are", "give at, such as at: [-3 ft, 3 ft], or count")
	}
	count(c, "box.ribs.count", "a count", r.Count, 1, mostRibs)
	if c.atMost("box.ribs.at", "ribs", len(r.At), mostRibs); len(r.At) > mostRibs {
		return
	}
	if c.Doc.Has("box.ribs.at") && len(r.At) == 0 {
		c.wrong("box.ribs.at", "an empty list of ribs", "one position or more, or leave ribs out")
	}
	width, axis := float64(b.Size[1]), "y"
	if r.Along == "y" {
		width, axis = float64(b.Size[0]), "x"
	}
	for i, at := range r.At {
		if width > 0 && math.Abs(float64(at)) > width/2*(1+1e-9) {
			c.demand(document.Item("box.ribs.at", i), "a rib at "+axis, false, fmt.Sprintf("inside the box, from %s to %s", c.length(-width/2), c.length(width/2)))
		}
		for j := range i {
			if math.Abs(float64(at-r.At[j])) < cornersApart {
				c.wrong(document.Item("box.ribs.at", i), fmt.Sprintf("ribs %d and %d are at the same place", j+1, i+1), "leave one out")
				break
			}
		}
	}
}

// depth is due where something stands at its height.
func (c *checker) depth(b *Box) {
	given(c, reach, "box.depth", "a depth", b.Depth)
	if b.Depth != nil && *b.Depth >= smallestSize || c.spoiled("box.depth") {
		return
	}
	if b.Depth != nil && *b.Depth < 0 {
		return
	}
	what := ""
	switch {
	case b.Upper != nil && b.Upper.Tube != "":
		what = "an upper frame"
	case b.Ribs != nil && b.Ribs.Level == "upper":
		what = "ribs at the upper level"
	case b.Join.Uprights != nil:
		what = "uprights"
	case b.Join.Drops != nil:
		what = "drops"
	default:
		return
	}
	path := "box"
	if c.Doc.Has("box.depth") {
		path = "box.depth"
	}
	c.wrong(path, "a box with "+what+" and no depth", "give box.depth, from the cloth plane up to it, such as depth: 2 ft")
}

func (c *checker) cloths(b *Box) {
	c.atMost("box.cloth", "cloths", len(b.Cloth), mostCloths)
	for i, layer := range b.Cloth {
		path := document.Item("box.cloth", i)
		at := path
		if c.Doc.Has(path + ".kit") {
			at = path + ".kit"
		}
		c.known(at, "cloth", layer.Kit, ids(c.Kit.Cloth))
		reach(c, path+".gap", "a gap", layer.Gap)
	}
	t := b.ClothTie
	given(c, reach, "box.cloth_tie.sag", "a sag", t.Sag)
	if t.Cut != nil {
		sizes(c, "box.cloth_tie.cut", "a size", t.Cut[:])
	}
	given(c, notNegative, "box.cloth_tie.pretension", "a pretension", t.Pretension)
}

// clear: the area that passes light is no larger than the box, and what hems leave
// is more than nothing.
func (c *checker) clear(b *Box) {
	if b.Clear != nil {
		for i, x := range b.Clear {
			path := document.Item("box.clear", i)
			size(c, path, "a clear area", x)
			if b.Size[i] >= smallestSize {
				c.demand(path, "a clear area", float64(x) <= float64(b.Size[i])*(1+1e-9), "at most the box's size, "+c.typed(document.Item("box.size", i)))
			}
		}
		return
	}
	if c.Doc.Has("box.clear") {
		return
	}
	hem := Hem(b, c.Kit)
	for i := range b.Size {
		if b.Size[i] >= smallestSize && b.Size[i]-2*hem < smallestSize {
			c.wrong("box.cloth", fmt.Sprintf("the cloth's hem of %s leaves no area that passes light", c.length(float64(hem))), "a larger box, or give box.clear")
			return
		}
	}
}

func (c *checker) skirts(b *Box) {
	if _, one := c.Doc.Typed("box.skirt"); one {
		reach(c, "box.skirt", "a skirt", b.Skirt[0])
		return
	}
	for i, x := range b.Skirt {
		reach(c, document.Key("box.skirt", SideNames[i]), "a skirt", x)
	}
}

func (c *checker) crate(b *Box) {
	if !c.known("box.crate", "crate", b.Crate, ids(c.Kit.Crate)) {
		return
	}
	for i, cell := range c.Kit.Crate[b.Crate].Cell {
		if n := float64(b.Size[i] / cell); cell > 0 && n > mostCells {
			c.wrong("box.crate", fmt.Sprintf("a crate with %.3g cells along one side", n), fmt.Sprintf("at most %d: a wider cell", mostCells))
		}
	}
}
