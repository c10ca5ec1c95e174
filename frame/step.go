package frame

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// move writes into to the pose that is reached from another by fraction times the step p (moves and spins by
// unknown); both may be the same. A hanging frame turns as a whole: the rigid part of the step is taken as a true rotation about the
// middle, and only what is left of it as straight moves, so that a large swing does not stretch the members.
func (s *system) move(from, to *pose, p []float64, fraction float64) {
	moves, spins := s.spread(p, fraction)
	mid, drift, spin := s.rigidPart(from, moves)
	whole := columns(turn(spin))
	for k := range to.at {
		arm := r3.Sub(from.at[k], mid)
		left := r3.Sub(moves[k], r3.Add(drift, r3.Cross(spin, arm)))
		to.at[k] = r3.Add(r3.Add(mid, drift), r3.Add(whole.of(arm), left))
		if s.holds {
			to.at[k] = r3.Add(from.at[k], moves[k])
		}
		to.turn[k] = from.turn[k]
		if spins[k] != (r3.Vec{}) {
			to.turn[k] = turned(from.turn[k], spins[k])
		}
		to.axes[k] = columns(to.turn[k])
	}
}

// spread sorts a step by node.
func (s *system) spread(p []float64, fraction float64) (moves, spins []r3.Vec) {
	if s.moves == nil {
		s.moves, s.spins = make([]r3.Vec, len(s.rest)), make([]r3.Vec, len(s.rest))
	}
	clear(s.moves)
	clear(s.spins)
	for i, u := range s.owner {
		v := fraction * p[i]
		switch u.axis {
		case 0:
			s.moves[u.node].X = v
		case 1:
			s.moves[u.node].Y = v
		case 2:
			s.moves[u.node].Z = v
		case 3:
			s.spins[u.node].X = v
		case 4:
			s.spins[u.node].Y = v
		default:
			s.spins[u.node].Z = v
		}
	}
	return s.moves, s.spins
}

// rigidPart fits drift + spin × arm to the nodes' moves by least squares. Nothing is fitted to a frame that stands on
// fixed supports, or to one whose nodes lie on a line (its roll is not seen in the moves).
func (s *system) rigidPart(from *pose, moves []r3.Vec) (mid, drift, spin r3.Vec) {
	if s.holds {
		return
	}
	for k, x := range from.at {
		mid, drift = r3.Add(mid, x), r3.Add(drift, moves[k])
	}
	n := float64(len(moves))
	mid, drift = r3.Scale(1/n, mid), r3.Scale(1/n, drift)
	var j [3][3]float64
	var l r3.Vec
	trace := 0.0
	for k, x := range from.at {
		arm := r3.Sub(x, mid)
		l = r3.Add(l, r3.Cross(arm, moves[k]))
		a := [3]float64{arm.X, arm.Y, arm.Z}
		for r := range 3 {
			for c := range 3 {
				j[r][c] -= a[r] * a[c]
			}
			j[r][r] += r3.Norm2(arm)
		}
		trace += r3.Norm2(arm)
	}
	for r := range 3 {
		j[r][r] += 1e-9 * trace // keeps the spin about a straight line of nodes at zero
	}
	if trace > 0 {
		spin = solve3(&j, l)
	}
	return mid, drift, spin
}

// solve3 solves a symmetric positive 3×3 system by Cramer's rule.
func solve3(a *[3][3]float64, b r3.Vec) r3.Vec {
	c0 := r3.Vec{X: a[0][0], Y: a[1][0], Z: a[2][0]}
	c1 := r3.Vec{X: a[0][1], Y: a[1][1], Z: a[2][1]}
	c2 := r3.Vec{X: a[0][2], Y: a[1][2], Z: a[2][2]}
	det := r3.Dot(c0, r3.Cross(c1, c2))
	if det == 0 {
		return r3.Vec{}
	}
	return r3.Scale(1/det, r3.Vec{
		X: r3.Dot(b, r3.Cross(c1, c2)), Y: r3.Dot(c0, r3.Cross(b, c2)), Z: r3.Dot(c0, r3.Cross(c1, b)),
	})
}

// reach is the largest move over the frame's size and the largest spin of a step, whichever is more.
func (s *system) reach(p []float64) float64 {
	worst := 0.0
	for i, u := range s.owner {
		v := math.Abs(p[i])
		if u.axis < 3 {
			v /= s.size
		}
		worst = math.Max(worst, v)
	}
	return worst
}
