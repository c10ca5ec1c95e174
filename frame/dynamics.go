package frame

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"
)

// Motion asks for what happens after some cables are cut at once.
type Motion struct {
	Cut      []int
	Duration float64 // s; 0 is 1 s
	Step     float64 // s; 0 is 1 ms
	// Gravity turns loads into masses: each load's downward part over it, m/s². 0 is 9.80665.
	Gravity float64
}

// Course is a motion in time.
type Course struct {
	Peak  []float64 // N, the largest tension of each cable
	When  []float64 // s, when that was
	Lost  float64   // J, energy at the end less that at the start; the method loses a little
	Steps int
}

// Constants of the time integration (Hilber, Hughes and Taylor, Improved Numerical Dissipation for Time Integration
// Algorithms in Structural Dynamics, 1977): the method of second order whose dissipation touches only what swings
// faster than the step can follow. The turns follow the same rule as increments on the rotation (Simo and Vu-Quoc,
// On the Dynamics in Space of Rods Undergoing Large Motions, 1988).
const (
	numericalDamping = -0.05
	newmarkBeta      = (1 - numericalDamping) * (1 - numericalDamping) / 4
	newmarkGamma     = 0.5 - numericalDamping
	mostCorrections  = 12
	shortestStep     = 1.0 / 64 // of the step that was asked for
	mostWork         = 1e10     // multiplications: some seconds
)

// Integrate follows the frame in time from a place of rest on which some cables are cut, undamped. The masses are
// those of the loads: a member's on its two nodes, with m·L²/78 against turning (Hinton, Rock and Zienkiewicz, A Note
// on Mass Lumping, 1976), a load on an arm at the arm's end, a rider's on its four nodes by its shares. [Problem.Refine]
// first where members are long.
//
// Errors: what cannot be computed, as [Problem.Equilibrium]; a motion that the steps cannot follow; one that would take
// too long.
func (p *Problem) Integrate(l Loads, start *State, o Motion) (*Course, error) {
	if start == nil {
		return nil, errors.New("a motion starts from a place of rest; none is given")
	}
	m, err := newModel(p, &l)
	if err != nil {
		return nil, err
	}
	q, err := m.startPose(&Options{Start: start})
	if err != nil {
		return nil, err
	}
	if err := m.cut(o.Cut); err != nil {
		return nil, err
	}
	x := newMotion(newSystem(m, newLoading(m, &l), q), &l, o)
	if work := x.duration / x.longest * x.k.work(); work > mostWork {
		return nil, fmt.Errorf("the frame is too large to follow in time: %d unknowns", len(m.owner))
	}
	return x.run()
}

// work is about how many multiplications one factorization takes.
func (s *skyline) work() float64 {
	sum := 0.0
	for i, f := range s.first {
		width := float64(i - f)
		sum += width * width
	}
	return sum
}

// swung is a mass on an arm that turns with its node.
type swung struct {
	node int
	arm  r3.Vec // world axes of the unloaded frame
	mass float64
}

// motion is a system on its way.
type motion struct {
	*system
	duration, longest float64
	mass, inertia     []float64 // of each node
	swung             []swung
	from              *pose     // at the last step
	gradWas           []float64 // there
	speed, change     []float64 // velocity and acceleration by unknown
	delta             []float64 // from the last step
	speedTo, changeTo []float64
	rest              []float64 // what is out of balance
	total             float64   // N
	course            *Course
}

func newMotion(s *system, l *Loads, o Motion) *motion {
	n := len(s.owner)
	x := &motion{
		system: s, duration: or(o.Duration, 1), longest: or(o.Step, 1e-3), from: newPose(len(s.rest)),
		mass: make([]float64, len(s.rest)), inertia: make([]float64, len(s.rest)),
		course: &Course{Peak: make([]float64, len(s.cables)), When: make([]float64, len(s.cables))},
	}
	for _, v := range []*[]float64{&x.gradWas, &x.speed, &x.change, &x.delta, &x.speedTo, &x.changeTo, &x.rest} {
		*v = make([]float64, n)
	}
	x.weigh(l, or(o.Gravity, 9.80665))
	x.total = math.Max(s.load.total, 1e-3)
	return x
}

