package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// The forward lobe keeps the direction to each lamp: that is the hot spot. What
// a receiver gets of it is added up directly, for places on the lamp's opening
// and, for each, over the cloth about the point where the straight way crosses
// it: the lobe's own width there says how far and how finely.

// relay is one way of light forward through a cloth: unscattered through the
// cloths above, or by lobes of theirs, which count as one wider lobe here.
type relay struct {
	plane int
	above int     // planes with a lower number are already in the part
	part  float64 // share of the light on the first cloth above
	lobe  *lobe
}

// relays lists the ways to go forward through every cloth.
func (e *Engine) listRelays() {
	for k, p := range e.planes {
		if p.cloth.ForwardPart == 0 {
			continue
		}
		e.primary = len(e.relays) // at last the lowest cloth's own
		e.relays = append(e.relays, relay{k, k, p.cloth.ForwardPart, newLobe(p.cloth.ForwardSigma)})
		e.listDoubled(k, k-1, p.cloth.ForwardPart, p.cloth.ForwardSigma*p.cloth.ForwardSigma)
	}
}

// listDoubled adds the ways that a cloth above has already spread: variances of
// lobes add.
func (e *Engine) listDoubled(k, above int, part, variance float64) {
	for j := above; j >= 0; j-- {
		c := e.planes[j].cloth
		if c.ForwardPart == 0 {
			part *= c.Through
			continue
		}
		both := variance + c.ForwardSigma*c.ForwardSigma
		e.relays = append(e.relays, relay{k, j, part * c.ForwardPart, newLobe(math.Sqrt(both))})
		e.listDoubled(k, j-1, part*c.ForwardPart, both)
		part *= c.Through
	}
}

// forwarded is what the lobes give at a station, lx.
func (e *Engine) forwarded(w *sight, from station, m meter) float64 {
	sum := 0.0
	for i := range e.relays {
		r := &e.relays[i]
		if r.plane >= from.chamber || from.at.Z >= e.planes[r.plane].z {
			continue
		}
		for j := range e.lamps {
			sum += e.relayed(w, r, &e.lamps[j], from, m)
		}
	}
	return sum + e.bounced(w, from, m)
}

// relayed is what one lamp gives by one relay.
func (e *Engine) relayed(w *sight, r *relay, l *lamp, from station, m meter) float64 {
	sum := 0.0
	for k := range l.parts {
		p := &l.parts[k]
		if p.chamber > r.above || l.Lumens == 0 {
			continue
		}
		factor := r.part
		for c := p.chamber; c < r.above; c++ {
			factor *= e.planes[c].passes()
		}
		for c := r.plane + 1; c < from.chamber; c++ {
			factor *= e.planes[c].passes()
		}
		if factor == 0 {
			continue
		}
		if !e.prepareSpot(w, r, l, p, from, m) {
			continue
		}
		w.starts = placesOn(w.starts[:0], l, p, from.at, w.spot.step(l))
		for _, s := range w.starts {
			sum += factor * s.share * e.spot(w, s.at)
		}
	}
	return sum
}

// start is a place on an opening with its area, m2.
type start struct {
	at    r3.Vec
	share float64
}

// spotCase is what stays the same while one lamp, one receiver and one cloth
// are added up.
type spotCase struct {
	relay          *relay
	lamp           *lamp
	part           *part
	from           station
	meter          meter
	z              float64 // of the cloth
	low, high      [2]float64
	crate          *Crate
	coarse         bool
	across, beyond []*occluder // what may come between lamp and cloth; cloth and receiver
}

