package light

import "math"

// order is the number of Gauss points along each edge of a panel. Three are
// exact for polynomials of degree five.
const order = 3

// Gauss's three-point rule on 0 to 1 (Abramowitz and Stegun, table 25.4, from memory).
var (
	gaussPlace  = [order]float64{0.5 - 0.38729833462074168852, 0.5, 0.5 + 0.38729833462074168852}
	gaussWeight = [order]float64{5.0 / 18, 8.0 / 18, 5.0 / 18}
)

// lagrange are the weights with which values at the three Gauss points of a
// panel give the value at t, 0 to 1 along the panel.
func lagrange(t float64) [order]float64 {
	const d = 0.38729833462074168852
	s := (t - 0.5) / d
	return [order]float64{s * (s - 1) / 2, (1 - s) * (1 + s), s * (s + 1) / 2}
}

// cubature is a rule of degree five on a triangle: barycentric coordinates
// (a, b, rest) and shares of its area (Radon 1948; Stroud T2: 5-1, from memory).
var cubature = func() (rule [7]struct{ a, b, weight float64 }) {
	root := math.Sqrt(15)
	inner, outer := (6-root)/21, (6+root)/21
	innerWeight, outerWeight := (155-root)/1200, (155+root)/1200
	rule[0].a, rule[0].b, rule[0].weight = 1.0/3, 1.0/3, 9.0/40
	for i, p := range [2]struct{ q, w float64 }{{inner, innerWeight}, {outer, outerWeight}} {
		for k, c := range [3][2]float64{{p.q, p.q}, {p.q, 1 - 2*p.q}, {1 - 2*p.q, p.q}} {
			r := &rule[1+3*i+k]
			r.a, r.b, r.weight = c[0], c[1], p.w
		}
	}
	return rule
}()
