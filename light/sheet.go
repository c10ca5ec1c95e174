package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// sheet is a rectangle in the axes u, v, cut by lines into panels, with a
// value at every Gauss point of every panel: what leaves it, lm/m2. Between
// the points a value is found by the panel's own polynomial.
type sheet struct {
	lineU, lineV   []float64
	nodeU, nodeV   []float64 // Gauss places, `order` to a panel
	shareU, shareV []float64 // their weights, m
	value          []float64 // [v*len(nodeU)+u]
}

func newSheet(lineU, lineV []float64) sheet {
	s := sheet{lineU: lineU, lineV: lineV}
	s.nodeU, s.shareU = gaussPoints(lineU)
	s.nodeV, s.shareV = gaussPoints(lineV)
	s.value = make([]float64, len(s.nodeU)*len(s.nodeV))
	return s
}

func gaussPoints(lines []float64) (place, share []float64) {
	for i := 0; i+1 < len(lines); i++ {
		step := lines[i+1] - lines[i]
		for k := range order {
			place = append(place, lines[i]+step*gaussPlace[k])
			share = append(share, step*gaussWeight[k])
		}
	}
	return place, share
}

// at is the value at u, v, which is held to the sheet's edges.
func (s *sheet) at(value []float64, u, v float64) float64 {
	i, bu := locate(s.lineU, u)
	j, bv := locate(s.lineV, v)
	sum := 0.0
	for b := range order {
		row := (j*order+b)*len(s.nodeU) + i*order
		for a := range order {
			sum += bv[b] * bu[a] * value[row+a]
		}
	}
	return sum
}

// locate finds the panel that holds a place, and the weights of its points.
func locate(lines []float64, x float64) (panel int, weights [order]float64) {
	last := len(lines) - 2
	for panel < last && x >= lines[panel+1] {
		panel++
	}
	t := (x - lines[panel]) / (lines[panel+1] - lines[panel])
	return panel, lagrange(math.Max(0, math.Min(1, t)))
}

// refine halves intervals until none is longer than the allowed length there; where
// that makes too many, than a multiple of it.
func refine(lines []float64, allowed func(low, high float64) float64, most int) []float64 {
	most = max(most, len(lines))
	for longer := 1.0; ; longer *= 1.5 {
		if out := halved(lines, allowed, longer, most); len(out) <= most {
			return out
		}
	}
}

// halved is that for one multiple; it stops at more than `most` lines.
func halved(lines []float64, allowed func(low, high float64) float64, longer float64, most int) []float64 {
	out := append([]float64(nil), lines...)
	for i := 0; i+1 < len(out) && len(out) <= most; {
		step := out[i+1] - out[i]
		if step <= longer*allowed(out[i], out[i+1])*(1+1e-9) {
			i++
			continue
		}
		out = append(out, 0)
		copy(out[i+2:], out[i+1:])
		out[i+1] = out[i] + step/2
	}
	return out
}

// panels cuts a face's patches further where a lamp stands close to it or has
// a narrow beam, so that what the lamp does there is a smooth curve within
// every panel.
func (e *Engine) panels(f *face) sheet {
	u, v := f.across()
	linesU, linesV := e.horizons(f.patchU, u), e.horizons(f.patchV, v)
	return newSheet(refine(linesU, e.grain(f, u), mostPanels), refine(linesV, e.grain(f, v), mostPanels))
}

// horizons adds the levels of openings that stand straight across an axis: on
// one side of such a level the lamp gives nothing.
func (e *Engine) horizons(lines []float64, axis int) []float64 {
	out := append([]float64(nil), lines...)
	for i := range e.lamps {
		low, high := e.lamps[i].rect.Extent()
		at := components(low)[axis]
		if components(high)[axis]-at > snap || at <= lines[0] || at >= lines[len(lines)-1] {
			continue
		}
		if k, _ := slices.BinarySearch(out, at-snap); out[k] > at+snap {
			out = slices.Insert(out, k, at)
		}
	}
	return out
}

// mostPanels bounds the panels along one edge.
const mostPanels = 48

// grain says how long a panel of a face may be along one axis.
func (e *Engine) grain(f *face, axis int) func(low, high float64) float64 {
	type edge struct{ at, reach float64 }
	var edges []edge
	for i := range e.lamps {
		l := &e.lamps[i]
		if l.touches {
			continue
		}
		low, high, near := math.Inf(1), math.Inf(-1), math.Inf(1)
		for _, corner := range l.rect {
			x := components(corner)
			low, high = math.Min(low, x[axis]), math.Max(high, x[axis])
			near = math.Min(near, math.Abs(x[f.normal]-f.level))
		}
		near = math.Max(near, finest)
		edges = append(edges, edge{low, near}, edge{high, near})
		if l.scale >= 1 {
			continue
		}
		low, high, away := l.throws(f, axis)
		reach := throwRatio * away * l.scale
		if edgeRatio*away*l.scale < high-low {
			reach = edgeRatio * away * l.scale
		}
		reach = math.Max(finest, reach)
		edges = append(edges, edge{low, reach}, edge{high, reach})
	}
	return func(low, high float64) float64 {
		best := math.Inf(1)
		for _, g := range edges {
			away := math.Max(0, math.Max(low-g.at, g.at-high))
			best = math.Min(best, panelRatio*math.Max(g.reach, away))
		}
		return best
	}
}

// throws is where along an axis the opening's edges come out on a face along the
// peak of its light, and how far away that is; ends at infinity where the peak does
// not meet the face.
func (l *lamp) throws(f *face, axis int) (low, high, away float64) {
	low, high = math.Inf(1), math.Inf(-1)
	d := r3.Add(r3.Scale(l.peak.Z, l.Axis), r3.Add(r3.Scale(l.peak.X, l.U), r3.Scale(l.peak.Y, l.V)))
	for _, corner := range l.rect {
		t := (f.level - components(corner)[f.normal]) / components(d)[f.normal]
		if !(t > 0) || math.IsInf(t, 1) {
			return math.Inf(1), math.Inf(1), 0
		}
		x := components(corner)[axis] + t*components(d)[axis]
		low, high, away = math.Min(low, x), math.Max(high, x), math.Max(away, t)
	}
	return low, high, away
}

const (
	// panelRatio is the longest panel over its distance from a lamp.
	panelRatio = 1.0
	// throwRatio is the longest panel where a beam lands, over the beam's scale there;
	// edgeRatio where the opening is wider than that and only its edges are blurred.
	throwRatio = 1.3
	edgeRatio  = 2
	// finest bounds the panels' refinement, m.
	finest = 0.02
)
