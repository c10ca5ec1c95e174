package power

import "slices"

// mostTries bounds the exchanges that are looked at: a design assumption.
const mostTries = 2_000_000

// improve moves and exchanges lamps, and exchanges whole circuits between legs, while
// that lowers the sum of squares of the legs, or leaves it and lowers that of the
// circuits. The lowest sum of squares is the most even.
func (a *assignment) improve() {
	tries := 0
	for changed := true; changed && tries < mostTries; {
		changed = a.exchangeCircuits(&tries)
		for c := range a.circuits {
			for d := range a.circuits {
				if c != d && (a.moveOne(c, d, &tries) || (c < d && a.exchangeOne(c, d, &tries))) {
					changed = true
				}
			}
		}
	}
}

// moveOne moves the first lamp from c to d for which that helps.
func (a *assignment) moveOne(c, d int, tries *int) bool {
	for k, i := range a.circuits[c].lamps {
		*tries++
		if !a.room(d, a.amps[i]) || len(a.circuits[c].lamps) == 1 && len(a.circuits[d].lamps) == 0 || !a.helps(c, d, a.amps[i]) {
			continue
		}
		a.circuits[c].lamps = slices.Delete(a.circuits[c].lamps, k, k+1)
		a.add(c, -a.amps[i])
		a.put(i, d)
		return true
	}
	return false
}

// exchangeOne exchanges the first pair of lamps of c and d for which that helps.
func (a *assignment) exchangeOne(c, d int, tries *int) bool {
	for k, i := range a.circuits[c].lamps {
		for m, j := range a.circuits[d].lamps {
			*tries++
			more := a.amps[i] - a.amps[j] // what goes from c to d
			if a.circuits[d].amps+more > a.capacity+whole || a.circuits[c].amps-more > a.capacity+whole || !a.helps(c, d, more) {
				continue
			}
			a.circuits[c].lamps[k], a.circuits[d].lamps[m] = j, i
			a.add(c, -more)
			a.add(d, more)
			return true
		}
	}
	return false
}

// exchangeCircuits puts circuits on each other's leg, or one on another leg, where that helps.
func (a *assignment) exchangeCircuits(tries *int) bool {
	changed := false
	for c := range a.circuits {
		for leg := range a.legs {
			*tries++
			if from := a.circuits[c].leg; leg != from && a.legsBy(from, leg, a.circuits[c].amps) < -whole {
				a.toLeg(c, leg)
				changed = true
			}
		}
		for d := range c {
			*tries++
			from, to := a.circuits[c].leg, a.circuits[d].leg
			if from != to && a.legsBy(from, to, a.circuits[c].amps-a.circuits[d].amps) < -whole {
				a.toLeg(c, to)
				a.toLeg(d, from)
				changed = true
			}
		}
	}
	return changed
}

func (a *assignment) toLeg(c, leg int) {
	a.legs[a.circuits[c].leg] -= a.circuits[c].amps
	a.circuits[c].leg = leg
	a.legs[leg] += a.circuits[c].amps
}

// helps reports whether taking amps from circuit c to d evens things out.
func (a *assignment) helps(c, d int, amps float64) bool {
	legs := a.legsBy(a.circuits[c].leg, a.circuits[d].leg, amps)
	circuits := squares(a.circuits[c].amps, a.circuits[d].amps, amps)
	return legs < -whole || (legs < whole && circuits < -whole)
}

// legsBy is the change of the legs' sum of squares when amps go from one leg to another.
func (a *assignment) legsBy(from, to int, amps float64) float64 {
	if from == to {
		return 0
	}
	return squares(a.legs[from], a.legs[to], amps)
}

// squares is the change of x² + y² when amps go from x to y.
func squares(x, y, amps float64) float64 { return 2 * amps * (y - x + amps) }
