package quantity

import (
	"math/big"
	"strconv"
	"strings"
)

// amount is a number as it stands at the start of a text.
type amount struct {
	value    *big.Rat
	text     string // the number as typed
	negative bool   // a minus stands before it, also before 0
	comma    bool   // its decimals stand after a comma
}

// scanAmount reads the number at the start of text and returns what follows it: 12, -3.66, 1e3,
// 3,66, 1/2, 6 1/2, 6-1/2.
func scanAmount(text string) (a amount, rest string, err *Error) {
	rest = text
	if strings.HasPrefix(rest, "-") || strings.HasPrefix(rest, "+") {
		a.negative = rest[0] == '-'
		rest = rest[1:]
	}
	number, after := cutNumber(rest)
	if number == "" {
		return a, text, &Error{quoted(text) + " does not begin with a number", ""}
	}
	if isDigits(number) {
		if a.value, after, err = scanFraction(number, after); err != nil {
			return a, text, err
		}
	}
	if a.value == nil {
		if a.value, a.comma, err = decimal(number); err != nil {
			return a, text, err
		}
	}
	a.text = strings.TrimSpace(text[:len(text)-len(after)])
	if a.negative {
		a.value.Neg(a.value)
	}
	return a, after, nil
}

// cutNumber splits text after its leading unsigned decimal number, which may hold points and commas
// anywhere and an exponent at its end.
func cutNumber(text string) (number, rest string) {
	end := 0
	for end < len(text) && (isDigit(text[end]) || text[end] == '.' || text[end] == ',') {
		end++
	}
	if !strings.ContainsAny(text[:end], "0123456789") {
		return "", text
	}
	if end < len(text) && (text[end] == 'e' || text[end] == 'E') {
		digits := end + 1
		if digits < len(text) && (text[digits] == '-' || text[digits] == '+') {
			digits++
		}
		if digits < len(text) && isDigit(text[digits]) {
			for digits < len(text) && isDigit(text[digits]) {
				digits++
			}
			end = digits
		}
	}
	return text[:end], text[end:]
}

// scanFraction reads the fraction that number begins, or that follows number as its whole
// part. It returns nil where there is none.
func scanFraction(number, after string) (*big.Rat, string, *Error) {
	if strings.HasPrefix(after, "/") {
		value, rest, err := properFraction(number, after)
		return value, rest, err
	}
	joined, hyphened := strings.CutPrefix(after, "-")
	if !hyphened {
		joined = strings.TrimLeft(after, " ")
	}
	top, behind := cutDigits(joined)
	if top == "" || !strings.HasPrefix(behind, "/") {
		return nil, after, nil
	}
	value, rest, err := properFraction(top, behind)
	if value == nil {
		return nil, after, err
	}
	whole, ok := new(big.Rat).SetString(clipped(number))
	if !ok || len(number) > longest {
		return nil, after, &Error{quoted(number) + " is too long before a fraction", "write it with a decimal point"}
	}
	return value.Add(value, whole), rest, nil
}

// properFraction reads top and the slash and digits at the start of after as a fraction
// below 1. It returns nil where no digits follow the slash.
func properFraction(top, after string) (*big.Rat, string, *Error) {
	bottom, rest := cutDigits(after[1:])
	if bottom == "" {
		return nil, after, nil
	}
	over, err1 := strconv.ParseInt(top, 10, 64)
	under, err2 := strconv.ParseInt(bottom, 10, 64)
	if err1 != nil || err2 != nil || over >= under {
		return nil, after, &Error{"the fraction " + clip(top+"/"+bottom) + " is not below 1", "write a whole number, a blank and a fraction, such as 6 1/2"}
	}
	return big.NewRat(over, under), rest, nil
}

// longest is how many digits are read exactly; a longer number is rounded to a float64 first.
const longest = 400

// decimal returns the value of an unsigned decimal number, and whether a comma stands before its
// decimals.
func decimal(number string) (*big.Rat, bool, *Error) {
	text, comma, err := withPoint(number)
	if err != nil {
		return nil, false, err
	}
	mantissa, exponent, _ := strings.Cut(strings.ToLower(text), "e")
	power := strings.TrimLeft(strings.TrimLeft(exponent, "+-"), "0")
	zero := !strings.ContainsAny(mantissa, "123456789")
	switch {
	case zero:
		return new(big.Rat), comma, nil
	case len(power) <= 2 && len(mantissa) <= longest:
		value, _ := new(big.Rat).SetString(text)
		return value, comma, nil
	}
	// strconv cuts exponents of more than four digits.
	rounded, overflow := strconv.ParseFloat(text, 64)
	switch {
	case strings.HasPrefix(exponent, "-") && (len(power) > 4 || rounded == 0):
		return nil, false, tooSmall(number)
	case len(power) > 4 || overflow != nil:
		return nil, false, tooLarge(number)
	case rounded == 0:
		return nil, false, tooSmall(number)
	}
	return new(big.Rat).SetFloat64(rounded), comma, nil
}

// withPoint returns number with a point before its decimals. A comma counts as one where it cannot
// be meant to part thousands.
func withPoint(number string) (text string, comma bool, err *Error) {
	points, commas := strings.Count(number, "."), strings.Count(number, ",")
	switch {
	case points == 1 && commas == 0 || points == 0 && commas == 0:
		return number, false, nil
	case points > 0 && commas == 0:
		return "", false, &Error{quoted(number) + " has more than one decimal point", "write one"}
	case points > 0 || commas > 1:
		bare := strings.ReplaceAll(number, ",", "")
		return "", false, &Error{"the comma in " + clip(number) + " is not clear", "write thousands without a comma: " + clip(bare)}
	}
	whole, decimals := splitComma(number)
	if len(decimals) == 3 && whole != "" && strings.TrimLeft(whole, "0") != "" {
		return "", false, &Error{"the comma in " + clip(number) + " is not clear", "write " + clip(whole+decimals) + " or " + clip(whole+"."+decimals)}
	}
	if whole == "" || decimals == "" {
		return "", false, &Error{"the comma in " + clip(number) + " is not clear", "write a decimal point with digits on both sides"}
	}
	return strings.Replace(number, ",", ".", 1), true, nil
}

// splitComma returns the digits before and after the comma, without an exponent.
func splitComma(number string) (whole, decimals string) {
	mantissa, _, _ := strings.Cut(strings.ToLower(number), "e")
	whole, decimals, _ = strings.Cut(mantissa, ",")
	return whole, decimals
}

// cutDigits splits text after its leading digits.
func cutDigits(text string) (digits, rest string) {
	end := 0
	for end < len(text) && isDigit(text[end]) {
		end++
	}
	return text[:end], text[end:]
}

func isDigit(b byte) bool { return '0' <= b && b <= '9' }

func isDigits(text string) bool {
	digits, rest := cutDigits(text)
	return digits != "" && rest == ""
}

// clipped returns at most longest bytes of digits.
func clipped(digits string) string { return digits[:min(len(digits), longest)] }
