package circuit

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// fault says what is wrong with an assignment.
func (a *Assignment) fault() string {
	var seen []int
	legs := make([]float64, len(a.Legs))
	for _, c := range a.Circuits {
		total := 0.0
		for _, i := range c.Loads {
			total += a.amps[i]
		}
		legs[c.Leg] += total
		seen = append(seen, c.Loads...)
		switch {
		case math.Abs(total-c.Amps) > 1e-6:
			return "a circuit's amps are not its lamps'"
		case len(c.Loads) > 1 && total > a.capacity+1e-6:
			return "a circuit of several lamps is over its capacity"
		case len(c.Loads) == 0:
			return "an empty circuit"
		}
	}
	slices.Sort(seen)
	for i := range a.amps {
		if i >= len(seen) || seen[i] != i {
			return "not every lamp is on one circuit"
		}
	}
	for leg := range legs {
		if math.Abs(legs[leg]-a.Legs[leg]) > 1e-6 {
			return "a leg's amps are not its circuits'"
		}
	}
	return ""
}

// Nine loads alike: neighbors share a circuit, as a grip would plug them.
func TestNeighborsShareACircuit(t *testing.T) {
	a := Assign(repeat(220/114.0, 9), 16, 3)
	for k, c := range a.Circuits {
		if !slices.Equal(c.Loads, []int{3 * k, 3*k + 1, 3*k + 2}) {
			t.Errorf("circuit %d: %v", k, c.Loads)
		}
	}
	if a.Legs[0] != a.Legs[1] || a.Legs[1] != a.Legs[2] {
		t.Errorf("legs %v are not alike", a.Legs)
	}
}

func TestAssign(t *testing.T) {
	for _, c := range []struct {
		name     string
		amps     []float64
		capacity float64
		legs     int
		circuits int
		want     []float64
	}{
		{"nine alike on three legs", repeat(2, 9), 16, 3, 3, []float64{6, 6, 6}},
		{"full circuits, one leg", repeat(2, 16), 16, 1, 2, []float64{32}},
		{"one too many", repeat(2, 17), 16, 1, 3, []float64{34}},
		{"one over the rating", []float64{41, 3}, 16, 1, 2, []float64{44}},
		{"first fit would take three", []float64{9, 7, 6, 5, 4, 1}, 16, 1, 2, []float64{32}},
		{"two lamps on three legs", []float64{5, 5}, 16, 3, 2, []float64{5, 5, 0}},
		{"none", nil, 16, 3, 0, []float64{0, 0, 0}},
	} {
		a := Assign(c.amps, c.capacity, c.legs)
		if fault := a.fault(); fault != "" {
			t.Fatalf("%s: %s: %+v", c.name, fault, a)
		}
		got := slices.Clone(a.Legs)
		slices.SortFunc(got, func(x, y float64) int { return int(math.Copysign(1, y-x)) })
		for i := range c.want {
			if math.Abs(got[i]-c.want[i]) > 1e-9 {
				t.Errorf("%s: legs %v, want %v", c.name, got, c.want)
				break
			}
		}
		if len(a.Circuits) != c.circuits {
			t.Errorf("%s: %d circuits, want %d: %+v", c.name, len(a.Circuits), c.circuits, a.Circuits)
		}
	}
}

// So many loads that cut leaves them alone are packed all the same.
func TestVeryManyLoads(t *testing.T) {
	a := Assign(append(repeat(2, 3000), 40), 16, 3)
	if fault := a.fault(); fault != "" {
		t.Fatal(fault)
	}
	if len(a.Circuits) != 376 || a.Fewest != 376 || !a.Proved {
		t.Errorf("%d circuits, at least %d, proved %v; 375 of eight loads and one of its own are due", len(a.Circuits), a.Fewest, a.Proved)
	}
}

func repeat(x float64, n int) []float64 { return slices.Repeat([]float64{x}, n) }

// Against all ways to put a few lamps on legs where circuits are no limit: never better
// than the best, never under the bound, and rarely off it.
func TestBalanceAgainstAllWays(t *testing.T) {
	same, all := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(3, 9).Draw(t, "lamps")
		amps := make([]float64, n)
		for i := range amps {
			amps[i] = float64(rapid.IntRange(1, 20).Draw(t, "amps"))
		}
		a := Assign(amps, 1000, 3)
		if fault := a.fault(); fault != "" {
			t.Fatal(fault)
		}
		best := math.Inf(1)
		var try func(i int, legs [3]float64)
		try = func(i int, legs [3]float64) {
			if i == n {
				best = math.Min(best, max(legs[0], legs[1], legs[2]))
				return
			}
			for leg := range legs {
				next := legs
				next[leg] += amps[i]
				try(i+1, next)
			}
		}
		try(0, [3]float64{})
		largest, bound := a.Largest()
		if largest < best-1e-9 || bound > best+1e-9 {
			t.Fatalf("largest leg %g, bound %g, best of all ways %g", largest, bound, best)
		}
		if largest < best+1e-9 {
			same++
		}
		all++
	})
	t.Logf("accuracy: largest leg is the best of all ways in %d of %d", same, all)
	if same*10 < all*7 {
		t.Errorf("only %d of %d are the best", same, all)
	}
}

func TestAssignHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amps := rapid.SliceOfN(rapid.Float64Range(0, 30), 0, 40).Draw(t, "amps")
		legs := rapid.SampledFrom([]int{1, 3}).Draw(t, "legs")
		a := Assign(amps, 16, legs)
		if fault := a.fault(); fault != "" {
			t.Fatalf("%s: %+v", fault, a)
		}
		if len(a.Circuits) < a.Fewest {
			t.Fatalf("%d circuits, said to need %d", len(a.Circuits), a.Fewest)
		}
		if again := Assign(slices.Clone(amps), 16, legs); !slices.EqualFunc(a.Circuits, again.Circuits, func(x, y Circuit) bool { return x.Leg == y.Leg && slices.Equal(x.Loads, y.Loads) }) {
			t.Fatal("the same lamps give other circuits")
		}
	})
}
