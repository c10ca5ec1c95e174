package quantity

import (
	"math"
	"strconv"
)

// System is the system of units that people read: feet, pounds and foot-candles, or metres,
// kilograms and lux. Its zero value counts as InFeet.
//
// Its methods print to three digits where nothing else is said, and "not known" for a number that is not
// finite.
type System string

// The systems; their text is what a plan says under sheet.units.
const (
	InFeet   System = "feet"
	InMetres System = "metres"
)

// Words returns the values that a plan may give.
func (s System) Words() []string { return []string{string(InFeet), string(InMetres)} }

// choose prints x in the unit of the system: one holds the size of each unit in SI.
func (s System) choose(x, feetSize float64, feetUnit string, metresSize float64, metresUnit string) string {
	if s == InMetres {
		return significant(x/metresSize, " "+metresUnit)
	}
	return significant(x/feetSize, " "+feetUnit)
}

// Length prints as Feet or Metres does.
func (s System) Length(x Length) string {
	if s == InMetres {
		return Metres(x)
	}
	return Feet(x)
}

// Mass prints pounds or kilograms.
func (s System) Mass(x Mass) string {
	return s.choose(float64(x), float64(Pound), "lb", 1, "kg")
}

// Force prints pounds of force, as lb, or newtons, from 1000 N on as kilonewtons.
func (s System) Force(x Force) string {
	if math.Abs(float64(x)) >= 1000 {
		return s.choose(float64(x), float64(PoundForce), "lb", 1000, "kN")
	}
	return s.choose(float64(x), float64(PoundForce), "lb", 1, "N")
}

// Moment prints pound-force feet or newton metres.
func (s System) Moment(x Moment) string {
	return s.choose(float64(x), float64(PoundForce)*float64(Foot), "lbf ft", 1, "N m")
}

// Pressure prints what a floor bears: pounds per square foot or kilopascals.
func (s System) Pressure(x Pressure) string {
	return s.choose(float64(x), float64(PoundForce)/float64(Foot*Foot), "lb/ft2", 1000, "kPa")
}

// Stress prints what a material bears: thousands of pounds-force per square inch or megapascals.
func (s System) Stress(x Pressure) string {
	return s.choose(float64(x), 1000*float64(PoundForce)/float64(Inch*Inch), "ksi", 1e6, "MPa")
}

// LineForce prints pounds-force per foot or newtons per metre.
func (s System) LineForce(x LineForce) string {
	return s.choose(float64(x), float64(PoundForce)/float64(Foot), "lbf/ft", 1, "N/m")
}

// LineMass prints pounds per foot or kilograms per metre.
func (s System) LineMass(x LineMass) string {
	return s.choose(float64(x), float64(Pound)/float64(Foot), "lb/ft", 1, "kg/m")
}

// AreaMass prints ounces per square yard or grams per square metre, as cloth is sold.
func (s System) AreaMass(x AreaMass) string {
	return s.choose(float64(x), float64(Ounce)/float64(9*Foot*Foot), "oz/yd2", 0.001, "g/m2")
}

// Illuminance prints foot-candles or lux.
func (s System) Illuminance(x Illuminance) string {
	return s.choose(float64(x), float64(FootCandle), "fc", 1, "lx")
}

// Speed prints miles per hour or metres per second.
func (s System) Speed(x Speed) string {
	return s.choose(float64(x), 0.44704, "mph", 1, "m/s")
}

// Angle prints degrees to 0.1, in both systems.
func (s System) Angle(x Angle) string { return fixed(float64(x/Degree), 1, " deg") }

// Stops prints to 0.1 stop, in both systems.
func (s System) Stops(x Stops) string { return fixed(float64(x), 1, " stop") }

// TStop prints T2.8, to 0.1 or, below T2.8, to 0.01, in both systems.
func (s System) TStop(x TStop) string {
	if math.IsNaN(float64(x)) || math.IsInf(float64(x), 0) {
		return unknown
	}
	step := 10.0
	if x < 2.8 {
		step = 100
	}
	return "T" + strconv.FormatFloat(math.Round(float64(x)*step)/step, 'f', -1, 64)
}

// Share prints whole percents, in both systems.
func (s System) Share(x Share) string { return fixed(float64(x)*100, 0, "%") }
