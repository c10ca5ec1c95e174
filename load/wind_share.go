package load

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// shared is how a rigid box hands the wind's forces on, for a velocity pressure of 1 Pa:
// to each holder downward, and sideways.
type shared struct {
	down  []float64 // N, more on each ear, or less on each line where they pull up: see lines
	side  []r3.Vec  // N, on each holder
	guys  []float64 // N
	held  bool      // the guys alone hold it
	hinge float64   // N·m about the line of two holders, which none of them holds
	moves float64   // m, the farthest that a holder's place goes sideways
}

// handOn hands vertical loads to holders as springs alike under a rigid box do: the
// loads are straight in x and y (bolt group); exact for two and three, one state of
// statics for more. hinge is the moment that holders on one line leave over.
func handOn(places []r3.Vec, loads []force) (down []float64, hinge float64) {
	n := len(places)
	var middle r3.Vec
	for _, p := range places {
		middle = r3.Add(middle, r3.Scale(1/float64(n), p))
	}
	var total, mx, my float64 // downward, and its first moments about the middle
	for _, l := range loads {
		arm := r3.Sub(l.at, middle)
		total -= l.force.Z
		// The moment of a sideways force at a height tips like a load that is off.
		mx += -l.force.Z*arm.X + l.force.X*arm.Z
		my += -l.force.Z*arm.Y + l.force.Y*arm.Z
	}
	a := mat.NewDense(3, n, nil)
	for i, p := range places {
		a.SetCol(i, []float64{1, p.X - middle.X, p.Y - middle.Y})
	}
	rhs := mat.NewDense(3, 1, []float64{total, mx, my})
	down = make([]float64, n)
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDThin) {
		return down, math.NaN()
	}
	var x mat.Dense
	svd.SolveTo(&x, rhs, svd.Rank(1e-9))
	var rest mat.Dense
	rest.Mul(a, &x)
	rest.Sub(rhs, &rest)
	for i := range down {
		down[i] = x.At(i, 0)
	}
	return down, math.Hypot(rest.At(1, 0), rest.At(2, 0))
}

// spring holds a place of the box sideways: a guy, which only pulls, or a line that hangs.
type spring struct {
	at       r3.Vec
	toward   r3.Vec // of a guy, unit; zero of what holds alike in all directions
	strength float64
}

// sideways finds how a rigid box moves in the plane under loads of 1 Pa, x, y and turn,
// held by springs of which guys only pull: the least of the energy, by Newton's method
// with halved steps. ok is false where nothing holds it that way.
func sideways(springs []spring, loads []force) (moved [3]float64, ok bool) {
	var about r3.Vec
	stiffest := 0.0
	for _, s := range springs {
		about = r3.Add(about, r3.Scale(1/float64(len(springs)), s.at))
		stiffest = math.Max(stiffest, s.strength)
	}
	if !(stiffest > 0) {
		return moved, false
	}
	p := plane{springs: springs, about: about, soft: stiffest * leastHeld, size: 1}
	for _, s := range springs {
		p.size = math.Max(p.size, r3.Norm(flat(r3.Sub(s.at, about))))
	}
	for _, l := range loads {
		arm := r3.Sub(l.at, about)
		p.load[0] += l.force.X
		p.load[1] += l.force.Y
		p.load[2] += arm.X*l.force.Y - arm.Y*l.force.X
	}
	u, ok := p.rest()
	return u, ok
}

// leastHeld is the stiffness, as a share of the stiffest guy's, that counts as none.
const leastHeld = 1e-7

// plane is the problem under way.
type plane struct {
	springs []spring
	about   r3.Vec
	soft    float64 // N/m, holds what nothing holds, so that the equations have an answer
	size    float64 // m
	load    [3]float64
}

// shift is how the box's place at a spring moves.
func (p *plane) shift(s spring, u [3]float64) r3.Vec {
	arm := r3.Sub(s.at, p.about)
	return r3.Vec{X: u[0] - u[2]*arm.Y, Y: u[1] + u[2]*arm.X}
}

// pulls is what a guy pulls, N; 0 where it is slack.
func (s spring) pulls(shift r3.Vec) float64 {
	return s.strength * math.Max(0, -r3.Dot(s.toward, shift))
}

func (p *plane) energy(u [3]float64) float64 {
	e := p.soft/2*(u[0]*u[0]+u[1]*u[1]+p.size*p.size*u[2]*u[2]) - p.load[0]*u[0] - p.load[1]*u[1] - p.load[2]*u[2]
	for _, s := range p.springs {
		shift := p.shift(s, u)
		if s.toward == (r3.Vec{}) {
			e += s.strength / 2 * r3.Norm2(shift)
		} else if t := s.pulls(shift); t > 0 {
			e += t * t / (2 * s.strength)
		}
	}
	return e
}

// slope is the energy's gradient and its second derivative.
func (p *plane) slope(u [3]float64) (g *mat.VecDense, h *mat.SymDense) {
	g, h = mat.NewVecDense(3, nil), mat.NewSymDense(3, nil)
	for k, x := range [3]float64{1, 1, p.size * p.size} {
		g.SetVec(k, p.soft*x*u[k]-p.load[k])
		h.SetSym(k, k, p.soft*x)
	}
	along := func(s spring, d r3.Vec) {
		arm := r3.Sub(s.at, p.about)
		row := mat.NewVecDense(3, []float64{d.X, d.Y, arm.X*d.Y - arm.Y*d.X})
		g.AddScaledVec(g, s.strength*r3.Dot(d, p.shift(s, u)), row)
		h.SymRankOne(h, s.strength, row)
	}
	for _, s := range p.springs {
		if s.toward == (r3.Vec{}) {
			along(s, r3.Vec{X: 1})
			along(s, r3.Vec{Y: 1})
		} else if r3.Dot(s.toward, p.shift(s, u)) < 0 {
			along(s, flat(s.toward))
		}
	}
	return g, h
}

// rest goes down to the least energy. The box is held where the stand-in for nothing
// carries under a hundredth of the load.
func (p *plane) rest() (u [3]float64, ok bool) {
	push := math.Sqrt(p.load[0]*p.load[0] + p.load[1]*p.load[1] + p.load[2]*p.load[2]/(p.size*p.size))
	if push == 0 {
		return u, true
	}
	for range 200 {
		g, h := p.slope(u)
		if mat.Norm(g, 2) < 1e-10*push*p.size {
			break
		}
		var c mat.Cholesky
		var step mat.VecDense
		if !c.Factorize(h) || c.SolveVecTo(&step, g) != nil && step.Len() != 3 {
			return u, false
		}
		next, scale, now := u, 1.0, p.energy(u)
		for range 60 {
			for k := range next {
				next[k] = u[k] - scale*step.AtVec(k)
			}
			if p.energy(next) < now {
				break
			}
			scale /= 2
		}
		if next == u {
			break
		}
		u = next
	}
	left := p.soft * math.Sqrt(u[0]*u[0]+u[1]*u[1]+p.size*p.size*u[2]*u[2])
	return u, left < 0.01*push
}
