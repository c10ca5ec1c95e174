package quantity

// System is the system of units that people read: feet, pounds and foot-candles, or metres,
// kilograms and lux. Its zero value counts as InFeet.
type System string

// The systems; their text is what a plan says under sheet.units.
const (
	InFeet   System = "feet"
	InMetres System = "metres"
)

// Words returns the values that a plan may give.
func (s System) Words() []string { return []string{string(InFeet), string(InMetres)} }

// Feet prints feet and inches to the nearest 1/8 in, with carry: 12'-6 1/2", 0'-0", -0'-3".
func Feet(x Length) string { return "" }

// Metres prints metres to the millimetre: 3.810 m.
func Metres(x Length) string { return "" }

// Length prints as Feet or Metres does.
func (s System) Length(x Length) string { return "" }

// Mass prints pounds or kilograms.
func (s System) Mass(x Mass) string { return "" }

// Force prints pounds of force as lb, or newtons and kilonewtons.
func (s System) Force(x Force) string { return "" }

// Illuminance prints foot-candles or lux.
func (s System) Illuminance(x Illuminance) string { return "" }

// Moment prints pound-force feet or newton metres.
func (s System) Moment(x Moment) string { return "" }

// Pressure prints pounds per square foot or kilopascals: what a floor bears.
func (s System) Pressure(x Pressure) string { return "" }

// LineForce prints pounds of force per foot or newtons per metre.
func (s System) LineForce(x LineForce) string { return "" }

// LineMass prints pounds per foot or kilograms per metre.
func (s System) LineMass(x LineMass) string { return "" }

// AreaMass prints ounces per square yard or grams per square metre: how cloth is sold.
func (s System) AreaMass(x AreaMass) string { return "" }

// Speed prints miles per hour or metres per second.
func (s System) Speed(x Speed) string { return "" }

// Angle prints degrees, to 0.1, in both systems.
func (s System) Angle(x Angle) string { return "" }

// Stops prints to 0.1 stop in both systems.
func (s System) Stops(x Stops) string { return "" }

// LoadUp prints a load for people: rounded up, away from 0, to 5 lb or 2 kg. A force is printed as
// the mass whose weight it is, as gear is rated.
func LoadUp[Load Force | Mass](s System, x Load) string { return "" }
