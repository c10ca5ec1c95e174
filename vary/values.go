package vary

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"softloft/quantity"
)

// stepsOf reads the values of a key: a range or a list.
func stepsOf(name, text string, k kind) ([]Step, error) {
	from, to, isRange := strings.Cut(text, "..")
	if !isRange {
		return listed(name, text, k)
	}
	if !k.number {
		return nil, fmt.Errorf("%s has no values between two; list the ones to try: %s=%s", name, name, k.example())
	}
	to, count, err := countOf(name, to)
	if err != nil {
		return nil, err
	}
	ends := [2]float64{}
	for i, end := range []string{from, to} {
		if ends[i], err = k.read(strings.TrimSpace(end)); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
	}
	if ends[0] == ends[1] {
		return nil, fmt.Errorf("the range %s of %s is empty: both ends are the same", quoted(text), name)
	}
	if k.whole {
		return wholeRange(name, ends, count)
	}
	if count == 0 {
		count = defaultSteps
	}
	return rangeOf(ends, count, k), nil
}

// countOf takes the number of values off the end of a range: 18ft/5. It is 0 where none
// stands there; 1/2 in is no number of values.
func countOf(name, text string) (rest string, count int, err error) {
	cut := strings.LastIndexByte(text, '/')
	if cut < 0 {
		return text, 0, nil
	}
	number := strings.TrimSpace(text[cut+1:])
	if number == "" || strings.Trim(number, "0123456789") != "" {
		if strings.Trim(number, "+-.0123456789") == "" {
			return "", 0, fmt.Errorf("%q is no number of values for %s; a whole number from 2 to %d is due", number, name, mostSteps)
		}
		return text, 0, nil
	}
	count, err = strconv.Atoi(number)
	if err != nil || count > mostSteps {
		return "", 0, tooMany(name, number)
	}
	if count < 2 {
		return "", 0, fmt.Errorf("%d values of %s vary nothing; 2 to %d are due", count, name, mostSteps)
	}
	return text[:cut], count, nil
}

// rangeOf returns values at equal distances, ends included; T-stops at equal stops.
func rangeOf(ends [2]float64, count int, k kind) []Step {
	steps := make([]Step, count)
	for i := range steps {
		t := float64(i) / float64(count-1)
		value := ends[0] + (ends[1]-ends[0])*t
		switch {
		case i == count-1:
			value = ends[1]
		case k.dimension == quantity.OfTStop && k.measured && i > 0:
			value = ends[0] * math.Pow(ends[1]/ends[0], t)
		}
		steps[i] = Step{k.text(value), value}
	}
	return steps
}

// wholeRange returns whole numbers at equal distances, each of them where no count is
// given.
func wholeRange(name string, ends [2]float64, count int) ([]Step, error) {
	gaps := math.Abs(ends[1] - ends[0])
	if count == 0 {
		if gaps+1 > mostSteps {
			return nil, tooMany(name, fmt.Sprint(gaps+1))
		}
		count = int(gaps) + 1
	}
	if math.Mod(gaps, float64(count-1)) != 0 {
		return nil, fmt.Errorf("%d values from %v to %v are not whole numbers, which %s takes", count, ends[0], ends[1], name)
	}
	steps := make([]Step, count)
	for i := range steps {
		value := ends[0] + (ends[1]-ends[0])/float64(count-1)*float64(i)
		steps[i] = Step{fmt.Sprint(value), value}
	}
	return steps, nil
}

// listed reads values with commas between them. A comma in brackets parts nothing.
func listed(name, text string, k kind) ([]Step, error) {
	var steps []Step
	for _, item := range parts(text) {
		item = strings.TrimSpace(item)
		if item == "" {
			return nil, fmt.Errorf("a value of %s between two commas is empty; such as %s=%s", name, name, k.example())
		}
		step := Step{k.wrapped(item), math.NaN()}
		if k.number {
			value, err := k.read(item)
			if err != nil {
				return nil, fmt.Errorf("%s: %w", name, err)
			}
			step.Value = value
		}
		if steps = append(steps, step); len(steps) > 10*mostSteps {
			return nil, tooMany(name, "more than "+fmt.Sprint(10*mostSteps))
		}
	}
	return steps, nil
}

// parts splits a list at its commas, but within brackets.
func parts(text string) []string {
	var all []string
	depth, from := 0, 0
	for i, c := range text {
		switch {
		case c == '[' || c == '{':
			depth++
		case c == ']' || c == '}':
			depth--
		case c == ',' && depth == 0:
			all, from = append(all, text[from:i]), i+1
		}
	}
	return append(all, text[from:])
}

// read reads one number of a key, in SI or degrees.
func (k kind) read(text string) (float64, error) {
	if k.measured {
		value, err := quantity.Parse(text, k.dimension)
		if k.dimension == quantity.OfAngle {
			value /= float64(quantity.Degree)
		}
		return value, err
	}
	value, err := strconv.ParseFloat(text, 64)
	switch {
	case text == "":
		return 0, fmt.Errorf("nothing stands here, a number without a unit is due, such as %s", k.example())
	case err != nil || math.IsNaN(value) || math.IsInf(value, 0):
		return 0, fmt.Errorf("%s is not a number; one without a unit is due, such as %s", quoted(text), k.example())
	case k.whole && (value != math.Trunc(value) || math.Abs(value) > 1e9):
		return 0, fmt.Errorf("%s is not a whole number", text)
	}
	return value, nil
}
