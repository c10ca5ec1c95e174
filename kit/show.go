package kit

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"softloft/quantity"
)

// show prints a property for people. Pins go by millimetres, whatever the units.
func (p property) show(units quantity.System) string {
	switch p.Key {
	case "pin", "receiver":
		return show(p.Value, quantity.InMetres)
	case "rises":
		return strings.ReplaceAll(show(p.Value, units), " × ", " to ")
	}
	return show(p.Value, units)
}

// show prints a value for people in a system of units. Sizes of stock are printed
// exactly: 1-1/2 in pipe is 1.9 in outside.
func show(value any, units quantity.System) string {
	switch v := value.(type) {
	case string:
		return v
	case bool:
		return map[bool]string{true: "yes", false: "no"}[v]
	case float64:
		return digits(v, 4)
	case RatingKind:
		return map[RatingKind]string{"WLL": "working load limit", "breaking": "breaking load"}[v]
	case []string:
		return strings.Join(v, ", ")
	case Weight:
		return showWeight(v, units)
	case CrateMass:
		return showCrateMass(v, units)
	case Forward:
		return fmt.Sprintf("%s in a lobe of %s", percent(v.Part), units.Angle(v.Sigma))
	case Spread:
		return showSpread(v, units)
	case Supply:
		return showSupply(v, units)
	case []Rating:
		return showRatings(v, units)
	}
	return showQuantity(value, units)
}

func showQuantity(value any, units quantity.System) string {
	switch v := value.(type) {
	case quantity.Length:
		return showLength(v, units)
	case []quantity.Length:
		return showLengths(v, ", ", units)
	case [2]quantity.Length:
		return showLengths(v[:], " × ", units)
	case [3]quantity.Length:
		return showLengths(v[:], " × ", units)
	case quantity.Mass:
		return units.Mass(v)
	case quantity.Force:
		return units.Force(v)
	case quantity.LineMass:
		return units.LineMass(v)
	case quantity.AreaMass:
		return units.AreaMass(v)
	case quantity.LineForce:
		return units.LineForce(v)
	case quantity.Pressure:
		return units.Stress(v)
	case quantity.Angle:
		return units.Angle(v)
	case quantity.Density:
		if units == quantity.InMetres {
			return digits(float64(v), 4) + " kg/m3"
		}
		return digits(float64(v)*math.Pow(float64(quantity.Inch), 3)/float64(quantity.Pound), 3) + " lb/in3"
	}
	return fmt.Sprint(value)
}

// showLength prints inches or millimetres under a foot or a metre, else as lengths are
// printed elsewhere.
func showLength(l quantity.Length, units quantity.System) string {
	switch {
	case units == quantity.InMetres && math.Abs(float64(l)) < 1:
		return digits(float64(l)*1000, 4) + " mm"
	case units != quantity.InMetres && math.Abs(float64(l)) < float64(quantity.Foot):
		return digits(float64(l/quantity.Inch), 4) + " in"
	}
	return units.Length(l)
}

func showLengths(lengths []quantity.Length, between string, units quantity.System) string {
	texts := make([]string, len(lengths))
	for i, l := range lengths {
		texts[i] = showLength(l, units)
	}
	return strings.Join(texts, between)
}

func showWeight(w Weight, units quantity.System) string {
	if w.PerLength != nil {
		return units.LineMass(*w.PerLength)
	}
	if w.Each != nil {
		return units.Mass(*w.Each)
	}
	return ""
}

func showCrateMass(m CrateMass, units quantity.System) string {
	if m.PerArea != nil {
		return units.AreaMass(*m.PerArea)
	}
	if m.Whole != nil {
		return units.Mass(*m.Whole) + " the whole"
	}
	return ""
}

func showSpread(s Spread, units quantity.System) string {
	if s.Lambertian() {
		return "even in all directions (lambertian)"
	}
	if s.File != "" {
		return "file " + s.File
	}
	return fmt.Sprintf("beam %s, field %s", units.Angle(*s.Beam), units.Angle(*s.Field))
}

func showSupply(s Supply, units quantity.System) string {
	text := "inside"
	if s.Mass != nil {
		text = units.Mass(*s.Mass) + ", at the lamp"
	}
	if s.OffBox {
		text = strings.TrimSuffix(text, ", at the lamp") + ", off the box"
	}
	return text
}

func showRatings(rows []Rating, units quantity.System) string {
	texts := make([]string, len(rows))
	for i, row := range rows {
		texts[i] = units.Force(row.Load) + " at " + showLength(row.At, units)
	}
	return strings.Join(texts, ", ")
}

// digits prints a number to n significant digits without trailing zeros, and without an
// exponent at common sizes.
func digits(x float64, n int) string {
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', n, 64), 64)
	if err != nil || math.IsNaN(rounded) || math.IsInf(rounded, 0) {
		return "not known"
	}
	if size := math.Abs(rounded); size != 0 && (size < 1e-4 || size >= 1e9) {
		return strconv.FormatFloat(rounded, 'g', -1, 64)
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64)
}

func percent(share float64) string { return digits(share*100, 3) + " %" }
