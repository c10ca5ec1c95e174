package light

import "math"

// shade works out what the blocked light would have added at each patch, lx:
// values for the patches' middles, such that between them its mean over every
// patch is right.
func (e *Engine) shade(x *exchange) {
	mean := make([]float64, len(x.area))
	for i, row := range x.behind {
		for _, c := range row {
			mean[i] += c.share * x.leaves[c.patch]
		}
	}
	x.shaded = append([]float64(nil), mean...)
	if len(e.insiders()) == 0 {
		return
	}
	for range 4 {
		got := make([]float64, len(mean))
		for i := range e.faces {
			f := &e.faces[i]
			s := &f.sheet
			value := make([]float64, len(s.value))
			for j, v := range s.nodeV {
				for k, u := range s.nodeU {
					value[j*len(s.nodeU)+k] = e.shadedAt(f, u, v)
				}
			}
			e.overPatches(f, value, got)
		}
		for i := range got {
			x.shaded[i] += mean[i] - got[i]
		}
	}
}

// shadedAt is that at a place of a face, between the patches' middles.
func (e *Engine) shadedAt(f *face, u, v float64) float64 {
	values := e.exchange.shaded[f.first : f.first+f.patches()]
	i, s := between(f.patchU, u)
	j, t := between(f.patchV, v)
	n := len(f.patchU) - 1
	i1, j1 := min(i+1, n-1), min(j+1, len(f.patchV)-2)
	low := values[j*n+i]*(1-s) + values[j*n+i1]*s
	high := values[j1*n+i]*(1-s) + values[j1*n+i1]*s
	return low*(1-t) + high*t
}

// between finds the two intervals between whose middles a place lies, and how
// far it is from the first to the second; held at the ends.
func between(lines []float64, x float64) (first int, share float64) {
	last := len(lines) - 2
	middle := func(i int) float64 { return (lines[i] + lines[i+1]) / 2 }
	for first < last-1 && x > middle(first+1) {
		first++
	}
	if last == 0 {
		return 0, 0
	}
	share = (x - middle(first)) / (middle(first+1) - middle(first))
	return first, math.Max(0, math.Min(1, share))
}
