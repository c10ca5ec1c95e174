package finding

import "math"

// function is one of the functions that a formula may use. least and most are
// its number of arguments.
type function struct {
	name        string
	least, most int
	value       func([]float64) float64
}

const anyNumber = 64

// functions is the table of functions. Never written to.
var functions = []function{
	{"min", 1, anyNumber, func(x []float64) float64 { return fold(math.Min, x) }},
	{"max", 1, anyNumber, func(x []float64) float64 { return fold(math.Max, x) }},
	{"hypot", 1, anyNumber, func(x []float64) float64 { return fold(math.Hypot, append([]float64{0}, x...)) }},
	{"atan2", 2, 2, func(x []float64) float64 { return math.Atan2(x[0], x[1]) }},
	one("sqrt", math.Sqrt),
	one("abs", math.Abs),
	one("ceil", math.Ceil),
	one("exp", math.Exp),
	one("log2", math.Log2),
	one("sin", math.Sin),
	one("cos", math.Cos),
	one("tan", math.Tan),
	one("asin", math.Asin),
	one("acos", math.Acos),
	one("atan", math.Atan),
	one("deg", func(x float64) float64 { return x * 180 / math.Pi }),
}

func one(name string, f func(float64) float64) function {
	return function{name, 1, 1, func(x []float64) float64 { return f(x[0]) }}
}

func fold(f func(a, b float64) float64, x []float64) float64 {
	total := x[0]
	for _, value := range x[1:] {
		total = f(total, value)
	}
	return total
}

func functionNamed(name string) *function {
	for i := range functions {
		if functions[i].name == name {
			return &functions[i]
		}
	}
	return nil
}
