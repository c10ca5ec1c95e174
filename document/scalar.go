package document

import (
	"encoding"
	"errors"
	"math"
	"reflect"
	"strconv"
	"strings"

	"softloft/quantity"

	"go.yaml.in/yaml/v4"
)

// worded is a string type that allows certain words.
type worded interface {
	Words() []string
}

// readText reads a scalar by the type's own rule.
func (r *reader) readText(at spot, into encoding.TextUnmarshaler, t reflect.Type) bool {
	if at.value.Kind != yaml.ScalarNode {
		return r.wrong(at, kindName(at.value)+" stands here, "+due(t)+" is due", example(t, "such as "))
	}
	err := into.UnmarshalText([]byte(at.value.Value))
	var problem *quantity.Error
	switch {
	case err == nil:
		return true
	case errors.As(err, &problem):
		return r.wrong(at, problem.Problem, problem.Hint)
	}
	return r.wrong(at, err.Error(), "")
}

// readWord reads one of a few words.
func (r *reader) readWord(at spot, v reflect.Value, words []string) bool {
	if v.Kind() != reflect.String || at.value.Kind != yaml.ScalarNode {
		return r.wrong(at, kindName(at.value)+" stands here, a word is due", "write "+orList(words))
	}
	text := at.value.Value
	for _, word := range words {
		if word == text {
			v.SetString(text)
			return true
		}
	}
	if near := nearest(text, words); len(near) > 0 {
		return r.wrong(at, quoted(text)+" is none of "+strings.Join(words, ", "), "write "+orList(near))
	}
	return r.wrong(at, quoted(text)+" is not a word known here", "write "+orList(words))
}

// readScalar reads a scalar by v's kind.
func (r *reader) readScalar(at spot, v reflect.Value) bool {
	text := at.value.Value
	switch {
	case v.Kind() == reflect.String:
		v.SetString(text)
		return true
	case at.value.Style != 0 && v.Kind() != reflect.Interface:
		return r.wrong(at, quoted(text)+" stands in quotation marks, which make it text, "+due(v.Type())+" is due", "leave the marks out")
	case v.Kind() == reflect.Bool:
		return r.readBool(at, v)
	case v.CanInt() || v.CanUint():
		return r.readCount(at, v)
	case v.CanFloat():
		return r.readNumber(at, v)
	}
	return r.wrong(at, "a value of type "+v.Type().String()+" cannot be read", "this is a fault of the program")
}

// readBool reads the truth values of the core schema.
func (r *reader) readBool(at spot, v reflect.Value) bool {
	switch at.value.Value {
	case "true", "True", "TRUE":
		v.SetBool(true)
	case "false", "False", "FALSE":
		v.SetBool(false)
	default:
		return r.wrong(at, quoted(at.value.Value)+" is neither true nor false", "write "+truth(at.value.Value))
	}
	return true
}

// truth returns what a word for a truth value was meant to be.
func truth(word string) string {
	switch strings.ToLower(word) {
	case "yes", "y", "on", "1":
		return "true"
	case "no", "n", "off", "0":
		return "false"
	}
	return "true or false"
}

// readCount reads a decimal whole number.
func (r *reader) readCount(at spot, v reflect.Value) bool {
	text := at.value.Value
	digits := strings.TrimPrefix(strings.TrimPrefix(text, "+"), "-")
	if digits == "" || strings.Trim(digits, "0123456789") != "" || len(text) > len(digits)+1 {
		return r.wrong(at, quoted(text)+" is not a whole number", "write digits alone, such as 4")
	}
	if v.CanUint() {
		number, err := strconv.ParseUint(strings.TrimPrefix(text, "+"), 10, v.Type().Bits())
		if strings.HasPrefix(text, "-") && strings.Trim(digits, "0") != "" {
			return r.wrong(at, clip(text)+" is below 0", "write 0 or more")
		}
		if err != nil && !strings.HasPrefix(text, "-") {
			return r.wrong(at, clip(text)+" is too large a number", "write a smaller one")
		}
		v.SetUint(number)
		return true
	}
	number, err := strconv.ParseInt(text, 10, v.Type().Bits())
	if err != nil {
		return r.wrong(at, clip(text)+" is too large a number", "write a smaller one")
	}
	v.SetInt(number)
	return true
}

// readNumber reads a finite decimal number without a unit.
func (r *reader) readNumber(at spot, v reflect.Value) bool {
	text := at.value.Value
	number, err := strconv.ParseFloat(text, 64)
	switch {
	case strings.Trim(text, "0123456789+-.eE") != "" || errors.Is(err, strconv.ErrSyntax):
		return r.wrong(at, quoted(text)+" is not a bare number", "write a number alone, such as 0.5")
	case err != nil || v.OverflowFloat(number) || math.IsInf(number, 0):
		return r.wrong(at, clip(text)+" is too large a number", "write a smaller one")
	}
	v.SetFloat(number)
	return true
}
