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
}

// newSkyline makes room for rows that begin at the given columns.
func newSkyline(first []int) *skyline {
	s := &skyline{n: len(first), first: first, start: make([]int, len(first)+1)}
	for i, f := range first {
		s.start[i+1] = s.start[i] + i - f + 1
	}
	size := s.start[s.n]
	s.a, s.l = make([]float64, size), make([]float64, size)
	s.d, s.inv = make([]float64, s.n), make([]float64, s.n)
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

// inertia tells the signs of the pivots of a factorization.
type inertia struct {
	negative int
	worst    float64 // the smallest pivot over its diagonal
	neutral  []int   // unknowns whose pivot vanished
}

// factor forms LDLᵀ of the matrix with shift·weight added to its diagonal. A pivot within ±small of zero, relative
// to the diagonal it started from, is neutral and its unknown is held at zero. With stop set, the first negative
// pivot ends the work. Without pivoting the signs are right as long as no pivot is tiny (Sylvester's law).
func (s *skyline) factor(shift float64, weight []float64, small float64, stop bool) inertia {
	in := inertia{worst: math.Inf(1)}
	copy(s.l, s.a)
	for i := range s.n {
		fi := s.first[i]
		row := s.l[s.start[i]:s.start[i+1]]
		last := len(row) - 1
		if shift != 0 {
			row[last] += shift * weight[i]
		}
		from := math.Abs(row[last])
		for j := fi; j < i; j++ {
			fj := s.first[j]
			lo := max(fi, fj)
			if n := j - lo; n > 0 {
				row[j-fi] -= dot(row[lo-fi:j-fi], s.l[s.start[j]+lo-fj:s.start[j]+j-fj])
			}
		}
		d := row[last]
		for j := range last {
			u := row[j]
			l := u * s.inv[fi+j]
			d -= u * l
			row[j] = l
		}
		s.d[i] = d
		ratio := d / from
		if from == 0 {
			ratio = 0
		}
		if math.IsNaN(ratio) {
			in.negative++
			in.worst = math.Inf(-1)
			return in
		}
		in.worst = math.Min(in.worst, ratio)
		switch {
		case math.Abs(ratio) < small:
			in.neutral = append(in.neutral, i)
			s.inv[i] = 0
		case ratio < 0:
			in.negative++
			s.inv[i] = 1 / d
			if stop {
				return in
			}
		default:
			s.inv[i] = 1 / d
		}
	}
	return in
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
