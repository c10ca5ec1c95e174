package cut

import (
	"errors"
	"fmt"
	"math"
)

// Unlimited is the count of a stock length of which there is always another bar.
const Unlimited = -1

// Missing is the stock of a bar that nobody has: it is as long as the longest length of
// the job, and is taken only where the pieces fit in no other way.
const Missing = -1

// Bounds against a job that would take hours: design assumptions.
const (
	mostPieces  = 1500
	mostStock   = 64
	mostLength  = 1e4
	mostCost    = 1_000_000_000_000
	mostCount   = 1_000_000
	usualNodes  = 300_000
	mostNodes   = 10_000_000
	fromLengths = 1e9 // lengths are whole billionths inside, so that sums are exact
)

// Stock is a length that pieces are cut from. Cost is what one bar counts, from 1; 0
// stands for 1, so that the number of bars is the cost. A Whole bar is not cut: one piece
// takes it, and the rest of its length hangs over.
type Stock struct {
	Length float64
	Count  int // Unlimited, or how many there are
	Cost   int64
	Whole  bool
}

// Job is what to cut. Kerf is what a saw cut takes; a bar needs one cut less than
// it has pieces and rest. Nodes caps the search; 0 is 300,000.
type Job struct {
	Stock  []Stock
	Pieces []float64
	Kerf   float64
	Nodes  int
}

// Bar is one bar of a result: its stock (an index into Job.Stock, or Missing) and its
// pieces (indices into Job.Pieces), longest first. Rest is what is left of it.
type Bar struct {
	Stock  int
	Length float64
	Pieces []int
	Rest   float64
}

// Result is a way to cut. TooLong are pieces that fit in no length; they are not in the
// bars. Cost counts the bars that are there, Missing those that nobody has. No plan
// needs less than Bound with as few missing bars, where Proved is false; where it is
// true, Cost is the least.
type Result struct {
	Bars    []Bar
	TooLong []int
	Cost    int64
	Bound   int64
	Missing int
	// MissingBound is the fewest missing bars that any plan needs, as far as it is known.
	MissingBound int
	Proved       bool
	Nodes        int // of the search; 0 where the first plan met the bound
}

// Gap is by how much the cost may be above the least one; 0 where it is proved.
func (r Result) Gap() int64 {
	if r.Proved {
		return 0
	}
	return r.Cost - r.Bound
}

// fault says what is wrong with a job.
func (j Job) fault() error {
	switch {
	case len(j.Pieces) > mostPieces:
		return fmt.Errorf("%d pieces to cut, at most %d are worked out", len(j.Pieces), mostPieces)
	case len(j.Stock) == 0:
		return errors.New("no stock length to cut from")
	case len(j.Stock) > mostStock:
		return fmt.Errorf("%d stock lengths, at most %d are worked out", len(j.Stock), mostStock)
	case !(j.Kerf >= 0 && j.Kerf <= mostLength):
		return fmt.Errorf("a saw cut of %g; 0 or more is due", j.Kerf)
	case j.Nodes < 0 || j.Nodes > mostNodes:
		return fmt.Errorf("a search of %d nodes; 0 to %d are due", j.Nodes, mostNodes)
	}
	for i, s := range j.Stock {
		if !proper(s.Length) || s.Cost < 0 || s.Cost > mostCost || s.Count < Unlimited || s.Count > mostCount {
			return fmt.Errorf("stock %d: length %g, count %d, cost %d; a length over 0, a count and a cost of 0 or more are due", i+1, s.Length, s.Count, s.Cost)
		}
	}
	for i, p := range j.Pieces {
		if !proper(p) {
			return fmt.Errorf("piece %d is %g long; more than 0 and at most %g is due", i+1, p, float64(mostLength))
		}
	}
	return nil
}

func proper(x float64) bool { return x*fromLengths >= 1 && x <= mostLength }

func whole(x float64) int64 { return int64(math.Round(x * fromLengths)) }
