package frame

import "math"

// skyline is a symmetric matrix stored by rows of the lower triangle, each from its first entry to the diagonal,
// with room for its LDLᵀ factor.
type skyline struct {
	n     int
	first []int // column of the first stored entry of each row
	start []int // where each row begins in a and l
	a     []float64
	l     []float64
	d     []float64 // pivots
	inv   []float64 // 1/pivot; zero where a pivot vanished, which holds that unknown at zero
	blur  []float64 // what rounding may have done to each pivot
}

// newSkyline makes room for rows that begin at the given columns.
func newSkyline(first []int) *skyline {
	s := &skyline{n: len(first), first: first, start: make([]int, len(first)+1)}
	for i, f := range first {
		s.start[i+1] = s.start[i] + i - f + 1
	}
	size := s.start[s.n]
	s.a, s.l = make([]float64, size), make([]float64, size)
	s.d, s.inv, s.blur = make([]float64, s.n), make([]float64, s.n), make([]float64, s.n)
	return s
}

func (s *skyline) clear() { clear(s.a) }

// add puts v on the entry (i, j) of the lower triangle; negative indices are held unknowns.
func (s *skyline) add(i, j int, v float64) {
	if i < 0 || j < 0 {
		return
	}
	if j > i {
		i, j = j, i
	}
	s.a[s.start[i]+j-s.first[i]] += v
}

func (s *skyline) diagonal(i int) float64 { return s.a[s.start[i+1]-1] }

// ratio is a pivot over the diagonal it started from; zero where that was zero.
func (s *skyline) ratio(i int) float64 {
	if from := math.Abs(s.diagonal(i)); from > 0 {
		return s.d[i] / from
	}
	return 0
}

// inertia tells the signs of the pivots of a factorization.
type inertia struct {
	negative int
	worst    float64 // the smallest pivot over its diagonal
	neutral  []int   // unknowns whose pivot vanished
}

// judge says how a factorization is to be read.
type judge struct {
	shift  float64   // times weight is added to the diagonal
	weight []float64 // may be nil with neither shift nor rough
	small  float64   // a pivot within this of zero, relative to the diagonal it started from, is neutral
	rough  float64   // times weight is how well the diagonal is known, besides rounding
	stop   bool      // the first negative pivot ends the work
}

// rounding is how well a diagonal is known, relative to itself.
const rounding = 1e-13

// factor forms LDLᵀ. A pivot that is neutral has its unknown held at zero. The signs of the pivots are those of the
// eigenvalues (Sylvester's law); as rows are not exchanged, a small pivot magnifies the error of those after it by the
// square of its multipliers, which is followed along: a pivot under its own error is neutral as well.
func (s *skyline) factor(j judge) inertia {
	in := inertia{worst: math.Inf(1)}
	copy(s.l, s.a)
	for i := range s.n {
		row := s.l[s.start[i]:s.start[i+1]]
		last := len(row) - 1
		if j.shift != 0 {
			row[last] += j.shift * j.weight[i]
		}
		from := math.Abs(row[last])
		s.blur[i] = rounding * from
		if j.rough != 0 {
			s.blur[i] += j.rough * j.weight[i]
		}
		s.reduce(i, row)
		s.d[i] = row[last]
		if !s.read(i, from, j.small, &in) || j.stop && in.negative > 0 {
			return in
		}
	}
	return in
}

// reduce turns row i of the matrix into row i of the factor, its pivot last.
func (s *skyline) reduce(i int, row []float64) {
	fi, last := s.first[i], len(row)-1
	for j := fi; j < i; j++ {
		fj := s.first[j]
		lo := max(fi, fj)
		if j > lo {
			row[j-fi] -= dot(row[lo-fi:j-fi], s.l[s.start[j]+lo-fj:s.start[j]+j-fj])
		}
	}
	d, blur := row[last], s.blur[i]
	for k := range last {
		u := row[k]
		l := u * s.inv[fi+k]
		d -= u * l
		blur += l * l * s.blur[fi+k]
		row[k] = l
	}
	row[last], s.blur[i] = d, blur
}

// read judges pivot i; false if it is no number.
func (s *skyline) read(i int, from, small float64, in *inertia) bool {
	d := s.d[i]
	ratio := 0.0
	if from != 0 {
		ratio = d / from
	}
	if math.IsNaN(ratio) {
		in.negative++
		in.worst = math.Inf(-1)
		return false
	}
	in.worst = math.Min(in.worst, ratio)
	s.inv[i] = 0
	switch {
	case math.Abs(ratio) < small || math.Abs(d) <= s.blur[i]:
		in.neutral = append(in.neutral, i)
		s.blur[i] = 0
	case ratio < 0:
		in.negative++
		s.inv[i] = 1 / d
	default:
		s.inv[i] = 1 / d
	}
	return true
}

// solve replaces b by the solution with the last factor.
func (s *skyline) solve(b []float64) {
	for i := range s.n {
		row := s.l[s.start[i] : s.start[i+1]-1]
		b[i] -= dot(row, b[s.first[i]:i])
	}
	for i, inv := range s.inv {
		b[i] *= inv
	}
	for i := s.n - 1; i >= 0; i-- {
		x := b[i]
		if x == 0 {
			continue
		}
		row := s.l[s.start[i] : s.start[i+1]-1]
		for k, l := range row {
			b[s.first[i]+k] -= l * x
		}
	}
}

// dot sums in four strands, in a fixed order.
func dot(x, y []float64) float64 {
	y = y[:len(x)]
	var a, b, c, d float64
	k := 0
	for ; k+4 <= len(x); k += 4 {
		a += x[k] * y[k]
		b += x[k+1] * y[k+1]
		c += x[k+2] * y[k+2]
		d += x[k+3] * y[k+3]
	}
	for ; k < len(x); k++ {
		a += x[k] * y[k]
	}
	return (a + b) + (c + d)
}
