package plan

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"softloft/document"
	"softloft/kit"
)

// entries checks the plan's own kit entries.
func (c *checker) entries() {
	k := c.Plan.Kit
	eachEntry(c, "alloy", k.Alloy, c.alloy)
	eachEntry(c, "tube", k.Tube, c.tube)
	eachEntry(c, "cloth", k.Cloth, c.clothEntry)
	eachEntry(c, "crate", k.Crate, c.crateEntry)
	eachEntry(c, "wrap", k.Wrap, c.wrap)
	eachEntry(c, "lamp", k.Lamp, c.lampEntry)
	eachEntry(c, "rope", k.Rope, c.rope)
	eachEntry(c, "pulley", k.Pulley, c.pulley)
	eachEntry(c, "stand", k.Stand, c.standEntry)
	for _, h := range hardware(k) {
		eachEntry(c, h.kind, h.set, c.hardware)
	}
}

// hardwareKind is one of the kinds of kit that share a form.
type hardwareKind struct {
	kind string
	set  map[string]kit.Hardware
}

func hardware(k kit.Kit) []hardwareKind {
	return []hardwareKind{
		{"arm", k.Arm}, {"head", k.Head}, {"clamp", k.Clamp}, {"shackle", k.Shackle}, {"safety", k.Safety},
		{"webbing", k.Webbing}, {"sling", k.Sling}, {"corner", k.Corner}, {"tee", k.Tee}, {"ear", k.Ear},
		{"tie", k.Tie}, {"retainer", k.Retainer}, {"bag", k.Bag}, {"cable", k.Cable},
		{"connector", k.Connector}, {"adapter", k.Adapter},
	}
}

// eachEntry checks the entries of one kind in order of their ids.
func eachEntry[T any](c *checker, kind string, set map[string]T, check func(path string, entry T)) {
	list := document.Key("kit", kind)
	c.atMost(list, "entries", len(set), mostEntries)
	for _, id := range kit.IDs(set) {
		path := document.Key(list, id)
		c.name(named{path, id}, kind)
		if strings.TrimSpace(id) == "" {
			c.wrong(path, "an empty id for a "+kind, "an id that the plan can name")
		}
		check(path, set[id])
	}
}

func (c *checker) alloy(path string, a kit.Alloy) {
	positive(c, path+".E", "a modulus", a.Young)
	c.demand(path+".poisson", "a Poisson's ratio", a.Poisson > -1 && a.Poisson <= 0.5, "more than -1 and at most 0.5, such as 0.33")
	notNegative(c, path+".density", "a density", a.Density)
	given(c, positive, path+".yield", "a yield strength", a.Yield)
	given(c, positive, path+".welded_yield", "a yield strength", a.WeldedYield)
}

func (c *checker) tube(path string, t kit.Tube) {
	size(c, path+".outer", "an outer size", t.Outer)
	size(c, path+".wall", "a wall", t.Wall)
	if t.Outer >= smallestSize && c.Doc.Has(path+".outer") {
		c.demand(path+".wall", "a wall", t.Wall < t.Outer/2, "less than half of the outer "+c.typed(path+".outer"))
	}
	c.known(path+".alloy", "alloy", t.Alloy, kit.IDs(c.Kit.Alloy))
	sizes(c, path+".lengths", "a length", t.Lengths)
	given(c, notNegative, path+".mass", "a mass", t.Mass)
}

// clothEntry: the shares of the arriving light come to at most 1, with a rounding's
// room.
func (c *checker) clothEntry(path string, e kit.Cloth) {
	given(c, notNegative, path+".mass", "a mass", e.Mass)
	share(c, path+".through", "a share", e.Through)
	share(c, path+".diffuse", "a share", e.Diffuse)
	share(c, path+".back", "a share", e.Back)
	if e.Forward != nil {
		share(c, path+".forward.part", "a share", e.Forward.Part)
		c.demand(path+".forward.sigma", "a lobe", e.Forward.Sigma >= 0.1*degree && e.Forward.Sigma <= 90*degree, "from 0.1 deg to 90 deg")
	}
	const rounding = 1e-9
	if sum := e.Passed() + e.Back; sum > 1+rounding && !math.IsNaN(sum) {
		c.wrong(path, fmt.Sprintf("through, forward, diffuse and back come to %.4g of the light that arrives", sum), "together at most 1; what is left of 1 is absorbed")
	}
	given(c, positive, path+".stretch", "a stiffness", e.Stretch)
	reach(c, path+".hem", "a hem", e.Hem)
}

