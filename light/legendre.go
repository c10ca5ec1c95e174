package light

import "math"

// gaussPoint is a place on 0 to 1 with its weight.
type gaussPoint struct{ place, weight float64 }

// legendreRules are Gauss and Legendre's rules by their number of points, 0 to 32.
var legendreRules = func() (rules [33][]gaussPoint) {
	for n := 1; n < len(rules); n++ {
		rules[n] = gaussLegendre(n)
	}
	return rules
}()

func legendre(n int) []gaussPoint { return legendreRules[n] }

// gaussLegendre finds the roots of the nth Legendre polynomial by Newton's
// method; weights 2/((1-x^2) P'^2) on -1 to 1 (Abramowitz and Stegun 25.4.29,
// from memory).
func gaussLegendre(n int) []gaussPoint {
	rule := make([]gaussPoint, n)
	for i := range rule {
		x := math.Cos(math.Pi * (float64(n-i) - 0.25) / (float64(n) + 0.5))
		var slope float64
		for range 100 {
			p, before := 1.0, 0.0
			for k := 1; k <= n; k++ {
				p, before = (float64(2*k-1)*x*p-float64(k-1)*before)/float64(k), p
			}
			slope = float64(n) * (x*p - before) / (x*x - 1)
			step := p / slope
			x -= step
			if math.Abs(step) < 1e-16 {
				break
			}
		}
		rule[i] = gaussPoint{(x + 1) / 2, 1 / ((1 - x*x) * slope * slope)}
	}
	return rule
}
