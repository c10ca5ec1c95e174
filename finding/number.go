package finding

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
)

// Number is a number as the answers print it in JSON: 13 significant digits,
// null where it is not known (NaN or infinite).
type Number float64

// digitsOfAnswers is the number of significant digits in the JSON.
const digitsOfAnswers = 13

// unknown is the value that stands for "not known" inside the program.
func unknown() float64 { return math.NaN() }

// Known reports whether x is a finite number.
func Known(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// MarshalJSON prints 13 significant digits, null where not known.
func (n Number) MarshalJSON() ([]byte, error) {
	x := float64(n)
	if !Known(x) {
		return []byte("null"), nil
	}
	if x == 0 {
		x = 0 // no minus zero
		return []byte("0"), nil
	}
	return strconv.AppendFloat(nil, x, 'g', digitsOfAnswers, 64), nil
}

// UnmarshalJSON reads a number, and null as NaN.
func (n *Number) UnmarshalJSON(data []byte) error {
	data = bytes.TrimSpace(data)
	if string(data) == "null" {
		*n = Number(math.NaN())
		return nil
	}
	x, err := strconv.ParseFloat(string(data), 64)
	if err != nil || !Known(x) {
		return fmt.Errorf("%q is not a number; a number or null is due", data)
	}
	*n = Number(x)
	return nil
}
