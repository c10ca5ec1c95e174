package plan

import (
	"fmt"
	"slices"

	"softloft/quantity"
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
		c.crew(c.Plan.Crew)
	}
}

// crew checks who is there and how fast they work.
func (c *checker) crew(crew *Crew) {
	count(c, "crew.people", "a crew", crew.People, 1, mostPeople)
	r := crew.Rates
	for _, rate := range []struct {
		key string
		x   quantity.Duration
	}{{"piece", r.Piece}, {"fitting", r.Fitting}, {"lamp", r.Lamp}, {"address", r.Address}, {"sheet", r.Sheet}, {"tie", r.Tie}, {"line", r.Line},
		{"overhead", r.Overhead}, {"stand", r.Stand}, {"bag", r.Bag}, {"level", r.Level}, {"hold", r.Hold}} {
		c.demand("crew.rates."+rate.key, "a time", rate.x >= 0 && rate.x <= longestRate, "from 0 s to 24 hours, such as 90 s")
	}
	c.demand("crew.rates.cable", "a speed", r.Cable >= slowestRate, "1 mm/s or more, such as 0.2 m/s")
	c.demand("crew.rates.haul", "a speed", r.Haul >= slowestRate, "1 mm/s or more, such as 0.05 m/s")
	c.demand("crew.rates.slack", "a share", r.Slack >= 0 && r.Slack <= 10, "from 0% to 1000%, such as 30%")
	c.demand("crew.rates.strike", "a share", r.Strike > 0 && r.Strike <= 10, "more than 0% and at most 1000%, such as 60%")
	for _, name := range crew.Names.All() {
		path := "crew.names." + name[0]
		c.demand(path, "a name", len([]rune(name[1])) <= mostNameRunes, fmt.Sprintf("at most %d characters", mostNameRunes))
	}
}

// Bounds of rates against slips of the pen: design assumptions.
const (
	longestRate = 24 * 3600
	slowestRate = 1e-3
)
