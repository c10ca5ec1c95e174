package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// How soft a shadow's edge is at a place: what throws it is half a plane that runs from
// the performer's left to right, square-on to the middle of the light (the light
// vector's direction). The edge moves across the source as the source really looks
// from that place, crate, skirts and hot spots included, and what is still seen of it
// is added up. Where a tenth and where nine tenths are seen fixes two directions; lines
// in these directions from the source's plane over an edge at a distance d fall
//
//	(tangent1 - tangent2) * d * D / (D - d)
//
// apart behind it, D the distance to the source's plane along the middle of the light.

// EdgesAnswer are the widths (10 to 90 %, m) of the shadow edges that a brow, a nose,
// a hat's brim and a raised arm throw.
type EdgesAnswer struct {
	Brow Number `json:"brow"`
	Nose Number `json:"nose"`
	Brim Number `json:"brim"`
	Arm  Number `json:"arm"`
}

// Distances (m) from what throws a shadow to where it falls: common practice.
const (
	browAway = 0.025
	noseAway = 0.030
	brimAway = 0.10
	armAway  = 0.50
)

// softness is where, in tangents from the middle of the light, an edge leaves nine
// tenths and one tenth of the light to a place, and how far the source is.
type softness struct{ full, dark, distance float64 }

// softnessAt looks from a place, in box axes; forward is where the performer faces.
func (e *Engine) softnessAt(at, forward, upward r3.Vec) softness {
	unknown := softness{math.NaN(), math.NaN(), math.NaN()}
	axis, total := e.middle(at)
	if !(total > 0) {
		return unknown
	}
	toward := ahead(axis, forward, upward)
	s := softness{distance: (e.sourceLevel() - at.Z) / axis.Z}
	if !(axis.Z > 0) || !(s.distance > 0) {
		return unknown
	}
	low, high := e.opening(at, axis, toward)
	if len(e.relays) > 0 {
		s.full, s.dark = e.edgesOfLobes(at, axis, toward, total, low, high)
		return s
	}
	s.full = e.edgeLeaving(at, axis, toward, 0.9, total, low, high)
	s.dark = e.edgeLeaving(at, axis, toward, 0.1, total, low, high)
	return s
}

// middle is the direction of the light vector and its length, lx.
func (e *Engine) middle(at r3.Vec) (axis r3.Vec, lux float64) {
	v := e.Vector(at)
	lux = r3.Norm(v)
	if !(lux > 0) {
		return r3.Vec{}, 0
	}
	axis = r3.Scale(1/lux, v)
	return axis, e.At(at, axis, Flat)
}

// ahead is the direction square-on to an axis in which an edge moves that runs from
// left to right.
func ahead(axis, forward, upward r3.Vec) r3.Vec {
	left := r3.Cross(upward, forward)
	toward := r3.Cross(left, axis)
	if r3.Norm(toward) < 1e-6 { // the light comes along the edge
		toward = forward
	}
	return r3.Unit(toward)
}

// sourceLevel is the height of the source's plane: the lowest cloth, or the middle of
// the lamps by their light where there is none.
func (e *Engine) sourceLevel() float64 {
	if last := e.planes[len(e.planes)-1]; !last.bare {
		return last.z
	}
	sum, lumens := 0.0, 0.0
	for i := range e.lamps {
		sum, lumens = sum+e.lamps[i].Lumens*e.lamps[i].Centre.Z, lumens+e.lamps[i].Lumens
	}
	if lumens == 0 {
		return 0
	}
	return sum / lumens
}

// opening are the angles from the axis between which an edge crosses the clear part of
// the lowest plane.
func (e *Engine) opening(at, axis, toward r3.Vec) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, corner := range e.windows[len(e.windows)-1] {
		d := r3.Sub(corner, at)
		angle := math.Atan2(r3.Dot(d, toward), r3.Dot(d, axis))
		low, high = math.Min(low, angle), math.Max(high, angle)
	}
	return low, high
}

