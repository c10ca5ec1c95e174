package load

import "math"

// membrane is the middle sag of a cloth a × b of uniform tension T (N/m, the same both
// ways) under its weight w (N/m²), over w·a²/T with a the shorter side: the series
//
//	1/8 − (4/π³)·Σ (−1)^((n−1)/2) / (n³·cosh(n·π·b/2a)), n = 1, 3, 5, …
//
// of Poisson's equation on a rectangle (Timoshenko and Goodier, Theory of Elasticity,
// the membrane analogy). A square has 0.0736713533, a long strip 1/8.
func membrane(a, b float64) float64 {
	if a > b {
		a, b = b, a
	}
	sum, sign := 0.0, 1.0
	for n := 1.0; n < 40; n += 2 {
		sum += sign / (n * n * n * math.Cosh(n*math.Pi*b/(2*a)))
		sign = -sign
	}
	return 1.0/8 - 4/(math.Pi*math.Pi*math.Pi)*sum
}

// strip is a cloth's middle strip from edge to edge over the shorter side: how its
// tension follows from how long it is. It sags by f = k·w·a²/T; its arc is 8f²/3a
// longer than its chord; the chord is what the frame leaves, which the pull makes
// shorter by give·T; the strip itself stretches by a·(T−p)/s from where it was laced
// with a tension p.
type strip struct {
	k, w, a float64
	slack   float64 // m, by which it is cut longer than the frame
	laced   float64 // N/m, p
	stretch float64 // N/m, s; +Inf does not stretch
	give    float64 // m per N/m: how much shorter the frame's opening gets
}

func (s strip) sag(tension float64) float64 { return s.k * s.w * s.a * s.a / tension }

// excess falls with the tension; it vanishes where cloth and frame agree.
func (s strip) excess(tension float64) float64 {
	f := s.sag(tension)
	return 8*f*f/(3*s.a) - s.give*(tension-s.laced) - s.slack - s.a*(tension-s.laced)/s.stretch
}

// tension solves for what the strip pulls, N/m, by bisection of its logarithm.
func (s strip) tension() float64 {
	low, high := 1e-6*s.w*s.a, 1e9*s.w*s.a
	if !(low > 0) || math.IsInf(high, 0) {
		return 0
	}
	for range 200 {
		middle := math.Sqrt(low * high)
		if s.excess(middle) > 0 {
			low = middle
		} else {
			high = middle
		}
		if high/low-1 < 1e-14 {
			break
		}
	}
	return math.Sqrt(low * high)
}