func or(x, other float64) float64 {
	if x > 0 {
		return x
	}
	return other
}

// weigh puts the loads' masses on the nodes.
func (x *motion) weigh(l *Loads, g float64) {
	of := func(f r3.Vec) float64 { return math.Max(0, -f.Z) / g }
	for _, f := range l.Nodal {
		x.mass[f.Node] += of(f.Force)
	}
	for _, f := range l.Offset {
		x.swung = append(x.swung, swung{f.Node, f.Offset, of(f.Force)})
	}
	for _, f := range l.Rider {
		sum := 0.0
		for _, share := range f.Share {
			sum += math.Max(0, share)
		}
		for k, node := range f.Nodes {
			x.mass[node] += of(f.Force) * math.Max(0, f.Share[k]) / sum
		}
	}
	for _, f := range l.Member {
		b := &x.beams[f.Member]
		toI, toJ := endShares(b.length, f.AtI, f.AtJ)
		x.mass[b.i] += of(toI)
		x.mass[b.j] += of(toJ)
		round := (of(toI) + of(toJ)) * b.length * b.length / 78
		x.inertia[b.i] += round
		x.inertia[b.j] += round
	}
	least := 1e-4 * x.load.total / g / float64(len(x.mass)) // a point where only ropes meet
	for k := range x.mass {
		x.mass[k] = math.Max(x.mass[k], least)
	}
}

// run steps through the time.
func (x *motion) run() (*Course, error) {
	x.refresh()
	before := x.assemble()
	copy(x.gradWas, x.grad)
	x.note(0)
	if err := x.begin(); err != nil {
		return nil, err
	}
	for t, h := 0.0, x.longest; t < x.duration-1e-9; {
		h = math.Min(h, x.duration-t)
		x.from.copyFrom(x.q)
		x.refresh()
		if !x.advanceBy(h) {
			x.q.copyFrom(x.from)
			if h /= 2; h < x.longest*shortestStep {
				return nil, fmt.Errorf("the motion could not be followed past %.3f s", t)
			}
			continue
		}
		t += h
		copy(x.speed, x.speedTo)
		copy(x.change, x.changeTo)
		copy(x.gradWas, x.grad)
		x.course.Steps++
		x.note(t)
		h = math.Min(2*h, x.longest)
	}
	x.course.Lost = x.energy(x.q) + x.kinetic() - before
	return x.course, nil
}

// begin finds the first acceleration: M·a = −gradient.
func (x *motion) begin() error {
	x.k.clear()
	x.addMass(1)
	x.k.factor(judge{small: tinyPivot})
	for i, g := range x.grad {
		x.change[i] = -g
	}
	x.k.solve(x.change)
	for _, a := range x.change {
		if math.IsNaN(a) {
			return errors.New("the motion has no start: a mass is not known")
		}
	}
	return nil
}

// advanceBy finds the pose a step later by Newton's method; false where it does not settle.
func (x *motion) advanceBy(h float64) bool {
	for i := range x.delta {
		x.delta[i] = h*x.speed[i] + h*h/2*x.change[i]
	}
	const share = 1 + numericalDamping
	last := math.Inf(1)
	for round := range mostCorrections {
		x.place()
		x.follow(h)
		fresh := round == 0 || round > 3
		if fresh {
			x.assemble()
		} else {
			x.gradientAt(x.q)
		}
		left := x.outOfBalance(share)
		if math.IsNaN(left) || math.IsInf(left, 0) || left > 1e6*x.total {
			return false
		}
		if left < 1e-7*x.total || left < 1e-5*x.total && left > last/2 {
			return true
		}
		last = left
		if fresh {
			x.addMass(1 / (newmarkBeta * h * h * share))
			x.k.factor(judge{small: tinyPivot})
		}
		x.k.solve(x.rest)
		for i := range x.delta {
			x.delta[i] -= x.rest[i] / share
		}
	}
	return false
}

