package sight

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/plan"
	"softloft/quantity"
)

// way is what a camera does during a shot. Its main value runs from low to high: the
// orbit's angle, the pan about the look of a camera that stands, or the share of its
// track. Besides, a camera that moves pans, and every camera may tilt and boom.
type way struct {
	kind      string // stands, pan, orbit, track
	low, high float64
	looks     r3.Vec
	at        r3.Vec   // of a camera that stands
	middle    r3.Vec   // of an orbit, at its height
	radius    float64  // of an orbit
	track     []r3.Vec // with lengths up to each place
	lengths   []float64
	pan, tilt [2]float64
	boom      *[2]float64
	frame     frame
}

// wayOf reads a camera; the error says what the plan leaves open.
func wayOf(c *plan.Camera) (*way, error) {
	switch {
	case c.Lens == nil:
		return nil, fmt.Errorf("no lens is given; such as lens: 35 mm")
	case !(*c.Lens > 0) || !(c.Sensor[0] > 0) || !(c.Sensor[1] > 0) || !(c.Squeeze > 0):
		return nil, fmt.Errorf("lens, sensor and squeeze are over 0; such as lens: 35 mm")
	case c.Looks == nil:
		return nil, fmt.Errorf("the plan does not say where it looks; such as looks: [0 ft, 0 ft, 5 ft]")
	}
	w := &way{kind: "stands", looks: vec(*c.Looks), frame: frameOfCamera(c),
		pan:  [2]float64{float64(c.Pan[0]), float64(c.Pan[1])},
		tilt: [2]float64{float64(c.Tilt[0]), float64(c.Tilt[1])}}
	if c.Boom != nil {
		w.boom = &[2]float64{float64(c.Boom[0]), float64(c.Boom[1])}
	}
	switch {
	case c.Orbit != nil:
		w.orbit(c.Orbit)
	case len(c.Track) > 1:
		w.run(c.Track)
	case c.At != nil:
		w.stand(vec(*c.At))
	default:
		return nil, fmt.Errorf("the plan does not say where it is; such as at: [10 ft, 0 ft, 5 ft]")
	}
	return w, nil
}

func (w *way) orbit(o *plan.Orbit) {
	w.kind = "orbit"
	w.middle = r3.Vec{X: float64(o.Around[0]), Y: float64(o.Around[1]), Z: float64(o.Height)}
	w.radius = float64(o.Radius)
	w.low, w.high = float64(o.From), float64(o.To)
	if w.high < w.low { // the long way around is never meant backward
		w.low, w.high = w.high, w.low
	}
}

func (w *way) run(places [][3]quantity.Length) {
	w.kind, w.low, w.high = "track", 0, 1
	var sum float64
	for i, p := range places {
		w.track = append(w.track, vec(p))
		if i > 0 {
			sum += r3.Norm(r3.Sub(w.track[i], w.track[i-1]))
		}
		w.lengths = append(w.lengths, sum)
	}
}

func (w *way) stand(at r3.Vec) {
	w.at = at
	if w.pan[1] > w.pan[0] {
		w.kind, w.low, w.high = "pan", w.pan[0], w.pan[1]
		w.pan = [2]float64{}
	}
}

// eye is where the lens is, at a main value and a share of the boom's range.
func (w *way) eye(main, boom float64) r3.Vec {
	at := w.at
	switch w.kind {
	case "orbit":
		sin, cos := math.Sincos(main)
		at = r3.Add(w.middle, r3.Vec{X: w.radius * cos, Y: w.radius * sin})
	case "track":
		at = w.onTrack(main)
	}
	if w.boom != nil {
		at.Z = w.boom[0] + boom*(w.boom[1]-w.boom[0])
	}
	return at
}

func (w *way) onTrack(share float64) r3.Vec {
	target := share * w.lengths[len(w.lengths)-1]
	for i := 1; i < len(w.track); i++ {
		if long := w.lengths[i] - w.lengths[i-1]; target <= w.lengths[i] && long > 0 {
			t := math.Max(0, (target-w.lengths[i-1])/long)
			return r3.Add(w.track[i-1], r3.Scale(t, r3.Sub(w.track[i], w.track[i-1])))
		}
	}
	return w.track[len(w.track)-1]
}

// moves is how far the lens gets at most (m) over so much of the main value.
func (w *way) moves(main float64) float64 {
	switch w.kind {
	case "orbit":
		return w.radius * main
	case "track":
		return w.lengths[len(w.lengths)-1] * main
	}
	return 0
}

// aim is yaw and pitch from a place toward what the camera looks at, before pan and
// tilt. Straight up or down the yaw is 0.
func (w *way) aim(eye r3.Vec) (yaw, pitch float64) {
	d := r3.Sub(w.looks, eye)
	return math.Atan2(d.Y, d.X), math.Atan2(d.Z, math.Hypot(d.X, d.Y))
}

// yawAt adds the pan: the main value of a camera that stands and pans, else the
// secondary one.
func (w *way) yawAt(eye r3.Vec, main, pan float64) (yaw, pitch float64) {
	yaw, pitch = w.aim(eye)
	if w.kind == "pan" {
		return yaw + main, pitch
	}
	return yaw + pan, pitch
}

// stretch is a part of the way with its pans and booms, about a middle.
type stretch struct {
	main, pan, boom             float64 // the middle
	halfMain, halfPan, halfBoom float64
}

// reach bounds a stretch by what happens in its middle.
func (w *way) reach(s stretch) (eye r3.Vec, yaw, pitch float64, by play) {
	eye = w.eye(s.main, s.boom)
	yaw, pitch = w.yawAt(eye, s.main, s.pan)
	by.shift = w.moves(s.halfMain)
	if w.boom != nil {
		by.shift += s.halfBoom * (w.boom[1] - w.boom[0])
	}
	d := r3.Sub(w.looks, eye)
	by.yaw = s.halfPan + angleOf(by.shift, length(d.X, d.Y))
	if w.kind == "pan" {
		by.yaw += s.halfMain
	}
	by.pitch = angleOf(by.shift, r3.Norm(d))
	return eye, yaw, pitch, by
}

// play is how far things may be from what they are in the middle of a stretch: the lens
// by shift (m), yaw and pitch by angles.
type play struct{ shift, yaw, pitch float64 }

// angleOf is by how much a direction can turn when its start moves by shift at a
// distance.
func angleOf(shift, distance float64) float64 {
	switch {
	case shift == 0:
		return 0
	case shift >= distance:
		return math.Pi
	}
	return math.Asin(shift / distance)
}
