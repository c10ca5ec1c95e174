package light

import (
	"math"
	"testing"
)

// The tables against the definition: the curve, and its integral over the half
// space by a plain sum over directions.
func TestLobeTables(t *testing.T) {
	for _, sigma := range []float64{0.03, 0.1, 0.3, 0.6, 1.2} {
		l := newLobe(sigma)
		for _, angle := range []float64{0, 0.3 * sigma, sigma, 2 * sigma, 3 * sigma} {
			if angle < math.Pi {
				rel(t, "curve", l.at(math.Cos(angle)), math.Exp(-angle*angle/2/sigma/sigma), 3e-5)
			}
		}
		for _, cos := range []float64{1, 0.9, 0.61, 0.35, 0.1} {
			if sigma >= 0.1 { // the plain sum is too coarse for less
				rel(t, "integral", 1/l.made(cos), plainIntegral(cos, sigma), 2e-3)
			}
		}
	}
}

// plainIntegral adds up the lobe over rings about the normal; as a check it
// shares nothing with rings about the ray.
func plainIntegral(cos, sigma float64) float64 {
	sin := math.Sqrt(1 - cos*cos)
	const n, m = 700, 500
	sum := 0.0
	for i := range n {
		z := (float64(i) + 0.5) / n
		across := math.Sqrt(1 - z*z)
		for j := range m {
			phi := math.Pi * (float64(j) + 0.5) / m
			angle := math.Acos(math.Max(-1, math.Min(1, z*cos+across*sin*math.Cos(phi))))
			sum += math.Exp(-angle * angle / (2 * sigma * sigma))
		}
	}
	return sum / n / m * 2 * math.Pi
}

// A whole Gaussian beam: flux over peak by full width at half maximum (deg),
// computed by numerical integration; at normal incidence nothing is cut off.
func TestLobeIntegralOfBeams(t *testing.T) {
	for _, c := range [][2]float64{{10, 0.03445276}, {20, 0.13705677}, {40, 0.53635501}, {60, 1.16238518}} {
		sigma := c[0] * math.Pi / 180 / 2.3548200450
		rel(t, "flux over peak", newLobe(sigma).integral(1), c[1], 1e-6)
	}
}