// prepareSpot sets the case: where on the cloth light can come from, what may
// stand in the way.
func (e *Engine) prepareSpot(w *sight, r *relay, l *lamp, p *part, from station, m meter) bool {
	c := &w.spot
	*c = spotCase{relay: r, lamp: l, part: p, from: from, meter: m, z: e.planes[r.plane].z, across: c.across[:0], beyond: c.beyond[:0]}
	for i := range 2 {
		c.low[i], c.high[i] = -e.scene.Clear[i]/2, e.scene.Clear[i]/2
	}
	if from.chamber == len(e.planes) && e.scene.Crate != nil {
		c.crate = e.scene.Crate
		height := c.z - from.at.Z
		at := [2]float64{from.at.X, from.at.Y}
		for i, cell := range [2]float64{c.crate.CellX, c.crate.CellY} {
			reach := cell / c.crate.Depth * height
			c.low[i], c.high[i] = math.Max(c.low[i], at[i]-reach), math.Min(c.high[i], at[i]+reach)
		}
	}
	if c.low[0] >= c.high[0] || c.low[1] >= c.high[1] || l.highest() <= c.z-snap {
		return false
	}
	e.gatherBetween(c)
	return true
}

func (l *lamp) highest() float64 { return l.whole.high.Z }

// gatherBetween lists what may stand between, by upright blocks.
func (e *Engine) gatherBetween(c *spotCase) {
	patch := subject{low: r3.Vec{X: c.low[0], Y: c.low[1], Z: c.z}, high: r3.Vec{X: c.high[0], Y: c.high[1], Z: c.z}}
	list := func(to []*occluder, by []occluder, low, high r3.Vec) []*occluder {
		for i := range by {
			o := &by[i]
			own := o.lamp >= 0 && &e.lamps[o.lamp] == c.lamp
			if !own && o.low.X < math.Max(high.X, patch.high.X) && o.high.X > math.Min(low.X, patch.low.X) &&
				o.low.Y < math.Max(high.Y, patch.high.Y) && o.high.Y > math.Min(low.Y, patch.low.Y) &&
				o.low.Z < math.Max(high.Z, c.z) && o.high.Z > math.Min(low.Z, c.z) {
				to = append(to, o)
			}
		}
		return to
	}
	c.across = list(c.across, e.hides.common, c.lamp.whole.low, c.lamp.whole.high)
	if !c.part.inside {
		c.across = list(c.across, e.hides.shell, c.lamp.whole.low, c.lamp.whole.high)
	}
	at := c.from.at
	c.beyond = list(c.beyond, e.hides.common, at, at)
	if c.from.chamber == len(e.planes) {
		c.beyond = list(c.beyond, e.hides.below, at, at)
	}
}

// step is the widest over an opening, over its distance. A crate's kinks blur
// only as far as the lobe goes.
func (c *spotCase) step(l *lamp) float64 {
	step := startRatio * math.Min(1, l.Distribution.Scale())
	if c.crate != nil {
		step = math.Min(step, 2*c.relay.lobe.sigma)
	}
	return step
}

// placesOn are places on an opening, closer where it is near.
func placesOn(to []start, l *lamp, p *part, eye r3.Vec, step float64) []start {
	if p.share < 1-1e-9 { // cut by a plane: by triangles
		for i := 2; i < len(p.opening); i++ {
			a, b, c := p.opening[0], p.opening[i-1], p.opening[i]
			area := norm(r3.Cross(r3.Sub(b, a), r3.Sub(c, a))) / 2
			for _, q := range cubature {
				x := r3.Add(r3.Add(r3.Scale(q.a, a), r3.Scale(q.b, b)), r3.Scale(1-q.a-q.b, c))
				to = append(to, start{x, area * q.weight})
			}
		}
		return to
	}
	step *= norm(r3.Sub(eye, l.Centre))
	nu, nv := stepsOver(l.Size[0], step), stepsOver(l.Size[1], step)
	for i := range nu {
		for j := range nv {
			for _, s := range starPlaces {
				u := ((float64(i)+0.5+s[0])/float64(nu) - 0.5) * l.Size[0]
				v := ((float64(j)+0.5+s[1])/float64(nv) - 0.5) * l.Size[1]
				at := r3.Add(l.Centre, r3.Add(r3.Scale(u, l.U), r3.Scale(v, l.V)))
				to = append(to, start{at, l.Size[0] * l.Size[1] / float64(3*nu*nv)})
			}
		}
	}
	return to
}

