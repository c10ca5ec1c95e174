package light

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// rowByRow adds up a convex piece that is no upright rectangle: Gauss points
// across the rows between any two of its corners, panel lines and steps, and
// along each row from edge to edge.
func (e *Engine) rowByRow(w *sight, k *kernel, p shape.Polygon) float64 {
	g := k.glow
	outline := make([][2]float64, len(p))
	for i, corner := range p {
		u, v, _ := g.local(corner)
		outline[i] = [2]float64{u, v}
	}
	sx, sy, share := k.slopes()
	low, high := outline[0][1], outline[0][1]
	for _, c := range outline {
		low, high = math.Min(low, c[1]), math.Max(high, c[1])
	}
	if k.crate != nil {
		low, high = math.Max(low, k.b-k.c/sy), math.Min(high, k.b+k.c/sy)
	}
	cuts := w.v.edges(g.sheet.lineV, k.b, k.c, low, high, k.crate != nil)
	cuts = crossings(cuts, outline, g.sheet.lineU, low, high)
	slices.Sort(cuts)
	w.v.cuts = cuts
	sum := 0.0
	for i := 0; i+1 < len(cuts); i++ {
		step := cuts[i+1] - cuts[i]
		for q := range order {
			y := cuts[i] + step*gaussPlace[q]
			left, right := rowEnds(outline, y)
			fade := step * gaussWeight[q]
			if k.crate != nil {
				left, right = math.Max(left, k.a-k.c/sx), math.Min(right, k.a+k.c/sx)
				fade *= math.Max(0, 1-sy*math.Abs(y-k.b)/k.c)
			}
			if fade > 0 && right > left {
				sum += fade * k.row(w, y, left, right, sx)
			}
		}
	}
	return sum * share
}

// crossings adds the places along v of an outline's corners, and of where its
// edges cross the panel lines along u: between them a row's ends run smoothly.
func crossings(cuts []float64, outline [][2]float64, lines []float64, low, high float64) []float64 {
	add := func(v float64) {
		if v > low && v < high {
			cuts = append(cuts, v)
		}
	}
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		add(a[1])
		for _, u := range lines {
			if (a[0]-u)*(b[0]-u) < 0 {
				add(a[1] + (u-a[0])/(b[0]-a[0])*(b[1]-a[1]))
			}
		}
	}
	return cuts
}

// row adds up one row of a piece.
func (k *kernel) row(w *sight, y, left, right, slope float64) float64 {
	s := k.glow.sheet
	j, bv := locate(s.lineV, y)
	w.u.fill(s.lineU, k.a, k.c, left, right, k.crate != nil)
	w.u.fade(k.a, k.c, slope)
	n := len(s.nodeU)
	sum := 0.0
	for i, x := range w.u.at {
		bu, p := &w.u.basis[i], w.u.panel[i]*order
		value := 0.0
		for b := range order {
			row := k.glow.value[(j*order+b)*n+p:][:order]
			value += bv[b] * (bu[0]*row[0] + bu[1]*row[1] + bu[2]*row[2])
		}
		sum += w.u.share[i] * value * k.response(x, y)
	}
	return sum
}

// edges are the ends of the steps that fill would make, low and high included.
func (s *span) edges(lines []float64, foot, height, low, high float64, kink bool) []float64 {
	s.fill(lines, foot, height, low, high, kink)
	out := append(s.cuts[:0], low, high)
	for i := order; i < len(s.at); i += order {
		// Gauss points stand symmetrical in their step: its start is as far
		// before the first as its end is behind the last.
		first, last := s.at[i], s.at[i+order-1]
		step := (last - first) / (gaussPlace[order-1] - gaussPlace[0])
		out = append(out, first-step*gaussPlace[0])
	}
	return out
}

// rowEnds are where a row at y enters and leaves a convex outline.
func rowEnds(outline [][2]float64, y float64) (left, right float64) {
	left, right = math.Inf(1), math.Inf(-1)
	for i, a := range outline {
		b := outline[(i+1)%len(outline)]
		if (a[1] > y) == (b[1] > y) {
			continue
		}
		x := a[0] + (y-a[1])/(b[1]-a[1])*(b[0]-a[0])
		left, right = math.Min(left, x), math.Max(right, x)
	}
	return left, right
}

// crated adds up a piece of an upright face that is seen through the crate:
// cut at the crate's kinks, then piece by piece over triangles.
func (e *Engine) crated(w *sight, k *kernel, p shape.Polygon, eye r3.Vec) float64 {
	g := k.glow
	sum := 0.0
	for _, piece := range k.crate.split(w, []shape.Polygon{p}, eye) {
		sum += overPolygon(piece, eye, crateRatio, func(x r3.Vec) float64 {
			u, v, _ := g.local(x)
			d := r3.Sub(x, eye)
			d = r3.Scale(1/norm(d), d)
			return g.sheet.at(g.value, u, v) * k.response(u, v) * k.crate.passes(d)
		})
	}
	return sum
}

// crateRatio is the widest step over a face that is seen through the crate,
// over its distance.
const crateRatio = 1.0
