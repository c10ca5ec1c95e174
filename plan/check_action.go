package plan

import (
	"fmt"
	"math"

	"softloft/document"
	"softloft/quantity"
)

// action checks the area, the marks and the cameras.
func (c *checker) action() {
	if a := c.Plan.Action; a != nil {
		if a.Area != nil {
			sizes(c, "action.area.size", "a size", a.Area.Size[:])
			reach(c, "action.area.height", "a height", a.Area.Height)
		}
		var names []named
		for i, m := range a.Marks {
			path := document.Item("action.marks", i)
			names = append(names, named{path + ".name", m.Name})
			size(c, path+".eyes", "a height", m.Eyes)
		}
		c.names("mark", names)
	}
	var names []named
	for i := range c.Plan.Cameras {
		path := document.Item("cameras", i)
		names = append(names, named{path + ".name", c.Plan.Cameras[i].Name})
		c.camera(path, &c.Plan.Cameras[i])
	}
	c.names("camera", names)
}

func (c *checker) camera(path string, a *Camera) {
	if places := c.typedOf(path, "at", "orbit", "track"); len(places) != 1 {
		c.wrong(path, chosen("a camera", places), "one of at, orbit and track")
	}
	given(c, size, path+".lens", "a lens", a.Lens)
	sizes(c, path+".sensor", "a size", a.Sensor[:])
	c.demand(path+".squeeze", "a squeeze", a.Squeeze >= 0.5 && a.Squeeze <= 4, "from 0.5 to 4")
	ordered(c, path+".pan", a.Pan)
	ordered(c, path+".tilt", a.Tilt)
	if a.Boom != nil {
		ordered(c, path+".boom", *a.Boom)
	}
	if a.Orbit != nil {
		size(c, path+".orbit.radius", "a radius", a.Orbit.Radius)
		reach(c, path+".orbit.height", "a height", a.Orbit.Height)
	}
	if c.Doc.Has(path+".track") && len(a.Track) < 2 {
		c.wrong(path+".track", fmt.Sprintf("a track with %d places", len(a.Track)), "two or more")
	}
	if a.At != nil && a.Looks != nil && *a.At == *a.Looks {
		c.wrong(path+".looks", "a camera looks at its own place", "another place")
	}
}

// ordered complains of a range that is upside down.
func ordered[T ~float64](c *checker, path string, r [2]T) {
	if r[0] > r[1] {
		c.wrong(path, "a range whose first value is above its second", "[least, most]")
	}
}

// typedOf lists which of some keys the user typed.
func (c *checker) typedOf(path string, keys ...string) []string {
	var typed []string
	for _, key := range keys {
		if c.Doc.Has(document.Key(path, key)) {
			typed = append(typed, key)
		}
	}
	return typed
}

// chosen says what is wrong with a choice that is not of one.
func chosen(what string, keys []string) string {
	if len(keys) == 0 {
		return what + " with nothing to say where"
	}
	text := what + " with " + keys[0]
	for _, key := range keys[1:] {
		text += " and " + key
	}
	return text
}

// probes checks meter points.
func (c *checker) probes() {
	var names []named
	var readings int
	for i := range c.Plan.Probes {
		p := &c.Plan.Probes[i]
		path := document.Item("probes", i)
		names = append(names, named{path + ".name", p.Name})
		readings += c.probe(path, p)
	}
	c.names("probe", names)
	if readings > mostReadings {
		c.wrong("probes", fmt.Sprintf("probes with %d points in all", readings), fmt.Sprintf("at most %d", mostReadings))
	}
}

// probe checks one probe and returns how many points it has, 0 where it complains
// of that.
func (c *checker) probe(path string, p *Probe) int {
	for axis, x := range sizeOf(p) {
		if p.N[axis] > 1 {
			size(c, document.Item(path+".size", axis), "a size", x)
		} else {
			reach(c, document.Item(path+".size", axis), "a size", x)
		}
	}
	c.facing(path+".facing", p.Facing)
	points := p.N[0] * p.N[1]
	switch {
	case p.N[0] < 1 || p.N[1] < 1:
		c.wrong(path+".n", fmt.Sprintf("a probe with %d by %d points", p.N[0], p.N[1]), "1 or more along each side")
		return 0
	case p.N[0] > mostReadings || p.N[1] > mostReadings || points > mostReadings:
		c.wrong(path+".n", fmt.Sprintf("a probe with %d by %d points", p.N[0], p.N[1]), fmt.Sprintf("at most %d in all", mostReadings))
		return 0
	case points > 1 && p.Size == nil && !c.Doc.Has(path+".size"):
		c.wrong(path+".n", fmt.Sprintf("a probe with %d points and no size", points), "give its size, such as size: [6 m, 6 m]")
	}
	return points
}

func sizeOf(p *Probe) []quantity.Length {
	if p.Size == nil {
		return nil
	}
	return p.Size[:]
}

// facing complains of a direction that no length can be given to.
func (c *checker) facing(path string, f Facing) {
	length := vector(f).length()
	if length < nextToNothing && !math.IsNaN(length) {
		c.wrong(path, "a direction that looks nowhere", "up, down or three numbers such as [1, 0, 0]")
	}
}
