package frame

import (
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// drawSymmetric draws a matrix with any skyline, positive or not, small enough for a dense check.
func drawSymmetric(t *rapid.T) (*skyline, *mat.SymDense) {
	n := rapid.IntRange(1, 12).Draw(t, "n")
	first := make([]int, n)
	for i := range first {
		first[i] = rapid.IntRange(0, i).Draw(t, "first")
	}
	s, dense := newSkyline(first), mat.NewSymDense(n, nil)
	for i := range n {
		for j := first[i]; j <= i; j++ {
			v := float64(rapid.IntRange(-100, 100).Draw(t, "v")) / 100 // no denormals: the dense eigenvalue solver panics on them
			if i == j {
				v *= 6
			}
			s.add(i, j, v)
			dense.SetSym(i, j, v)
		}
	}
	return s, dense
}

// The factor solves what a dense solver of a public numerical library solves, and counts its negative eigenvalues.
func TestSkylineAgainstDense(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, dense := drawSymmetric(t)
		var eig mat.EigenSym
		if !eig.Factorize(dense, false) {
			t.Skip("no eigenvalues")
		}
		values := eig.Values(nil)
		negative, least := 0, math.Inf(1)
		for _, v := range values {
			least = math.Min(least, math.Abs(v))
			if v < 0 {
				negative++
			}
		}
		in := s.factor(judge{small: 1e-3})
		for _, d := range s.d {
			least = math.Min(least, math.Abs(d))
		}
		if least < 1e-3 || len(in.neutral) > 0 {
			t.Skip("near singular, or a pivot is: rows are not exchanged")
		}
		if in.negative != negative {
			t.Errorf("%d negative pivots, %d negative eigenvalues", in.negative, negative)
		}
		b := make([]float64, s.n)
		for i := range b {
			b[i] = math.Sin(float64(i + 1))
		}
		var want mat.VecDense
		if err := want.SolveVec(dense, mat.NewVecDense(s.n, append([]float64(nil), b...))); err != nil {
			t.Skip("dense solver gave up")
		}
		s.solve(b)
		for i := range b {
			if d := math.Abs(b[i] - want.AtVec(i)); d > 1e-6*(1+math.Abs(want.AtVec(i))) {
				t.Errorf("x[%d] = %g, dense %g", i, b[i], want.AtVec(i))
			}
		}
	})
}

// A two-node chain that is not held has one motion without resistance; its pivot vanishes against its diagonal.
func TestNeutralPivot(t *testing.T) {
	s := newSkyline([]int{0, 0})
	s.add(0, 0, 3e7)
	s.add(1, 0, -3e7)
	s.add(1, 1, 3e7)
	in := s.factor(judge{small: 1e-9})
	if len(in.neutral) != 1 || in.neutral[0] != 1 || in.negative != 0 {
		t.Errorf("%+v", in)
	}
	b := []float64{3, 0}
	s.solve(b)
	near(t, "the other end held", b[0], 1e-7, 1e-12, 0)
}

// The order of a ladder of nodes, given in a bad order, couples only near numbers.
func TestBandOrder(t *testing.T) {
	const n = 40
	at := func(k int) int { return k * 17 % n } // scattered names
	var groups [][]int
	for k := range n {
		if k >= 2 {
			groups = append(groups, []int{at(k), at(k - 2)})
		}
		if k%2 == 1 {
			groups = append(groups, []int{at(k), at(k - 1)})
		}
	}
	order := bandOrder(neighbors(n, groups))
	rank := make([]int, n)
	seen := map[int]bool{}
	for r, node := range order {
		rank[node], seen[node] = r, true
	}
	if len(seen) != n {
		t.Fatalf("%d of %d nodes are in the order", len(seen), n)
	}
	band := 0
	for _, g := range groups {
		band = max(band, rank[g[0]]-rank[g[1]], rank[g[1]]-rank[g[0]])
	}
	if band > 3 {
		t.Errorf("half-band %d of a ladder two wide", band)
	}
}

// Factorization grows no worse than n·b²: the entries touched, counted over four sizes, and the time reported.
func TestFactorizationGrowth(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	var base float64
	for _, n := range []int{625, 1250, 2500, 5000} {
		p, _ := grid(n/6/16, 16, 0.6)
		for k := range p.Nodes {
			p.Supports = append(p.Supports, Support{Node: k, Spring: [6]float64{1, 1, 1, 1, 1, 1}})
		}
		f, err := p.Linear()
		if err != nil {
			t.Fatal(err)
		}
		s := f.m.k
		work, band := 0.0, 0
		for i, first := range s.first {
			band = max(band, i-first)
			for j := first; j < i; j++ {
				work += float64(j - max(first, s.first[j]) + 1)
			}
		}
		began := time.Now()
		s.factor(judge{small: loosePivot})
		took := time.Since(began)
		ratio := work / (float64(s.n) * float64(band) * float64(band))
		t.Logf("%d unknowns, half-band %d: %v, work/(n·b²) %.3f", s.n, band, took, ratio)
		if base == 0 {
			base = ratio
		}
		if ratio > 1 || ratio > 1.5*base {
			t.Errorf("%d unknowns: work is %.3f of n·b², it was %.3f at the smallest size", s.n, ratio, base)
		}
	}
}
