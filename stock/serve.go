package stock

import (
	"cmp"
	"math"
	"slices"

	"softloft/kit"
)

// Need is so many pieces of one kind, kit id and length. Length is 0 for what has none.
type Need struct {
	ID     string
	Kind   string
	Kit    string
	Length float64 // m
	Count  int
}

// Line is how one need is served: Own, Rented and Short add up to its count. Longer
// counts those of Own and Rented for which a longer piece stands in, uncut.
type Line struct {
	ID      string
	Own     int
	Rented  int
	Short   int
	Longer  int
	Shelves []string // where to go, each once
	From    []string // houses, each once
	StandIn []string // what would serve after a new plan; nothing is counted for it
	Why     string   // why something is short, where there is more to say than the count
}

// Take is pieces off one row of the stock. Numbers that nobody gave are NaN.
type Take struct {
	Item   int // index into Shop.Items
	Count  int
	Mass   float64 // kg, all of them
	Volume float64 // m³, packed
	Cost   float64 // for all days; 0 for the shop's own without a rate
}

// Served is what comes off the shelves for a list of needs. Lines are in the needs' order.
type Served struct {
	Lines []Line
	Cuts  []Cut
	Takes []Take // in the order of the stock's rows
}

// Serve takes needs off the stock, in their order but for what is cut: all pieces of one
// tube or rope are cut together. The shop itself does not change. Days is the time of
// the rental, from 1.
func (s *Shop) Serve(needs []Need, of kit.Kit, days int) Served {
	w := &serving{shop: s, kit: of, left: make([]int, len(s.Items)), taken: make([]int, len(s.Items))}
	for i := range s.Items {
		w.left[i] = s.Items[i].Count
	}
	w.served.Lines = make([]Line, len(needs))
	for i, n := range needs {
		w.served.Lines[i].ID = n.ID
		if !isCut(n.Kind) || !(n.Length > 0) {
			w.whole(n, &w.served.Lines[i])
		}
	}
	w.cutAll(needs)
	for i, n := range needs {
		w.standIns(n, &w.served.Lines[i])
	}
	w.take(days)
	return w.served
}

// serving is a stock while needs are taken off it.
type serving struct {
	shop   *Shop
	kit    kit.Kit
	left   []int
	taken  []int
	served Served
}

// rows lists the rows of a kind and id, own before rented; own ones with the shortest
// first, rented ones with the cheapest first, unknown rates last.
func (w *serving) rows(kind, id string) []int {
	var rows []int
	for i, item := range w.shop.Items {
		if item.Kind == kind && item.Kit == id {
			rows = append(rows, i)
		}
	}
	slices.SortStableFunc(rows, func(a, b int) int {
		x, y := w.shop.Items[a], w.shop.Items[b]
		byLength := cmp.Compare(x.length(), y.length()) // an unknown length is the least
		if x.Rented() != y.Rented() {
			if y.Rented() {
				return -1
			}
			return 1
		}
		if x.Rented() {
			return cmp.Or(cmp.Compare(rate(x), rate(y)), byLength)
		}
		return byLength
	})
	return rows
}

// rate is what a piece costs a day; infinite where nobody says.
func rate(i Item) float64 {
	if i.Rate == nil {
		return math.Inf(1)
	}
	return *i.Rate
}

// whole serves a need that isn't cut: pieces of its length, or longer.
func (w *serving) whole(n Need, line *Line) {
	due := n.Count
	for _, i := range w.rows(n.Kind, n.Kit) {
		item := w.shop.Items[i]
		if due == 0 {
			break
		}
		if n.Length > 0 && !math.IsNaN(item.length()) && item.length() < n.Length-touching {
			continue
		}
		count := min(due, w.left[i])
		if count == 0 {
			continue
		}
		w.note(i, count, line)
		if n.Length > 0 && item.length() > n.Length+touching {
			line.Longer += count
		}
		due -= count
	}
	line.Short = due
}

// touching is the length below which two lengths are the same, in m.
const touching = 0.0005

// note takes pieces off a row for a need.
func (w *serving) note(i, count int, line *Line) {
	item := w.shop.Items[i]
	w.left[i] -= count
	w.taken[i] += count
	if item.Rented() {
		line.Rented += count
		line.From = once(line.From, item.From)
	} else {
		line.Own += count
	}
	line.Shelves = once(line.Shelves, item.Shelf)
}

func once(list []string, text string) []string {
	if text == "" || slices.Contains(list, text) {
		return list
	}
	return append(list, text)
}

// take adds up what comes off each row.
func (w *serving) take(days int) {
	for i, count := range w.taken {
		if count == 0 {
			continue
		}
		item, n := w.shop.Items[i], float64(count)
		t := Take{Item: i, Count: count, Mass: n * item.mass(), Volume: n * item.volume(), Cost: n * rate(item) * float64(days)}
		if item.Rate == nil {
			t.Cost = math.NaN()
			if !item.Rented() {
				t.Cost = 0
			}
		}
		w.served.Takes = append(w.served.Takes, t)
	}
}
