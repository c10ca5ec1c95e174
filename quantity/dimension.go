package quantity

// Dimension says what kind of quantity a number is: what its units may be, how it is called in a
// sentence and what an example of it looks like.
type Dimension int

// The dimensions, one for each type of this package.
const (
	OfLength Dimension = iota
	OfMass
	OfForce
	OfMoment
	OfAngle
	OfPressure
	OfLineForce
	OfLineMass
	OfAreaMass
	OfDensity
	OfRigidity
	OfFlux
	OfIlluminance
	OfIntensity
	OfVoltage
	OfCurrent
	OfPower
	OfDuration
	OfSpeed
	OfStops
	OfTStop
	OfShare
	dimensions // how many there are
)

// Dimensions returns every dimension, in the order of the constants.
func Dimensions() []Dimension {
	all := make([]Dimension, dimensions)
	for i := range all {
		all[i] = Dimension(i)
	}
	return all
}

// wording is what is said of a dimension.
type wording struct {
	name     string   // in a user's words, without an article
	article  string   // a or an
	unit     string   // SI unit as printed by String
	examples []string // typed as a user would; the first in feet and pounds where there are two
	feet     string   // unit that a bare number was perhaps meant in
	metres   string   // the same for the metric reader; empty where there is one unit for both
}

// words returns what is said of d. An unknown dimension has a wording of its own.
func (d Dimension) words() wording {
	switch d {
	case OfLength:
		return wording{"length", "a", "m", []string{`12'6"`, "3.8 m"}, "ft", "m"}
	case OfMass:
		return wording{"mass", "a", "kg", []string{"250 lb", "120 kg"}, "lb", "kg"}
	case OfForce:
		return wording{"force", "a", "N", []string{"250 lb", "1.1 kN"}, "lb", "N"}
	case OfMoment:
		return wording{"moment", "a", "N m", []string{"40 N m", "30 lbf ft"}, "lbf ft", "N m"}
	case OfAngle:
		return wording{"angle", "an", "rad", []string{"15 deg", "0.26 rad"}, "deg", ""}
	case OfPressure:
		return wording{"pressure", "a", "Pa", []string{"100 lb/ft2", "4.8 kPa", "69 GPa"}, "lb/ft2", "kPa"}
	case OfLineForce:
		return wording{"force per length", "a", "N/m", []string{"20 N/m", "30 kN/m"}, "N/m", "kN/m"}
	case OfLineMass:
		return wording{"mass per length", "a", "kg/m", []string{"0.5 lb/ft", "0.75 kg/m"}, "lb/ft", "kg/m"}
	case OfAreaMass:
		return wording{"mass per area", "a", "kg/m2", []string{"6 oz/yd2", "0.25 kg/m2"}, "oz/yd2", "kg/m2"}
	case OfDensity:
		return wording{"density", "a", "kg/m3", []string{"2700 kg/m3", "0.098 lb/in3"}, "lb/in3", "kg/m3"}
	case OfRigidity:
		return wording{"bending rigidity", "a", "N m2", []string{"5000 N m2"}, "N m2", ""}
	case OfFlux:
		return wording{"luminous flux", "a", "lm", []string{"20000 lm"}, "lm", ""}
	case OfIlluminance:
		return wording{"illuminance", "an", "lx", []string{"50 fc", "540 lx"}, "fc", "lx"}
	case OfIntensity:
		return wording{"luminous intensity", "a", "cd", []string{"5000 cd"}, "cd", ""}
	case OfVoltage:
		return wording{"voltage", "a", "V", []string{"120 V"}, "V", ""}
	case OfCurrent:
		return wording{"current", "a", "A", []string{"20 A"}, "A", ""}
	case OfPower:
		return wording{"power", "a", "W", []string{"300 W", "1.2 kW"}, "W", ""}
	case OfDuration:
		return wording{"time", "a", "s", []string{"90 s", "5 min"}, "s", ""}
	case OfSpeed:
		return wording{"speed", "a", "m/s", []string{"12 m/s", "25 mph"}, "m/s", "mph"}
	case OfStops:
		return wording{"difference in stops", "a", "stop", []string{"0.5 stop"}, "stop", ""}
	case OfTStop:
		return wording{"T-stop", "a", "T", []string{"T2.8"}, "T", ""}
	case OfShare:
		return wording{"share", "a", "", []string{"0.6", "60%"}, "", ""}
	}
	return wording{"quantity of no known kind", "a", "", nil, "", ""}
}

// String returns the dimension's name in a user's words, such as "mass per length".
func (d Dimension) String() string { return d.words().name }

// WithArticle returns the name as it stands in a sentence, such as "an angle".
func (d Dimension) WithArticle() string { w := d.words(); return w.article + " " + w.name }

// Unit returns the SI unit that String prints, such as "kg/m2"; empty for a share.
func (d Dimension) Unit() string { return d.words().unit }

// Examples returns texts that Parse accepts for d, as a user would type them.
func (d Dimension) Examples() []string { return d.words().examples }
