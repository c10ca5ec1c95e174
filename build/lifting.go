package build

import "math"

// Lifting is one lift by two hands, standing, of one person: lengths in m, Angle in
// degrees away from straight ahead, PerMinute over an hour at most.
type Lifting struct {
	Hands     float64 // H: hands from between the ankles, level
	From      float64 // V: hands above the floor where it begins, or where it must be set down with care
	Way       float64 // D: how far up or down
	Angle     float64 // A
	PerMinute float64 // F
	Grip      Grip
}

// Grip is how well it can be held.
type Grip string

// The grips of the lifting equation.
const (
	Good Grip = "good"
	Fair Grip = "fair"
	Poor Grip = "poor"
)

// Multipliers are the factors of the lifting equation, each from 0 to 1.
type Multipliers struct{ H, V, D, A, F, C float64 }

// Product is what the load constant is multiplied by.
func (m Multipliers) Product() float64 { return m.H * m.V * m.D * m.A * m.F * m.C }

// metric are the constants of the equation's metric set in m; the US set differs
// slightly (NIOSH 1991, the revised lifting equation, from memory).
var metric = Constants{Load: 23, Near: 0.25, Far: 0.63, Knuckle: 0.75, PerHeight: 0.3, Highest: 1.75, Shortest: 0.25, Longest: 1.75, Travel: 0.045}

// Constants are one set of the equation's constants. Load is what remains at best.
type Constants struct {
	Load                        float64
	Near, Far                   float64 // of H: nearer counts as near, beyond nothing may be lifted
	Knuckle, PerHeight, Highest float64
	Shortest, Longest, Travel   float64
}

// Metric returns the metric set: kg and m.
func Metric() Constants { return metric }

// US returns the US set: lb and in.
func US() Constants {
	return Constants{Load: 51, Near: 10, Far: 25, Knuckle: 30, PerHeight: 0.0075, Highest: 70, Shortest: 10, Longest: 70, Travel: 1.8}
}

// Multipliers works out the factors of a lift whose lengths are in the set's unit.
// One of them is 0 where the equation lets nothing be lifted, NaN where a number is.
func (c Constants) Multipliers(l Lifting) Multipliers {
	m := Multipliers{
		H: c.Near / math.Max(l.Hands, c.Near),
		V: 1 - c.PerHeight*math.Abs(l.From-c.Knuckle),
		D: 0.82 + c.Travel/math.Max(l.Way, c.Shortest),
		A: 1 - 0.0032*l.Angle,
		F: frequency(l.PerMinute),
		C: c.grip(l),
	}
	if l.Hands > c.Far {
		m.H = 0
	}
	if l.From > c.Highest || l.From < 0 {
		m.V = 0
	}
	if l.Way > c.Longest {
		m.D = 0
	}
	if l.Angle > 135 {
		m.A = 0
	}
	return m
}

// Recommended is the recommended weight limit of a lift, in the set's unit.
func (c Constants) Recommended(l Lifting) float64 { return c.Load * c.Multipliers(l).Product() }

func (c Constants) grip(l Lifting) float64 {
	switch {
	case l.Grip == Poor:
		return 0.90
	case l.Grip == Fair && l.From < c.Knuckle:
		return 0.95
	}
	return 1
}

// frequencies are lifts a minute for up to an hour, and their multipliers: for work
// begun below the knuckles from 11 a minute on others hold, which no crew does.
var frequencies = [][2]float64{{0.2, 1}, {0.5, 0.97}, {1, 0.94}, {2, 0.91}, {3, 0.88}, {4, 0.84}, {5, 0.80}, {6, 0.75}, {7, 0.70}, {8, 0.60}, {9, 0.52}, {10, 0.45}}

// frequency is the multiplier of the next tabled frequency that is not below; 0 above
// the table.
func frequency(perMinute float64) float64 {
	for _, row := range frequencies {
		if perMinute <= row[0] {
			return row[1]
		}
	}
	return 0
}
