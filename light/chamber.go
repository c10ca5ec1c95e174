package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A chamber is a rectangular room inside the box: between the roof and the
// first cloth, or between two cloths. It always has six faces; where nothing
// stands the face is an opening, through which light leaves and does not come
// back. That way the form factors of every patch add up to 1, and how close
// they come to it is a measure of their error.

// rimReflectance is the opaque rest of a cloth plane, black like a skirt.
const rimReflectance = 0.04

// plane is a level at which the light changes rooms: a cloth, or the bare
// opening where the box has no cloth.
type plane struct {
	z     float64
	cloth Cloth
	bare  bool // no cloth: all passes unscattered
}

// passes is the share that goes through unscattered.
func (p plane) passes() float64 {
	if p.bare {
		return 1
	}
	return p.cloth.Through
}

// planes of the scene from the lamps down; the last one lies in z = 0.
func (s *Scene) planes() []plane {
	if len(s.Cloths) == 0 {
		return []plane{{bare: true}}
	}
	out := make([]plane, len(s.Cloths))
	z := 0.0
	for i := len(s.Cloths) - 1; i >= 0; i-- {
		if i < len(s.Cloths)-1 {
			z += s.Cloths[i].Gap
		}
		out[i] = plane{z: z, cloth: s.Cloths[i]}
	}
	return out
}

// The kinds of face.
const (
	floor = iota // the lamp side of a plane
	ceiling
	wall
)

// face is one of the six sides of a chamber: a rectangle across axis `normal`
// at `level`, looking into the chamber, cut into patches for the exchange and
// more finely into panels with Gauss points for what is seen of it.
type face struct {
	kind, chamber, side int
	normal              int     // 0 x, 1 y, 2 z
	level, toward       float64 // place along normal; +1 or -1, the way it looks
	patchU, patchV      []float64
	sheet               sheet
	first               int // of its patches in the exchange
	reflect             []float64
	open                []bool
	twin                int // the same plane's other face, or -1
}

// across are the two axes that span a face.
func (f *face) across() (u, v int) {
	switch f.normal {
	case 0:
		return 1, 2
	case 1:
		return 0, 2
	}
	return 0, 1
}

func (f *face) patches() int { return (len(f.patchU) - 1) * (len(f.patchV) - 1) }

func (f *face) patchArea(k int) float64 {
	n := len(f.patchU) - 1
	i, j := k%n, k/n
	return (f.patchU[i+1] - f.patchU[i]) * (f.patchV[j+1] - f.patchV[j])
}

// chambers builds the faces of all chambers, top down.
func (e *Engine) chambers() {
	s := &e.scene
	target := math.Max(s.Size[0], s.Size[1]) / patchesPerSide
	x := planeLines(s.Size[0], s.Clear[0], target)
	y := planeLines(s.Size[1], s.Clear[1], target)
	top := s.Depth
	for c, p := range e.planes {
		if c > 0 {
			top = e.planes[c-1].z
		}
		z := levels(p.z, math.Max(top, p.z), s.Depth, target)
		e.addFace(face{kind: floor, chamber: c, normal: 2, level: p.z, toward: 1, patchU: x, patchV: y, twin: -1})
		if top <= p.z {
			continue
		}
		e.addFace(face{kind: ceiling, chamber: c, normal: 2, level: top, toward: -1, patchU: x, patchV: y, twin: -1})
		e.addFace(face{kind: wall, side: North, chamber: c, normal: 1, level: s.Size[1] / 2, toward: -1, patchU: x, patchV: z, twin: -1})
		e.addFace(face{kind: wall, side: South, chamber: c, normal: 1, level: -s.Size[1] / 2, toward: 1, patchU: x, patchV: z, twin: -1})
		e.addFace(face{kind: wall, side: East, chamber: c, normal: 0, level: s.Size[0] / 2, toward: -1, patchU: y, patchV: z, twin: -1})
		e.addFace(face{kind: wall, side: West, chamber: c, normal: 0, level: -s.Size[0] / 2, toward: 1, patchU: y, patchV: z, twin: -1})
	}
	e.pairTwins()
	e.measureRooms()
}

