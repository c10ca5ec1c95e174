package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// ClothReport is what arrives on the lamp side of the lowest cloth and what
// leaves it below by diffusion.
type ClothReport struct {
	MeanLux, MinLux, MaxLux float64     // mean over the clear area, extremes of the grid
	X, Y                    []float64   // grid places in the clear area, m: cell centers
	Lux                     [][]float64 // [row of y][x], arriving
	Exitance                [][]float64 // [row of y][x], lm/m2
}

// clothCells is the report's grid, cells along each side of the clear area.
const clothCells = 9

// Cloth reports the lowest cloth; empty where there is none.
func (e *Engine) Cloth() ClothReport {
	p := e.planes[len(e.planes)-1]
	if p.bare {
		return ClothReport{}
	}
	w := e.memory.Get().(*sight)
	defer e.memory.Put(w)
	r := ClothReport{X: centers(e.scene.Clear[0]), Y: centers(e.scene.Clear[1]), MinLux: math.Inf(1), MaxLux: math.Inf(-1)}
	for _, y := range r.Y {
		lux, exitance := make([]float64, len(r.X)), make([]float64, len(r.X))
		for i, x := range r.X {
			lux[i] = e.onCloth(w, x, y)
			exitance[i] = p.cloth.Diffuse * lux[i]
			r.MinLux, r.MaxLux = math.Min(r.MinLux, lux[i]), math.Max(r.MaxLux, lux[i])
		}
		r.Lux, r.Exitance = append(r.Lux, lux), append(r.Exitance, exitance)
	}
	r.MeanLux = e.clothFlux() / (e.scene.Clear[0] * e.scene.Clear[1])
	return r
}

func centers(width float64) []float64 {
	out := make([]float64, clothCells)
	for i := range out {
		out[i] = width * ((float64(i)+0.5)/clothCells - 0.5)
	}
	return out
}

// lowest is the floor of the lowest chamber: the last cloth's lamp side.
func (e *Engine) lowest() *face {
	last := len(e.planes) - 1
	for i := range e.faces {
		if f := &e.faces[i]; f.kind == floor && f.chamber == last {
			return f
		}
	}
	return nil
}

// onCloth is what arrives at a place of the lowest cloth, lx.
func (e *Engine) onCloth(w *sight, x, y float64) float64 {
	f := e.lowest()
	at := r3.Vec{X: x, Y: y}
	if l := e.under(f.chamber, at); l != nil {
		return l.luminance * math.Pi
	}
	from, m := station{at, f.chamber, true}, meter{Flat, f.looks()}
	return math.Max(0, e.lampLight(w, from, m)+e.forwarded(w, from, m)+e.indirect(f, x, y))
}

// clothFlux arrives on the clear part of the lowest cloth, lm.
func (e *Engine) clothFlux() float64 {
	f := e.lowest()
	s := &f.sheet
	sum := e.touching(f.chamber, -e.scene.Clear[0]/2, e.scene.Clear[0]/2, -e.scene.Clear[1]/2, e.scene.Clear[1]/2,
		func(l *lamp) float64 { return l.luminance * math.Pi })
	for j, v := range s.nodeV {
		for i, u := range s.nodeU {
			if e.clears(u, v) {
				sum += s.shareU[i] * s.shareV[j] * e.cloth[j*len(s.nodeU)+i]
			}
		}
	}
	return sum
}
