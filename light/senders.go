package light

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/shape"
)

// The source as a head sees it: small panes of the box's opening, each with the
// luminance that it has toward the head, and directions from where other light comes
// (past the box, and by way of the room). A pane's luminance is what the engine gives
// through that pane alone over its solid angle, so cloth, hot spots, lamps, crate and
// skirts are in it as in every other answer. Toward the parts of the head it changes
// evenly from place to place: it is asked for at the four corners of a tetrahedron
// about the head.

// sender is one pane.
type sender struct {
	pane
	faces     r3.Vec     // unit vector down
	luminance [4]float64 // cd/m2, toward the four corners of a quad
}

// ambient is light from a direction: lx square-on, at the four corners of a quad.
type ambient struct {
	from r3.Vec // unit vector to where it comes from
	lux  [4]float64
}

func alike(lux float64) [4]float64 { return [4]float64{lux, lux, lux, lux} }

// between is the value at a place of one that changes evenly from corner to corner;
// never under 0.
func (q quad) between(value *[4]float64, weights *[4]float64) float64 {
	return math.Max(0, value[0]*weights[0]+value[1]*weights[1]+value[2]*weights[2]+value[3]*weights[3])
}

// senders are all that lights a head, in the head's axes.
type senders struct {
	panes    []sender
	ambients []ambient
	quad     quad
}

// quad are four places about a head, alternate corners of an upright block.
type quad struct{ center, half r3.Vec }

// corners of the quad.
func (q quad) corners() [4]r3.Vec {
	h := q.half
	return [4]r3.Vec{
		r3.Add(q.center, r3.Vec{X: h.X, Y: h.Y, Z: h.Z}), r3.Add(q.center, r3.Vec{X: h.X, Y: -h.Y, Z: -h.Z}),
		r3.Add(q.center, r3.Vec{X: -h.X, Y: h.Y, Z: -h.Z}), r3.Add(q.center, r3.Vec{X: -h.X, Y: -h.Y, Z: h.Z}),
	}
}

// weights of the corners at a place, for a value that changes evenly.
func (q quad) weights(p r3.Vec) [4]float64 {
	d := r3.Sub(p, q.center)
	x, y, z := d.X/q.half.X, d.Y/q.half.Y, d.Z/q.half.Z
	return [4]float64{(1 + x + y + z) / 4, (1 + x - y - z) / 4, (1 - x + y - z) / 4, (1 - x - y + z) / 4}
}

// panesAlong is how many panes lie along the longer edge of the opening.
const panesAlong = 14

// headQuad is about the head and neck in the head's axes.
func headQuad() quad {
	return quad{r3.Vec{X: -0.06, Z: -0.04}, r3.Vec{X: 0.08, Y: 0.08, Z: 0.12}}
}

// sendersTo are what lights a head in a pose in the box's axes. Back is what the room
// throws back there, by direction in the head's axes; nil for nothing.
func (e *Engine) sendersTo(head shape.Pose, back func(facing r3.Vec) float64) (*senders, error) {
	s := &senders{quad: headQuad()}
	var at [4]r3.Vec
	for i, c := range s.quad.corners() {
		if at[i] = head.Out(c); at[i].Z >= -0.1 {
			return nil, fmt.Errorf("a head at %.2f m under the cloth is not below the box", -head.Origin.Z)
		}
	}
	panes := e.openingPanes()
	s.panes = make([]sender, len(panes))
	overCores(len(panes), func(i int) {
		p := panes[i]
		out := &s.panes[i]
		for k := range at {
			out.luminance[k] = e.luminanceOf(p, at[k])
		}
		out.pane = pane{head.In(p.center), head.InDirection(p.u), head.InDirection(p.v)}
		out.faces = head.InDirection(r3.Vec{Z: -1})
	})
	s.ambients = e.besides(at, head)
	if back != nil {
		s.ambients = append(s.ambients, ambientsOf(back)...)
	}
	return s, nil
}

// openingPanes cuts the clear part of the lowest plane.
func (e *Engine) openingPanes() []pane {
	size, z := e.scene.Clear, e.planes[len(e.planes)-1].z
	step := math.Max(size[0], size[1]) / panesAlong
	n := [2]int{max(1, int(math.Ceil(size[0]/step-1e-9))), max(1, int(math.Ceil(size[1]/step-1e-9)))}
	var all []pane
	for j := range n[1] {
		for i := range n[0] {
			x, y := size[0]*((float64(i)+0.5)/float64(n[0])-0.5), size[1]*((float64(j)+0.5)/float64(n[1])-0.5)
			all = append(all, pane{r3.Vec{X: x, Y: y, Z: z}, r3.Vec{X: size[0] / float64(2*n[0])}, r3.Vec{Y: size[1] / float64(2*n[1])}})
		}
	}
	return all
}

