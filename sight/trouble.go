package sight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// inBox tells whether the way leads through the box, and at which main value: by the
// distance to the box, which changes no faster than the lens moves.
func inBox(r *rig.Rig, w *way) (float64, bool) {
	x, y := r.Optics.Size[0]/2, r.Optics.Size[1]/2
	depth := math.Max(r.Optics.Depth, 0)
	away := func(eye r3.Vec) float64 {
		at := r.Pose.In(eye)
		return math.Max(math.Max(math.Abs(at.X)-x, math.Abs(at.Y)-y), math.Max(at.Z-depth, -r.LowestBy-at.Z))
	}
	return reaches(w, away)
}

// inWall tells whether a way that begins in the room leaves it.
func inWall(r *rig.Rig, w *way) (float64, bool) {
	room := r.Plan.Room
	if room == nil || room.Size == nil || room.Outdoors != nil || w.high <= w.low {
		return 0, false
	}
	size := vec(*room.Size)
	low := r3.Vec{X: -size.X / 2, Y: -size.Y / 2}
	if room.Origin != nil {
		low = r3.Vec{X: -float64(room.Origin[0]), Y: -float64(room.Origin[1])}
	}
	high := r3.Add(low, size)
	inside := func(e r3.Vec) float64 {
		return math.Min(math.Min(math.Min(e.X-low.X, high.X-e.X), math.Min(e.Y-low.Y, high.Y-e.Y)), math.Min(e.Z-low.Z, high.Z-e.Z))
	}
	return reaches(w, inside)
}

// nearly is the distance (m) under which a way counts as reaching something.
const nearly = 1e-4

// reaches finds a main value where a distance falls to 0. The distance may change no
// faster than the lens moves.
func reaches(w *way, distance func(r3.Vec) float64) (float64, bool) {
	l := &looker{way: w}
	var search func(s stretch) (float64, bool)
	search = func(s stretch) (float64, bool) {
		eye, _, _, by := w.reach(s)
		d := distance(eye)
		switch {
		case d <= 0:
			return s.main, true
		case d > by.shift:
			return 0, false
		case by.shift < nearly:
			return s.main, true
		}
		a, b := s, s
		if w.boom != nil && s.halfBoom*(w.boom[1]-w.boom[0]) > w.moves(s.halfMain) {
			a.halfBoom, b.halfBoom = s.halfBoom/2, s.halfBoom/2
			a.boom, b.boom = s.boom-a.halfBoom, s.boom+b.halfBoom
		} else {
			a.halfMain, b.halfMain = s.halfMain/2, s.halfMain/2
			a.main, b.main = s.main-a.halfMain, s.main+b.halfMain
		}
		if at, ok := search(a); ok {
			return at, true
		}
		return search(b)
	}
	return search(l.whole(w.low, w.high))
}

// throughSet tells whether the way crosses a set wall: in straight steps of a quarter
// degree or less, at the least and the greatest height.
func throughSet(s *scene, w *way) (float64, bool) {
	if w.kind == "pan" || w.kind == "stands" {
		return 0, false
	}
	const steps = 1440
	for _, boom := range [2]float64{0, 1} {
		last := w.eye(w.low, boom)
		for i := 1; i <= steps; i++ {
			main := w.low + (w.high-w.low)*float64(i)/steps
			next := w.eye(main, boom)
			for j := range s.set {
				each := &s.set[j]
				if (each.solid != nil && each.solid.Crosses(last, next)) || (each.solid == nil && each.polygon.Crosses(last, next)) {
					return main, true
				}
			}
			last = next
		}
		if w.boom == nil {
			break
		}
	}
	return 0, false
}
