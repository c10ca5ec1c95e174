package light

import "math"

// span is a receiver's own Gauss points along one axis of a sheet: the panels,
// cut at the edges of what is seen, at the kinks of a crate, and more finely
// where the receiver is near; at each the weights that give the sheet's value.
type span struct {
	at, share []float64
	panel     []int
	basis     [][order]float64
	cuts      []float64
}

// fill sets the points between low and high for a receiver at `foot` along the
// axis and `height` off the sheet.
func (s *span) fill(lines []float64, foot, height, low, high float64) {
	s.at, s.share, s.panel, s.basis = s.at[:0], s.share[:0], s.panel[:0], s.basis[:0]
	for i := 0; i+1 < len(lines); i++ {
		a, b := math.Max(lines[i], low), math.Min(lines[i+1], high)
		if b <= a {
			continue
		}
		whole := lines[i+1] - lines[i]
		if foot > a && foot < b {
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
	for k := range order {
		x := a + (b-a)*gaussPlace[k]
		s.at = append(s.at, x)
		s.share = append(s.share, (b-a)*gaussWeight[k])
		s.panel = append(s.panel, panel)
		s.basis = append(s.basis, lagrange((x-start)/whole))
	}
}

// gatherRatio is the longest step over a sheet, over its distance.
const gatherRatio = 0.8
