package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

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
	own := -1
	for i := range e.lamps {
		if &e.lamps[i] == c.lamp {
			own = i
		}
	}
	list := func(to []*occluder, by []occluder, low, high r3.Vec) []*occluder {
		for i := range by {
			if o := &by[i]; (o.lamp < 0 || o.lamp != own) && c.between(o, low, high) {
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

// between tells whether an occluder's block meets the ways between a block above or
// below the cloth and the cloth: they widen evenly, so at the block's level nearest to
// the cloth they are widest.
func (c *spotCase) between(o *occluder, low, high r3.Vec) bool {
	if o.low.Z >= math.Max(high.Z, c.z) || o.high.Z <= math.Min(low.Z, c.z) {
		return false
	}
	share := 1.0
	switch {
	case high.Z > c.z:
		share = (high.Z - o.low.Z) / (high.Z - c.z)
	case low.Z < c.z:
		share = (o.high.Z - low.Z) / (c.z - low.Z)
	}
	share = math.Max(0, math.Min(1, share))
	meets := func(oLow, oHigh, low, high, clothLow, clothHigh float64) bool {
		return oLow < high+share*math.Max(0, clothHigh-high) && oHigh > low+share*math.Min(0, clothLow-low)
	}
	return meets(o.low.X, o.high.X, low.X, high.X, c.low[0], c.high[0]) && meets(o.low.Y, o.high.Y, low.Y, high.Y, c.low[1], c.high[1])
}

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
		rounds := 4
		if c.coarse {
			rounds = 2
		}
		at := ray{s.X, s.Y, a, x0, y0, c.from.at.X, c.from.at.Y, b}
		o.ahead, o.behind = at.reach(ex, ey, wide, o.ahead, rounds), at.reach(-ex, -ey, wide, o.behind, rounds)
		o.across = at.reach(-ey, ex, wide, o.across, rounds)
	}
	low, high := c.low, c.high
	if l := c.lamp; !l.lambertian {
		narrow /= math.Pow(math.Max(1, width/(beamGrain*l.scale*near)), 2)
		low[0], high[0] = math.Max(low[0], s.X+a*l.slopes[0][0]), math.Min(high[0], s.X+a*l.slopes[0][1])
		low[1], high[1] = math.Max(low[1], s.Y+a*l.slopes[1][0]), math.Min(high[1], s.Y+a*l.slopes[1][1])
	}
	w.u.spread(x0, wx, o.toward(ex, ey), o.toward(-ex, ey), narrow, sigma, low[0], high[0], c.from.at.X, c.crate != nil, c.coarse)
	w.v.spread(y0, wy, o.toward(ey, ex), o.toward(-ey, ex), narrow, sigma, low[1], high[1], c.from.at.Y, c.crate != nil, c.coarse)
	if c.crate != nil {
		w.u.fade(c.from.at.X, b, c.crate.Depth/c.crate.CellX)
		w.v.fade(c.from.at.Y, b, c.crate.Depth/c.crate.CellY)
		return c.crate.openShare() * e.spotSum(w, s, a, b)
	}
	return e.spotSum(w, s, a, b)
}

// beamGrain is the width over a beam's scale under which a lobe is wider than the beam.
const beamGrain = 0.8

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
				emitted = d1 * l.intensity(r3.Vec{
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
