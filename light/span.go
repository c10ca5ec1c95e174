package light

import "math"

// span is a receiver's own Gauss points along one axis of a sheet: the panels,
// cut at the edges of what is seen, at the kinks of a crate, and more finely
// where the receiver is near; at each the weights that give the sheet's value.
type span struct {
	at, share []float64
	panel     []int
	runs      []run
	basis     [][order]float64
	cuts      []float64
}

// run is some points in a row that are the sheet's own, or none of which need be.
type run struct {
	from, to int // points
	own      bool
}

// extend notes the next step's points.
func (s *span) extend(panel int, own bool) {
	from := len(s.at)
	if n := len(s.runs); n > 0 && s.runs[n-1].own == own {
		if last := &s.runs[n-1]; !own || s.panel[from-1]+1 == panel {
			last.to = from + order
			return
		}
	}
	s.runs = append(s.runs, run{from, from + order, own})
}

// fill sets the points between low and high for a receiver at `foot` along the
// axis and `height` off the sheet; a crate makes a kink over the foot.
func (s *span) fill(lines []float64, foot, height, low, high float64, kink bool) {
	s.at, s.share, s.panel, s.runs, s.basis = s.at[:0], s.share[:0], s.panel[:0], s.runs[:0], s.basis[:0]
	for i := 0; i+1 < len(lines); i++ {
		a, b := math.Max(lines[i], low), math.Min(lines[i+1], high)
		if b <= a {
			continue
		}
		whole := lines[i+1] - lines[i]
		if foot > a && foot < b && (kink || b-a > evenRatio*height) {
			s.graded(lines[i], whole, i, a, foot, foot, height)
			s.graded(lines[i], whole, i, foot, b, foot, height)
			continue
		}
		s.graded(lines[i], whole, i, a, b, foot, height)
	}
}

// graded adds one interval, halved toward the foot until no step is longer
// than gatherRatio of its distance.
func (s *span) graded(start, whole float64, panel int, a, b, foot, height float64) {
	for b-a > 0 {
		near := math.Max(0, math.Max(a-foot, foot-b))
		if (b-a)*(b-a) <= gatherRatio*gatherRatio*(height*height+near*near) || b-a < 1e-6*whole {
			s.add(start, whole, panel, a, b)
			return
		}
		middle := a + (b-a)/2
		if foot <= a { // the far half can be longer
			s.graded(start, whole, panel, a, middle, foot, height)
			a = middle
			continue
		}
		s.graded(start, whole, panel, middle, b, foot, height)
		b = middle
	}
}

func (s *span) add(start, whole float64, panel int, a, b float64) {
	step := b - a
	own := a == start && step == whole
	s.extend(panel, own)
	x := [order]float64{a + step*gaussPlace[0], a + step*gaussPlace[1], a + step*gaussPlace[2]}
	s.at = append(s.at, x[0], x[1], x[2])
	s.share = append(s.share, step*gaussWeight[0], step*gaussWeight[1], step*gaussWeight[2])
	s.panel = append(s.panel, panel, panel, panel)
	if own {
		s.basis = append(s.basis, ownBasis[0], ownBasis[1], ownBasis[2])
		return
	}
	s.basis = append(s.basis, lagrange((x[0]-start)/whole), lagrange((x[1]-start)/whole), lagrange((x[2]-start)/whole))
}

// ownBasis are the weights at a panel's own points.
var ownBasis = [order][order]float64{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}

const (
	// gatherRatio is the longest step over a sheet, over its distance.
	gatherRatio = 0.8
	// evenRatio is the longest step over the foot that need not end there.
	evenRatio = 0.4
)
