package plan

import (
	"fmt"

	"softloft/document"
)

// stands checks the stands and what they hold.
func (c *checker) stands() {
	var names []named
	for i := range c.Plan.Stands {
		s := &c.Plan.Stands[i]
		path := document.Item("stands", i)
		if s.Name != "" || c.Doc.Has(path+".name") {
			names = append(names, named{path + ".name", s.Name})
		} else if c.Doc.Has(path + ".kit") {
			names = append(names, named{path, s.Title(i + 1)})
		}
		c.stand(path, s)
	}
	c.names("stand", names)
}

func (c *checker) stand(path string, s *Stand) {
	known := c.known(path+".kit", "stand", s.Kit, ids(c.Kit.Stand))
	size(c, path+".rise", "a rise", s.Rise)
	if b := s.Bags; b != nil {
		notNegative(c, path+".bags.mass", "a mass", b.Mass)
		count(c, path+".bags.count", "a count", b.Count, 0, mostBags)
		if legs := c.Kit.Stand[s.Kit].Legs; known && b.At.Leg > legs {
			c.wrong(path+".bags.at", fmt.Sprintf("no leg %d", b.At.Leg), fmt.Sprintf("this stand has %d legs", legs))
		}
	}
	if s.Holds != nil {
		c.holds(path+".holds", s.Holds)
	}
}

func (c *checker) holds(path string, h *Holds) {
	if held := c.typedOf(path, "ear", "arm"); len(held) != 1 {
		c.wrong(path, fmt.Sprintf("a stand that holds %d things", len(held)), "{ear: west} or {arm: {kit, reach}}")
	}
	c.known(path+".ear", "side", h.Ear, SideNames[:])
	if a := h.Arm; a != nil {
		c.known(path+".arm.kit", "arm", a.Kit, ids(c.Kit.Arm))
		reach(c, path+".arm.reach", "a reach", a.Reach)
	}
}

func (c *checker) standNames() []string {
	var names []string
	for i := range c.Plan.Stands {
		names = append(names, c.Plan.Stands[i].Title(i+1))
	}
	return names
}
