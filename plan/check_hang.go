package plan

import (
	"fmt"
	"slices"
	"strings"

	"softloft/document"
	"softloft/quantity"
)

// hang checks the lines, what they go to, and the lift.
func (c *checker) hang() {
	h := c.Plan.Hang
	if h != nil {
		c.known("hang.rope", "rope", h.Rope, c.suspenders())
		c.pulleyNamed("hang.pulley", h.Pulley)
		var names []named
		for i := range h.Lines {
			path := document.Item("hang.lines", i)
			names = append(names, named{path + ".name", h.Lines[i].Name})
			c.hangLine(path, &h.Lines[i])
		}
		c.names("line", names)
		c.lengths(h.Lines)
		if s := h.Secondary; s != nil {
			c.second("hang.secondary", s.Kit, s.Slack)
		}
		if s := h.Safety; s != nil {
			c.second("hang.safety", s.Kit, s.Slack)
		}
		for i := range h.Guys {
			c.guy(document.Item("hang.guys", i), &h.Guys[i])
		}
	}
	c.lift()
}

func (c *checker) pulleyNamed(path, id string) {
	if id != "none" {
		c.known(path, "pulley", id, ids(c.Kit.Pulley))
	}
}

func (c *checker) hangLine(path string, l *Line) {
	if !c.known(path+".rope", "rope", l.Rope, c.suspenders()) && !c.Doc.Has(path+".rope") && !c.Doc.Has("hang.rope") {
		c.wrong(path, "line "+quoted(l.Name)+" has no rope", "name one for it, or one for all lines under hang.rope")
	}
	c.pulleyNamed(path+".pulley", l.Pulley)
	c.known(path+".clamp", "clamp", l.Clamp, ids(c.Kit.Clamp))
	c.known(path+".shackle", "shackle", l.Shackle, ids(c.Kit.Shackle))
	given(c, size, path+".length", "a length", l.Length)
	if l.TieOff != nil {
		given(c, notNegative, path+".tie_off.allows", "a limit", l.TieOff.Allows)
	}
	if l.To.Bridle != nil {
		c.bridle(path, l)
		return
	}
	if _, word := c.Doc.Typed(path + ".to"); word && c.known(path+".to", "point", l.To.Point, c.pointNames()) {
		top, _ := c.point(l.To.Point)
		c.reaches(path, l, "point "+quoted(l.To.Point), top)
	}
}

func (c *checker) bridle(path string, l *Line) {
	b := l.To.Bridle
	var heights []float64
	for i, name := range b.Points {
		if c.known(document.Item(path+".to.bridle", i), "point", name, c.pointNames()) {
			at, _ := c.point(name)
			heights = append(heights, at[2])
		}
	}
	if len(heights) < 2 || !c.Doc.Has(path+".to.apex") {
		return
	}
	if b.Points[0] == b.Points[1] {
		c.wrong(path+".to.bridle", "a bridle between point "+quoted(b.Points[0])+" and itself", "two different points")
		return
	}
	reach(c, path+".to.apex", "a height", b.Apex)
	if float64(b.Apex) >= slices.Max(heights) {
		c.demand(path+".to.apex", "an apex at a height", false, "below the points, which are at "+c.length(heights[0])+" and "+c.length(heights[1]))
		return
	}
	if c.Plan.Box != nil {
		at := c.Plan.Box.inRoom(c.Plan.Box.attachment(l.From), c.Kit)
		at[2] = float64(b.Apex)
		c.reaches(path, l, "the apex", at)
	}
}

// reaches complains of a line that has no length, or that would have to push the
// box up: a line whose length is not given holds its attachment at the planned
// height, and what it goes to must be higher. Where lengths are given the box finds
// its own place.
func (c *checker) reaches(path string, l *Line, what string, top vector) {
	b := c.Plan.Box
	if b == nil || !c.Doc.Has(path+".from") || c.spoiled(path+".from") || c.unplaced() {
		return
	}
	at := b.inRoom(b.attachment(l.From), c.Kit)
	switch {
	case top.minus(at).length() < cornersApart:
		c.wrong(path, what+" is where line "+quoted(l.Name)+" holds the box: it has no length", "a point above the box")
	case top[2] <= at[2] && l.Length == nil && !c.Doc.Has(path+".length"):
		c.wrong(path+".to", fmt.Sprintf("%s is at %s and line %s holds the box at %s: a line can't push", what, c.length(top[2]), quoted(l.Name), c.length(at[2])),
			"a higher point, or a lower box")
	}
}

// unplaced tells whether it's not known where the box is.
func (c *checker) unplaced() bool {
	if !c.Doc.Has("box.size") || !c.Doc.Has("box.trim") && !c.Doc.Has("box.cloth_at") {
		return true
	}
	for _, key := range []string{"size", "at", "trim", "cloth_at", "turn", "tilt", "depth", "skirt", "crate", "upper"} {
		if c.spoiled("box." + key) {
			return true
		}
	}
	return false
}

func (c *checker) pointNames() []string {
	if c.Plan.Room == nil {
		return nil
	}
	var names []string
	for _, p := range c.Plan.Room.Points {
		names = append(names, p.Name)
	}
	return names
}

func (c *checker) point(name string) (vector, bool) {
	for _, p := range c.Plan.Room.Points {
		if p.Name == name {
			return vector{float64(p.At[0]), float64(p.At[1]), float64(p.At[2])}, true
		}
	}
	return vector{}, false
}

// lengths are given for all lines or for none.
func (c *checker) lengths(lines []Line) {
	var without []string
	for i := range lines {
		if !c.Doc.Has(item("hang.lines", i, "length")) {
			without = append(without, lines[i].Name)
		}
	}
	if n := len(without); n > 0 && n < len(lines) {
		shown := strings.Join(without[:min(n, 8)], ", ")
		if n > 8 {
			shown += fmt.Sprintf(" and %d more", n-8)
		}
		c.wrong("hang.lines", "some lines have a length, and these have none: "+shown, "a length for all lines or for none")
	}
}

func (c *checker) second(path, id string, slack quantity.Length) {
	c.known(path+".kit", "safety, sling, webbing or rope", id, c.suspenders())
	reach(c, path+".slack", "a slack", slack)
}

func (c *checker) lift() {
	l := c.Plan.Lift
	if l == nil {
		return
	}
	var known []string
	if c.Plan.Hang != nil {
		for _, line := range c.Plan.Hang.Lines {
			known = append(known, line.Name)
		}
	}
	seen := map[string]bool{}
	for i, name := range l.Lines {
		path := document.Item("lift.lines", i)
		if c.known(path, "line", name, known) && seen[name] {
			c.wrong(path, "line "+quoted(name)+" twice", "each line once")
		}
		seen[name] = true
	}
	c.demand("lift.start_factor", "a start factor", l.StartFactor >= 1 && l.StartFactor <= 10, "from 1 to 10, such as 1.25")
	reach(c, "lift.lead", "a lead", l.Lead)
	count(c, "lift.people_per_line", "a count", l.PeoplePerLine, 1, mostPeople)
}
