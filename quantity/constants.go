package quantity

import "math"

// StandardGravity is the conventional acceleration of free fall in m/s²: 3rd General
// Conference on Weights and Measures (1901), NIST SP 811 appendix B.8.
const StandardGravity = 9.80665

// Exact units of length in metres: international yard and pound agreement (1959), NIST SP 811
// appendix B.6.
const (
	Foot Length = 0.3048
	Inch Length = 0.0254
)

// Exact units of mass in kilograms: international yard and pound agreement (1959), NIST SP 811
// appendix B.8.
const (
	Pound Mass = 0.45359237
	Ounce Mass = 0.45359237 / 16
)

// PoundForce is the weight of one pound under StandardGravity, in newtons: NIST SP 811
// appendix B.8.
const PoundForce Force = 0.45359237 * StandardGravity

// FootCandle is one lumen per square foot, in lux: NIST SP 811 appendix B.8.
const FootCandle Illuminance = 1 / (0.3048 * 0.3048)

// Degree is one degree of arc in radians.
const Degree Angle = math.Pi / 180

// Weight returns the force of standard gravity on a mass, in newtons.
func (x Mass) Weight() Force { return Force(float64(x) * StandardGravity) }

// Mass returns the mass in kilograms whose weight under standard gravity is the force.
func (x Force) Mass() Mass { return Mass(float64(x) / StandardGravity) }
