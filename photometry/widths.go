package photometry

import "math"

// peak is the largest value and its angles: the first of equals.
func (t *Table) peak() (cd, h, v float64) {
	best := 0
	for k, value := range t.cd {
		if value > t.cd[best] {
			best = k
		}
	}
	n := len(t.v)
	return t.cd[best], t.h[best/n], t.v[best%n]
}

// cut is the intensity along a great circle through the aim, at the angles of the
// table, from one side to the other. It is linear between them.
type cut struct {
	angle, cd []float64
	// closed ends are a pole or a quarter turn from the aim: there the light ends,
	// not the table.
	closed bool
}

// cutThrough is the cut along C0-C180 (the level one for types A and B) or, upright,
// along C90-C270.
func (t *Table) cutThrough(upright bool) cut {
	if t.kind == typeC {
		return t.cutC(upright)
	}
	axis, mirrored := t.h, t.mirror == about0
	value := func(x float64) float64 { return t.at(x, 0) }
	if upright {
		axis, mirrored = t.v, t.mirrorV
		value = func(x float64) float64 { return t.at(0, x) }
	}
	c := cut{closed: axis[len(axis)-1] >= math.Pi/2-slack && (mirrored || axis[0] <= -math.Pi/2+slack)}
	if mirrored {
		for i := len(axis) - 1; i > 0; i-- {
			c.add(-axis[i], value(axis[i]))
		}
	}
	for _, x := range axis {
		c.add(x, value(x))
	}
	return c
}

func (t *Table) cutC(upright bool) cut {
	plane := 0.0
	if upright {
		plane = math.Pi / 2
	}
	last := t.v[len(t.v)-1]
	c := cut{closed: last >= math.Pi-slack || math.Abs(last-math.Pi/2) < slack}
	for j := len(t.v) - 1; j >= 0; j-- {
		if t.v[j] > slack {
			c.add(-t.v[j], t.at(plane+math.Pi, t.v[j]))
		}
	}
	for _, v := range t.v {
		c.add(v, t.at(plane, v))
	}
	return c
}

func (c *cut) add(angle, cd float64) {
	c.angle, c.cd = append(c.angle, angle), append(c.cd, cd)
}

// width is the full angle between the outermost directions that reach a level; nil
// where none does, or where the table ends before the intensity falls under it.
func (c *cut) width(level float64) *float64 {
	first, last := -1, -1
	for i, value := range c.cd {
		if value >= level {
			if first < 0 {
				first = i
			}
			last = i
		}
	}
	if first < 0 || (!c.closed && (first == 0 || last == len(c.cd)-1)) {
		return nil
	}
	from, to := c.angle[first], c.angle[last]
	if first > 0 {
		from = c.crossing(first-1, first, level)
	}
	if last < len(c.cd)-1 {
		to = c.crossing(last+1, last, level)
	}
	return known(to - from)
}

// crossing is where the intensity passes a level between an angle outside of it and
// one inside.
func (c *cut) crossing(outside, inside int, level float64) float64 {
	f := (level - c.cd[outside]) / (c.cd[inside] - c.cd[outside])
	return c.angle[outside] + f*(c.angle[inside]-c.angle[outside])
}

// finest is the least scale (rad) of a table whose beam is wider than that: light that
// stops within a step of the table is not followed closer.
const finest = 0.05

// steepness works out the scale: the peak over the steepest slope. It is a radian for
// Lambert's law and about half of the beam angle for a smooth beam, as in Beam.
func (t *Table) steepness(peak float64, beam Widths) float64 {
	steepest, n := 0.0, len(t.v)
	for i := range t.h {
		for j := range t.v {
			value := t.cd[i*n+j]
			if j > 0 {
				steepest = math.Max(steepest, math.Abs(value-t.cd[i*n+j-1])/(t.v[j]-t.v[j-1])/t.shrinkV(i))
			}
			if i > 0 {
				steepest = math.Max(steepest, math.Abs(value-t.cd[(i-1)*n+j])/(t.h[i]-t.h[i-1])/t.shrinkH(j))
			}
		}
	}
	least := finest
	for _, width := range []*float64{beam.Across, beam.Along} {
		if width != nil && *width > 0 {
			least = math.Min(least, *width/2)
		}
	}
	return math.Min(1, math.Max(least, peak/steepest))
}

// shrinkH and shrinkV are how much shorter a step of H or V is on the sphere; near a
// pole they stop, where planes run together.
func (t *Table) shrinkH(j int) float64 {
	switch t.kind {
	case typeA:
		return math.Max(0.1, math.Cos(t.v[j]))
	case typeC:
		return math.Max(0.1, math.Sin(t.v[j]))
	}
	return 1
}

func (t *Table) shrinkV(i int) float64 {
	if t.kind == typeB {
		return math.Max(0.1, math.Cos(t.h[i]))
	}
	return 1
}
