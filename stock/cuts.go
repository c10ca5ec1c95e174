package stock

import (
	"fmt"
	"math"
	"slices"

	"softloft/cut"
)

// Cut is how all pieces of one tube or rope are cut. Proved says that no way takes less:
// fewer bars that are short, then less rent, then less length off the shelf. Where it is
// not proved, Gap says how far from the least it may be.
type Cut struct {
	Kind, Kit string
	Kerf      float64 // m
	Bars      []Bar
	Proved    bool
	Gap       string
	TooLong   int // pieces that no length holds
}

// Bar is one tube or rope of the stock and the pieces from it. Item is its row, -1 for
// one that is short: then Length is one that the kit lists.
type Bar struct {
	Item   int
	Length float64
	Pieces []Piece
	Rest   float64
}

// Piece is one piece of a need.
type Piece struct {
	Need   int // index into the needs
	Length float64
}

// Short is the item of a bar that is not there.
const Short = -1

// cutAll cuts all tubes and ropes, in the order in which they are first needed.
func (w *serving) cutAll(needs []Need) {
	var done []string
	for _, n := range needs {
		key := n.Kind + "." + n.Kit
		if !isCut(n.Kind) || !(n.Length > 0) || slices.Contains(done, key) {
			continue
		}
		done = append(done, key)
		w.cut(needs, n.Kind, n.Kit)
	}
}

// source is a stock length of a job: a row, or a length that the kit lists.
type source struct {
	item   int
	length float64
}

// cut cuts all pieces of one kind and id.
func (w *serving) cut(needs []Need, kind, id string) {
	var pieces []Piece
	job := cut.Job{}
	if kind == "tube" {
		job.Kerf = float64(w.shop.Kerf)
	}
	for i, n := range needs {
		if n.Kind != kind || n.Kit != id {
			continue
		}
		for range n.Count {
			pieces = append(pieces, Piece{i, n.Length})
			job.Pieces = append(job.Pieces, n.Length)
		}
	}
	sources := w.sources(kind, id)
	job.Stock = w.priced(sources, len(pieces))
	told := Cut{Kind: kind, Kit: id, Kerf: job.Kerf}
	result, err := cut.Solve(job)
	if err != nil {
		for _, p := range pieces {
			w.short(p, why(sources, err))
		}
		told.Gap = why(sources, err)
		w.served.Cuts = append(w.served.Cuts, told)
		return
	}
	told.TooLong, told.Proved, told.Gap = len(result.TooLong), result.Proved, gap(result, job.Stock)
	for _, i := range result.TooLong {
		w.short(pieces[i], "it is longer than every length on the shelves and in the kit: a splice, or another box, is a new plan")
	}
	for _, b := range result.Bars {
		told.Bars = append(told.Bars, w.bar(b, pieces, sources))
	}
	w.served.Cuts = append(w.served.Cuts, told)
}

func why(sources []source, err error) string {
	if len(sources) == 0 {
		return "neither the shelves nor the kit have a length of it"
	}
	return err.Error()
}

// sources are the rows that are left, and then the lengths that the kit lists.
func (w *serving) sources(kind, id string) []source {
	var all []source
	for _, i := range w.rows(kind, id) {
		if w.left[i] > 0 {
			all = append(all, source{i, w.shop.Items[i].length()})
		}
	}
	for _, length := range w.kitLengths(kind, id) {
		all = append(all, source{Short, length})
	}
	return all
}

func (w *serving) kitLengths(kind, id string) []float64 {
	var lengths []float64
	if kind == "tube" {
		for _, l := range w.kit.Tube[id].Lengths {
			lengths = append(lengths, float64(l))
		}
	} else {
		for _, l := range w.kit.Rope[id].Lengths {
			lengths = append(lengths, float64(l))
		}
	}
	return lengths
}

// Costs count so that what is short weighs more than any rent, and any rent more than any
// length of the shop's own. Own length counts in decimetres and rent in cents, as far
// as whole numbers reach: most is the cost of one bar that cut takes.
const most = 1e12

// priced gives every source its cost.
func (w *serving) priced(sources []source, pieces int) []cut.Stock {
	longest, dearest := 1.0, 1.0
	for _, s := range sources {
		longest = math.Max(longest, math.Ceil(10*s.length))
		if s.item != Short {
			if r := rate(w.shop.Items[s.item]); !math.IsInf(r, 0) {
				dearest = math.Max(dearest, math.Round(100*r))
			}
		}
	}
	n := float64(max(pieces, 1))
	rent := longest*n + 1          // of one cent
	lack := rent*(dearest+1)*n + 1 // of one decimetre that is short
	if lack*(longest+1) > most {   // too far apart for whole numbers: cents no longer decide
		rent, lack, dearest = longest*n+1, (longest*n+1)*n+1, 0
	}
	var stock []cut.Stock
	for _, s := range sources {
		length := math.Ceil(10 * s.length)
		one := cut.Stock{Length: s.length, Count: cut.Unlimited, Cost: int64(math.Min(lack*(1+length), most))}
		if s.item != Short {
			item := w.shop.Items[s.item]
			one.Count, one.Whole, one.Cost = w.left[s.item], !item.cuttable(), int64(length)
			if item.Rented() {
				cents := dearest + 1 // a rate that nobody gave is tried last
				if r := rate(item); !math.IsInf(r, 0) && dearest > 0 {
					cents = 1 + math.Round(100*r)
				}
				one.Cost += int64(math.Min(rent*cents, most/2))
			}
		}
		stock = append(stock, one)
	}
	return stock
}

// gap says how far from the least the cuts may be, in bars where all bars cost the same.
func gap(r cut.Result, stock []cut.Stock) string {
	switch {
	case r.Proved:
		return ""
	case r.Missing > r.MissingBound:
		return fmt.Sprintf("the search was stopped: %d bars are missing, another way may do with %d", r.Missing, r.MissingBound)
	}
	for _, s := range stock[1:] {
		if s.Cost != stock[0].Cost {
			return "the search was stopped: another way may take less"
		}
	}
	return fmt.Sprintf("the search was stopped: at most %d bars above the bound", r.Gap()/max(stock[0].Cost, 1))
}

// bar takes one bar off its row and serves its pieces' needs.
func (w *serving) bar(b cut.Bar, pieces []Piece, sources []source) Bar {
	told := Bar{Item: Short, Length: b.Length, Rest: b.Rest}
	if b.Stock != cut.Missing {
		told.Item = sources[b.Stock].item
	}
	for _, i := range b.Pieces {
		p := pieces[i]
		told.Pieces = append(told.Pieces, p)
		if told.Item == Short {
			w.short(p, "")
			continue
		}
		item, line := w.shop.Items[told.Item], &w.served.Lines[p.Need]
		if item.Rented() {
			line.Rented++
			line.From = once(line.From, item.From)
		} else {
			line.Own++
		}
		line.Shelves = once(line.Shelves, item.Shelf)
		if !item.cuttable() && item.length() > p.Length+touching {
			line.Longer++
		}
	}
	if told.Item != Short {
		w.left[told.Item]--
		w.taken[told.Item]++
	}
	return told
}

func (w *serving) short(p Piece, why string) {
	line := &w.served.Lines[p.Need]
	line.Short++
	if why != "" {
		line.Why = why
	}
}
