package light

import (
	"math"
)

// The forward lobe keeps the direction to each lamp: that is the hot spot. What
// a receiver gets of it is added up directly, for places on the lamp's opening
// and, for each, over the cloth about the point where the straight way crosses
// it: the lobe's own width there says how far and how finely.

// relay is one way of light forward through a cloth: unscattered through the
// cloths above, or by lobes of theirs, which count as one wider lobe here.
type relay struct {
	plane int
	above int     // planes with a lower number are already in the part
	part  float64 // share of the light on the first cloth above
	lobe  *lobe
}

// relays lists the ways to go forward through every cloth.
func (e *Engine) listRelays() {
	for k, p := range e.planes {
		if p.cloth.ForwardPart == 0 {
			continue
		}
		e.primary = len(e.relays) // at last the lowest cloth's own
		e.relays = append(e.relays, relay{k, k, p.cloth.ForwardPart, newLobe(p.cloth.ForwardSigma)})
		e.listDoubled(k, k-1, p.cloth.ForwardPart, p.cloth.ForwardSigma*p.cloth.ForwardSigma)
	}
}

// listDoubled adds the ways that a cloth above has already spread: variances of
// lobes add.
func (e *Engine) listDoubled(k, above int, part, variance float64) {
	for j := above; j >= 0; j-- {
		c := e.planes[j].cloth
		if c.ForwardPart == 0 {
			part *= c.Through
			continue
		}
		both := variance + c.ForwardSigma*c.ForwardSigma
		e.relays = append(e.relays, relay{k, j, part * c.ForwardPart, newLobe(math.Sqrt(both))})
		e.listDoubled(k, j-1, part*c.ForwardPart, both)
		part *= c.Through
	}
}

// forwarded is what the lobes give at a station, lx.
func (e *Engine) forwarded(w *sight, from station, m meter) float64 {
	sum := 0.0
	for j := range e.lamps {
		sum += e.forwardedOf(w, j, from, m)
	}
	return sum + e.bounced(w, from, m)
}

// forwardedOf is that of one lamp, without what bounces in the box.
func (e *Engine) forwardedOf(w *sight, lamp int, from station, m meter) float64 {
	sum := 0.0
	for i := range e.relays {
		r := &e.relays[i]
		if r.plane < from.chamber && from.at.Z < e.planes[r.plane].z {
			sum += e.relayed(w, r, &e.lamps[lamp], from, m)
		}
	}
	return sum
}

// relayed is what one lamp gives by one relay.
func (e *Engine) relayed(w *sight, r *relay, l *lamp, from station, m meter) float64 {
	sum := 0.0
	for k := range l.parts {
		p := &l.parts[k]
		if p.chamber > r.above || l.Lumens == 0 {
			continue
		}
		factor := r.part
		for c := p.chamber; c < r.above; c++ {
			factor *= e.planes[c].passes()
		}
		for c := r.plane + 1; c < from.chamber; c++ {
			factor *= e.planes[c].passes()
		}
		if factor == 0 {
			continue
		}
		if !e.prepareSpot(w, r, l, p, from, m) {
			continue
		}
		w.starts = placesOn(w.starts[:0], l, p, from.at, w.spot.step(l))
		for _, s := range w.starts {
			sum += factor * s.share * e.spot(w, s.at)
		}
	}
	return sum
}
