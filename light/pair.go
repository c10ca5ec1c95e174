package light

import (
	"math"
	"slices"
)

// pair fills the form factors between the patches of two faces, both ways. The
// corner terms depend only on distances of lines, of which an even cut has few
// different ones: each is worked out once.
func (e *Engine) pair(x *exchange, f, g *face, pass float64) {
	if f.normal == g.normal {
		e.pairParallel(x, f, g, pass)
		return
	}
	e.pairPerpendicular(x, f, g, pass)
}

// gaps are the different distances between two sets of lines.
type gaps struct {
	size  []float64
	index []int // [i*len(b)+j] into size
	width int
}

func gapsOf(a, b []float64) gaps {
	g := gaps{index: make([]int, len(a)*len(b)), width: len(b)}
	var all []float64
	for _, x := range a {
		for _, y := range b {
			all = append(all, math.Abs(x-y))
		}
	}
	slices.Sort(all)
	slack := 1e-13 * (all[len(all)-1] + 1e-300)
	for _, d := range all {
		if len(g.size) == 0 || d-g.size[len(g.size)-1] > slack {
			g.size = append(g.size, d)
		}
	}
	for i, x := range a {
		for j, y := range b {
			k, _ := slices.BinarySearch(g.size, math.Abs(x-y)-slack)
			g.index[i*len(b)+j] = min(k, len(g.size)-1)
		}
	}
	return g
}

func (e *Engine) pairParallel(x *exchange, f, g *face, pass float64) {
	z := math.Abs(f.level - g.level)
	gu, gv := gapsOf(f.patchU, g.patchU), gapsOf(f.patchV, g.patchV)
	table := make([]float64, len(gu.size)*len(gv.size))
	for i, du := range gu.size {
		for j, dv := range gv.size {
			table[i*len(gv.size)+j] = parallelCorner(du, dv, z)
		}
	}
	at := func(i, j, k, l int) float64 { // line i, j along u of f and g; k, l along v
		return table[gu.index[i*gu.width+j]*len(gv.size)+gv.index[k*gv.width+l]]
	}
	e.fillPair(x, f, g, pass, func(fi, fj, gi, gj int) float64 {
		sum := 0.0
		for _, s := range signs {
			sum += s.sign * at(fi+s.i, gi+s.j, fj+s.k, gj+s.l)
		}
		return sum
	})
}

// signs are the sixteen corner pairs with their signs.
var signs = func() (out [16]struct {
	i, j, k, l int
	sign       float64
}) {
	for n := range out {
		s := &out[n]
		s.i, s.j, s.k, s.l = n&1, n>>1&1, n>>2&1, n>>3&1
		s.sign = 1 - 2*float64((s.i+s.j+s.k+s.l)%2)
	}
	return out
}()

// pairPerpendicular: the axis that both faces span is their common direction;
// the other one of each is the distance from the other's plane.
func (e *Engine) pairPerpendicular(x *exchange, f, g *face, pass float64) {
	common := 3 - f.normal - g.normal
	fAlong, fOff, fAlongIsU := f.split(common, g.level)
	gAlong, gOff, gAlongIsU := g.split(common, f.level)
	along := gapsOf(fAlong, gAlong)
	nf, ng, na := len(fOff), len(gOff), len(along.size)
	table := make([]float64, nf*ng*na)
	for i, a := range fOff {
		for j, b := range gOff {
			for k, d := range along.size {
				table[(i*ng+j)*na+k] = perpendicularCorner(a, b, d)
			}
		}
	}
	e.fillPair(x, f, g, pass, func(fi, fj, gi, gj int) float64 {
		if !fAlongIsU {
			fi, fj = fj, fi
		}
		if !gAlongIsU {
			gi, gj = gj, gi
		}
		sum := 0.0
		for _, s := range signs {
			sum += s.sign * table[((fj+s.i)*ng+gj+s.j)*na+along.index[(fi+s.k)*along.width+gi+s.l]]
		}
		return math.Abs(sum) // distances that fall along an axis turn the sign
	})
}

// split gives a face's lines along an axis, and the distances of its other
// lines from a level.
func (f *face) split(along int, level float64) (lines, off []float64, alongIsU bool) {
	u, _ := f.across()
	lines, rest := f.patchU, f.patchV
	if u != along {
		lines, rest = f.patchV, f.patchU
	}
	off = make([]float64, len(rest))
	for i, x := range rest {
		off[i] = math.Abs(x - level)
	}
	return lines, off, u == along
}

// fillPair writes areaFactor, m2, of every pair of patches as two form factors.
func (e *Engine) fillPair(x *exchange, f, g *face, pass float64, areaFactor func(fi, fj, gi, gj int) float64) {
	nf, ng, n := len(f.patchU)-1, len(g.patchU)-1, e.patchCount
	for a := range f.patches() {
		for b := range g.patches() {
			shared := pass * areaFactor(a%nf, a/nf, b%ng, b/ng)
			i, j := f.first+a, g.first+b
			x.factor[i*n+j] = shared / x.area[i]
			x.factor[j*n+i] = shared / x.area[j]
		}
	}
}
