package quantity

import (
	"math/big"
	"strings"
)

// afterFeet returns what follows a leading unit of feet, where that could be inches: it
// begins with a digit or a point, perhaps after a blank or a hyphen. So 12'6" and 12ft6in count and
// 12 ft, 12 ft2 and 12 ft/s do not.
func afterFeet(text string) (inches string, ok bool) {
	lower := strings.ToLower(text)
	for _, name := range []string{"'", "feet", "foot", "ft.", "ft"} {
		if !strings.HasPrefix(lower, name) {
			continue
		}
		rest := text[len(name):]
		inches = strings.TrimLeft(rest, " ")
		if hyphened, found := strings.CutPrefix(inches, "-"); found && (name == "'" || inches == rest) {
			inches = strings.TrimLeft(hyphened, " ")
		}
		if inches == "" || !isDigit(inches[0]) && inches[0] != '.' {
			return "", false
		}
		return inches, rest != "2" && rest != "3"
	}
	return "", false
}

// feetAndInches returns feet and the inches at the start of text in metres. Typed is the whole
// text, for messages.
func feetAndInches(feet amount, text, typed string) (float64, *Error) {
	if feet.comma || !isDigits(strings.TrimLeft(feet.text, "+-")) {
		return 0, &Error{"the feet in " + quoted(typed) + " are no whole number though inches follow", `write 12'6" or 12.5 ft`}
	}
	inches, rest, err := scanAmount(text)
	if err != nil {
		return 0, err
	}
	name := strings.TrimSpace(rest)
	if name == "" {
		return 0, &Error{"the " + clip(inches.text) + " at the end of " + quoted(typed) + " has no unit", "write " + clip(feet.text+"'"+inches.text) + `"`}
	}
	if u, ok := unitFor(normalUnit(name), OfLength); !ok || u.names[0] != "in" {
		return 0, &Error{quoted(name) + " stands where inches are due", `such as 12'6"`}
	}
	if inches.value.Cmp(big.NewRat(12, 1)) >= 0 {
		return 0, &Error{"the " + clip(inches.text) + " inches in " + quoted(typed) + " are a foot or more", "write inches below 12, such as " + carried(feet, inches)}
	}
	sum := new(big.Rat).Mul(new(big.Rat).Abs(feet.value), big.NewRat(12, 1))
	sum.Add(sum, inches.value)
	if feet.negative {
		sum.Neg(sum)
	}
	feet.value, feet.text = sum, typed
	return convert(feet, unit{of: OfLength, foot: 1, down: 12})
}

// carried writes feet and inches of 12 or more with the inches carried over.
func carried(feet, inches amount) string {
	sum := new(big.Rat).Mul(new(big.Rat).Abs(feet.value), big.NewRat(12, 1))
	total, _ := sum.Add(sum, inches.value).Float64()
	if feet.negative {
		total = -total
	}
	return Feet(Length(total) * Inch)
}