// luminanceOf is a pane's mean toward a place.
func (e *Engine) luminanceOf(p pane, at r3.Vec) float64 {
	solid := solidAngle(p.polygon(), at)
	if !(solid > 0) {
		return 0
	}
	return 4 * e.veiled(p.frame(at)...).At(at, r3.Vec{Z: 1}, Scalar) / solid
}

// besides is the light that does not come through the opening: past the box, over its
// sides, from lamps beside it. Each bin of directions has the light vectors that it has
// at the corners about the head. Little of it is left out.
func (e *Engine) besides(at [4]r3.Vec, head shape.Pose) []ambient {
	opening := pane{r3.Vec{Z: e.planes[len(e.planes)-1].z}, r3.Vec{X: e.scene.Clear[0] / 2}, r3.Vec{Y: e.scene.Clear[1] / 2}}
	var closed [4]*Engine
	whole, past := 0.0, 0.0
	for k := range at {
		closed[k] = e.veiled(opening.near(at[k]).polygon())
		whole += e.At(at[k], r3.Vec{Z: 1}, Scalar)
		past += closed[k].At(at[k], r3.Vec{Z: 1}, Scalar)
	}
	if past < littleBesides*whole {
		return nil
	}
	bins := cubeBins()
	all := make([]ambient, len(bins))
	overCores(len(bins), func(i int) {
		var sum r3.Vec
		for k := range at {
			p := pane{r3.Add(at[k], bins[i].center), bins[i].u, bins[i].v}
			vector := closed[k].veiled(p.frame(at[k])...).Vector(at[k])
			all[i].lux[k] = r3.Norm(vector)
			sum = r3.Add(sum, vector)
		}
		if length := r3.Norm(sum); length > 0 {
			all[i].from = head.InDirection(r3.Scale(1/length, sum))
		}
	})
	return all
}

// littleBesides is the share of the light below which what passes the opening by is
// left out.
const littleBesides = 0.002

// binsAlong is how many bins lie along each edge of a cube of directions.
const binsAlong = 4

// cubeBins are all directions in bins: panes on a cube about the origin.
func cubeBins() []pane {
	axes := [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}
	const half = 1.0 / binsAlong
	var all []pane
	for k, axis := range axes {
		u, v := axes[(k+1)%3], axes[(k+2)%3]
		for _, sign := range [2]float64{1, -1} {
			for j := range binsAlong {
				for i := range binsAlong {
					a, b := (2*float64(i)+1)*half-1, (2*float64(j)+1)*half-1
					all = append(all, pane{r3.Add(r3.Scale(sign, axis), r3.Add(r3.Scale(a, u), r3.Scale(b, v))), r3.Scale(half, u), r3.Scale(half, v)})
				}
			}
		}
	}
	return all
}

// ambientsOf turns what six flat receptors show into light from all directions: the
// luminance is taken as a sum of squared cosines about the six axes, which gives the six
// readings back exactly unless one would be negative. Of a square cosine of 1 cd/m2 a
// receptor along its axis gets pi/2 lx and one across it pi/8.
func ambientsOf(read func(facing r3.Vec) float64) []ambient {
	axes := [6]r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}}
	var lux, amount [6]float64
	sum := 0.0
	for i, a := range axes {
		lux[i] = read(a)
		sum += lux[i]
	}
	// lux_i = pi/2 c_i + pi/8 (C - c_i - c_opposite), C the sum of all: sum = pi C.
	for i := 0; i < 6; i += 2 {
		pair := (lux[i] + lux[i+1] - sum/4) / (math.Pi / 4)
		for k := i; k < i+2; k++ {
			amount[k] = math.Max(0, (lux[k]-(sum/math.Pi-pair)*math.Pi/8)/(math.Pi/2))
		}
	}
	var all []ambient
	for _, d := range allAround(ambientWays) {
		luminance := 0.0
		for i, a := range axes {
			if c := r3.Dot(d, a); c > 0 {
				luminance += amount[i] * c * c
			}
		}
		all = append(all, ambient{d, alike(luminance * 4 * math.Pi / ambientWays)})
	}
	return all
}

// ambientWays is how many directions stand for what comes from all around.
const ambientWays = 72

// allAround are directions spread evenly, on a spiral of golden angles.
func allAround(count int) []r3.Vec {
	all := make([]r3.Vec, count)
	for i := range all {
		z := 1 - (2*float64(i)+1)/float64(count)
		sin, cos := math.Sincos(math.Pi * (3 - math.Sqrt(5)) * float64(i))
		r := math.Sqrt(1 - z*z)
		all[i] = r3.Vec{X: r * cos, Y: r * sin, Z: z}
	}
	return all
}
