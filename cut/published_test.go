package cut

import "testing"

type demand struct {
	length float64
	count  int
}

func pieces(of []demand) []float64 {
	var all []float64
	for _, d := range of {
		for range d.count {
			all = append(all, d.length)
		}
	}
	return all
}

const thousandth = 0.001

// Published instances with a known least number of bars.
var published = []struct {
	name   string
	stock  float64
	of     []demand
	least  int64
	source string
}{
	{
		"thirteen widths", 5600,
		[]demand{{1380, 22}, {1520, 25}, {1560, 12}, {1710, 14}, {1820, 18}, {1880, 18}, {1930, 20}, {2000, 10}, {2050, 12},
			{2100, 14}, {2140, 16}, {2150, 18}, {2200, 20}},
		73, "worked example of the encyclopedias' articles on the cutting-stock problem: demand and lower limit 72.7 read; 73 rolls from memory",
	},
	{
		"four widths", 100, []demand{{45, 97}, {36, 610}, {31, 395}, {14, 211}}, 453,
		"V. Chvátal, Linear Programming (1983), chapter 13: data read in a copy of the model; 453 (linear program 452.25) from memory",
	},
	{
		"worst case of first fit decreasing", 400, []demand{{201, 6}, {102, 6}, {101, 6}, {98, 12}}, 9,
		"D. S. Johnson et al., SIAM J. Computing 3 (1974) 299: first fit decreasing 11, least 9; from memory, and both by hand: 6 bars of 201+101+98, 3 of 102+102+98+98",
	},
	{
		"pieces over half", 300, []demand{{150, 5}}, 3, "two to a bar, by hand",
	},
}

func TestPublishedInstances(t *testing.T) {
	for _, c := range published {
		job := Job{Stock: []Stock{{Length: c.stock * thousandth, Count: Unlimited}}}
		for _, l := range pieces(c.of) {
			job.Pieces = append(job.Pieces, l*thousandth)
		}
		r := solved(t, c.name, job)
		if r.Cost != c.least || !r.Proved || r.Bound != c.least {
			t.Errorf("%s: %d bars, bound %d, proved %v; want %d proved (%s)", c.name, r.Cost, r.Bound, r.Proved, c.least, c.source)
		}
		t.Logf("accuracy: %s: %d bars proved, %d nodes", c.name, r.Cost, r.Nodes)
	}
}

// First fit decreasing by itself takes 11 bars for Johnson's pieces; if it took 9, the
// case would prove nothing about the search.
func TestFirstFitDecreasingIsNotTheLeast(t *testing.T) {
	c := published[2]
	p, _ := newProblem(Job{Stock: []Stock{{Length: c.stock, Count: Unlimited}}, Pieces: pieces(c.of)})
	if n := len(p.first()); n != 11 {
		t.Errorf("first fit decreasing takes %d bars, 11 are published", n)
	}
}

// The search alone, without the linear program, finds Johnson's 9.
func TestSearchAlone(t *testing.T) {
	c := published[2]
	p, _ := newProblem(Job{Stock: []Stock{{Length: c.stock, Count: Unlimited}}, Pieces: pieces(c.of)})
	s := newSearch(p, p.demand, p.lefts(), p.cost(p.first()), usualNodes)
	s.run(0)
	if s.cost != 9 || s.stopped() {
		t.Errorf("the search finds %d bars, stopped %v; want 9", s.cost, s.stopped())
	}
}

// The linear program of Chvátal's rolls is 452.25.
func TestColumnsFindThePublishedBound(t *testing.T) {
	c := published[1]
	p, _ := newProblem(Job{Stock: []Stock{{Length: c.stock, Count: Unlimited}}, Pieces: pieces(c.of)})
	columns := newColumns(p)
	columns.solve()
	if d := columns.bound - 452.25; d > 1e-6 || d < -1e-6 {
		t.Errorf("bound %.9f, want 452.25", columns.bound)
	}
}
