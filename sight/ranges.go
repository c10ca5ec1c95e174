package sight

// span is a range of main values over which a body is seen, and a spot in it.
type span struct {
	low, high float64
	spots     []spot
}

// ranges are the stretches of the way over which a body is seen, in order. Between them
// it is proved not to be, but for what others hide jointly (see fineness.peek).
func (l *looker) ranges(b *body) []span {
	if l.way.high <= l.way.low {
		if at, ok := l.seenAt(b.all(), l.way.low); ok {
			return []span{{l.way.low, l.way.high, []spot{at}}}
		}
		return nil
	}
	r := &ranger{looker: l, body: b}
	r.divide(b.all(), l.way.low, l.way.high)
	return r.spans()
}

// ranger gathers looks at a body in the order of the main value.
type ranger struct {
	*looker
	body  *body
	looks []look
}

type look struct {
	main float64
	at   spot
	seen bool
}

func (r *ranger) at(active []*solid, main float64) look {
	if n := len(r.looks); n > 0 && r.looks[n-1].main == main {
		return r.looks[n-1]
	}
	at, seen := r.seenAt(active, main)
	return look{main, at, seen}
}

// divide looks along a stretch from left to right. A stretch that is proved to show
// nothing is looked at at its ends only where a neighbor looks there.
func (r *ranger) divide(active []*solid, low, high float64) {
	if active = r.remain(active, low, high); len(active) == 0 {
		r.note(look{main: low}, look{main: high})
		return
	}
	fine := r.way.fineness()
	long := high - low
	if long > fine.gap {
		r.halves(active, low, high)
		return
	}
	a := r.at(active, low)
	m, z := r.at(active, (low+high)/2), r.at(active, high)
	switch {
	case a.seen && m.seen && z.seen, long <= fine.edge, long <= fine.peek && !m.seen && r.hiddenInFrame(active, m.main):
		r.note(a, m, z)
	default:
		r.halves(active, low, high)
	}
}

func (r *ranger) halves(active []*solid, low, high float64) {
	middle := (low + high) / 2
	r.divide(active, low, middle)
	r.divide(active, middle, high)
}

// note keeps looks in order; of two at the same place the one that sees.
func (r *ranger) note(looks ...look) {
	for _, each := range looks {
		if n := len(r.looks); n > 0 && r.looks[n-1].main == each.main {
			if each.seen {
				r.looks[n-1] = each
			}
			continue
		}
		r.looks = append(r.looks, each)
	}
}

// spans joins looks that see, and solves where each begins and ends by bisection.
func (r *ranger) spans() []span {
	var out []span
	for i, each := range r.looks {
		if !each.seen {
			continue
		}
		if i > 0 && r.looks[i-1].seen {
			last := &out[len(out)-1]
			last.high = each.main
			last.spots = append(last.spots, each.at)
		} else {
			low := each.main
			if i > 0 {
				low = r.edge(r.looks[i-1].main, each.main)
			}
			out = append(out, span{low, each.main, []spot{each.at}})
		}
		if i+1 < len(r.looks) && !r.looks[i+1].seen {
			out[len(out)-1].high = r.edge(r.looks[i+1].main, each.main)
		}
	}
	return out
}

// edge is where, between a main value that doesn't see the body and one that does, the
// body comes into view: on the side that sees.
func (r *ranger) edge(unseen, seen float64) float64 {
	tolerance := r.way.fineness().angle
	for range 80 {
		middle := (unseen + seen) / 2
		if d := seen - unseen; d <= tolerance && d >= -tolerance || middle == unseen || middle == seen {
			break
		}
		if _, ok := r.seenAt(r.body.all(), middle); ok {
			seen = middle
		} else {
			unseen = middle
		}
	}
	return seen
}
