package light

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// cellWalk sends photons from a cell's top, cosine law, and counts what leaves
// below by the two slopes' bins, and what comes back to the top.
func cellWalk(c *Crate, n int) (out [8]float64, returned float64) {
	random := rand.New(rand.NewPCG(3, 4))
	lambert := func(n r3.Vec) r3.Vec {
		r, a := math.Sqrt(random.Float64()), 2*math.Pi*random.Float64()
		u := r3.Vec{X: n.Y, Y: n.Z, Z: n.X}
		v := r3.Cross(n, u)
		sin, cos := math.Sincos(a)
		return r3.Add(r3.Scale(math.Sqrt(1-r*r), n), r3.Add(r3.Scale(r*cos, u), r3.Scale(r*sin, v)))
	}
	for range n {
		p := r3.Vec{X: c.CellX * random.Float64(), Y: c.CellY * random.Float64(), Z: c.Depth}
		d := lambert(r3.Vec{Z: -1})
		for range 1000 {
			var tx, ty, tz float64
			if d.X > 0 {
				tx = (c.CellX - p.X) / d.X
			} else {
				tx = -p.X / d.X
			}
			if d.Y > 0 {
				ty = (c.CellY - p.Y) / d.Y
			} else {
				ty = -p.Y / d.Y
			}
			if d.Z > 0 {
				tz = (c.Depth - p.Z) / d.Z
			} else {
				tz = -p.Z / d.Z
			}
			t := math.Min(tx, math.Min(ty, tz))
			p = r3.Add(p, r3.Scale(t, d))
			if t == tz {
				if d.Z > 0 {
					returned += 1 / float64(n)
				} else {
					out[slopeBin(math.Abs(d.X/d.Z))*2+min(1, slopeBin(math.Abs(d.Y/d.Z))/2)] += 1 / float64(n)
				}
				break
			}
			if random.Float64() >= c.Reflectance {
				break
			}
			if t == tx {
				d = lambert(r3.Vec{X: -math.Copysign(1, d.X)})
			} else {
				d = lambert(r3.Vec{Y: -math.Copysign(1, d.Y)})
			}
		}
	}
	return out, returned
}

// slopeBin sorts slopes: under 0.3, 0.8, 2, and all over.
func slopeBin(t float64) int {
	switch {
	case t < 0.3:
		return 0
	case t < 0.8:
		return 1
	case t < 2:
		return 2
	}
	return 3
}

// The solved cell against photons, direction by direction.
func TestCellAgainstWalk(t *testing.T) {
	t.Parallel()
	all := spread{reference: walked}
	for _, c := range []*Crate{{CellX: 0.1, CellY: 0.1, Depth: 0.1, Reflectance: 0.5}, {CellX: 0.1, CellY: 0.15, Depth: 0.08, Reflectance: 0.8}, {CellX: 0.1, CellY: 0.1, Depth: 0.2, Reflectance: 0.3}} {
		const n = 2000000
		walked, returned := cellWalk(c, n)
		w := solveCell(c)
		all.rel(t, "returned", w.returns, returned, 0.01)
		var got [8]float64
		const steps = 600 // directions by equal shares of the cosine law
		for i := range steps {
			for j := range steps {
				r, phi := math.Sqrt((float64(i)+0.5)/steps), math.Pi/2*(float64(j)+0.5)/steps
				z := math.Sqrt(1 - r*r)
				tx, ty := r*math.Cos(phi)/z, r*math.Sin(phi)/z
				share := c.passes(r3.Vec{X: r * math.Cos(phi), Y: r * math.Sin(phi), Z: z}) + w.glows(tx, ty)
				got[slopeBin(tx)*2+min(1, slopeBin(ty)/2)] += share / steps / steps
			}
		}
		for k := range got {
			tolerance := 0.01 + 3*math.Sqrt(1/(walked[k]*n))
			t.Logf("%+v bin %d: %.5f, walk %.5f (%+.2f %%)", *c, k, got[k], walked[k], 100*(got[k]/walked[k]-1))
			all.rel(t, "bin", got[k], walked[k], tolerance)
		}
	}
	all.told(t, "reflecting cell, by slope and back")
}

// Flux straight through a black cell: view factor of opposite faces of a cube,
// C-11, 0.1998248957 at depth = width; 0.4152532836 at half of it.
func TestCellDirect(t *testing.T) {
	all := spread{reference: catalog + ", C-11"}
	all.rel(t, "cube", solveCell(&Crate{CellX: 1, CellY: 1, Depth: 1}).direct, 0.1998248957, 1e-9)
	all.rel(t, "half", solveCell(&Crate{CellX: 1, CellY: 1, Depth: 0.5}).direct, 0.4152532836, 1e-9)
	all.told(t, "flux straight through a black cell")
}

// Direct shares by direction (exact geometry): depth = width.
func TestCratePasses(t *testing.T) {
	all := spread{reference: "exact geometry of a thin cell"}
	c := &Crate{CellX: 1, CellY: 1, Depth: 1}
	for _, row := range [][3]float64{{15, 0, 0.73205081}, {30, 0, 0.42264973}, {40, 0, 0.16090037}, {30, 45, 0.35017009},
		{45, 45, 0.08578644}, {50, 45, 0.02474422}, {30, 22.5, 0.36350665}, {50, 0, 0}} {
		theta, phi := row[0]*math.Pi/180, row[1]*math.Pi/180
		d := r3.Vec{X: math.Sin(theta) * math.Cos(phi), Y: math.Sin(theta) * math.Sin(phi), Z: math.Cos(theta)}
		all.rel(t, "share", c.passes(d), row[2], 1e-7)
	}
	all.told(t, "black crate by direction")
}
