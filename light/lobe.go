package light

import "math"

// lobe is what a cloth does to the light that it passes forward: intensity
// exp(-angle^2 / (2 sigma^2)) about the unscattered ray, cut at the cloth plane
// and made up there to the whole part. Both the curve and what the cut leaves
// are tabulated; straight lines between the entries are off by less than 2e-5.
type lobe struct {
	sigma float64
	curve []float64 // over 1 - cos(angle), from 0 in steps of 1/scale
	scale float64
	share []float64 // 1/integral, over the cosine of the incoming ray, 0 to 1
}

const (
	curveSteps = 2048
	shareSteps = 128
)

func newLobe(sigma float64) *lobe {
	l := &lobe{sigma: sigma}
	reach := math.Min(2, 1-math.Cos(math.Min(math.Pi, 6*sigma)))
	l.scale = curveSteps / reach
	l.curve = make([]float64, curveSteps+2)
	for i := range l.curve {
		angle := math.Acos(math.Max(-1, 1-float64(i)/l.scale))
		l.curve[i] = math.Exp(-angle * angle / (2 * sigma * sigma))
	}
	l.share = make([]float64, shareSteps+1)
	for i := range l.share {
		l.share[i] = 1 / l.integral(float64(i)/shareSteps)
	}
	return l
}

// integral of the curve over the half space that a ray with this cosine goes
// into, sr: by rings about the ray, of which the cloth plane leaves an arc.
func (l *lobe) integral(cos float64) float64 {
	sin := math.Sqrt(1 - cos*cos)
	last := math.Min(math.Pi, 6*l.sigma)
	limit := math.Min(last, math.Asin(math.Min(1, cos))) // up to here rings are whole
	return l.rings(0, limit, cos, sin) + l.rings(limit, last, cos, sin)
}

func (l *lobe) rings(from, to, cos, sin float64) float64 {
	const steps = 60
	sum := 0.0
	for i := range steps {
		for k, t := range gaussPlace {
			// Steps shorten toward the start, where the arc bends sharply.
			s := (float64(i) + t) / steps
			angle := from + (to-from)*s*s
			weight := gaussWeight[k] / steps * 2 * s * (to - from)
			arc := math.Pi
			if st, ct := math.Sincos(angle); st*sin > 0 {
				arc = math.Acos(math.Max(-1, math.Min(1, -ct*cos/(st*sin))))
			} else if ct*cos < 0 {
				arc = 0
			}
			sum += weight * 2 * arc * math.Sin(angle) * math.Exp(-angle*angle/(2*l.sigma*l.sigma))
		}
	}
	return sum
}

// at is the curve for the cosine of the angle between both rays.
func (l *lobe) at(cos float64) float64 {
	q := (1 - cos) * l.scale
	if q < 0 {
		q = 0
	}
	i := int(q)
	if i > curveSteps {
		return 0
	}
	t := q - float64(i)
	return l.curve[i]*(1-t) + l.curve[i+1]*t
}

// made is 1 over the integral for an incoming cosine.
func (l *lobe) made(cos float64) float64 {
	q := cos * shareSteps
	i := min(int(q), shareSteps-1)
	t := q - float64(i)
	return l.share[i]*(1-t) + l.share[i+1]*t
}