// edgeLeaving is the tangent at which an edge that covers all beyond it leaves a share
// of the light: by regula falsi (Illinois) over the angle, since what is left never
// falls as the edge goes up. It is looked for across the opening first; where light
// comes from past it, over all angles.
func (e *Engine) edgeLeaving(at, axis, toward r3.Vec, share, total, from, to float64) float64 {
	const most, near = 0.5*math.Pi - 1e-3, 5e-5
	left := func(angle float64) float64 { return e.leftBy(at, axis, toward, angle)/total - share }
	low, high, atLow, atHigh := math.Max(-most, from), math.Min(most, to), -share, 1-share
	if !(low < high) {
		low, high = -most, most
	}
	for range mostTries {
		middle := (low*atHigh - high*atLow) / (atHigh - atLow)
		value := left(middle)
		if math.IsNaN(value) {
			return value
		}
		if math.Abs(value) < near {
			return math.Tan(middle)
		}
		if high-low < 1e-7 {
			break
		}
		if value < 0 {
			low, atLow = middle, value
			atHigh /= 2 // so that the end that stays doesn't hold it up
			continue
		}
		high, atHigh = middle, value
		atLow /= 2
	}
	if from > -most || to < most { // the opening is not all
		return e.edgeLeaving(at, axis, toward, share, total, -most, most)
	}
	return math.Tan((low + high) / 2)
}

// mostTries bounds that.
const mostTries = 40

// leftBy is what an edge at an angle from the axis leaves, lx.
func (e *Engine) leftBy(at, axis, toward r3.Vec, angle float64) float64 {
	return e.veiled(halfVeil(at, axis, toward, math.Tan(angle), veilAway)).At(at, axis, Flat)
}

// edgesOfLobes are the tangents of nine tenths and one tenth where a cloth has lobes.
// What is left of a lobe goes in steps there, from one place of its sum to the next, so
// it is read at even angles across the opening and each reading leveled with those
// beside it; straight between.
func (e *Engine) edgesOfLobes(at, axis, toward r3.Vec, total, low, high float64) (full, dark float64) {
	const most = 0.5*math.Pi - 1e-3
	low, high = math.Max(-most, low), math.Min(most, high)
	var left [lobeSteps + 1]float64
	read := func() {
		for i := range left {
			left[i] = e.leftBy(at, axis, toward, low+(high-low)*float64(i)/lobeSteps) / total
		}
	}
	if read(); left[0] > 0.09 || left[lobeSteps] < 0.91 { // light from past the opening
		low, high = -most, most
		read()
	}
	even := left
	for i := 1; i < lobeSteps; i++ {
		even[i] = (left[i-1] + left[i] + left[i+1]) / 3
	}
	find := func(share float64) float64 {
		for i := range lobeSteps {
			if even[i] <= share && even[i+1] > share {
				return math.Tan(low + (high-low)*(float64(i)+(share-even[i])/(even[i+1]-even[i]))/lobeSteps)
			}
		}
		return math.NaN()
	}
	return find(0.9), find(0.1)
}

// lobeSteps is how many steps go across the opening.
const lobeSteps = 40

// veilAway is how far (m) before the place an edge is held.
const veilAway = 0.02

// width of the edge (m) of what stands a distance away; NaN at the source and beyond.
func (s softness) width(away float64) float64 {
	if !(away < s.distance) {
		return math.NaN()
	}
	return (s.full - s.dark) * away * s.distance / (s.distance - away)
}

func (s softness) told() *EdgesAnswer {
	return &EdgesAnswer{Number(s.width(browAway)), Number(s.width(noseAway)), Number(s.width(brimAway)), Number(s.width(armAway))}
}

// The edge of a common-practice brow, from the eye: so far up and so far forward, 25 mm
// away in all. An eye sees nothing of what is steeper, or behind its face.
const (
	browUp      = 0.022
	browForward = 0.012
)

// seenByEye is the share of the source, by luminance times solid angle, that an eye
// under its brow sees; NaN where there is no light.
func (e *Engine) seenByEye(at, forward, upward r3.Vec) float64 {
	whole := e.At(at, upward, Scalar)
	if !(whole > 0) {
		return math.NaN()
	}
	axis := r3.Unit(r3.Add(r3.Scale(browForward, forward), r3.Scale(browUp, upward)))
	above := r3.Unit(r3.Sub(r3.Scale(browForward, upward), r3.Scale(browUp, forward)))
	veils := e.veiled(halfVeil(at, axis, above, 0, veilAway), wholeVeil(at, r3.Scale(-1, forward), upward, veilAway))
	return veils.At(at, upward, Scalar) / whole
}
