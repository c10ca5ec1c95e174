package light

import "math"

// The exchange. Every face is cut into patches that reflect as Lambertians. E
// is what arrives on a patch, lx; B what leaves it, lm/m2:
//
//	E = straight from the lamps + sum of factor * B,   B = reflect E + transmit E(other face)
//
// The factors are closed forms and are not made to fit; light of another
// chamber comes attenuated by what the planes between pass unscattered.

// exchange holds the patches of all faces in one row, face by face.
type exchange struct {
	area, reflect           []float64
	transmit, forward       []float64 // of the plane, Lambertian and by its lobe
	other                   []int     // the patch on the plane's other face, or -1
	factor                  []float64
	open                    []bool
	uncovered               []float64    // share of the patch that no lamp lies on
	direct, arrives, leaves []float64    // mean per patch, without the lamps that lie on it
	stamped                 []float64    // what those put on it, mean over the patch
	behind                  [][]covering // what stands in each patch's way
	shaded                  []float64    // what that takes from it, lx
	closure                 float64
}

// settle fills what of the exchange doesn't depend on the lamps' lumens.
func (e *Engine) settle() {
	x := &e.exchange
	e.patchOptics(x)
	e.factors(x)
	e.block(x)
}

// relight solves the exchange for what comes straight from the lamps, and sets what
// is seen.
func (e *Engine) relight(w *sight) {
	x := &e.exchange
	e.patchDirect(x)
	x.iterate()
	e.shade(x)
	e.light(w)
}

func (e *Engine) patchOptics(x *exchange) {
	n := e.patchCount
	x.area, x.reflect, x.transmit, x.forward = make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	x.other, x.open, x.uncovered = make([]int, n), make([]bool, n), make([]float64, n)
	for i := range e.faces {
		f := &e.faces[i]
		for k := range f.patches() {
			g := f.first + k
			x.area[g], x.reflect[g], x.open[g] = f.patchArea(k), f.reflect[k], f.open[k]
			x.other[g], x.uncovered[g] = -1, 1-e.covered(f, k)
			if f.twin >= 0 {
				x.other[g] = e.faces[f.twin].first + k
				x.transmit[g], x.forward[g] = e.scatters(f, k)
			}
		}
	}
}

// scatters is what a cloth between two chambers passes Lambertian, and by its
// lobe. The lobe of light that comes from everywhere is close to Lambertian and
// is counted as such; that of light straight from lamps goes its own way.
func (e *Engine) scatters(f *face, k int) (diffuse, forward float64) {
	n := len(f.patchU) - 1
	i, j := k%n, k/n
	if !e.clears((f.patchU[i]+f.patchU[i+1])/2, (f.patchV[j]+f.patchV[j+1])/2) {
		return 0, 0
	}
	cloth := e.planes[min(f.chamber, e.faces[f.twin].chamber)].cloth
	return cloth.Diffuse, cloth.ForwardPart
}

// covered is the share of a floor's patch on which lamp openings lie.
func (e *Engine) covered(f *face, k int) float64 {
	if f.kind != floor {
		return 0
	}
	n := len(f.patchU) - 1
	i, j := k%n, k/n
	share := e.touching(f.chamber, f.patchU[i], f.patchU[i+1], f.patchV[j], f.patchV[j+1], func(*lamp) float64 { return 1 })
	return math.Min(1, share/f.patchArea(k))
}

// patchDirect averages what comes straight from the lamps over each patch.
func (e *Engine) patchDirect(x *exchange) {
	x.direct, x.stamped = make([]float64, e.patchCount), make([]float64, e.patchCount)
	for i := range e.faces {
		f := &e.faces[i]
		if e.direct[i] == nil {
			continue
		}
		e.overPatches(f, e.direct[i], x.direct)
		if f.kind != floor {
			continue
		}
		n := len(f.patchU) - 1
		for k := range f.patches() {
			a, b := k%n, k/n
			lm := e.touching(f.chamber, f.patchU[a], f.patchU[a+1], f.patchV[b], f.patchV[b+1], func(l *lamp) float64 { return l.luminance * math.Pi })
			x.stamped[f.first+k] += lm / f.patchArea(k)
		}
	}
}

