package kit

import (
	"fmt"

	"softloft/quantity"
)

// derived lists what follows from an item's values and is typed nowhere.
func (k Kit) derived(it item, units quantity.System) []Line {
	switch e := it.Value.(type) {
	case Tube:
		return k.derivedTube(e, units)
	case Cloth:
		return derivedCloth(e, units)
	case Crate:
		return derivedCrate(e, units)
	case Lamp:
		return derivedLamp(e, units)
	case Rope:
		return derivedRope(e, units)
	}
	return nil
}

func (k Kit) derivedTube(t Tube, units quantity.System) []Line {
	alloy, ok := k.Alloy[t.Alloy]
	if t.Mass != nil || !ok {
		return nil
	}
	return []Line{{Key: "mass", Value: units.LineMass(t.MassPerLength(alloy)), Source: "section times the density of " + t.Alloy, Derived: true}}
}

func derivedCloth(l Cloth, units quantity.System) []Line {
	const from = "from the shares above"
	lines := []Line{
		{Key: "passes", Value: percent(l.Passed()), Source: "through, forward and diffuse together", Derived: true},
		{Key: "absorbs", Value: percent(max(0, 1-l.Passed()-l.Back)), Source: "what is left of 1", Derived: true},
	}
	if loss, ok := l.Loss(); ok {
		lines = append(lines, Line{Key: "loss", Value: units.Stops(loss), Source: from + "; a box, where light comes back, loses less", Derived: true})
	}
	return lines
}

func derivedCrate(e Crate, units quantity.System) []Line {
	angles := e.CutOff()
	value := units.Angle(angles[0])
	if e.Cell[0] != e.Cell[1] {
		value += " along x, " + units.Angle(angles[1]) + " along y"
	}
	return []Line{{Key: "cut-off", Value: value + " from straight down, along a row", Source: "atan(cell / depth)", Derived: true}}
}

func derivedLamp(l Lamp, units quantity.System) []Line {
	var lines []Line
	if l.Spread == (Spread{}) {
		lines = append(lines, Line{Key: "spread", Value: show(l.Spread, units), Source: "none is given", Derived: true})
	}
	if l.Lumens != nil && l.Power != nil && *l.Power > 0 {
		efficacy := digits(float64(*l.Lumens)/float64(*l.Power), 3) + " lm/W"
		lines = append(lines, Line{Key: "efficacy", Value: efficacy, Source: "lumens over power", Derived: true})
	}
	return lines
}

func derivedRope(r Rope, units quantity.System) []Line {
	if r.Breaks == nil || r.Knot == nil {
		return nil
	}
	value := units.Force(quantity.Force(float64(*r.Breaks) * *r.Knot))
	return []Line{{Key: "breaks at its end", Value: value, Source: fmt.Sprintf("breaks times knot, before any design factor (%s kept)", percent(*r.Knot)), Derived: true}}
}