// addFace finishes a face: its optics and its panels.
func (e *Engine) addFace(f face) {
	f.first = e.patchCount
	e.patchCount += f.patches()
	f.reflect, f.open = make([]float64, f.patches()), make([]bool, f.patches())
	nu := len(f.patchU) - 1
	for k := range f.reflect {
		i, j := k%nu, k/nu
		u, v := (f.patchU[i]+f.patchU[i+1])/2, (f.patchV[j]+f.patchV[j+1])/2
		f.reflect[k], f.open[k] = e.optics(&f, u, v)
	}
	f.sheet = e.panels(&f)
	e.faces = append(e.faces, f)
}

// optics is the reflectance of a face at a place, and whether it is an opening.
func (e *Engine) optics(f *face, u, v float64) (reflectance float64, open bool) {
	s := &e.scene
	if f.kind == wall {
		side := s.Sides[f.side]
		if !side.Present || v > s.Depth {
			return 0, true
		}
		return side.Inner, false
	}
	if f.kind == ceiling && f.chamber == 0 {
		if s.Roof.Open {
			return 0, true
		}
		return s.Roof.Reflectance, false
	}
	p := e.planes[f.chamber]
	if f.kind == ceiling {
		p = e.planes[f.chamber-1]
	}
	if !e.clears(u, v) {
		return rimReflectance, false
	}
	if f.kind == floor && f.chamber == len(e.planes)-1 { // with what a crate returns
		back := e.gainOf().back
		return back, p.bare && back == 0
	}
	return p.cloth.Back, false
}

// clears tells whether a place in a cloth plane passes light.
func (e *Engine) clears(x, y float64) bool {
	return math.Abs(x) <= e.scene.Clear[0]/2 && math.Abs(y) <= e.scene.Clear[1]/2
}

// pairTwins joins the two faces of every cloth inside the box.
func (e *Engine) pairTwins() {
	for i := range e.faces {
		for j := range e.faces {
			a, b := &e.faces[i], &e.faces[j]
			if a.kind == floor && b.kind == ceiling && b.chamber == a.chamber+1 {
				a.twin, b.twin = j, i
			}
		}
	}
}

// patchesPerSide is how many patches of the exchange stand along the longer side.
const patchesPerSide = 8

// mostLevels bounds the patches over the height of a chamber: a shaft that is much
// deeper than wide gets longer ones.
const mostLevels = 4 * patchesPerSide

// planeLines cuts a cloth plane's width: the rims, and the clear part evenly.
func planeLines(size, clear, target float64) []float64 {
	lines := even(-clear/2, clear/2, int(math.Ceil(clear/target-1e-9)))
	if size-clear > 1e-9*size {
		lines = append(append([]float64{-size / 2}, lines...), size/2)
	}
	return lines
}

// levels cuts a wall's height, with a cut at the sides' upper edge.
func levels(low, high, depth, target float64) []float64 {
	if high <= low {
		return []float64{low, low}
	}
	count := func(h float64) int { return int(min(mostLevels, max(2, math.Ceil(h/target-1e-9)))) }
	if depth > low+1e-9 && depth < high-1e-9 {
		lower := even(low, depth, count(depth-low))
		return append(lower, even(depth, high, count(high-depth))[1:]...)
	}
	return even(low, high, count(high-low))
}

// even are n+1 lines at equal distances; the ends are exact.
func even(low, high float64, n int) []float64 {
	n = max(n, 1)
	out := make([]float64, n+1)
	for i := range out {
		t := float64(i) / float64(n)
		out[i] = low*(1-t) + high*t
	}
	return out
}

// place is the point of a face at u, v.
func (f *face) place(u, v float64) r3.Vec {
	var p [3]float64
	a, b := f.across()
	p[a], p[b], p[f.normal] = u, v, f.level
	return r3.Vec{X: p[0], Y: p[1], Z: p[2]}
}

// looks is the face's unit normal.
func (f *face) looks() r3.Vec {
	var n [3]float64
	n[f.normal] = f.toward
	return r3.Vec{X: n[0], Y: n[1], Z: n[2]}
}
