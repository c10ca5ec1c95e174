package frame

import "math"

// escape leaves a place of rest that is not a minimum, along the motion of most negative curvature, to the side on
// which the energy falls more; with equal sides to the one on which the largest part of the motion is positive. It
// reports false if no lower place was found.
func (x *search) escape() bool {
	shift := x.least
	for range 200 {
		if in := x.k.factor(judge{shift: shift, weight: x.weight, small: tinyPivot, stop: true}); in.negative == 0 {
			break
		}
		shift *= 2
	}
	lo, hi := shift/2, shift
	for range 12 { // draw the shift close to the curvature, so that few iterations single it out
		mid := (lo + hi) / 2
		if in := x.k.factor(judge{shift: mid, weight: x.weight, small: tinyPivot, stop: true}); in.negative > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	x.k.factor(judge{shift: hi, weight: x.weight, small: tinyPivot})
	v := x.step
	for i := range v {
		v[i] = math.Sin(float64(3*i + 1)) // any fixed mixture
	}
	for range 30 {
		for i := range v {
			v[i] *= x.weight[i]
		}
		x.k.solve(v)
		x.normalize(v)
	}
	return x.leave(v)
}

// normalize makes the largest part of a motion +1 (of the frame's size, or radian).
func (x *search) normalize(v []float64) {
	largest := 0.0
	for i, u := range x.owner {
		w := v[i]
		if u.axis < 3 {
			w /= x.size
		}
		if math.Abs(w) > math.Abs(largest)*(1+1e-9) {
			largest = w
		}
	}
	if largest == 0 {
		return
	}
	for i := range v {
		v[i] /= largest
	}
}

func (x *search) leave(v []float64) bool {
	for fraction := 0.1; fraction > 1e-5; fraction /= 2 {
		x.move(x.trial, v, fraction)
		plus := x.energy(x.trial)
		x.move(x.trial, v, -fraction)
		minus := x.energy(x.trial)
		noise := 1e-13 * x.energyScale()
		if math.Min(plus, minus) >= x.cost-noise {
			continue
		}
		if plus <= minus+noise {
			x.move(x.trial, v, fraction)
		}
		x.q.copyFrom(x.trial)
		x.damping = x.least
		return true
	}
	return false
}
