package light

import (
	"runtime"
	"sync"

	"gonum.org/v1/gonum/spatial/r3"
)

// What the room throws back changes slowly from place to place. Over a grid of nodes
// it is found at the corners, edges and middle of ever smaller cells, until a cell is
// so even that a parabola along both edges tells the rest.

const (
	// wideCell is the number of steps across a cell at first; a power of 2.
	wideCell = 8
	// evenEnough is how far a cell's edges may bend from straight, over all the light in
	// its middle: the parabola through them is then some ten times nearer.
	evenEnough = 0.01
)

// grid reads n x n nodes of a flat receiver: straight light at every node, the room's
// and what the box's own faces send by the cloth's lobe where it is needed.
func (w *work) grid(l lighting, points []r3.Vec, n int, facing r3.Vec) []float64 {
	sharp, bounces := l.engine.parted()
	values := w.each(lighting{engine: sharp}, points, facing, Flat)
	if l.room == nil && bounces == nil {
		return values
	}
	back := smooth(n, values, func(nodes []int, give []float64) {
		overCores(len(nodes), func(i int) {
			at := points[nodes[i]]
			if bounces != nil {
				give[i] = bounces.bouncedAt(w.rig.Pose.In(at), w.rig.Pose.InDirection(facing), Flat)
			}
			if l.room != nil {
				give[i] += l.room.At(at, facing, Flat)
			}
		})
	})
	for i := range values {
		values[i] += back[i]
	}
	return values
}

// overCores does many things at once. Each stands for itself, so that the number of
// cores doesn't change a bit of the answer.
func overCores(count int, do func(i int)) {
	workers := min(runtime.GOMAXPROCS(0), count)
	var wait sync.WaitGroup
	for k := range workers {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for i := k; i < count; i += workers {
				do(i)
			}
		}()
	}
	wait.Wait()
}

// gridCell is a square of nodes: its lowest corner and its width in steps.
type gridCell struct{ x, y, width int }

// smooth fills an n x n grid, x fastest, from as few readings as it takes to be even
// beside a base that is added later. It reads every node where the cells do not fit.
func smooth(n int, base []float64, read func(nodes []int, give []float64)) []float64 {
	s := &smoothing{n: n, base: base, value: make([]float64, n*n), known: make([]bool, n*n), read: read}
	if (n-1)%wideCell != 0 || n < 2 {
		s.need(0, 0, n, n, 1)
		s.fetch()
		return s.value
	}
	var cells []gridCell
	for y := 0; y < n-1; y += wideCell {
		for x := 0; x < n-1; x += wideCell {
			cells = append(cells, gridCell{x, y, wideCell})
		}
	}
	var even []gridCell
	for len(cells) > 0 {
		for _, c := range cells {
			s.need(c.x, c.y, c.x+c.width+1, c.y+c.width+1, c.width/2)
		}
		s.fetch()
		var finer []gridCell
		for _, c := range cells {
			if h := c.width / 2; h > 1 && !s.even(c) {
				finer = append(finer, gridCell{c.x, c.y, h}, gridCell{c.x + h, c.y, h}, gridCell{c.x, c.y + h, h}, gridCell{c.x + h, c.y + h, h})
			} else if h > 1 {
				even = append(even, c)
			}
		}
		cells = finer
	}
	for _, c := range even {
		s.bend(c)
	}
	return s.value
}

// smoothing is a grid that is being filled.
type smoothing struct {
	n      int
	base   []float64
	value  []float64
	known  []bool
	wanted []int
	read   func([]int, []float64)
}

// need asks for nodes at even steps that are not known yet.
func (s *smoothing) need(x0, y0, x1, y1, step int) {
	for y := y0; y < y1; y += step {
		for x := x0; x < x1; x += step {
			if i := y*s.n + x; !s.known[i] {
				s.known[i] = true
				s.wanted = append(s.wanted, i)
			}
		}
	}
}

func (s *smoothing) fetch() {
	got := make([]float64, len(s.wanted))
	s.read(s.wanted, got)
	for k, i := range s.wanted {
		s.value[i] = got[k]
	}
	s.wanted = s.wanted[:0]
}

// at is the value at one of the cell's nine places, 0 to 2 along both edges.
func (s *smoothing) at(c gridCell, i, j int) float64 {
	return s.value[(c.y+j*c.width/2)*s.n+c.x+i*c.width/2]
}

// even tells whether the middles lie between their ends.
func (s *smoothing) even(c gridCell) bool {
	half := c.width / 2
	size := s.at(c, 1, 1) + s.base[(c.y+half)*s.n+c.x+half]
	for k := range 3 {
		across := s.at(c, 1, k) - (s.at(c, 0, k)+s.at(c, 2, k))/2
		along := s.at(c, k, 1) - (s.at(c, k, 0)+s.at(c, k, 2))/2
		if max(across, -across, along, -along) > evenEnough*size {
			return false
		}
	}
	return true
}

// bend fills a cell by the parabolas through its nine places.
func (s *smoothing) bend(c gridCell) {
	for y := range c.width + 1 {
		v := parabola(2 * float64(y) / float64(c.width))
		for x := range c.width + 1 {
			i := (c.y+y)*s.n + c.x + x
			if s.known[i] {
				continue
			}
			u := parabola(2 * float64(x) / float64(c.width))
			sum := 0.0
			for j := range 3 {
				for k := range 3 {
					sum += v[j] * u[k] * s.at(c, k, j)
				}
			}
			s.value[i] = sum
		}
	}
	for y := range c.width + 1 {
		for x := range c.width + 1 {
			s.known[(c.y+y)*s.n+c.x+x] = true
		}
	}
}

// parabola are the weights of values at 0, 1 and 2 for the one at t (Lagrange).
func parabola(t float64) [3]float64 {
	return [3]float64{(1 - t) * (2 - t) / 2, t * (2 - t), t * (t - 1) / 2}
}
