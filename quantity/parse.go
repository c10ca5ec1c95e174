package quantity

import (
	"math"
	"math/big"
	"strings"
)

// Parse reads text as a quantity of dimension d and returns it in SI (angles in radians). The
// result is finite; an error is of type *Error.
//
// Feet and inches may be joined (12'6", 12 ft 6 1/2 in); fractions are below 1. A decimal comma is
// read where it cannot part thousands. A force may be given as the mass that it carries, a pressure
// as a mass per area, a force per length as a mass per length: times StandardGravity.
func Parse(text string, d Dimension) (float64, error) {
	value, err := parse(plain(text), d)
	if err != nil {
		if err.Hint == "" {
			err.Hint = suchAs(d)
		}
		return 0, err
	}
	return value, nil
}

// read is UnmarshalText for every type.
func read(into *float64, text []byte, d Dimension) error {
	x, err := Parse(string(text), d)
	if err == nil {
		*into = x
	}
	return err
}

// parse reads a text that plain has returned.
func parse(text string, d Dimension) (float64, *Error) {
	if text == "" {
		return 0, &Error{"nothing stands here, " + d.WithArticle() + " is due", ""}
	}
	if number, ok := stopNumber(text); ok {
		return parseTStop(text, number, d)
	}
	a, rest, err := scanAmount(text)
	if err != nil {
		return 0, err
	}
	rest = strings.TrimSpace(rest)
	if rest == "" {
		return bare(a, d)
	}
	if inches, ok := afterFeet(rest); ok {
		value, err := feetAndInches(a, inches, text)
		if err != nil || d == OfLength {
			return value, err
		}
		return 0, wrong(text, OfLength, d)
	}
	u, ok := unitFor(normalUnit(rest), d)
	if !ok {
		return 0, noUnit(a, rest, d)
	}
	return convert(a, u)
}

// bare returns a number without a unit, which only a share may be.
func bare(a amount, d Dimension) (float64, *Error) {
	switch {
	case d != OfShare:
		return 0, bareNumber(a, d)
	case a.comma:
		return 0, &Error{"the comma in " + clip(a.text) + " is not clear", "write a decimal point, or a share in percent"}
	}
	return convert(a, unit{of: OfShare})
}

// convert returns a in SI, its unit being u.
func convert(a amount, u unit) (float64, *Error) {
	value, _ := new(big.Rat).Mul(a.value, u.scale()).Float64()
	for range u.circle {
		value *= math.Pi
	}
	switch {
	case math.IsInf(value, 0):
		return 0, tooLarge(a.text)
	case value == 0 && a.value.Sign() != 0:
		return 0, tooSmall(a.text)
	}
	return value, nil
}

// stopNumber returns what follows the T of a T-stop.
func stopNumber(text string) (string, bool) {
	if text[0] != 'T' && text[0] != 't' {
		return "", false
	}
	number := strings.TrimSpace(text[1:])
	return number, number != "" && strings.ContainsRune("+-.,0123456789", rune(number[0]))
}

// parseTStop reads number, which text has after its T.
func parseTStop(text, number string, d Dimension) (float64, *Error) {
	if d != OfTStop {
		return 0, wrong(text, OfTStop, d)
	}
	a, rest, err := scanAmount(number)
	switch {
	case err != nil:
		return 0, err
	case rest != "" || strings.Contains(a.text, "/"):
		return 0, &Error{quoted(text) + " is not a T-stop", "write one number after the T, such as T2.8"}
	case a.value.Sign() <= 0:
		return 0, &Error{quoted(text) + " is not a T-stop, which is above 0", ""}
	}
	return convert(a, unit{of: OfTStop})
}
