package cut

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// solved solves a job and checks that its bars are a way to cut it.
func solved(t interface {
	Helper()
	Fatalf(string, ...any)
}, name string, job Job) Result {
	t.Helper()
	r, err := Solve(job)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	if fault := check(job, r); fault != "" {
		t.Fatalf("%s: %s\n%+v", name, fault, r)
	}
	return r
}

func check(job Job, r Result) string {
	seen := slices.Clone(r.TooLong)
	used := make([]int, len(job.Stock))
	longest, cost := 0.0, int64(0)
	for _, s := range job.Stock {
		longest = max(longest, s.Length)
	}
	for _, bar := range r.Bars {
		seen = append(seen, bar.Pieces...)
		length := longest
		if bar.Stock != Missing {
			used[bar.Stock]++
			length = job.Stock[bar.Stock].Length
			cost += max(job.Stock[bar.Stock].Cost, 1)
		}
		took := -job.Kerf
		for _, i := range bar.Pieces {
			took += job.Pieces[i] + job.Kerf
		}
		switch {
		case len(bar.Pieces) == 0:
			return "a bar without a piece"
		case bar.Stock != Missing && job.Stock[bar.Stock].Whole && len(bar.Pieces) > 1:
			return "a bar that is not cut gives several pieces"
		case took > length+1e-8:
			return "a bar is cut longer than it is"
		case math.Abs(bar.Length-length) > 1e-8:
			return "a bar's length is not its stock's"
		case bar.Rest > 1e-8 && math.Abs(took+job.Kerf+bar.Rest-length) > 1e-7:
			return "the rest is not what is left"
		}
	}
	slices.Sort(seen)
	for i := range job.Pieces {
		if i >= len(seen) || seen[i] != i {
			return "not every piece is cut once"
		}
	}
	for i, s := range job.Stock {
		if s.Count >= 0 && used[i] > s.Count {
			return "more bars than there are"
		}
	}
	switch {
	case len(seen) != len(job.Pieces):
		return "a piece is cut twice"
	case cost != r.Cost:
		return "the cost is not the bars'"
	case r.Missing == r.MissingBound && r.Bound > r.Cost:
		return "the bound is over the cost"
	}
	return ""
}

// least is the least cost by trying all ways: each piece in turn into each open bar, or
// into a new one. Missing bars count 1e9 each.
func least(job Job) int64 {
	left := make([]int, len(job.Stock))
	longest := 0.0
	for i, s := range job.Stock {
		left[i], longest = s.Count, max(longest, s.Length)
	}
	best := int64(math.MaxInt64)
	var room []float64
	var place func(i int, cost int64)
	place = func(i int, cost int64) {
		if cost >= best {
			return
		}
		if i == len(job.Pieces) {
			best = cost
			return
		}
		need := job.Pieces[i] + job.Kerf
		for b := range room {
			if room[b] >= need-1e-9 {
				room[b] -= need
				place(i+1, cost)
				room[b] += need
			}
		}
		for k := -1; k < len(job.Stock); k++ {
			length, price := longest, int64(1e9)
			if k >= 0 {
				length, price = job.Stock[k].Length, max(job.Stock[k].Cost, 1)
				if left[k] == 0 {
					continue
				}
			}
			if length+job.Kerf < need-1e-9 {
				continue
			}
			if k >= 0 {
				left[k]--
			}
			room = append(room, length+job.Kerf-need)
			if k >= 0 && job.Stock[k].Whole {
				room[len(room)-1] = 0
			}
			place(i+1, cost+price)
			room = room[:len(room)-1]
			if k >= 0 {
				left[k]++
			}
		}
	}
	place(0, 0)
	return best
}

func anyJob(t *rapid.T) Job {
	job := Job{Kerf: float64(rapid.IntRange(0, 3).Draw(t, "kerf")) / 10}
	longest := 0
	for range rapid.IntRange(1, 3).Draw(t, "kinds") {
		length := rapid.IntRange(4, 14).Draw(t, "stock")
		longest = max(longest, length)
		job.Stock = append(job.Stock, Stock{Length: float64(length), Count: rapid.IntRange(-1, 3).Draw(t, "count"), Cost: int64(rapid.IntRange(0, 9).Draw(t, "cost")), Whole: rapid.Bool().Draw(t, "whole")})
	}
	for range rapid.IntRange(1, 8).Draw(t, "pieces") {
		job.Pieces = append(job.Pieces, float64(rapid.IntRange(1, 2*longest).Draw(t, "piece"))/2)
	}
	return job
}

func TestAgainstAllWays(t *testing.T) {
	better, all := 0, 0
	defer func() { t.Logf("%d jobs, first fit decreasing is not the least in %d", all, better) }()
	rapid.Check(t, func(t *rapid.T) {
		job := anyJob(t)
		r := solved(t, "job", job)
		all++
		if p, _ := newProblem(job); len(p.sizes) > 0 && p.cost(p.first()) > r.Cost+p.lack*int64(r.Missing) {
			better++
		}
		if want := least(job); r.Cost+1e9*int64(r.Missing) != want || !r.Proved {
			t.Fatalf("cost %d and %d missing, proved %v; all ways give %d\n%+v", r.Cost, r.Missing, r.Proved, want, job)
		}
	})
}

