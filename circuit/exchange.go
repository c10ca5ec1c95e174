package circuit

import "slices"

// mostTries bounds the exchanges that are looked at: a design assumption.
const mostTries = 2_000_000

// improve moves and exchanges loads, and exchanges whole circuits between legs, while
// that lowers the sum of squares of the legs, or leaves it and lowers that of the
// circuits. The lowest sum of squares is the most even.
func (a *Assignment) improve() {
	tries := 0
	for changed := true; changed && tries < mostTries; {
		changed = a.exchangeCircuits(&tries)
		for c := range a.Circuits {
			for d := range a.Circuits {
				if c != d && (a.moveOne(c, d, &tries) || (c < d && a.exchangeOne(c, d, &tries))) {
					changed = true
				}
			}
		}
	}
}

// moveOne moves the first load from c to d for which that helps.
func (a *Assignment) moveOne(c, d int, tries *int) bool {
	for k, i := range a.Circuits[c].Loads {
		*tries++
		if !a.room(d, a.amps[i]) || len(a.Circuits[c].Loads) == 1 && len(a.Circuits[d].Loads) == 0 || !a.helps(c, d, a.amps[i]) {
			continue
		}
		a.Circuits[c].Loads = slices.Delete(a.Circuits[c].Loads, k, k+1)
		a.add(c, -a.amps[i])
		a.put(i, d)
		return true
	}
	return false
}

// exchangeOne exchanges the first pair of loads of c and d for which that helps.
func (a *Assignment) exchangeOne(c, d int, tries *int) bool {
	for k, i := range a.Circuits[c].Loads {
		for m, j := range a.Circuits[d].Loads {
			*tries++
			more := a.amps[i] - a.amps[j] // what goes from c to d
			if a.Circuits[d].Amps+more > a.capacity+whole || a.Circuits[c].Amps-more > a.capacity+whole || !a.helps(c, d, more) {
				continue
			}
			a.Circuits[c].Loads[k], a.Circuits[d].Loads[m] = j, i
			a.add(c, -more)
			a.add(d, more)
			return true
		}
	}
	return false
}

// exchangeCircuits puts circuits on each other's leg, or one on another leg, where that helps.
func (a *Assignment) exchangeCircuits(tries *int) bool {
	changed := false
	for c := range a.Circuits {
		for leg := range a.Legs {
			*tries++
			if from := a.Circuits[c].Leg; leg != from && a.legsBy(from, leg, a.Circuits[c].Amps) < -whole {
				a.toLeg(c, leg)
				changed = true
			}
		}
		for d := range c {
			*tries++
			from, to := a.Circuits[c].Leg, a.Circuits[d].Leg
			if from != to && a.legsBy(from, to, a.Circuits[c].Amps-a.Circuits[d].Amps) < -whole {
				a.toLeg(c, to)
				a.toLeg(d, from)
				changed = true
			}
		}
	}
	return changed
}

func (a *Assignment) toLeg(c, leg int) {
	a.Legs[a.Circuits[c].Leg] -= a.Circuits[c].Amps
	a.Circuits[c].Leg = leg
	a.Legs[leg] += a.Circuits[c].Amps
}

// helps reports whether taking amps from circuit c to d evens things out.
func (a *Assignment) helps(c, d int, amps float64) bool {
	legs := a.legsBy(a.Circuits[c].Leg, a.Circuits[d].Leg, amps)
	circuits := squares(a.Circuits[c].Amps, a.Circuits[d].Amps, amps)
	return legs < -whole || (legs < whole && circuits < -whole)
}

// legsBy is the change of the legs' sum of squares when amps go from one leg to another.
func (a *Assignment) legsBy(from, to int, amps float64) float64 {
	if from == to {
		return 0
	}
	return squares(a.Legs[from], a.Legs[to], amps)
}

// squares is the change of x² + y² when amps go from x to y.
func squares(x, y, amps float64) float64 { return 2 * amps * (y - x + amps) }
