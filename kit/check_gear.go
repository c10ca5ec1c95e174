package kit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"softloft/quantity"
)

func (c *checker) lamp(l Lamp) {
	from0IfGiven(c, "mass", l.Mass)
	from0IfGiven(c, "power", l.Power)
	c.properShare("power_factor", &l.PowerFactor)
	from0IfGiven(c, "inrush", l.Inrush)
	over0(c, "size[0]", l.Size[0])
	over0(c, "size[1]", l.Size[1])
	from0IfGiven(c, "lumens", l.Lumens)
	c.spread(l.Spread)
	if l.Body != nil {
		for i, side := range l.Body {
			over0(c, fmt.Sprintf("body[%d]", i), side)
		}
	}
	bounded(c, "cg", l.CG)
	bounded(c, "hook", l.Hook)
	over0IfGiven(c, "pin", l.Pin)
	if l.Control != "" && l.Control != "remote" && l.Control != "hand" {
		c.wrong("control", fmt.Sprintf("no such control %q", l.Control), "remote or hand")
	}
	from0IfGiven(c, "supply.mass", l.Supply.Mass)
	from0IfGiven(c, "keep_off", l.KeepOff)
}

func (c *checker) spread(s Spread) {
	if s.Beam == nil || s.Field == nil {
		return
	}
	c.fullAngle("spread.beam", *s.Beam)
	c.fullAngle("spread.field", *s.Field)
	if *s.Beam > *s.Field {
		c.wrong("spread", "a beam that is wider than the field", "beam is the full angle at half of the peak, field at a tenth of it")
	}
}

func (c *checker) fullAngle(key string, a quantity.Angle) {
	if !(a >= 0.1*quantity.Degree && a < math.Pi) {
		c.wrong(key, fmt.Sprintf("an angle of %.4g deg", float64(a/quantity.Degree)), "the full angle, from 0.1 to less than 180 deg, such as 60 deg")
	}
}

func (c *checker) rope(r Rope) {
	over0IfGiven(c, "diameter", r.Diameter)
	over0IfGiven(c, "breaks", r.Breaks)
	over0IfGiven(c, "stiffness", r.Stiffness)
	from0IfGiven(c, "mass", r.Mass)
	c.properShare("knot", r.Knot)
	c.lengths(r.Lengths)
	for _, word := range []string{"wire", "steel", "cable"} {
		if r.Kind != "wire" && strings.Contains(strings.ToLower(r.Kind), word) {
			c.wrong("kind", fmt.Sprintf("no such kind %q", r.Kind), "wire, or the fiber's name such as manila, nylon or polyester")
			return
		}
	}
}

func (c *checker) pulley(p Pulley) {
	over0IfGiven(c, "rated", p.Rated)
	c.properShare("efficiency", p.Efficiency)
	over0IfGiven(c, "sheave", p.Sheave)
	from0IfGiven(c, "mass", p.Mass)
}

func (c *checker) stand(s Stand) {
	from0IfGiven(c, "mass", s.Mass)
	over0(c, "base", s.Base)
	if s.Legs < 3 || s.Legs > 12 {
		c.wrong("legs", fmt.Sprintf("a stand with %d legs", s.Legs), "3 to 12 legs")
	}
	over0(c, "rises[0]", s.Rises[0])
	over0(c, "rises[1]", s.Rises[1])
	if s.Rises[0] > s.Rises[1] {
		c.wrong("rises", "a lowest top that is over the highest", "the lowest first, such as [5 ft, 14 ft]")
	}
	c.ratings(s.Rated)
	over0IfGiven(c, "receiver", s.Receiver)
	over0IfGiven(c, "bending", s.Bending)
}

// ratings refuses two limits for one height, and a limit that rises with the height: a
// stand carries less the higher it stands, so one of the rows is a misprint.
func (c *checker) ratings(rows []Rating) {
	for i, row := range rows {
		over0(c, fmt.Sprintf("rated[%d].at", i), row.At)
		over0(c, fmt.Sprintf("rated[%d].load", i), row.Load)
	}
	byHeight := slices.Clone(rows)
	slices.SortStableFunc(byHeight, func(a, b Rating) int { return cmp.Compare(a.At, b.At) })
	for i := 1; i < len(byHeight); i++ {
		low, high := byHeight[i-1], byHeight[i]
		switch {
		case low.At == high.At:
			c.wrong("rated", "two limits for one height", "one limit for each height")
		case low.Load < high.Load:
			c.wrong("rated", "a limit that rises with the height", "a stand carries less the higher it stands; read its table again")
		}
	}
}

func (c *checker) hardware(h Hardware) {
	from0IfGiven(c, "mass", h.Mass.Each)
	from0IfGiven(c, "mass", h.Mass.PerLength)
	over0IfGiven(c, "rated", h.Rated)
	over0IfGiven(c, "stiffness", h.Stiffness)
	over0IfGiven(c, "slip", h.Slip)
	over0IfGiven(c, "length", h.Length)
	if c.item.Kind != "corner" && c.item.Kind != "tee" {
		return
	}
	for i, id := range h.Fits {
		c.known(fmt.Sprintf("fits[%d]", i), "tube", id, IDs(c.kit.Tube))
	}
}
