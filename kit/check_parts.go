package kit

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"softloft/quantity"
)

func (c *checker) alloy(a Alloy) {
	over0(c, "E", a.Young)
	if !(a.Poisson > -1 && a.Poisson <= 0.5) {
		c.wrong("poisson", fmt.Sprintf("a Poisson's ratio of %v", a.Poisson), "over -1 and at most 0.5, such as 0.33")
	}
	from0(c, "density", a.Density)
	over0IfGiven(c, "yield", a.Yield)
	over0IfGiven(c, "welded_yield", a.WeldedYield)
	if a.Yield != nil && a.WeldedYield != nil && *a.WeldedYield > *a.Yield {
		c.wrong("welded_yield", "a yield strength beside a weld that is more than away from it", "at most the yield")
	}
}

func (c *checker) tube(t Tube) {
	over0(c, "outer", t.Outer)
	over0(c, "wall", t.Wall)
	if t.Wall > 0 && t.Outer > 0 && !(2*t.Wall < t.Outer) {
		c.wrong("wall", "a wall of half of outer or more, which leaves no bore", "less than half of outer")
	}
	c.known("alloy", "alloy", t.Alloy, IDs(c.kit.Alloy))
	from0IfGiven(c, "mass", t.Mass)
	c.lengths(t.Lengths)
}

func (c *checker) lengths(lengths []quantity.Length) {
	for i, l := range lengths {
		over0(c, fmt.Sprintf("lengths[%d]", i), l)
	}
}

// known asks for an id that the kit has.
func (c *checker) known(key, kind, id string, ids []string) {
	if slices.Contains(ids, id) {
		return
	}
	hint := "the kit has no " + kind
	if near := Nearest(id, ids); near != "" {
		hint = "did you mean " + near
	} else if len(ids) > 0 {
		hint = "one of " + strings.Join(ids[:min(len(ids), 12)], ", ")
	}
	c.wrong(key, fmt.Sprintf("no such %s %q", kind, id), hint)
}

// within1 is what rounding of a cloth's shares may add to 1.
const within1 = 1 + 1e-9

func (c *checker) cloth(l Cloth) {
	from0IfGiven(c, "mass", l.Mass)
	c.share("through", l.Through)
	c.share("diffuse", l.Diffuse)
	c.share("back", l.Back)
	if l.Forward != nil {
		c.forward(*l.Forward)
	}
	if sum := l.Passed() + l.Back; sum > within1 {
		c.wrong("", fmt.Sprintf("shares that come to %.4g of the arriving light", sum), "through, forward.part, diffuse and back come to 1 at most; what is left is absorbed")
	}
	over0IfGiven(c, "stretch", l.Stretch)
	from0(c, "hem", l.Hem)
}

func (c *checker) forward(f Forward) {
	c.share("forward.part", f.Part)
	if !(f.Sigma >= 0.01*quantity.Degree && f.Sigma < math.Pi/2) {
		c.wrong("forward.sigma", fmt.Sprintf("a lobe of %.4g deg", float64(f.Sigma/quantity.Degree)), "from 0.01 to less than 90 deg, such as 15 deg")
	}
}

func (c *checker) crate(e Crate) {
	for i, cell := range e.Cell {
		key := fmt.Sprintf("cell[%d]", i)
		over0(c, key, cell)
		if cell > 0 && !(e.Wall < cell) {
			c.wrong("wall", "a wall as thick as its cell, which it would close", "less than the cell")
		}
	}
	over0(c, "depth", e.Depth)
	from0(c, "wall", e.Wall)
	c.reflectance("reflectance", e.Reflectance)
	if e.Mass != nil {
		from0IfGiven(c, "mass", e.Mass.Whole)
		from0IfGiven(c, "mass", e.Mass.PerArea)
	}
}

func (c *checker) wrap(w Wrap) {
	from0IfGiven(c, "mass", w.Mass)
	if w.Color != "" && !slices.Contains([]string{"white", "black", "silver"}, w.Color) {
		c.wrong("color", fmt.Sprintf("no such color %q", w.Color), "white, black or silver, as a plan's sides say")
	}
	if w.Reflectance != nil {
		c.reflectance("reflectance", *w.Reflectance)
	}
}
