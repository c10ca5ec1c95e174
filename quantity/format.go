package quantity

import (
	"math"
	"strconv"
)

// unknown is what a number that is not finite prints as.
const unknown = "not known"

// format prints x in SI so that Parse reads the same number back.
func format(x float64, d Dimension) string {
	switch number := exact(x); {
	case number == unknown:
		return unknown
	case d == OfTStop:
		return "T" + number
	case d == OfShare:
		return number
	default:
		return number + " " + d.Unit()
	}
}

// exact prints the shortest decimal that reads back as x, without an exponent where the number is of a common size.
func exact(x float64) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return unknown
	}
	if size := math.Abs(x); size == 0 || 1e-6 <= size && size < 1e15 {
		return strconv.FormatFloat(x+0, 'f', -1, 64)
	}
	return strconv.FormatFloat(x, 'g', -1, 64)
}

// fixed prints x with a number of decimals and a unit; -0 prints as 0.
func fixed(x float64, decimals int, unit string) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return unknown
	}
	if math.Abs(x) >= 1e15 {
		return strconv.FormatFloat(x, 'g', 4, 64) + unit
	}
	text := strconv.FormatFloat(x, 'f', decimals, 64)
	if text[0] == '-' && zeroDigits(text[1:]) {
		text = text[1:]
	}
	return text + unit
}

// significant prints x to three digits, or to the unit where it has more, and a unit.
func significant(x float64, unit string) string {
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return fixed(x, 0, unit)
	}
	// The exponent is taken after rounding to three digits: 9.996 prints as 10.0.
	rounded, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'e', 2, 64), 64)
	exponent := int(math.Floor(math.Log10(math.Abs(rounded)) + 1e-9))
	if exponent < -6 {
		return strconv.FormatFloat(x, 'g', 3, 64) + unit
	}
	return fixed(x, max(0, 2-exponent), unit)
}

// zeroDigits tells whether text is made of 0 and a point alone.
func zeroDigits(text string) bool {
	for _, r := range text {
		if r != '0' && r != '.' {
			return false
		}
	}
	return true
}
