package sight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// fineness is how finely a way is looked at, in its main value.
type fineness struct {
	gap    float64 // stretches that are seen at both ends and in the middle are not divided under this
	peek   float64 // where others hide a part jointly, it is looked at this often
	edge   float64 // least stretch near the frame's edge
	touch  float64 // the same where only whether something is seen is asked
	angle  float64 // error of an entering or leaving value
	pans   int     // divisions of the pan range at most, by halving
	booms  int     // heights of a boom
	bother int     // windows looked through for one pan range at most
}

func (w *way) fineness() fineness {
	long := w.high - w.low
	f := fineness{gap: long / 120, peek: long / 1440, edge: long / (1 << 17), touch: long / (1 << 14), angle: long * 1e-11, pans: 12, booms: 9, bother: 400}
	if w.free() { // every look costs many
		f.gap, f.peek, f.edge, f.touch, f.booms = long/60, long/360, long/4096, long/2048, 5
	}
	return f
}

// free tells whether a camera that moves also pans, or one booms.
func (w *way) free() bool {
	return w.pan[1] > w.pan[0] || (w.boom != nil && w.boom[1] > w.boom[0])
}

// spot is where on the way, and how, something is seen.
type spot struct {
	main, pan, boom float64
	pitch           float64
}

// seenAt tells whether something of some solids is seen at a main value, for some pan,
// tilt and boom of the ranges.
func (l *looker) seenAt(active []*solid, main float64) (spot, bool) {
	booms := 1
	if l.way.boom != nil && l.way.boom[1] > l.way.boom[0] {
		booms = l.way.fineness().booms
	}
	for i := range booms {
		boom := 0.0
		if booms > 1 {
			boom = float64(i) / float64(booms-1)
		}
		eye := l.way.eye(main, boom)
		for _, each := range active {
			if at, ok := l.solidSeen(each, eye, main, boom); ok {
				return at, true
			}
		}
	}
	return spot{}, false
}

// all are a body's solids.
func (b *body) all() []*solid {
	out := make([]*solid, len(b.solids))
	for i := range b.solids {
		out[i] = &b.solids[i]
	}
	return out
}

// solidSeen looks for the frame first, which is cheap, and then for what hides.
func (l *looker) solidSeen(of *solid, eye r3.Vec, main, boom float64) (spot, bool) {
	if !l.inFrame(of, eye, main, boom) || l.scene.staysHidden(of, eye, 0) {
		return spot{}, false
	}
	l.cutter.Reset()
	for _, piece := range l.visible(of, eye) {
		if at, ok := l.taken(piece, eye, main, boom); ok {
			return at, true
		}
	}
	return spot{}, false
}

func (l *looker) inFrame(of *solid, eye r3.Vec, main, boom float64) bool {
	yaw, pitch := l.way.yawAt(eye, main, (l.way.pan[0]+l.way.pan[1])/2)
	v := l.way.window(eye, yaw, pitch)
	if v.misses(of.corners, play{yaw: (l.way.pan[1] - l.way.pan[0]) / 2}) {
		return false
	}
	l.cutter.Reset()
	l.faces = of.faces(eye, l.faces[:0])
	for _, face := range l.faces {
		if _, ok := l.taken(face, eye, main, boom); ok {
			return true
		}
	}
	return false
}

// taken tells whether a polygon comes into frame for some pan of the range: by halving
// the range, leaving out what is proved to miss.
func (l *looker) taken(p shape.Polygon, eye r3.Vec, main, boom float64) (spot, bool) {
	fine := l.way.fineness()
	left := fine.bother
	var search func(pan, half float64, depth int) (spot, bool)
	search = func(pan, half float64, depth int) (spot, bool) {
		left--
		yaw, pitch := l.way.yawAt(eye, main, pan)
		v := l.way.window(eye, yaw, pitch)
		if v.misses(p, play{yaw: half}) {
			return spot{}, false
		}
		if pitch, ok := v.takes(&l.cutter, p); ok {
			return spot{main, pan, boom, pitch}, true
		}
		if half == 0 || depth == 0 || left <= 0 {
			return spot{}, false
		}
		if at, ok := search(pan-half/2, half/2, depth-1); ok {
			return at, true
		}
		return search(pan+half/2, half/2, depth-1)
	}
	if l.way.pan[1] > l.way.pan[0] { // toward it, and the ends: there most comes in
		center, _ := p.Bound()
		for _, pan := range [3]float64{l.way.toward(eye, center), l.way.pan[0], l.way.pan[1]} {
			yaw, pitch := l.way.yawAt(eye, main, pan)
			v := l.way.window(eye, yaw, pitch)
			if pitch, ok := v.takes(&l.cutter, p); ok {
				return spot{main, pan, boom, pitch}, true
			}
		}
	}
	return search((l.way.pan[0]+l.way.pan[1])/2, (l.way.pan[1]-l.way.pan[0])/2, fine.pans)
}

