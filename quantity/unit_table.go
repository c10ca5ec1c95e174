package quantity

// unitTable lists the units that Parse knows. Nothing writes to it.
//
// Sizes: NIST SP 811 (2008) appendix B.8; the metric ones by the prefixes of the SI.
var unitTable = []unit{
	{of: OfLength, names: []string{"m", "metre", "metres", "meter", "meters"}},
	{of: OfLength, down: 100, names: []string{"cm"}},
	{of: OfLength, down: 1000, names: []string{"mm"}},
	{of: OfLength, up: 1000, names: []string{"km"}},
	{of: OfLength, foot: 1, names: []string{"ft", "'", "foot", "feet"}},
	{of: OfLength, foot: 1, down: 12, names: []string{"in", `"`, "inch", "inches"}},
	{of: OfLength, foot: 1, up: 3, names: []string{"yd", "yard", "yards"}},

	{of: OfMass, names: []string{"kg"}},
	{of: OfMass, down: 1000, names: []string{"g"}},
	{of: OfMass, up: 1000, names: []string{"t", "tonne", "tonnes"}},
	{of: OfMass, pound: 1, names: []string{"lb", "lbs", "pound", "pounds"}},
	{of: OfMass, pound: 1, down: 16, names: []string{"oz", "ounce", "ounces"}},

	{of: OfForce, names: []string{"N"}},
	{of: OfForce, up: 1e3, names: []string{"kN"}},
	{of: OfForce, up: 1e6, names: []string{"MN"}},
	{of: OfForce, pound: 1, gravity: 1, names: []string{"lbf"}},
	{of: OfForce, gravity: 1, names: []string{"kgf"}},

	{of: OfMoment, names: []string{"N*m", "Nm"}},
	{of: OfMoment, up: 1e3, names: []string{"kN*m", "kNm"}},
	{of: OfMoment, pound: 1, gravity: 1, foot: 1, names: []string{"lbf*ft", "ft*lbf", "lb*ft", "ft*lb"}},
	{of: OfMoment, pound: 1, gravity: 1, foot: 1, down: 12, names: []string{"lbf*in", "in*lbf", "lb*in", "in*lb"}},

	{of: OfAngle, names: []string{"rad"}},
	{of: OfAngle, circle: 1, down: 180, names: []string{"deg", "°", "degree", "degrees"}},

	{of: OfPressure, names: []string{"Pa", "N/m2"}},
	{of: OfPressure, up: 1e3, names: []string{"kPa", "kN/m2"}},
	{of: OfPressure, up: 1e6, names: []string{"MPa", "N/mm2", "MN/m2"}},
	{of: OfPressure, up: 1e9, names: []string{"GPa", "kN/mm2"}},
	{of: OfPressure, pound: 1, gravity: 1, foot: -2, names: []string{"lbf/ft2", "psf"}},
	{of: OfPressure, pound: 1, gravity: 1, foot: -2, up: 144, names: []string{"psi", "lbf/in2", "lb/in2"}},
	{of: OfPressure, pound: 1, gravity: 1, foot: -2, up: 144e3, names: []string{"ksi"}},

	{of: OfLineForce, names: []string{"N/m"}},
	{of: OfLineForce, up: 1e3, names: []string{"kN/m", "N/mm"}},
	{of: OfLineForce, pound: 1, gravity: 1, foot: -1, names: []string{"lbf/ft"}},
	{of: OfLineForce, pound: 1, gravity: 1, foot: -1, up: 12, names: []string{"lbf/in"}},

	{of: OfLineMass, names: []string{"kg/m"}},
	{of: OfLineMass, down: 1000, names: []string{"g/m"}},
	{of: OfLineMass, pound: 1, foot: -1, names: []string{"lb/ft"}},
	{of: OfLineMass, pound: 1, foot: -1, up: 12, names: []string{"lb/in"}},

	{of: OfAreaMass, names: []string{"kg/m2"}},
	{of: OfAreaMass, down: 1000, names: []string{"g/m2", "gsm"}},
	{of: OfAreaMass, pound: 1, foot: -2, names: []string{"lb/ft2"}},
	{of: OfAreaMass, pound: 1, foot: -2, down: 16, names: []string{"oz/ft2"}},
	{of: OfAreaMass, pound: 1, foot: -2, down: 16 * 9, names: []string{"oz/yd2"}},

	{of: OfDensity, names: []string{"kg/m3"}},
	{of: OfDensity, up: 1000, names: []string{"g/cm3"}},
	{of: OfDensity, pound: 1, foot: -3, names: []string{"lb/ft3"}},
	{of: OfDensity, pound: 1, foot: -3, up: 1728, names: []string{"lb/in3"}},

	{of: OfRigidity, names: []string{"N*m2", "Nm2"}},
	{of: OfRigidity, up: 1e3, names: []string{"kN*m2", "kNm2"}},
	{of: OfRigidity, pound: 1, gravity: 1, foot: 2, names: []string{"lbf*ft2", "lb*ft2"}},
	{of: OfRigidity, pound: 1, gravity: 1, foot: 2, down: 144, names: []string{"lbf*in2", "lb*in2"}},

	{of: OfFlux, names: []string{"lm", "lumen", "lumens"}},
	{of: OfFlux, up: 1e3, names: []string{"klm"}},
	{of: OfIlluminance, names: []string{"lx", "lux"}},
	{of: OfIlluminance, up: 1e3, names: []string{"klx"}},
	{of: OfIlluminance, foot: -2, names: []string{"fc", "footcandle", "footcandles"}},
	{of: OfIntensity, names: []string{"cd", "candela", "candelas"}},
	{of: OfIntensity, up: 1e3, names: []string{"kcd"}},

	{of: OfVoltage, names: []string{"V", "volt", "volts"}},
	{of: OfVoltage, up: 1e3, names: []string{"kV"}},
	{of: OfCurrent, names: []string{"A", "amp", "amps"}},
	{of: OfCurrent, down: 1e3, names: []string{"mA"}},
	{of: OfPower, names: []string{"W", "watt", "watts"}},
	{of: OfPower, up: 1e3, names: []string{"kW"}},

	{of: OfDuration, names: []string{"s", "sec", "second", "seconds"}},
	{of: OfDuration, down: 1e3, names: []string{"ms"}},
	{of: OfDuration, up: 60, names: []string{"min", "minute", "minutes"}},
	{of: OfDuration, up: 3600, names: []string{"h", "hour", "hours"}},

	{of: OfSpeed, names: []string{"m/s"}},
	{of: OfSpeed, down: 36, up: 10, names: []string{"km/h"}},
	{of: OfSpeed, foot: 1, names: []string{"ft/s"}},
	{of: OfSpeed, foot: 1, up: 5280, down: 3600, names: []string{"mph"}},
	{of: OfSpeed, up: 1852, down: 3600, names: []string{"knot", "knots"}},

	{of: OfStops, names: []string{"stop", "stops"}},
	{of: OfShare, down: 100, names: []string{"%", "percent"}},
}
