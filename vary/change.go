package vary

import (
	"math"
	"slices"
	"strings"
)

// Change is where something changes along the quantity. Finding is the id of a finding
// that goes over or ceases to be; empty for the result as a whole. From and To are
// neighboring values with the change between them; Narrow is true where they were
// narrowed down to 1 %.
type Change struct {
	Finding   string `json:"finding,omitempty"`
	Statement string `json:"statement"`
	Before    string `json:"before"`
	After     string `json:"after"`
	From      Number `json:"from"`
	To        Number `json:"to"`
	Narrow    bool   `json:"narrow"`
}

const (
	mostNarrowed = 8    // changes that are narrowed down at once; the others stay wider
	mostHalvings = 12   // of one bracket
	narrow       = 0.01 // of the value and of what is varied
	nearZero     = 0.1  // of what is varied: smaller values count as this
)

// bracket is a change between two values that were tried.
type bracket struct {
	id, statement string
	low, high     *tried
	exact         bool
}

// changes finds the changes between neighbors and narrows them down together.
func (w *work) changes(all []tried) []Change {
	if !w.ask.Number {
		return nil
	}
	var open []*bracket
	order := w.ask.order()
	for i := 1; i < len(order); i++ {
		open = append(open, between(&all[order[i-1]], &all[order[i]])...)
	}
	var told []*bracket
	for halvings := 0; len(open) > 0; halvings++ {
		still := open[:0:0]
		for k, b := range open {
			b.exact = w.narrowed(b)
			if b.exact || halvings >= mostHalvings || k >= mostNarrowed {
				told = append(told, b)
				continue
			}
			still = append(still, b)
		}
		open = w.halve(still)
	}
	return w.sorted(told)
}

// between lists what differs between two neighbors: the result as a whole, and findings
// that are over on one side only.
func between(low, high *tried) []*bracket {
	var found []*bracket
	if low.result() != high.result() {
		found = append(found, &bracket{low: low, high: high})
	}
	if low.err != nil || high.err != nil {
		return found
	}
	var ids []string
	for _, pair := range [][2]*tried{{low, high}, {high, low}} {
		for id, f := range pair[0].over {
			if _, both := pair[1].over[id]; !both && len(f.Causes) == 0 {
				ids = append(ids, id)
			}
		}
	}
	slices.Sort(ids)
	for _, id := range ids {
		f, ok := low.over[id]
		if !ok {
			f = high.over[id]
		}
		found = append(found, &bracket{id: id, statement: f.Statement, low: low, high: high})
	}
	return found
}

// narrowed reports whether a bracket is narrow enough.
func (w *work) narrowed(b *bracket) bool {
	gap := math.Abs(b.high.step.Value - b.low.step.Value)
	if w.ask.kind.whole && gap <= 1 {
		return true
	}
	span := w.ask.span()
	value := math.Max(math.Abs(b.high.step.Value), math.Abs(b.low.step.Value))
	return gap <= narrow*math.Min(math.Max(value, nearZero*span), span)*(1+1e-9)
}

// halve works out the middle of every bracket and keeps the half with the change. Where
// the result is a third one in the middle, both halves have a change.
func (w *work) halve(open []*bracket) []*bracket {
	var steps []Step
	at := map[float64]int{}
	for _, b := range open {
		middle := w.middle(b)
		if _, ok := at[middle.Value]; !ok {
			at[middle.Value] = len(steps)
			steps = append(steps, middle)
		}
	}
	if len(steps) == 0 {
		return nil
	}
	found := w.all(steps)
	var next []*bracket
	for _, b := range open {
		next = append(next, b.parted(&found[at[w.middle(b).Value]])...)
	}
	return next
}

func (w *work) middle(b *bracket) Step {
	value := (b.low.step.Value + b.high.step.Value) / 2
	if w.ask.kind.whole {
		value = math.Floor(value)
	}
	return Step{w.ask.kind.text(value), value}
}

// state is what a bracket looks at.
func (b *bracket) state(t *tried) string {
	if b.id == "" {
		return t.result()
	}
	if t.err != nil {
		return "refused"
	}
	if _, over := t.over[b.id]; over {
		return "over"
	}
	return "not over"
}

func (b *bracket) parted(middle *tried) []*bracket {
	low, high := *b, *b
	low.high, high.low = middle, middle
	var next []*bracket
	if b.state(b.low) != b.state(middle) {
		next = append(next, &low)
	}
	if b.state(b.high) != b.state(middle) {
		next = append(next, &high)
	}
	return next
}

// sorted tells the changes along the quantity, the result before findings.
func (w *work) sorted(told []*bracket) []Change {
	var all []Change
	for _, b := range told {
		statement := b.statement
		if b.id == "" {
			statement = "result"
		}
		all = append(all, Change{b.id, statement, b.state(b.low), b.state(b.high), Number(b.low.step.Value), Number(b.high.step.Value), b.exact})
	}
	way := 1
	if n := len(w.ask.Steps); w.ask.order()[0] == 0 && w.ask.Steps[0].Value > w.ask.Steps[n-1].Value {
		way = -1
	}
	slices.SortStableFunc(all, func(x, y Change) int {
		if c := way * compare(float64(x.From+x.To), float64(y.From+y.To)); c != 0 {
			return c
		}
		return strings.Compare(x.Finding, y.Finding)
	})
	return all
}
