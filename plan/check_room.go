package plan

import "softloft/document"

// room checks the room, its surfaces and what its owner states.
func (c *checker) room() {
	r := c.Plan.Room
	if r == nil {
		return
	}
	if r.Size != nil {
		sizes(c, "room.size", "a size", r.Size[:])
	}
	c.reflectances(r.Reflectance)
	if r.Outdoors != nil {
		given(c, notNegative, "room.outdoors.gust", "a gust", r.Outdoors.Gust)
		given(c, share, "room.outdoors.blocked", "a blockage", r.Outdoors.Blocked)
	}
	c.surfaces(r.Surfaces)
	c.obstacles(r.Obstacles)
	if r.Floor != nil {
		given(c, notNegative, "room.floor.allows", "a limit", r.Floor.Allows)
	}
	c.points(r)
}

func (c *checker) reflectances(r Reflectances) {
	reflectance(c, "room.reflectance.floor", r.Floor)
	reflectance(c, "room.reflectance.walls", r.Walls)
	reflectance(c, "room.reflectance.ceiling", r.Ceiling)
	for i, wall := range []*float64{r.North, r.South, r.East, r.West} {
		if wall != nil {
			reflectance(c, document.Key("room.reflectance", SideNames[i]), *wall)
		}
	}
}

func (c *checker) surfaces(all []Surface) {
	var names []named
	for i, s := range all {
		path := document.Item("room.surfaces", i)
		names = append(names, named{path + ".name", s.Name})
		reflectance(c, path+".reflectance", s.Reflectance)
		if c.Doc.Has(path + ".corners") {
			c.polygon(path+".corners", s.Corners)
		}
	}
	c.names("surface", names)
}

func (c *checker) obstacles(all []Obstacle) {
	var names []named
	for i, o := range all {
		path := document.Item("room.obstacles", i)
		names = append(names, named{path + ".name", o.Name})
		if o.Size != nil {
			for axis, x := range o.Size {
				reach(c, document.Item(path+".size", axis), "a size", x)
			}
		}
		given(c, reach, path+".clear", "a distance", o.Clear)
	}
	c.names("obstacle", names)
}

// points checks the building's points and beams.
func (c *checker) points(r *Room) {
	var beams []string
	var names []named
	for i, b := range r.Beams {
		path := document.Item("room.beams", i)
		beams = append(beams, b.Name)
		names = append(names, named{path + ".name", b.Name})
		given(c, notNegative, path+".allows", "a limit", b.Allows)
	}
	c.names("beam", names)
	names = nil
	for i, p := range r.Points {
		path := document.Item("room.points", i)
		names = append(names, named{path + ".name", p.Name})
		given(c, notNegative, path+".allows", "a limit", p.Allows)
		c.known(path+".on", "beam", p.On, beams)
	}
	c.names("point", names)
}
