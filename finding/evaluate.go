package finding

import (
	"errors"
	"fmt"
	"math"
)

// Evaluate computes the formula. values gives each symbol's value; one that is
// missing, NaN or infinite is not known. The result is finite, or it is NaN and
// the error says in words what is not known: no NaN is swallowed by max, hypot
// or a power of zero.
func (e Expression) Evaluate(values map[string]float64) (float64, error) {
	if e.root == nil {
		return unknown(), errors.New("there is no formula")
	}
	return e.root.evaluate(values)
}

func (n *node) evaluate(values map[string]float64) (float64, error) {
	switch n.operation {
	case literal:
		return n.number, nil
	case circle:
		return math.Pi, nil
	case variable:
		if x, ok := values[n.text]; ok && Known(x) {
			return x + 0, nil // no minus zero
		}
		return unknown(), fmt.Errorf("%s is not known", n.text)
	case call:
		return n.evaluateCall(values)
	case negative, degrees:
		x, err := n.arguments[0].evaluate(values)
		if err != nil {
			return unknown(), err
		}
		if n.operation == negative {
			return -x, nil
		}
		return n.finite(x*math.Pi/180, x)
	default:
		return n.evaluateInfix(values)
	}
}

func (n *node) evaluateInfix(values map[string]float64) (float64, error) {
	left, err := n.arguments[0].evaluate(values)
	if err != nil {
		return unknown(), err
	}
	right, err := n.arguments[1].evaluate(values)
	if err != nil {
		return unknown(), err
	}
	switch n.operation {
	case plus:
		return n.finite(left+right, right)
	case minus:
		return n.finite(left-right, right)
	case times:
		return n.finite(left*right, right)
	case over:
		return n.finite(left/right, right)
	default:
		return n.finite(math.Pow(left, right), right)
	}
}

func (n *node) evaluateCall(values map[string]float64) (float64, error) {
	arguments := make([]float64, len(n.arguments))
	for i, argument := range n.arguments {
		x, err := argument.evaluate(values)
		if err != nil {
			return unknown(), err
		}
		arguments[i] = x
	}
	return n.finite(n.function.value(arguments), arguments[0])
}

// finite lets a finite value pass and complains of the others. last is the
// argument that explains them: a divisor, what stands under a root.
func (n *node) finite(x, last float64) (float64, error) {
	if Known(x) {
		return x, nil
	}
	switch {
	case n.operation == over && last == 0:
		return unknown(), fmt.Errorf("%s is a division by zero", n.print(symbolic{}))
	case n.operation == call && n.text == "sqrt":
		return unknown(), fmt.Errorf("%s is the root of a negative number", n.print(symbolic{}))
	default:
		return unknown(), fmt.Errorf("%s has no finite value", n.print(symbolic{}))
	}
}
