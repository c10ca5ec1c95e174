package plan

import (
	"slices"

	"softloft/source"
)

// rules checks what the answers are held to.
func (c *checker) rules() {
	r := c.Plan.Rules
	c.factor("rules.factor.rope", r.Factor.Rope)
	c.factor("rules.factor.hardware", r.Factor.Hardware)
	notNegative(c, "rules.push", "a push", r.Push)
	c.demand("rules.mass_tolerance", "a tolerance", r.MassTolerance >= 0 && r.MassTolerance <= 1, "from 0% to 100%, such as 5%")
}

// factor complains of a source that the register doesn't have, or that states no
// design factor.
func (c *checker) factor(path string, f *Factor) {
	if f == nil || f.Number != 0 {
		return
	}
	var stating []string
	for _, factor := range source.Factors() {
		stating = append(stating, string(factor.Source))
	}
	slices.Sort(stating)
	stating = slices.Compact(stating)
	if _, ok := source.Lookup(source.ID(f.Source)); ok && !slices.Contains(stating, f.Source) {
		c.wrong(path, "the source "+quoted(f.Source)+" states no design factor", suggestion("", stating, "source"))
		return
	}
	c.known(path, "source", f.Source, stating)
}

// want checks what is asked for.
func (c *checker) want() {
	w := c.Plan.Want
	if w == nil {
		return
	}
	if e := w.Exposure; e != nil {
		c.demand("want.exposure.stop", "a stop", e.Stop >= 0.1, "T0.1 or more")
		positive(c, "want.exposure.iso", "an exposure index", e.ISO)
		positive(c, "want.exposure.fps", "a frame rate", e.FPS)
		c.demand("want.exposure.shutter", "a shutter", e.Shutter >= 0.1*degree && e.Shutter <= 360*degree, "more than 0 and at most 360 deg")
		notNegative(c, "want.exposure.filter", "a filter", e.Filter)
	}
	given(c, positive, "want.even", "a difference", w.Even)
	notNegative(c, "want.reserve", "a reserve", w.Reserve)
	for i, s := range w.Spill {
		c.spill(i, s)
	}
}

// spill complains of a wall that no room has, and of a surface that isn't named.
func (c *checker) spill(i int, s SpillLimit) {
	path := item("want.spill", i, "on")
	notNegative(c, item("want.spill", i, "under"), "a difference", s.Under)
	var surfaces []string
	room := c.Plan.Room
	if room != nil {
		for _, surface := range room.Surfaces {
			surfaces = append(surfaces, surface.Name)
		}
	}
	wall := slices.Contains(SideNames[:], s.On) && !slices.Contains(surfaces, s.On)
	switch {
	case wall && room != nil && room.Outdoors != nil:
		c.wrong(path, "outdoors there is no "+s.On+" wall", "name a surface of the room")
	case wall && (room == nil || room.Size == nil):
		c.wrong(path, "there is no "+s.On+" wall without a room", "give room.size")
	case !wall:
		c.known(path, "wall or surface", s.On, append(surfaces, SideNames[:]...))
	}
}

// supply checks current and crew.
func (c *checker) supply() {
	if p := c.Plan.Power; p != nil {
		positive(c, "power.volts", "a voltage", p.Volts)
		c.demand("power.phases", "a count", p.Phases == 1 || p.Phases == 3, "1 or 3")
		positive(c, "power.circuit", "a rating", p.Circuit)
		c.known("power.cable", "cable", p.Cable, ids(c.Kit.Cable))
	}
	if c.Plan.Crew != nil {
		count(c, "crew.people", "a crew", c.Plan.Crew.People, 1, mostPeople)
	}
}