// toward is the pan of the range that turns a lens most toward a place.
func (w *way) toward(eye, at r3.Vec) float64 {
	yaw, _ := w.aim(eye)
	d := r3.Sub(at, eye)
	middle := (w.pan[0] + w.pan[1]) / 2
	pan := middle + math.Remainder(math.Atan2(d.Y, d.X)-yaw-middle, 2*math.Pi)
	return math.Max(w.pan[0], math.Min(w.pan[1], pan))
}

// shows tells whether the middle of a solid is in frame in the middle of a stretch, at
// the pan of the stretch that turns most toward it: then no proof is to be had that the
// solid stays out.
func (l *looker) shows(of *solid, s stretch, eye r3.Vec) bool {
	yaw, pitch := l.way.yawAt(eye, s.main, math.Max(s.pan-s.halfPan, math.Min(s.pan+s.halfPan, l.way.toward(eye, of.center))))
	v := l.way.window(eye, yaw, pitch)
	return v.holds(of.center)
}

// cannotSee proves that a stretch of the way never shows a solid: out is true where it
// stays out of frame, else it stays hidden. Pan and boom are halved while they make the
// bound wider than the stretch itself does.
func (l *looker) cannotSee(of *solid, s stretch) (never, out bool) {
	eye, yaw, pitch, by := l.way.reach(s)
	v := l.way.window(eye, yaw, pitch)
	if v.misses(of.corners, by) {
		return true, true
	}
	if l.scene.staysHidden(of, eye, by.shift) {
		return true, false
	}
	if l.shows(of, s, eye) && !l.scene.staysHidden(of, eye, 0) {
		return false, false
	}
	boomed := 0.0
	if l.way.boom != nil {
		boomed = s.halfBoom * (l.way.boom[1] - l.way.boom[0])
	}
	moved := l.way.moves(s.halfMain)
	own := l.turns(s.halfMain) // what the stretch alone turns
	switch {
	case boomed > math.Max(moved, 1e-3) && boomed >= s.halfPan:
		s.halfBoom /= 2
		return l.both(of, s, func(s *stretch, sign float64) { s.boom += sign * s.halfBoom })
	case s.halfPan > math.Max(own, 1e-4):
		s.halfPan /= 2
		return l.both(of, s, func(s *stretch, sign float64) { s.pan += sign * s.halfPan })
	}
	return false, false
}

// turns is about how much a stretch's lens turns.
func (l *looker) turns(halfMain float64) float64 {
	if l.way.kind == "pan" {
		return halfMain
	}
	d := r3.Norm(r3.Sub(l.way.looks, l.way.eye((l.way.low+l.way.high)/2, 0.5)))
	return 2 * l.way.moves(halfMain) / math.Max(d, 0.1)
}

func (l *looker) both(of *solid, s stretch, put func(s *stretch, sign float64)) (never, out bool) {
	a, b := s, s
	put(&a, -1)
	put(&b, 1)
	neverA, outA := l.cannotSee(of, a)
	if !neverA {
		return false, false
	}
	neverB, outB := l.cannotSee(of, b)
	return neverB, outA && outB
}

// whole is a stretch of main values with all pans and booms.
func (l *looker) whole(low, high float64) stretch {
	pan := l.way.pan
	s := stretch{main: (low + high) / 2, halfMain: (high - low) / 2, pan: (pan[0] + pan[1]) / 2, halfPan: (pan[1] - pan[0]) / 2}
	if l.way.boom != nil {
		s.boom, s.halfBoom = 0.5, 0.5
	}
	return s
}

// remain are the solids that a stretch may show: the others are proved to stay out of
// frame or hidden all along it.
func (l *looker) remain(active []*solid, low, high float64) []*solid {
	s := l.whole(low, high)
	var left []*solid
	for _, each := range active {
		if never, _ := l.cannotSee(each, s); !never {
			left = append(left, each)
		}
	}
	return left
}

// ever tells whether a body is seen anywhere on the way.
func (l *looker) ever(b *body) bool { return !l.clear(b.all(), l.way.low, l.way.high) }

// clear tells whether solids are seen nowhere on a stretch, from coarse to fine: each
// stretch that isn't proved to show nothing is looked at in its middle.
func (l *looker) clear(active []*solid, low, high float64) bool {
	if active = l.remain(active, low, high); len(active) == 0 {
		return true
	}
	fine := l.way.fineness()
	middle := (low + high) / 2
	if _, ok := l.seenAt(active, middle); ok {
		return false
	}
	long := high - low
	if long <= fine.touch || (long <= fine.peek && l.hiddenInFrame(active, middle)) {
		return true
	}
	return l.clear(active, low, middle) && l.clear(active, middle, high)
}

// hiddenInFrame tells whether a solid lies in the frame at a main value, seen or not.
func (l *looker) hiddenInFrame(active []*solid, main float64) bool {
	booms := [3]float64{0, 0.5, 1}
	n := 1
	if l.way.boom != nil {
		n = 3
	}
	for _, boom := range booms[:n] {
		eye := l.way.eye(main, boom)
		for _, each := range active {
			if l.inFrame(each, eye, main, boom) {
				return true
			}
		}
	}
	return false
}
