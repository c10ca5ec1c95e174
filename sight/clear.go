package sight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
)

// boxScene is the box alone, raised, among the set walls: the box's own parts don't
// hide each other, because any of them in shot is the box in shot.
func boxScene(r *rig.Rig, raised float64) *scene {
	whole := newScene(r, raised)
	only := &scene{set: whole.set}
	box := body{part: "box", ofBox: true, ofRig: true}
	for i := range whole.bodies {
		if !whole.bodies[i].ofBox {
			continue
		}
		for _, each := range whole.bodies[i].solids {
			if whole.shell == nil || !whole.inShell(&each) || each.solid == nil {
				each.hides = false
				box.solids = append(box.solids, each)
			}
		}
	}
	only.bodies = []body{box}
	only.index()
	return only
}

// boxSeen tells whether anything of the box comes into frame at a trim.
func boxSeen(r *rig.Rig, w *way, raised float64) bool {
	s := boxScene(r, raised)
	if len(s.bodies[0].solids) == 0 {
		return false
	}
	l := &looker{scene: s, way: w}
	return l.ever(&s.bodies[0])
}

// plannedTrim is the height of the lowest edge of the level box.
func plannedTrim(r *rig.Rig) float64 { return r.ClothAt - r.LowestBy }

// trimError is within what the clear trim is solved, in m.
const trimError = 1e-4

// clearTrim is the lowest trim at and above which the box is out of every frame of the
// way; NaN where no trim is. The search comes down from a height over all frames.
func clearTrim(r *rig.Rig, w *way) float64 {
	trim := plannedTrim(r)
	high := topOfFrames(r, w)
	if math.IsNaN(high) || boxSeen(r, w, high-trim) {
		return math.NaN()
	}
	low := high
	for {
		if low <= 0 {
			return 0
		}
		low = math.Max(0, low-math.Max(0.1, 0.02*low))
		if boxSeen(r, w, low-trim) {
			break
		}
		high = low
	}
	for high-low > trimError {
		middle := (low + high) / 2
		if boxSeen(r, w, middle-trim) {
			low = middle
		} else {
			high = middle
		}
	}
	return high
}

// steepest is the elevation (rad) of a frame's upper edge from which on no trim of a
// real building clears it.
const steepest = 89 * math.Pi / 180

// topOfFrames is a trim above the upper edges of all frames over the box, with some to
// spare; NaN where a frame takes in the zenith, nearly.
func topOfFrames(r *rig.Rig, w *way) float64 {
	half := math.Hypot(r.Optics.Size[0], r.Optics.Size[1])/2 + math.Max(r.Optics.Depth, 0) + r.LowestBy + 1
	center := r.Pose.Origin
	top := 0.0
	const looks = 360
	for i := 0; i <= looks; i++ {
		for _, boom := range [3]float64{0, 0.5, 1} {
			eye := w.eye(w.low+(w.high-w.low)*float64(i)/looks, boom)
			_, pitch := w.aim(eye)
			edge := pitch + w.tilt[1] + math.Atan(w.frame.up)
			if edge >= steepest {
				return math.NaN()
			}
			reach := math.Hypot(center.X-eye.X, center.Y-eye.Y) + half
			top = math.Max(top, eye.Z+reach*math.Max(0, math.Tan(edge)))
		}
	}
	return 1.05*top + half // half: a tilted box reaches below its trim
}

// The lenses that are considered, by the tangent of half the frame's larger angle: from
// nearly all that is ahead to next to nothing.
const (
	widestTangent   = 11.4 // 85 degrees
	narrowestOfWide = 1e-3
)

// widestLens is the shortest focal length (m) with which nothing of the rig is in shot,
// for the camera's sensor and squeeze. any is true where the widest considered is clear;
// NaN where none is.
func widestLens(s *scene, w *way, lens float64) (widest float64, any bool) {
	larger := math.Max(w.frame.across, w.frame.up)
	low := lens * larger / widestTangent
	high := lens * larger / narrowestOfWide
	least := low
	for _, i := range s.nearestFirst(w) {
		b := &s.bodies[i]
		if !b.ofRig || !seenWith(s, w, b, low/lens) {
			continue
		}
		if seenWith(s, w, b, high/lens) {
			return math.NaN(), false
		}
		low = bisectLens(s, w, b, low, bracketLens(s, w, b, low, high, lens), lens)
	}
	return low, low == least
}

// bracketLens finds, by growing steps from a lens with which a body is seen, one with
// which it is not: most bodies ask for little more than the one before.
func bracketLens(s *scene, w *way, b *body, seen, clear, lens float64) float64 {
	for step := 1.01; seen*step < clear; step *= step {
		if !seenWith(s, w, b, seen*step/lens) {
			return seen * step
		}
	}
	return clear
}

// lensError is within what the widest clear lens is solved, relative to it.
const lensError = 1e-5

func bisectLens(s *scene, w *way, b *body, seen, clear, lens float64) float64 {
	for clear/seen > 1+lensError {
		middle := math.Sqrt(clear * seen)
		if seenWith(s, w, b, middle/lens) {
			seen = middle
		} else {
			clear = middle
		}
	}
	return clear
}

// seenWith looks with a lens so many times as long.
func seenWith(s *scene, w *way, b *body, longer float64) bool {
	other := *w
	other.frame = frame{w.frame.across / longer, w.frame.up / longer}
	l := &looker{scene: s, way: &other}
	return l.ever(b)
}

// nearestFirst sorts bodies by how near to the axis of the lens they come in the middle
// of the way, so that most others need no search of their own.
func (s *scene) nearestFirst(w *way) []int {
	eye := w.eye((w.low+w.high)/2, 0.5)
	axis := r3.Unit(r3.Sub(w.looks, eye))
	order := make([]int, len(s.bodies))
	angles := make([]float64, len(s.bodies))
	for i := range s.bodies {
		order[i] = i
		angles[i] = math.Inf(1)
		for _, each := range s.bodies[i].solids {
			d := r3.Sub(each.center, eye)
			if n := r3.Norm(d); n > 0 {
				angles[i] = math.Min(angles[i], math.Acos(math.Max(-1, math.Min(1, r3.Dot(axis, d)/n))))
			}
		}
	}
	sortBy(order, angles)
	return order
}