// place puts the nodes where the step's increments take them.
func (x *motion) place() {
	moves, spins := x.spread(x.delta, 1)
	for k := range x.q.at {
		x.q.at[k] = r3.Add(x.from.at[k], moves[k])
		x.q.turn[k] = x.from.turn[k]
		if spins[k] != (r3.Vec{}) {
			x.q.turn[k] = turned(x.from.turn[k], spins[k])
		}
		x.q.axes[k] = columns(x.q.turn[k])
	}
}

// follow is Newmark's rule: velocity and acceleration from the increments.
func (x *motion) follow(h float64) {
	for i, d := range x.delta {
		x.changeTo[i] = (d-h*x.speed[i])/(newmarkBeta*h*h) - (1/(2*newmarkBeta)-1)*x.change[i]
		x.speedTo[i] = x.speed[i] + h*((1-newmarkGamma)*x.change[i]+newmarkGamma*x.changeTo[i])
	}
}

// outOfBalance fills rest with M·a + (1+α)·g − α·g_was and returns its largest entry, N, or N·m over the members' mean
// length.
func (x *motion) outOfBalance(share float64) float64 {
	largest := 0.0
	moves, spins := x.byNode(x.changeTo)
	for i, u := range x.owner {
		v := x.mass[u.node] * component(moves[u.node], u.axis%3)
		if u.axis > 2 {
			v = x.inertia[u.node] * component(spins[u.node], u.axis-3)
		}
		x.rest[i] = v + share*x.grad[i] + (1-share)*x.gradWas[i]
	}
	x.swing(moves, spins)
	for i, u := range x.owner {
		v := math.Abs(x.rest[i])
		if u.axis > 2 {
			v /= x.scale
		}
		if v > largest || math.IsNaN(v) {
			largest = v
		}
	}
	return largest
}

// swing adds the inertia of masses on arms: f = m·(a + α×r + ω×(ω×r)) at the node, r×f about it.
func (x *motion) swing(moves, spins []r3.Vec) {
	if len(x.swung) == 0 {
		return
	}
	a, alpha := append([]r3.Vec(nil), moves...), append([]r3.Vec(nil), spins...)
	_, omega := x.byNode(x.speedTo)
	for _, s := range x.swung {
		r := x.q.axes[s.node].of(s.arm)
		f := r3.Add(a[s.node], r3.Cross(alpha[s.node], r))
		f = r3.Scale(s.mass, r3.Add(f, r3.Cross(omega[s.node], r3.Cross(omega[s.node], r))))
		m := r3.Cross(r, f)
		for axis, i := range x.number[s.node] {
			switch {
			case i < 0:
			case axis < 3:
				x.rest[i] += component(f, axis)
			default:
				x.rest[i] += component(m, axis-3)
			}
		}
	}
}

// byNode sorts values by node into buffers that the next call reuses.
func (x *motion) byNode(v []float64) (moves, spins []r3.Vec) { return x.spread(v, 1) }

// addMass adds c times the mass matrix to the tangent: of masses on arms
// [1, −[r]; [r], −[r][r]]·m.
func (x *motion) addMass(c float64) {
	for i, u := range x.owner {
		v := x.mass[u.node]
		if u.axis > 2 {
			v = x.inertia[u.node]
		}
		x.k.add(i, i, c*v)
	}
	for _, s := range x.swung {
		r := x.q.axes[s.node].of(s.arm)
		n := x.number[s.node]
		m := c * s.mass
		for a := range 3 {
			x.k.add(n[a], n[a], m)
			for b := range 3 {
				// a + α×r: the move along a that a spin about b gives.
				x.k.add(n[3+b], n[a], m*component(r3.Cross(unit(b), r), a))
				if b <= a {
					x.k.add(n[3+a], n[3+b], m*r3.Dot(r3.Cross(unit(a), r), r3.Cross(unit(b), r)))
				}
			}
		}
	}
}

