package sight

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
	"softloft/rig"
	"softloft/shape"
)

// A camera and its operator, in m: common practice. The operator stands upright on the
// floor behind the camera; a camera higher than an operator reaches has none beside it.
const (
	operatorWide   = 0.6
	operatorDeep   = 0.4
	operatorTall   = 1.8
	operatorBehind = 0.5 // from the lens to the operator's middle
	operatorReach  = 2.2
	cameraWide     = 0.25
	cameraTall     = 0.3
	cameraLong     = 0.45
)

// crewAt is the camera's body and its operator.
func crewAt(w *way, main, boom float64) []solid {
	eye := w.eye(main, boom)
	yaw, _ := w.yawAt(eye, main, (w.pan[0]+w.pan[1])/2)
	pose := shape.At(eye).Rotated(r3.Vec{Z: 1}, yaw)
	back := func(by float64) r3.Vec { return r3.Sub(eye, r3.Scale(by, pose.X)) }
	body := pose
	body.Origin = back(cameraLong / 2)
	out := []solid{block(shape.Box{Pose: body, Half: [3]float64{cameraLong / 2, cameraWide / 2, cameraTall / 2}})}
	if eye.Z > operatorReach {
		return out
	}
	operator := pose
	operator.Origin = back(operatorBehind)
	operator.Origin.Z = operatorTall / 2
	return append(out, block(shape.Box{Pose: operator, Half: [3]float64{operatorDeep / 2, operatorWide / 2, operatorTall / 2}}))
}

// clothArea is the area that light leaves from.
func clothArea(r *rig.Rig) solid {
	x, y := r.Optics.Clear[0]/2, r.Optics.Clear[1]/2
	return flat(shape.Rectangle(r.Pose.Origin, r3.Scale(x, r.Pose.X), r3.Scale(y, r.Pose.Y)))
}

// hiddenShare is the share of the source that camera and operator hide from a place.
func hiddenShare(cloth *solid, from r3.Vec, crew []solid) float64 {
	var cutter shape.Cutter
	pieces := []shape.Polygon{cloth.polygon}
	for i := range crew {
		if !mayHide(&crew[i], cloth, from) {
			continue
		}
		for _, face := range crew[i].faces(from, nil) {
			pieces = cutter.Hide(pieces, from, face)
		}
	}
	left := 0.0
	for _, p := range pieces {
		left += p.Area()
	}
	return math.Max(0, 1-left/cloth.polygon.Area())
}

// worstHidden is the largest share over the way: the worst of many looks, then narrowed
// about it.
func worstHidden(cloth *solid, m *plan.Mark, w *way) float64 {
	from := r3.Vec{X: float64(m.At[0]), Y: float64(m.At[1]), Z: float64(m.Eyes)}
	const looks = 720
	at := func(main float64) float64 {
		worst := hiddenShare(cloth, from, crewAt(w, main, 0))
		if w.boom != nil {
			worst = math.Max(worst, hiddenShare(cloth, from, crewAt(w, main, 0.5)))
			worst = math.Max(worst, hiddenShare(cloth, from, crewAt(w, main, 1)))
		}
		return worst
	}
	if w.high <= w.low {
		return at(w.low)
	}
	best, where := 0.0, w.low
	step := (w.high - w.low) / looks
	for i := 0; i <= looks; i++ {
		main := w.low + step*float64(i)
		if share := at(main); share > best {
			best, where = share, main
		}
	}
	for range 20 {
		step /= 2
		for _, main := range [2]float64{math.Max(w.low, where-step), math.Min(w.high, where+step)} {
			if share := at(main); share > best {
				best, where = share, main
			}
		}
	}
	return best
}
