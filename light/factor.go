package light

import "math"

// Form factors of axis-parallel rectangles in closed form, as sums over the
// corners. Sources: Siegel and Howell, Thermal Radiation Heat Transfer, 4th
// ed., p. 842 (point to rectangle); the catalog of configuration factors, C-13
// (parallel) and C-14 with its shifted form (perpendicular). The expressions
// are from memory and are tested against published values.

// parallelCorner is the corner term for two parallel rectangles a distance z
// apart, m2: area times form factor is the sum over both x and both y edges of
// each rectangle with alternating signs.
func parallelCorner(dx, dy, z float64) float64 {
	u, v := math.Hypot(dx, z), math.Hypot(dy, z)
	sum := dy*u*atanRatio(dy, u) + dx*v*atanRatio(dx, v)
	if s := dx*dx + dy*dy + z*z; s > 0 {
		sum -= z * z / 2 * math.Log(s)
	}
	return sum / (2 * math.Pi)
}

// perpendicularCorner is the corner term for two rectangles in planes at a
// right angle, m2: x and xi are the distances of the two edges from the planes'
// common line, along the first and the second plane; dy the difference of
// places along that line.
func perpendicularCorner(x, xi, dy float64) float64 {
	k2 := x*x + xi*xi
	k := math.Sqrt(k2)
	sum := dy * k * atanRatio(dy, k)
	if s := k2 + dy*dy; s > 0 {
		sum -= (k2 - dy*dy) / 4 * math.Log(s)
	}
	return sum / (2 * math.Pi)
}

// pointParallelCorner is the corner term for a point facing a parallel
// rectangle at distance z.
func pointParallelCorner(dx, dy, z float64) float64 {
	u, v := math.Hypot(dx, z), math.Hypot(dy, z)
	return (dx/u*math.Atan(dy/u) + dy/v*math.Atan(dx/v)) / (2 * math.Pi)
}

// pointPerpendicularCorner is the corner term for a point and a rectangle in a
// plane at a right angle to the point's own, at distance c along it: height up
// the point's normal and side across.
func pointPerpendicularCorner(c, height, side float64) float64 {
	k := math.Hypot(c, height)
	return -c / k * math.Atan(side/k) / (2 * math.Pi)
}

// atanRatio is atan(a/b), also where b is 0.
func atanRatio(a, b float64) float64 {
	if b == 0 {
		return math.Copysign(math.Pi/2, a)
	}
	return math.Atan(a / b)
}

// parallelRectangles is the form factor from the first to the second of two
// parallel rectangles {x0, x1, y0, y1} a distance z apart.
func parallelRectangles(a, b [4]float64, z float64) float64 {
	sum := 0.0
	for i := range 2 {
		for j := range 2 {
			for k := range 2 {
				for l := range 2 {
					term := parallelCorner(a[i]-b[j], a[2+k]-b[2+l], z)
					if (i+j+k+l)%2 == 1 {
						term = -term
					}
					sum += term
				}
			}
		}
	}
	return sum / ((a[1] - a[0]) * (a[3] - a[2]))
}

// perpendicularRectangles is the form factor from the first to the second of
// two rectangles in planes at a right angle: {from, to} off the common line
// and {y0, y1} along it.
func perpendicularRectangles(a, b [4]float64) float64 {
	sum := 0.0
	for i := range 2 {
		for j := range 2 {
			for k := range 2 {
				for l := range 2 {
					term := perpendicularCorner(a[i], b[j], a[2+k]-b[2+l])
					if (i+j+k+l)%2 == 1 {
						term = -term
					}
					sum += term
				}
			}
		}
	}
	return sum / ((a[1] - a[0]) * (a[3] - a[2]))
}
