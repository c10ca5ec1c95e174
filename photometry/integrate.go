package photometry

import "math"

// integral is the flux of a table: the exact integral of an intensity that is linear
// in either angle between the table's angles.
func (t *Table) integral() float64 {
	if t.kind == typeB {
		return t.overB()
	}
	return t.integralTo(math.Inf(1))
}

// integralTo is the flux of a type A or C table up to an angle V.
func (t *Table) integralTo(end float64) float64 {
	n := len(t.v)
	zone := func(plane int) float64 { return t.zonal(t.cd[plane*n:plane*n+n], end) }
	if t.mirror == round {
		return 2 * math.Pi * zone(0)
	}
	sum, before := 0.0, zone(0)
	for i := 1; i < len(t.h); i++ {
		this := zone(i)
		sum += (t.h[i] - t.h[i-1]) * (before + this) / 2
		before = this
	}
	if t.kind == typeC && t.mirror == whole {
		gap := math.Max(0, t.h[0]+2*math.Pi-t.h[len(t.h)-1])
		sum += gap * (before + zone(0)) / 2
	}
	return sum * t.copies()
}

// copies is how often the stored planes stand in the whole distribution.
func (t *Table) copies() float64 {
	copies := map[mirror]float64{quadrant: 4, about0: 2, about90: 2, whole: 1, round: 1}[t.mirror]
	if t.mirrorV {
		copies *= 2
	}
	return copies
}

// zonal integrates one plane over V up to an angle: with sin V for type C, cos V for
// type A.
func (t *Table) zonal(row []float64, end float64) float64 {
	sum := 0.0
	for j := 1; j < len(row) && t.v[j-1] < end; j++ {
		a, b, p, q := t.v[j-1], t.v[j], row[j-1], row[j]
		if b > end {
			b, q = end, p+(end-a)/(b-a)*(q-p)
		}
		if t.kind == typeC {
			sum += overSin(a, b, p, q)
		} else {
			sum += overCos(a, b, p, q)
		}
	}
	return sum
}

// overB integrates over H with cos H at each V, then over V.
func (t *Table) overB() float64 {
	n := len(t.v)
	line := func(j int) float64 {
		sum := 0.0
		for i := 1; i < len(t.h); i++ {
			sum += overCos(t.h[i-1], t.h[i], t.cd[(i-1)*n+j], t.cd[i*n+j])
		}
		return sum
	}
	sum, before := 0.0, line(0)
	for j := 1; j < n; j++ {
		this := line(j)
		sum += (t.v[j] - t.v[j-1]) * (before + this) / 2
		before = this
	}
	return sum * t.copies()
}

// overSin is the integral of i(x) sin x from a to b for i linear from p to q:
//
//	p cos a - q cos b + m (sin b - sin a), m = (q - p)/(b - a)
func overSin(a, b, p, q float64) float64 {
	m := (q - p) / (b - a)
	return p*math.Cos(a) - q*math.Cos(b) + m*(math.Sin(b)-math.Sin(a))
}

// overCos is the same with cos x: q sin b - p sin a + m (cos b - cos a).
func overCos(a, b, p, q float64) float64 {
	m := (q - p) / (b - a)
	return q*math.Sin(b) - p*math.Sin(a) + m*(math.Cos(b)-math.Cos(a))
}