// stepsOver is how many steps go over a length.
func stepsOver(length, step float64) int { return max(1, min(8, int(math.Ceil(length/step)))) }

// starPlaces are three places on a unit square about its middle that integrate
// every polynomial of degree two: on a circle of radius 1/sqrt(6).
var starPlaces = [3][2]float64{{0, 0.40824829046386301637}, {-0.35355339059327376220, -0.20412414523193150818}, {0.35355339059327376220, -0.20412414523193150818}}

// startRatio is the widest step over an opening, of three places each, over its distance.
const startRatio = 0.4

// spot adds up the cloth for one place on the opening: lx per m2 of opening.
func (e *Engine) spot(w *sight, s r3.Vec) float64 {
	c := &w.spot
	a, b := math.Max(s.Z-c.z, lowest), c.z-c.from.at.Z
	s.Z = c.z + a
	dx, dy := c.from.at.X-s.X, c.from.at.Y-s.Y
	t := a / (a + b)
	x0, y0 := s.X+t*dx, s.Y+t*dy
	straight := math.Sqrt(dx*dx + dy*dy + (a+b)*(a+b))
	cos := (a + b) / straight
	near, far := t*straight, (1-t)*straight
	sigma := c.relay.lobe.sigma
	width := sigma * near * far / straight
	// Along the slant the spot is longer by 1/cos; its block along x and y.
	ex, ey := 1.0, 0.0
	if flat := math.Hypot(dx, dy); flat > 0 {
		ex, ey = dx/flat, dy/flat
	}
	o := oval{across: lobeReach * width, ahead: lobeReach * width / cos, behind: lobeReach * width / cos, ex: ex, ey: ey}
	wx, wy := o.extent(ex, ey)
	narrow := (lobeReach * width) * (lobeReach * width) / cos / (wx * wy) // width across over the block's
	if wide := lobeReach * sigma; wide > plainReach*1.2*cos {
		at := ray{s.X, s.Y, a, x0, y0, c.from.at.X, c.from.at.Y, b}
		o.ahead, o.behind = at.reach(ex, ey, wide, o.ahead), at.reach(-ex, -ey, wide, o.behind)
		o.across = at.reach(-ey, ex, wide, o.across)
	}
	w.u.spread(x0, wx, o.toward(ex, ey), o.toward(-ex, ey), narrow, sigma, c.low[0], c.high[0], c.from.at.X, c.crate != nil, c.coarse)
	w.v.spread(y0, wy, o.toward(ey, ex), o.toward(-ey, ex), narrow, sigma, c.low[1], c.high[1], c.from.at.Y, c.crate != nil, c.coarse)
	if c.crate != nil {
		w.u.fade(c.from.at.X, b, c.crate.Depth/c.crate.CellX)
		w.v.fade(c.from.at.Y, b, c.crate.Depth/c.crate.CellY)
		return c.crate.openShare() * e.spotSum(w, s, a, b)
	}
	return e.spotSum(w, s, a, b)
}

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
func (r *ray) reach(ux, uy, angle, guess float64) float64 {
	for range 4 {
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

// lowest is the height (m) that an opening on the cloth itself is taken at: the
// sum over the cloth does not change below it.
const lowest = 1e-5

// spotSum is the sum over the cloth.
func (e *Engine) spotSum(w *sight, s r3.Vec, a, b float64) float64 {
	c := &w.spot
	l, lobe := c.lamp, c.relay.lobe
	perArea := l.Lumens / (l.Size[0] * l.Size[1])
	plain := len(c.across) == 0 && len(c.beyond) == 0
	if plain && l.lambertian && c.meter.receptor == Flat {
		return perArea * w.plainSpot(s, a, b)
	}
	n := c.meter.faces
	sum := 0.0
	for j, y := range w.v.at {
		sy, py := y-s.Y, c.from.at.Y-y
		rowDot, row1, row2 := sy*py+a*b, sy*sy+a*a, py*py+b*b
		aimY := sy*l.Axis.Y - a*l.Axis.Z
		faceY := -py*n.Y + b*n.Z
		row := 0.0
		for i, x := range w.u.at {
			sx, px := x-s.X, c.from.at.X-x
			r1, r2 := row1+sx*sx, row2+px*px
			inverse := 1 / (r1 * r2)
			g := lobe.at((rowDot + sx*px) * math.Sqrt(inverse))
			if g == 0 {
				continue
			}
			d1 := math.Sqrt(r1)
			var emitted float64 // intensity times distance
			if l.lambertian {
				emitted = math.Max(0, sx*l.Axis.X+aimY) / math.Pi
			} else {
				emitted = d1 * l.Distribution.Intensity(r3.Vec{
					X: (sx*l.U.X + sy*l.U.Y - a*l.U.Z) / d1, Y: (sx*l.V.X + sy*l.V.Y - a*l.V.Z) / d1, Z: (sx*l.Axis.X + aimY) / d1})
			}
			var weight float64
			if d2 := math.Sqrt(r2); c.meter.receptor == Flat {
				weight = math.Max(0, faceY-px*n.X) / d2
			} else {
				weight = c.meter.weigh(r3.Vec{X: -px / d2, Y: -py / d2, Z: b / d2})
			}
			value := w.u.share[i] * emitted * a / (r1 * r1) * g * lobe.made(a/d1) * weight / r2
			if value != 0 && !plain && e.stopped(c, s, r3.Vec{X: x, Y: y, Z: c.z}) {
				continue
			}
			row += value
		}
		sum += w.v.share[j] * row
	}
	return sum * perArea
}

// plainSpot is spotSum where nothing stands between, the lamp is Lambertian and
// the receiver flat: most of the work, so kept short.
func (w *sight) plainSpot(s r3.Vec, a, b float64) float64 {
	c := &w.spot
	axis, n, lobe := c.lamp.Axis, c.meter.faces, c.relay.lobe
	end := math.Cos(math.Min(math.Pi, lobeReach*lobe.sigma))
	share := w.u.share[:len(w.u.at)]
	sum := 0.0
	for j, y := range w.v.at {
		sy, py := y-s.Y, c.from.at.Y-y
		rowDot, row1, row2 := sy*py+a*b, sy*sy+a*a, py*py+b*b
		aimY := sy*axis.Y - a*axis.Z
		faceY := -py*n.Y + b*n.Z
		row := 0.0
		for i, x := range w.u.at {
			sx, px := x-s.X, c.from.at.X-x
			r1, r2 := row1+sx*sx, row2+px*px
			inverse := 1 / (r1 * r2)
			root := math.Sqrt(inverse)
			cos := (rowDot + sx*px) * root
			if cos <= end {
				continue
			}
			emitted, weight := sx*axis.X+aimY, faceY-px*n.X
			if emitted <= 0 || weight <= 0 {
				continue
			}
			// 1/d1 = d2 * root; the rest is emitted weight a / (r1^2 r2 d2).
			d2 := math.Sqrt(r2)
			row += share[i] * emitted * weight * inverse * lobe.at(cos) * lobe.made(a*d2*root) / (r1 * d2)
		}
		sum += w.v.share[j] * row
	}
	return sum * a / math.Pi
}

// stopped tells whether something stands between the lamp's place, the cloth's
// and the receiver.
func (e *Engine) stopped(c *spotCase, s, x r3.Vec) bool {
	for _, o := range c.across {
		if o.crosses(s, x) {
			return true
		}
	}
	for _, o := range c.beyond {
		if o.crosses(x, c.from.at) {
			return true
		}
	}
	return false
}

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
