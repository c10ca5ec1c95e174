package power

import "math"

// Amps returns the current in A of a load of so many W at a voltage: in one phase
// P/(V·f), in three P/(√3·V·f) with V from line to line. NaN where a value is no use.
func Amps(watts, volts, powerFactor float64, phases int) float64 {
	if !(watts >= 0 && volts > 0 && powerFactor > 0) {
		return math.NaN()
	}
	amps := watts / (volts * powerFactor)
	if phases == 3 {
		return amps / math.Sqrt(3)
	}
	return amps
}

// Lost returns the voltage in V that a length in m of cable loses at a current in A: in
// one phase there and back, in three from line to line. NaN where the conductor is not known.
func Lost(c Conductor, amps, length float64, phases int) float64 {
	if phases == 3 {
		return c.Drop3 * amps * length
	}
	return c.Drop1 * amps * length
}

// Neutral returns what the neutral of three legs carries, for linear loads of one power
// factor: √(a² + b² + c² − ab − bc − ca), the sum of three phasors at 120°. It is computed
// as √(((a−b)² + (b−c)² + (c−a)²)/2), which is the same and 0 for equal legs.
func Neutral(a, b, c float64) float64 {
	return math.Hypot(math.Hypot(a-b, b-c), c-a) / math.Sqrt2
}

// NeutralOfThird returns a neutral's current over the current of each of three equal
// legs, where the third harmonic is k times the fundamental: 3k/√(1+k²), as third
// harmonics add up. It holds up to √3, which pulses that don't overlap reach; above it is
// NaN.
func NeutralOfThird(k float64) float64 {
	share := 3 * k / math.Sqrt(1+k*k)
	if !(k >= 0 && share <= worstNeutral*(1+1e-12)) {
		return math.NaN()
	}
	return share
}

// worstNeutral is the largest share of a leg's current in the neutral of equal legs, for
// pulses that don't overlap: √3.
const worstNeutral = 1.7320508075688772
