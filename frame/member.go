package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// beam is a member in its basic system: simply supported on its chord, deformed by a stretch, a twist and two
// end rotations in each of two planes.
type beam struct {
	i, j   int
	length float64
	axes   triad // own axes, unloaded
	axial  float64
	twist  float64
	shareI float64 // weight of "z of I against y of J" in the twist; the other product has 2 less this
	z, y   plane   // bending about own z (in x–y) and about own y (in x–z)
	freeI  [3]bool
	freeJ  [3]bool
}

// plane is bending in one plane. The end moments are k·(θ−θ0), where θ are the turns of the two nodes against the
// chord and θ0 the free turns under load. The member's own ends turn by θ0 + t·(θ−θ0).
type plane struct {
	ei, ga float64 // ga is zero without shear flexibility
	k      [2][2]float64
	t      [2][2]float64
	stiff  bool // some entry of k is not zero
}

func newBeam(m *Member, nodes []Node) beam {
	d := r3.Sub(nodes[m.J].At, nodes[m.I].At)
	length := r3.Norm(d)
	b := beam{
		i: m.I, j: m.J, length: length, axes: ownAxes(r3.Scale(1/length, d), m.Up),
		axial: m.Young * m.Area / length, freeI: m.EndI.Free, freeJ: m.EndJ.Free,
		twist:  inSeries(m.Shear*m.Torsion/length, m.EndI, m.EndJ),
		z:      newPlane(m.Young*m.InertiaZ, m.Shear*m.ShearAreaY, length, m.EndI, m.EndJ, 2),
		y:      newPlane(m.Young*m.InertiaY, m.Shear*m.ShearAreaZ, length, m.EndI, m.EndJ, 1),
		shareI: 1,
	}
	// A hinge about y or z leaves only its own axis to carry the twist through a large turn.
	hingeY, hingeZ := m.EndI.Free[1] || m.EndJ.Free[1], m.EndI.Free[2] || m.EndJ.Free[2]
	switch {
	case m.EndI.Free[2] && !hingeY, m.EndJ.Free[1] && !hingeZ:
		b.shareI = 2
	case m.EndI.Free[1] && !hingeZ, m.EndJ.Free[2] && !hingeY:
		b.shareI = 0
	}
	return b
}

// ownAxes builds a member's own axes from its unit direction and the wished up direction.
func ownAxes(x, up r3.Vec) triad {
	const nearlyAlong = 1.7e-3 // sine of 0.1°
	for _, want := range []r3.Vec{up, {Z: 1}, {X: 1}} {
		z := r3.Sub(want, r3.Scale(r3.Dot(want, x), x))
		n := r3.Norm(z)
		if n > nearlyAlong*math.Max(r3.Norm(want), 1e-300) {
			z = r3.Scale(1/n, z)
			return triad{x, r3.Cross(z, x), z}
		}
	}
	return triad{x, {Y: 1}, {Z: 1}} // not reached: z and x cannot both lie along one direction
}

// inSeries is the twist stiffness of the member with its two end springs; zero with a free end.
func inSeries(k float64, ends ...End) float64 {
	flexible := 1 / k
	for _, e := range ends {
		if e.Free[0] {
			return 0
		}
		if e.Spring[0] > 0 {
			flexible += 1 / e.Spring[0]
		}
	}
	return 1 / flexible
}

// newPlane inverts the flexibility of the basic system with its end springs and releases.
// Flexibility of a simply supported beam under end moments: L/(6EI)·[2 −1; −1 2] + 1/(GA·L)·[1 1; 1 1]
// (Przemieniecki, chapter 5, in the basic system).
func newPlane(ei, ga, length float64, endI, endJ End, about int) plane {
	p := plane{ei: ei, ga: ga}
	freeI, freeJ := endI.Free[about], endJ.Free[about]
	if freeI && freeJ {
		return p
	}
	p.stiff = true
	bend := length / (6 * ei)
	f := [2][2]float64{{2 * bend, -bend}, {-bend, 2 * bend}}
	if ga > 0 {
		s := 1 / (ga * length)
		f[0][0], f[0][1], f[1][0], f[1][1] = f[0][0]+s, f[0][1]+s, f[1][0]+s, f[1][1]+s
	}
	g := f
	for e, end := range []End{endI, endJ} {
		if s := end.Spring[about]; s > 0 {
			g[e][e] += 1 / s
		}
	}
	switch {
	case freeI:
		p.k[1][1] = 1 / g[1][1]
	case freeJ:
		p.k[0][0] = 1 / g[0][0]
	default:
		det := g[0][0]*g[1][1] - g[0][1]*g[1][0]
		p.k = [2][2]float64{{g[1][1] / det, -g[0][1] / det}, {-g[1][0] / det, g[0][0] / det}}
	}
	for r := range 2 {
		for c := range 2 {
			p.t[r][c] = f[r][0]*p.k[0][c] + f[r][1]*p.k[1][c]
		}
	}
	return p
}

// freeTurns gives the slopes dv/dx at the two ends of the simply supported member under a load in N/m that runs
// straight from w1 to w2: L³/360EI·(8w1+7w2) and −L³/360EI·(7w1+8w2) (Roark's Formulas for Stress and Strain, Table
// 8.1, case 2e, from memory). Shear does not turn the ends of a simply supported beam's cross-sections.
func (p *plane) freeTurns(length, w1, w2 float64) [2]float64 {
	if p.ei == 0 {
		return [2]float64{}
	}
	c := length * length * length / (360 * p.ei)
	return [2]float64{c * (8*w1 + 7*w2), -c * (7*w1 + 8*w2)}
}