// overPatches adds the mean of a face's node values over each of its patches.
func (e *Engine) overPatches(f *face, value, to []float64) {
	s := &f.sheet
	nu := len(f.patchU) - 1
	pv := 0
	for j, v := range s.nodeV {
		for v > f.patchV[pv+1] {
			pv++
		}
		pu := 0
		for i, u := range s.nodeU {
			for u > f.patchU[pu+1] {
				pu++
			}
			k := pv*nu + pu
			to[f.first+k] += s.shareU[i] * s.shareV[j] * value[j*len(s.nodeU)+i] / f.patchArea(k)
		}
	}
}

// factors fills the matrix of form factors, attenuated, and its closure: per
// patch, the sum over the faces of its own chamber less 1.
func (e *Engine) factors(x *exchange) {
	n := e.patchCount
	x.factor = make([]float64, n*n)
	for i := range e.faces {
		for j := i + 1; j < len(e.faces); j++ {
			if pass := e.passesBetween(&e.faces[i], &e.faces[j]); pass > 0 {
				e.pair(x, &e.faces[i], &e.faces[j], pass)
			}
		}
	}
	for i := range e.faces {
		e.close(x, &e.faces[i])
	}
}

func (e *Engine) close(x *exchange, f *face) {
	alone := true
	for k := range f.patches() {
		row := x.factor[(f.first+k)*e.patchCount:][:e.patchCount]
		sum := 0.0
		for j := range e.faces {
			g := &e.faces[j]
			if g.chamber != f.chamber || g.level == f.level && g.normal == f.normal {
				continue
			}
			alone = false
			for _, v := range row[g.first : g.first+g.patches()] {
				sum += v
			}
		}
		if !alone {
			x.closure = math.Max(x.closure, math.Abs(sum-1))
		}
	}
}

// passesBetween is the unscattered share between two faces: 1 in one chamber,
// 0 where they do not look at each other.
func (e *Engine) passesBetween(f, g *face) float64 {
	if f.normal == g.normal && f.level == g.level {
		return 0
	}
	if f.chamber == g.chamber {
		return 1
	}
	upper, lower := f, g
	if f.chamber > g.chamber {
		upper, lower = g, f
	}
	if upper.kind == floor || lower.kind == ceiling {
		return 0
	}
	pass := 1.0
	for k := upper.chamber; k < lower.chamber; k++ {
		pass *= e.planes[k].passes()
	}
	return pass
}

// iterate solves for what leaves (Gauss and Seidel), with what a lamp covers
// neither receiving nor sending.
func (x *exchange) iterate() {
	n := len(x.area)
	x.arrives, x.leaves = append([]float64(nil), x.direct...), make([]float64, n)
	var lit []int
	for i := range n {
		if x.reflect[i] > 0 || x.transmit[i] > 0 || x.forward[i] > 0 {
			lit = append(lit, i)
		}
	}
	for range mostRounds {
		change, size := 0.0, 0.0
		for _, i := range lit {
			x.arrives[i] = x.direct[i] + x.uncovered[i]*x.from(i, lit)
			b := x.reflect[i] * x.arrives[i]
			if k := x.other[i]; k >= 0 {
				b += x.uncovered[i] * (x.transmit[i]*(x.arrives[k]+x.stamped[k]) + x.forward[i]*(x.arrives[k]-x.direct[k]))
			}
			change = math.Max(change, math.Abs(b-x.leaves[i]))
			size = math.Max(size, b)
			x.leaves[i] = b
		}
		if change <= 1e-12*size {
			break
		}
	}
	for i := range n {
		x.arrives[i] = x.direct[i] + x.uncovered[i]*x.from(i, lit)
	}
}

const mostRounds = 400

func (x *exchange) from(i int, lit []int) float64 {
	row := x.factor[i*len(x.area):][:len(x.area)]
	sum := 0.0
	for _, j := range lit {
		sum += row[j] * x.leaves[j]
	}
	return sum
}
