package light

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// plainForward is the lobe's light by a plain sum over a fine even grid of the
// cloth and Gauss places on every opening, from the definition.
func plainForward(s *Scene, p r3.Vec, m meter) float64 {
	c := s.Cloths[0]
	const cells, places = 120, 4
	norms := make([]float64, 401)
	lobe := newLobe(c.ForwardSigma)
	for i := range norms {
		norms[i] = lobe.integral(float64(i) / 400)
	}
	sum := 0.0
	for _, l := range s.Lamps {
		for a := range places {
			for b := range places {
				ga, gb := legendre(places)[a], legendre(places)[b]
				u, v := (ga.place-0.5)*l.Size[0], (gb.place-0.5)*l.Size[1]
				from := r3.Add(l.Centre, r3.Add(r3.Scale(u, l.U), r3.Scale(v, l.V)))
				for i := range cells {
					for j := range cells {
						x := r3.Vec{X: ((float64(i)+0.5)/cells - 0.5) * s.Clear[0], Y: ((float64(j)+0.5)/cells - 0.5) * s.Clear[1]}
						in, out := r3.Sub(x, from), r3.Sub(p, x)
						d1, d2 := r3.Norm(in), r3.Norm(out)
						in, out = r3.Scale(1/d1, in), r3.Scale(1/d2, out)
						cos := -in.Z
						if cos <= 0 || r3.Dot(in, l.Axis) <= 0 {
							continue
						}
						angle := math.Acos(math.Min(1, r3.Dot(in, out)))
						q := cos * 400
						k := min(int(q), 399)
						norm := norms[k]*(float64(k+1)-q) + norms[k+1]*(q-float64(k))
						e := l.Distribution.Intensity(r3.Vec{X: r3.Dot(in, l.U), Y: r3.Dot(in, l.V), Z: r3.Dot(in, l.Axis)}) * cos / (d1 * d1)
						f := math.Exp(-angle*angle/2/c.ForwardSigma/c.ForwardSigma) / norm
						value := ga.weight * gb.weight * l.Lumens * e * f * m.weigh(r3.Scale(-1, out)) / (d2 * d2)
						if s.Crate != nil {
							value *= s.Crate.passes(r3.Scale(-1, out))
						}
						sum += value
					}
				}
			}
		}
	}
	return sum * c.ForwardPart * s.Clear[0] * s.Clear[1] / cells / cells
}

// The engine's sum against the plain one: within 0.2 % of what the lobe gives.
func TestForwardAgainstPlainSum(t *testing.T) {
	t.Parallel()
	s := boxScene()
	s.Lamps = []Lamp{s.Lamps[3], aimed(-0.7, 0.4, 0.7, 0.5, 1, false)}
	all := spread{reference: "a plain sum over cloth and openings"}
	for _, sigma := range []float64{0.05, 0.12, 0.3, 0.7} {
		for _, crate := range []*Crate{nil, {CellX: 0.15, CellY: 0.1, Depth: 0.1}} {
			s.Cloths = []Cloth{{ForwardPart: 1, ForwardSigma: sigma}}
			s.Crate = crate
			e := prepared(t, s)
			w := new(sight)
			for _, r := range []walkReceiver{
				{r3.Vec{X: 0.5, Y: 0.3, Z: -3}, up}, {r3.Vec{X: 2.2, Y: 1.4, Z: -2}, up},
				{r3.Vec{X: 1, Y: 0.8, Z: -1.5}, up}, {r3.Vec{X: -1, Y: 2, Z: -2.5}, r3.Unit(r3.Vec{X: 0.5, Y: -0.7, Z: 0.5})},
			} {
				m := meter{Flat, r.n}
				got, want := e.forwarded(w, e.stationAt(r.p), m), plainForward(&s, r.p, m)
				total := e.At(r.p, r.n, Flat)
				t.Logf("sigma %.2f crate %v at %v: %.6g lx, plain %.6g (%+.3f %% of it, %+.3f %% of all)", sigma, crate != nil, r.p, got, want, 100*(got/want-1), 100*(got-want)/total)
				if want > 1e-3*total {
					all.add(got, want)
				}
				if math.Abs(got-want) > 2e-3*want+1e-4 {
					t.Error(fmt.Sprint("off at sigma ", sigma))
				}
			}
		}
	}
	all.told(t, "a forward lobe, crates and lamps that lean")
}