// note keeps the cables' peaks.
func (x *motion) note(t float64) {
	for k := range x.cables {
		if p := x.cables[k].pull(x.q.at); p.tension > x.course.Peak[k] {
			x.course.Peak[k], x.course.When[k] = p.tension, t
		}
	}
}

func (x *motion) kinetic() float64 {
	moves, spins := x.byNode(x.speed)
	sum := 0.0
	for k := range moves {
		sum += x.mass[k]*r3.Norm2(moves[k])/2 + x.inertia[k]*r3.Norm2(spins[k])/2
	}
	for _, s := range x.swung {
		r := x.q.axes[s.node].of(s.arm)
		sum += s.mass * r3.Norm2(r3.Add(moves[s.node], r3.Cross(spins[s.node], r))) / 2
	}
	return sum
}

// Refine splits members that are longer than a length, m, and their loads with them. Nodes and cables keep their
// numbers; new nodes follow. The state is one of the problem; the one that is returned is a start for the refined
// problem's [Problem.Equilibrium].
func (p *Problem) Refine(l Loads, s *State, longest float64) (Problem, Loads, *State) {
	fine := *p
	fine.Nodes = append([]Node(nil), p.Nodes...)
	fine.Members = nil
	loads := l
	loads.Member = nil
	start := &State{Position: append([]r3.Vec(nil), s.Position...), Rotation: append([]r3.Rotation(nil), s.Rotation...)}
	for k, m := range p.Members {
		n := pieces(r3.Norm(r3.Sub(p.Nodes[m.J].At, p.Nodes[m.I].At)), longest)
		first := len(fine.Members)
		for i := range n {
			piece := m
			piece.I, piece.J = m.I, m.J
			if i > 0 {
				piece.I, piece.EndI = len(fine.Nodes)-1, End{}
			}
			if i < n-1 {
				f := float64(i+1) / float64(n)
				piece.J, piece.EndJ = len(fine.Nodes), End{}
				fine.Nodes = append(fine.Nodes, Node{Name: fmt.Sprintf("%s, %d of %d", m.Name, i+1, n), At: within(p.Nodes[m.I].At, p.Nodes[m.J].At, f)})
				start.Position = append(start.Position, within(s.Position[m.I], s.Position[m.J], f))
				start.Rotation = append(start.Rotation, halfway(s.Rotation[m.I], s.Rotation[m.J], f))
			}
			fine.Members = append(fine.Members, piece)
		}
		for _, f := range l.Member {
			if f.Member != k {
				continue
			}
			for i := range n {
				a, b := float64(i)/float64(n), float64(i+1)/float64(n)
				loads.Member = append(loads.Member, MemberLoad{Member: first + i, AtI: within(f.AtI, f.AtJ, a), AtJ: within(f.AtI, f.AtJ, b)})
			}
		}
	}
	return fine, loads, start
}

func pieces(length, longest float64) int {
	if !(longest > 0) {
		return 1
	}
	return min(64, max(1, int(math.Ceil(length/longest-1e-9))))
}

func within(a, b r3.Vec, f float64) r3.Vec { return r3.Add(a, r3.Scale(f, r3.Sub(b, a))) }

// halfway is a turn between two that are near each other.
func halfway(a, b r3.Rotation, f float64) r3.Rotation {
	p, q := quat.Number(a), quat.Number(b)
	if p.Real*q.Real+p.Imag*q.Imag+p.Jmag*q.Jmag+p.Kmag*q.Kmag < 0 {
		q = quat.Scale(-1, q)
	}
	sum := quat.Add(quat.Scale(1-f, p), quat.Scale(f, q))
	return r3.Rotation(quat.Scale(1/quat.Abs(sum), sum))
}
