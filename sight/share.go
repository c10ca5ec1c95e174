package sight

import "math"

// share is the largest share of the frame that a body was found to fill over a span: at
// some of the places where it was seen, at the ends and the middle of pan, tilt and
// boom, and with the pan and pitch at which it was seen. Between them it may fill more.
func (l *looker) share(b *body, s span) float64 {
	const most = 9
	step := max(1, (len(s.spots)+most-1)/most)
	best := 0.0
	for i := 0; i < len(s.spots); i += step {
		best = math.Max(best, l.shareAround(b, s.spots[i]))
	}
	best = math.Max(best, l.shareAround(b, s.spots[len(s.spots)-1]))
	for _, end := range [2]float64{s.low, s.high} {
		if at, ok := l.seenAt(b.all(), end); ok {
			best = math.Max(best, l.shareAround(b, at))
		}
	}
	return best
}

func (l *looker) shareAround(b *body, at spot) float64 {
	best := 0.0
	booms := []float64{at.boom}
	if l.way.boom != nil {
		booms = []float64{at.boom, 0, 1}
	}
	pan := l.way.pan
	for _, boom := range booms {
		eye := l.way.eye(at.main, boom)
		views := []view{}
		for _, p := range distinct(at.pan, pan[0], (pan[0]+pan[1])/2, pan[1]) {
			yaw, pitch := l.way.yawAt(eye, at.main, p)
			v := l.way.window(eye, yaw, pitch)
			for _, tilted := range distinct(at.pitch, v.low, (v.low+v.high)/2, v.high) {
				if tilted >= v.low && tilted <= v.high {
					views = append(views, view{v, tilted, 0})
				}
			}
		}
		for j := range b.solids {
			l.cutter.Reset()
			for _, piece := range l.visible(&b.solids[j], eye) {
				for k := range views {
					if cropped := views[k].crop(&l.cutter, piece, views[k].pitch); cropped != nil {
						views[k].filled += views[k].share(cropped, views[k].pitch)
					}
				}
			}
		}
		for _, v := range views {
			best = math.Max(best, v.filled)
		}
	}
	return best
}

// view is a window at one pitch and how much of it is filled.
type view struct {
	window
	pitch  float64
	filled float64
}

func distinct(values ...float64) []float64 {
	var out []float64
next:
	for _, x := range values {
		for _, y := range out {
			if x == y {
				continue next
			}
		}
		out = append(out, x)
	}
	return out
}
