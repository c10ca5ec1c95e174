package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// start is a place on an opening with its area, m2.
type start struct {
	at    r3.Vec
	share float64
}

// step is the widest over an opening, over its distance. A crate's kinks blur
// only as far as the lobe goes.
func (c *spotCase) step(l *lamp) float64 {
	step := startRatio * math.Min(1, l.Distribution.Scale())
	if c.crate != nil {
		step = math.Min(step, 2*c.relay.lobe.sigma)
	}
	return step
}

// placesOn are places on an opening, closer where it is near.
func placesOn(to []start, l *lamp, p *part, eye r3.Vec, step float64) []start {
	if p.share < 1-1e-9 { // cut by a plane: by triangles
		for i := 2; i < len(p.opening); i++ {
			a, b, c := p.opening[0], p.opening[i-1], p.opening[i]
			area := norm(r3.Cross(r3.Sub(b, a), r3.Sub(c, a))) / 2
			for _, q := range cubature {
				x := r3.Add(r3.Add(r3.Scale(q.a, a), r3.Scale(q.b, b)), r3.Scale(1-q.a-q.b, c))
				to = append(to, start{x, area * q.weight})
			}
		}
		return to
	}
	step *= norm(r3.Sub(eye, l.Centre))
	nu, nv := stepsOver(l.Size[0], step), stepsOver(l.Size[1], step)
	for i := range nu {
		for j := range nv {
			for _, s := range starPlaces {
				u := ((float64(i)+0.5+s[0])/float64(nu) - 0.5) * l.Size[0]
				v := ((float64(j)+0.5+s[1])/float64(nv) - 0.5) * l.Size[1]
				at := r3.Add(l.Centre, r3.Add(r3.Scale(u, l.U), r3.Scale(v, l.V)))
				to = append(to, start{at, l.Size[0] * l.Size[1] / float64(3*nu*nv)})
			}
		}
	}
	return to
}

// stepsOver is how many steps go over a length.
func stepsOver(length, step float64) int { return max(1, min(8, int(math.Ceil(length/step)))) }

// starPlaces are three places on a unit square about its middle that integrate
// every polynomial of degree two: on a circle of radius 1/sqrt(6).
var starPlaces = [3][2]float64{{0, 0.40824829046386301637}, {-0.35355339059327376220, -0.20412414523193150818}, {0.35355339059327376220, -0.20412414523193150818}}

// startRatio is the widest step over an opening, of three places each, over its distance.
const startRatio = 0.4
