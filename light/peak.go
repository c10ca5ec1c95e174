package light

import "math"

// oval is how far a spot reaches: ahead and behind along its slant ex, ey, and
// to both sides, m.
type oval struct{ across, ahead, behind, ex, ey float64 }

// extent along x and along y, for the longer end.
func (o *oval) extent(ex, ey float64) (x, y float64) {
	long := math.Max(o.ahead, o.behind)
	return math.Hypot(long*ex, o.across*ey), math.Hypot(long*ey, o.across*ex)
}

// toward is the reach along an axis on the side where the slant has the share
// `along` of it.
func (o *oval) toward(along, other float64) float64 {
	end := o.ahead
	if along < 0 {
		end = o.behind
	}
	return math.Hypot(end*along, o.across*other)
}

// plainReach is the share of the way's angle over the cloth (taken a little
// short) up to which the lobe's reach makes an ellipse.
const plainReach = 0.35

// ray is a straight way from a place a over the cloth to one b under it.
type ray struct{ sx, sy, a, x0, y0, px, py, b float64 }

// reach is how far from the crossing, in a direction on the cloth, the bend of
// the way grows to an angle.
func (r *ray) reach(ux, uy, angle, guess float64, rounds int) float64 {
	for range rounds {
		x, y := r.x0+guess*ux, r.y0+guess*uy
		sx, sy, px, py := x-r.sx, y-r.sy, r.px-x, r.py-y
		dot := sx*px + sy*py + r.a*r.b
		bend := math.Acos(math.Max(-1, math.Min(1, dot/math.Sqrt((sx*sx+sy*sy+r.a*r.a)*(px*px+py*py+r.b*r.b)))))
		step := math.Max(0.3, math.Min(4, angle/math.Max(bend, 1e-9)))
		guess *= step
		if guess > farthest || math.Abs(step-1) < 0.05 {
			break
		}
	}
	return math.Min(guess, farthest)
}

// farthest bounds a spot's reach, m: no cloth is longer.
const farthest = 100

// lobeReach is where the lobe ends, in widths: what is left out is under 1e-3 of it.
const lobeReach = 3.8

// spread sets Gauss points about a peak at x0, a reach to either side, between
// low and high; plain is the reach of a peak that bends evenly, and the steps
// are wider farther out where the true one is longer.
func (s *span) spread(x0, plain, above, beneath, narrow, sigma, low, high, foot float64, kink, coarse bool) {
	s.at, s.share = s.at[:0], s.share[:0]
	reach := math.Max(above, beneath)
	stretch := math.Max(1, reach/plain)
	a, b := math.Max(low, x0-beneath), math.Min(high, x0+above)
	if b <= a {
		return
	}
	if kink && foot > a && foot < b {
		s.peaked(x0, reach, stretch, narrow, sigma, a, foot, coarse)
		s.peaked(x0, reach, stretch, narrow, sigma, foot, b, coarse)
		return
	}
	s.peaked(x0, reach, stretch, narrow, sigma, a, b, coarse)
}

// peaked adds one interval by Gauss's rule in the variable t of
// x = x0 + reach (t (1-q) + q t^3), q = 1 - 1/stretch.
func (s *span) peaked(x0, reach, stretch, narrow, sigma, a, b float64, coarse bool) {
	q := 1 - 1/stretch
	from, to := cubicAt((a-x0)/reach, q), cubicAt((b-x0)/reach, q)
	n := int(math.Ceil(2 + 0.85*(1+sigma*(1.2+2*sigma))*lobeReach*(to-from)/math.Sqrt(narrow)))
	if coarse {
		n = int(math.Ceil(2 + coarseSteps*float64(n-2)))
	}
	rule := legendre(min(n, len(legendreRules)-1))
	for _, r := range rule {
		t := from + (to-from)*r.place
		s.at = append(s.at, x0+reach*t*(1-q+q*t*t))
		s.share = append(s.share, (to-from)*r.weight*reach*(1-q+3*q*t*t))
	}
}

// coarseSteps is the share of points that is enough for light from everywhere.
const coarseSteps = 0.5

// cubicAt solves y = t (1-q) + q t^3 for t.
func cubicAt(y, q float64) float64 {
	if q == 0 {
		return y
	}
	t := y
	for range 6 {
		t -= (t*(1-q+q*t*t) - y) / (1 - q + 3*q*t*t)
	}
	return t
}
