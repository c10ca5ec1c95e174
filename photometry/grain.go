package photometry

import "math"

// grain is the angle (rad) over which an intensity changes noticeably, by the angle
// from the aim: the intensity there, and at least a hundredth of the peak, over the
// slope; at most a radian. It comes in even steps of the angle, each with the least.
type grain struct {
	step  float64
	least []float64
}

// dimmest is the share of the peak that counts as no light.
const dimmest = 0.02

func newGrain(last float64, bins int) grain {
	g := grain{step: last / float64(bins), least: make([]float64, bins)}
	for i := range g.least {
		g.least[i] = 1
	}
	return g
}

// bins are those between two angles.
func (g *grain) bins(from, to float64) (first, last int) {
	end := len(g.least) - 1
	clamp := func(x float64) int { return max(0, min(end, int(math.Max(0, math.Min(x/g.step, float64(end)))))) }
	return clamp(from), clamp(to)
}

func (g *grain) lower(from, to, value float64) {
	first, last := g.bins(from, to)
	for i := first; i <= last; i++ {
		g.least[i] = math.Min(g.least[i], value)
	}
}

// between is the least between two angles.
func (g *grain) between(from, to float64) float64 {
	first, last := g.bins(from, to)
	best := g.least[first]
	for _, x := range g.least[first : last+1] {
		best = math.Min(best, x)
	}
	return best
}

// grains of a beam, up to its reach.
func (b Beam) grains() grain {
	const bins = 128
	g := newGrain(math.Min(b.reach, math.Pi/2), bins)
	for i := range g.least {
		from, to := float64(i)*g.step, float64(i+1)*g.step
		p, q := b.at(from), b.at(to)
		if p > q {
			g.least[i] = math.Min(1, math.Max(b.half/4, (q+dimmest*b.peak)/(p-q)*g.step))
		}
	}
	return g
}

// grains of a table, cell by cell; the angles from the aim are those of its corners.
func (t *Table) grains(peak float64) grain {
	const bins = 360
	g := newGrain(math.Pi, bins)
	n := len(t.v)
	for i := range t.h {
		for j := range t.v {
			k := min(i+1, len(t.h)-1)
			value := t.cd[i*n+j]
			if j > 0 {
				steep := math.Abs(value-t.cd[i*n+j-1]) / (t.v[j] - t.v[j-1]) / t.shrinkV(i)
				t.lower(&g, i, j-1, i, j, (math.Min(value, t.cd[i*n+j-1])+dimmest*peak)/steep)
			}
			if k > i {
				steep := math.Abs(value-t.cd[k*n+j]) / (t.h[k] - t.h[i]) / t.shrinkH(j)
				t.lower(&g, i, j, k, j, (math.Min(value, t.cd[k*n+j])+dimmest*peak)/steep)
			}
		}
	}
	return g
}

// lower notes a grain between two places of a table.
func (t *Table) lower(g *grain, i, j, k, m int, value float64) {
	angle := func(i, j int) float64 {
		return math.Acos(math.Max(-1, math.Min(1, t.kind.direction(t.h[i], t.v[j]).Z)))
	}
	a, b := angle(i, j), angle(k, m)
	if !(value > 1) {
		g.lower(math.Min(a, b), math.Max(a, b), math.Max(value, thinnest))
	}
}

// thinnest is the least grain of a table, rad.
const thinnest = 0.02