// Bars that were cut up without a rest can be put together again: the least is known.
func TestWholeBarsComeTogetherAgain(t *testing.T) {
	proved, better := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		const length = 6096
		bars := rapid.IntRange(1, 12).Draw(t, "bars")
		kerf := rapid.IntRange(0, 5).Draw(t, "kerf")
		job := Job{Stock: []Stock{{Length: length * thousandth, Count: Unlimited}}, Kerf: float64(kerf) * thousandth, Nodes: 30_000}
		for range bars {
			for rest := length + kerf; rest > 0; {
				size := min(rapid.IntRange(600, 3600).Draw(t, "piece"), rest)
				if rest-size < 600 {
					size = rest
				}
				job.Pieces = append(job.Pieces, float64(size-kerf)*thousandth)
				rest -= size
			}
		}
		r := solved(t, "job", job)
		if r.Bound > int64(bars) {
			t.Fatalf("bound %d, but %d bars are enough", r.Bound, bars)
		}
		if r.Proved && r.Cost != int64(bars) {
			t.Fatalf("%d bars said to be proved, %d are enough", r.Cost, bars)
		}
		if p, _ := newProblem(job); int64(len(p.first())) > r.Cost {
			better++
		}
		if r.Proved {
			proved++
		}
	})
	t.Logf("accuracy: whole bars: %d proved, %d better than first fit decreasing", proved, better)
	if proved == 0 || better == 0 {
		t.Error("no job was proved, or none was better than first fit decreasing")
	}
}

func TestMissingComesBeforeCost(t *testing.T) {
	r := solved(t, "short", Job{Stock: []Stock{{Length: 6, Count: 1, Cost: 1}, {Length: 3, Count: 1, Cost: 900}}, Pieces: []float64{3, 3, 3, 3}})
	if r.Missing != 1 || r.Cost != 1 || !r.Proved {
		t.Errorf("%+v: one bar of 6 and one missing of 6 are due", r)
	}
}

func TestSawCutCounts(t *testing.T) {
	for kerf, bars := range map[float64]int64{0: 1, 0.003: 2} {
		r := solved(t, "kerf", Job{Stock: []Stock{{Length: 2, Count: Unlimited}}, Pieces: []float64{1, 1}, Kerf: kerf})
		if r.Cost != bars {
			t.Errorf("saw cut %g: %d bars, want %d", kerf, r.Cost, bars)
		}
	}
	if r := solved(t, "exact", Job{Stock: []Stock{{Length: 2, Count: Unlimited}}, Pieces: []float64{0.9985, 0.9985}, Kerf: 0.003}); r.Cost != 1 {
		t.Errorf("two pieces and one cut that make 2 exactly take %d bars", r.Cost)
	}
}

func TestTooLong(t *testing.T) {
	r := solved(t, "too long", Job{Stock: []Stock{{Length: 2, Count: Unlimited}}, Pieces: []float64{3, 1}})
	if len(r.TooLong) != 1 || r.TooLong[0] != 0 || r.Cost != 1 {
		t.Errorf("%+v", r)
	}
}

func TestStoppedSearchTellsItsGap(t *testing.T) {
	job := Job{Stock: []Stock{{Length: 10, Count: 3, Cost: 7}, {Length: 7, Count: 4, Cost: 5}, {Length: 5, Count: Unlimited, Cost: 4}}, Nodes: 1}
	for i := range 30 {
		job.Pieces = append(job.Pieces, 1+float64(i*37%41)/11)
	}
	r := solved(t, "stopped", job)
	if r.Proved || r.Gap() <= 0 {
		t.Errorf("proved %v, gap %d after one node", r.Proved, r.Gap())
	}
}

func TestFaultyJobs(t *testing.T) {
	one := []Stock{{Length: 1, Count: Unlimited}}
	for name, job := range map[string]Job{
		"no stock": {Pieces: []float64{1}}, "no length": {Stock: []Stock{{Count: 1}}},
		"negative": {Stock: one, Pieces: []float64{-1}}, "no number": {Stock: one, Pieces: []float64{math.NaN()}},
		"infinite": {Stock: one, Pieces: []float64{math.Inf(1)}}, "kerf": {Stock: one, Kerf: -1}, "kerf nan": {Stock: one, Kerf: math.NaN()},
		"count": {Stock: []Stock{{Length: 1, Count: -2}}}, "cost": {Stock: []Stock{{Length: 1, Cost: -1}}}, "nodes": {Stock: one, Nodes: -1},
	} {
		if _, err := Solve(job); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}

func BenchmarkThirteenWidths(b *testing.B) {
	job := Job{Stock: []Stock{{Length: published[0].stock, Count: Unlimited}}, Pieces: pieces(published[0].of)}
	for b.Loop() {
		if _, err := Solve(job); err != nil {
			b.Fatal(err)
		}
	}
}
