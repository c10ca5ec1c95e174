package plan

import (
	"fmt"
	"math"
	"strings"

	"softloft/document"
)

// lamps checks the lamps, and what hangs and was weighed besides.
func (c *checker) lamps() {
	c.lampList("lamps", c.Plan.Lamps)
	if p := c.Plan.Provision; p != nil {
		c.lampList("provision.lamps", p.Lamps)
		given(c, notNegative, "provision.reserve", "a reserve", p.Reserve)
		given(c, func(c *checker, path, what string, x float64) { c.demand(path, what, x <= 1000, "at most 1000") }, "provision.reserve", "a reserve", p.Reserve)
	}
	c.loads()
}

func (c *checker) lampList(list string, lamps []Lamp) {
	var names []named
	for i := range lamps {
		l := &lamps[i]
		path := document.Item(list, i)
		if l.Name != "" || c.Doc.Has(path+".name") {
			names = append(names, named{path + ".name", l.Name})
		} else if c.Doc.Has(path + ".kit") {
			names = append(names, named{path, l.Title(i + 1)})
		}
		c.lamp(path, l)
	}
	c.names("lamp", names)
}

func (c *checker) lamp(path string, l *Lamp) {
	c.known(path+".kit", "lamp", l.Kit, ids(c.Kit.Lamp))
	c.demand(path+".above", "a height", math.Abs(float64(l.Above)) <= largestSize, "at most 1 km")
	share(c, path+".level", "a level", l.Level)
	if l.On != nil {
		c.on(path+".on", l.On)
	}
}

// on: exactly one thing carries a lamp, and the plan has it.
func (c *checker) on(path string, o *On) {
	switch carriers := c.typedOf(path, "rib", "bar", "arm", "frame"); {
	case len(carriers) == 0:
		c.wrong(path, "nothing says what carries the lamp", "{rib: 1}, {bar: a tube}, {arm: 1} or {frame: north}")
	case len(carriers) > 1:
		c.wrong(path, "a lamp on "+strings.Join(carriers, " and on "), "one of them")
	}
	if c.Doc.Has(path + ".rib") {
		c.numbered(path+".rib", "rib", "box.ribs", o.Rib, c.ribCount())
	}
	if c.Doc.Has(path + ".arm") {
		c.numbered(path+".arm", "arm", "stands", o.Arm, c.arms())
	}
	c.known(path+".bar", "tube", o.Bar, ids(c.Kit.Tube))
	c.known(path+".frame", "side", o.Frame, SideNames[:])
	if c.Doc.Has(path+".ends") && !c.Doc.Has(path+".bar") {
		c.wrong(path+".ends", "ends of a lamp that hangs on no bar", "only a bar has ends: leave it out")
	}
}

func (c *checker) ribCount() int {
	if c.Plan.Box == nil {
		return 0
	}
	return c.Plan.Box.RibCount()
}

// arms counts the arms that stands hold.
func (c *checker) arms() int {
	n := 0
	for _, s := range c.Plan.Stands {
		if s.Holds != nil && s.Holds.Arm != nil {
			n++
		}
	}
	return n
}

// numbered complains of a number of a thing of which there are n.
func (c *checker) numbered(path, what, where string, number, n int) {
	if number >= 1 && number <= n || c.spoiled(where) {
		return
	}
	hint := fmt.Sprintf("%s 1 to %d", what, n)
	switch n {
	case 0:
		hint = "the plan has no " + what + ", add one under " + where
	case 1:
		hint = "there is one " + what + ", 1"
	}
	c.wrong(path, fmt.Sprintf("no %s %d", what, number), hint)
}

// loads checks added and measured masses. The word box means the whole box.
func (c *checker) loads() {
	var names []named
	for i, a := range c.Plan.Added {
		path := document.Item("added", i)
		names = append(names, named{path + ".name", a.Name})
		notNegative(c, path+".mass", "a mass", a.Mass)
	}
	c.names("added load", names)
	var parts []named
	for i, m := range c.Plan.Measured {
		path := document.Item("measured", i)
		parts = append(parts, named{path + ".part", m.Part})
		positive(c, path+".mass", "a mass", m.Mass)
	}
	c.names("measured part", parts)
}
