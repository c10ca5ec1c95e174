package finding

import "errors"

// Expression is a parsed formula; it does not change after Parse.
type Expression struct{}

// Parse reads a formula such as "F_allow = B * k / n".
func Parse(text string) (Expression, error) { return Expression{}, errors.New("not written yet") }
