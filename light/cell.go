package light

import "math"

// A crate whose walls reflect adds what leaves them. Inside one cell the
// exchange is solved with exact form factors, for a Lambertian top; then, seen
// from below in one direction, every place of the cell's opening looks at the
// top or at a wall at some height, and how much of the opening looks at which
// height is known exactly, as for the direct share.

// cellWalls is one cell of a crate, solved for 1 lm/m2 at its top.
type cellWalls struct {
	// returns is what arrives back on the top, lm/m2.
	returns float64
	// direct is the share of a Lambertian top that goes straight out.
	direct float64
	table  []float64 // [y*cellSteps+x], over the squeezed slopes
	crate  *Crate
}

// cellSteps is the table's size along each slope.
const cellSteps = 64

// solveCell works one cell out.
func solveCell(c *Crate) *cellWalls {
	side := Side{Present: true, Inner: c.Reflectance}
	cell := &Engine{scene: Scene{Size: [2]float64{c.CellX, c.CellY}, Clear: [2]float64{c.CellX, c.CellY}, Depth: c.Depth, Sides: [4]Side{side, side, side, side}}}
	cell.planes = cell.scene.planes()
	cell.chambers()
	x := &cell.exchange
	cell.patchOptics(x)
	cell.factors(x)
	x.behind = make([][]covering, cell.patchCount)
	x.direct, x.stamped = make([]float64, cell.patchCount), make([]float64, cell.patchCount)
	top := cell.faceOf(ceiling, 0)
	for i := range x.direct {
		row := x.factor[i*cell.patchCount:][:cell.patchCount]
		for k := range top.patches() {
			x.direct[i] += row[top.first+k]
		}
	}
	x.iterate()
	w := &cellWalls{crate: c, returns: cell.meanOn(top, x.arrives), direct: cell.meanOn(cell.faceOf(floor, 0), x.direct)}
	w.fillTable(cell.rowsOf(East), cell.rowsOf(North), cell.faceOf(wall, East).patchV)
	return w
}

func (e *Engine) faceOf(kind, side int) *face {
	for i := range e.faces {
		if f := &e.faces[i]; f.kind == kind && f.side == side {
			return f
		}
	}
	return nil
}

// meanOn is the mean over a face's patches by area.
func (e *Engine) meanOn(f *face, value []float64) float64 {
	sum, area := 0.0, 0.0
	for k := range f.patches() {
		a := e.exchange.area[f.first+k]
		sum, area = sum+a*value[f.first+k], area+a
	}
	return sum / area
}

// rowsOf is the mean of what leaves a wall, row by row from below.
func (e *Engine) rowsOf(side int) []float64 {
	f := e.faceOf(wall, side)
	n := len(f.patchU) - 1
	rows := make([]float64, len(f.patchV)-1)
	for j := range rows {
		for i := range n {
			rows[j] += e.exchange.leaves[f.first+j*n+i] / float64(n)
		}
	}
	return rows
}

// fillTable works out, for every pair of slopes, pi times the mean luminance of
// the walls over the opening. A ray that rises with slopes p and q, cells per
// depth, meets a wall across x between the heights t and t+dt (of the depth)
// from p (1 - q t) dt of the opening, as long as p t and q t are under 1.
func (w *cellWalls) fillTable(acrossX, acrossY, levels []float64) {
	depth := levels[len(levels)-1]
	w.table = make([]float64, cellSteps*cellSteps)
	for j := range cellSteps {
		for i := range cellSteps {
			p, q := unsqueeze(i), unsqueeze(j)
			end := math.Min(1, math.Min(1/p, 1/q))
			sum := 0.0
			for k := range acrossX {
				a, b := math.Min(end, levels[k]/depth), math.Min(end, levels[k+1]/depth)
				half := (b*b - a*a) / 2
				sum += acrossX[k]*p*(b-a-q*half) + acrossY[k]*q*(b-a-p*half)
			}
			w.table[j*cellSteps+i] = sum
		}
	}
}

// unsqueeze is the slope of a table entry: s = p/(1+p) runs evenly to just
// under 1.
func unsqueeze(i int) float64 {
	s := float64(i) / cellSteps
	return s / (1 - s)
}

// glows is pi times the walls' mean luminance over the opening, for a top of
// 1 lm/m2, looking up with the slopes dx/dz and dy/dz.
func (w *cellWalls) glows(slopeX, slopeY float64) float64 {
	p, q := slopeX*w.crate.Depth/w.crate.CellX, slopeY*w.crate.Depth/w.crate.CellY
	i, s := squeezed(p)
	j, t := squeezed(q)
	row, next := w.table[j*cellSteps+i:], w.table[(j+1)*cellSteps+i:]
	return (row[0]*(1-s)+row[1]*s)*(1-t) + (next[0]*(1-s)+next[1]*s)*t
}

func squeezed(p float64) (index int, rest float64) {
	x := p / (1 + p) * cellSteps
	index = min(int(x), cellSteps-2)
	return index, x - float64(index)
}
