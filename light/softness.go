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
	s.full = e.edgeLeaving(at, axis, toward, 0.9, total)
	s.dark = e.edgeLeaving(at, axis, toward, 0.1, total)
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

// edgeLeaving is the tangent at which an edge that covers all beyond it leaves a share
// of the light: by regula falsi (Illinois) over the angle, since what is left never
// falls as the edge goes up.
func (e *Engine) edgeLeaving(at, axis, toward r3.Vec, share, total float64) float64 {
	const most, near = 0.5*math.Pi - 1e-3, 5e-5
	left := func(angle float64) float64 {
		veil := halfVeil(at, axis, toward, math.Tan(angle), veilAway)
		return e.veiled(veil).At(at, axis, Flat)/total - share
	}
	low, high, atLow, atHigh := -most, most, -share, 1-share
	for range mostTries {
		middle := (low*atHigh - high*atLow) / (atHigh - atLow)
		value := left(middle)
		if math.IsNaN(value) {
			return value
		}
		if math.Abs(value) < near || high-low < 1e-7 {
			return math.Tan(middle)
		}
		if value < 0 {
			low, atLow = middle, value
			atHigh /= 2 // so that the end that stays doesn't hold it up
			continue
		}
		high, atHigh = middle, value
		atLow /= 2
	}
	return math.Tan((low + high) / 2)
}

// mostTries bounds that where a lobe's sum goes in small steps.
const mostTries = 20

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
