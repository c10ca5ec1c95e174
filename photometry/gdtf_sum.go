package photometry

import (
	"errors"
	"math"
)

// total adds up the beams of the first mode's geometry, references counted as often as
// they stand; where no mode names one, of the first geometry with a beam.
func (g *gdtf) total() (sum, error) {
	memo := map[string]*sum{}
	for _, name := range g.modes {
		if _, ok := g.places[name]; !ok {
			continue
		}
		total, err := g.sumOf(name, memo, 0)
		if err != nil || total.count > 0 {
			g.otherModes(name)
			return total, err
		}
	}
	for _, name := range g.order {
		if total, err := g.sumOf(name, memo, 0); err != nil || total.count > 0 {
			return total, err
		}
	}
	return sum{}, nil
}

// otherModes notes modes whose beams are other ones.
func (g *gdtf) otherModes(used string) {
	for _, name := range g.modes {
		if name != used {
			g.once("modes use different geometries: the numbers are for %q", used)
		}
	}
}

// mostBeams is more than any lamp has; a reference within a reference may multiply
// without end.
const mostBeams = 1_000_000

// sumOf adds up one top-level geometry. A geometry within itself is an error: memo
// holds nil for those that are open.
func (g *gdtf) sumOf(name string, memo map[string]*sum, depth int) (sum, error) {
	if done, seen := memo[name]; seen {
		if done == nil {
			return sum{}, errors.New("a geometry refers to itself")
		}
		return *done, nil
	}
	if depth > deepest {
		return sum{}, errors.New("geometries refer to each other too deep")
	}
	memo[name] = nil
	total := sum{alike: true}
	for _, b := range g.places[name].beams {
		total.add(single(b))
	}
	for _, used := range g.places[name].uses {
		if _, ok := g.places[used]; !ok {
			g.once("a geometry refers to %q, which is not there", shorten([]byte(used)))
			continue
		}
		part, err := g.sumOf(used, memo, depth+1)
		if err != nil {
			return sum{}, err
		}
		total.add(part)
		if total.count > mostBeams {
			return sum{}, errors.New("more than a million beams")
		}
	}
	memo[name] = &total
	return total, nil
}

func single(b beam) sum {
	s := sum{count: 1, first: b, alike: true, noLm: b.lumens == nil, noW: b.watts == nil}
	if b.lumens != nil {
		s.lm = *b.lumens
	}
	if b.watts != nil {
		s.w = *b.watts
	}
	return s
}

func (s *sum) add(part sum) {
	if part.count == 0 {
		return
	}
	if s.count == 0 {
		*s = part
		return
	}
	s.alike = s.alike && part.alike && likewise(s.first, part.first)
	s.count += part.count
	s.lm, s.w = s.lm+part.lm, s.w+part.w
	s.noLm, s.noW = s.noLm || part.noLm, s.noW || part.noW
}

// likewise reports whether two beams have the same shape.
func likewise(a, b beam) bool {
	return a.kind == b.kind && same(a.beam, b.beam) && same(a.field, b.field) && same(a.radius, b.radius)
}

func same(a, b *float64) bool {
	if a == nil || b == nil {
		return a == b
	}
	return math.Abs(*a-*b) <= 1e-9*math.Abs(*a)
}