func (c *checker) crateEntry(path string, e kit.Crate) {
	sizes(c, path+".cell", "a cell", e.Cell[:])
	size(c, path+".depth", "a depth", e.Depth)
	reflectance(c, path+".reflectance", e.Reflectance)
	reach(c, path+".wall", "a wall", e.Wall)
	if narrow := min(e.Cell[0], e.Cell[1]); narrow >= smallestSize {
		c.demand(path+".wall", "a wall", e.Wall < narrow, "thinner than a cell is wide")
	}
	if e.Mass != nil {
		given(c, notNegative, path+".mass", "a mass", e.Mass.Whole)
		given(c, notNegative, path+".mass", "a mass", e.Mass.PerArea)
	}
}

func (c *checker) wrap(path string, e kit.Wrap) {
	given(c, notNegative, path+".mass", "a mass", e.Mass)
	if e.Color != "" {
		c.known(path+".color", "wrap color", e.Color, []string{"white", "black", "silver"})
	}
	if e.Reflectance != nil {
		reflectance(c, path+".reflectance", *e.Reflectance)
	}
}

func (c *checker) lampEntry(path string, e kit.Lamp) {
	given(c, notNegative, path+".mass", "a mass", e.Mass)
	given(c, notNegative, path+".power", "a power", e.Power)
	shareAbove0(c, path+".power_factor", "a power factor", e.PowerFactor)
	given(c, notNegative, path+".inrush", "a current", e.Inrush)
	sizes(c, path+".size", "a size", e.Size[:])
	given(c, notNegative, path+".lumens", "a flux", e.Lumens)
	c.spread(path+".spread", e.Spread)
	if e.Body != nil {
		sizes(c, path+".body", "a size", e.Body[:])
	}
	given(c, size, path+".pin", "a pin", e.Pin)
	if e.Control != "" {
		c.known(path+".control", "control", e.Control, []string{"remote", "hand"})
	}
	given(c, notNegative, path+".supply.mass", "a mass", e.Supply.Mass)
	given(c, reach, path+".keep_off", "a distance", e.KeepOff)
}

func (c *checker) spread(path string, s kit.Spread) {
	if s.Beam == nil || s.Field == nil {
		return
	}
	c.demand(path+".beam", "a beam", *s.Beam >= 0.1*degree && *s.Beam < 180*degree, "from 0.1 deg to less than 180 deg")
	c.demand(path+".field", "a field", *s.Field >= 0.1*degree && *s.Field < 180*degree, "from 0.1 deg to less than 180 deg")
	c.demand(path+".beam", "a beam", *s.Beam <= *s.Field, "at most the field, "+c.typed(path+".field"))
}

func (c *checker) rope(path string, e kit.Rope) {
	given(c, size, path+".diameter", "a diameter", e.Diameter)
	given(c, positive, path+".breaks", "a breaking strength", e.Breaks)
	given(c, positive, path+".stiffness", "a stiffness", e.Stiffness)
	given(c, notNegative, path+".mass", "a mass", e.Mass)
	given(c, shareAbove0, path+".knot", "a share", e.Knot)
	sizes(c, path+".lengths", "a length", e.Lengths)
}

func (c *checker) pulley(path string, e kit.Pulley) {
	given(c, positive, path+".rated", "a rating", e.Rated)
	given(c, shareAbove0, path+".efficiency", "an efficiency", e.Efficiency)
	given(c, size, path+".sheave", "a sheave", e.Sheave)
	given(c, notNegative, path+".mass", "a mass", e.Mass)
}

func (c *checker) standEntry(path string, e kit.Stand) {
	given(c, notNegative, path+".mass", "a mass", e.Mass)
	size(c, path+".base", "a base", e.Base)
	count(c, path+".legs", "a number of legs", e.Legs, 3, 12)
	sizes(c, path+".rises", "a height", e.Rises[:])
	if e.Rises[0] > e.Rises[1] {
		c.wrong(path+".rises", "the lowest top is above the highest", "[lowest, highest]")
	}
	for i, r := range e.Rated {
		size(c, item(path+".rated", i, "at"), "a height", r.At)
		notNegative(c, item(path+".rated", i, "load"), "a load", r.Load)
	}
	given(c, size, path+".receiver", "a receiver", e.Receiver)
	given(c, positive, path+".bending", "a stiffness", e.Bending)
}

func (c *checker) hardware(path string, e kit.Hardware) {
	given(c, notNegative, path+".mass", "a mass", e.Mass.Each)
	given(c, notNegative, path+".mass", "a mass", e.Mass.PerLength)
	given(c, positive, path+".rated", "a rating", e.Rated)
	given(c, positive, path+".stiffness", "a stiffness", e.Stiffness)
	given(c, positive, path+".slip", "a load", e.Slip)
	given(c, size, path+".length", "a length", e.Length)
}

// suspenders lists what a line, a drop or a secondary may be made of.
func (c *checker) suspenders() []string {
	all := slices.Concat(kit.IDs(c.Kit.Rope), kit.IDs(c.Kit.Sling), kit.IDs(c.Kit.Webbing), kit.IDs(c.Kit.Safety))
	slices.Sort(all)
	return all
}
