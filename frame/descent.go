package frame

import "math"

// firm is the damping, in sums of the forces per size, at which the loads move nothing by more than a hundredth of the
// frame's size: only what is stiff gives way.
const firm = 100

// advance takes one step down, with as much damping as that needs.
func (x *search) advance() bool {
	// The loads cannot leave more than their own sum out of balance: the rest is stretch that a long step left behind.
	if x.left > 1.01*x.load.total && x.firmStep(x.cost, x.cost) {
		return true
	}
	for range 60 {
		if x.damping < x.least {
			x.damping = 0
		}
		if x.load.turning && x.plain() {
			return true
		}
		in := x.k.factor(judge{shift: x.damping, weight: x.weight, small: tinyPivot, stop: true})
		if in.negative == 0 && !x.driven(in) {
			x.solveStep()
			if x.accept() {
				return true
			}
		}
		x.damping = math.Max(4*x.damping, x.least)
	}
	return false
}

// solveStep solves for the step with the last factor.
func (x *search) solveStep() {
	for i, g := range x.grad {
		x.step[i] = -g
	}
	x.k.solve(x.step)
}

// driven reports whether a motion that costs nothing is pushed all the same.
func (x *search) driven(in inertia) bool {
	for _, i := range in.neutral {
		g := math.Abs(x.grad[i])
		if x.owner[i].axis > 2 {
			g /= x.scale
		}
		if g > 1e-9*x.load.total {
			return true
		}
	}
	return false
}

// accept tries the step and a few shorter ones; the first that lowers the energy enough is taken (Armijo's rule). Where
// the expected gain drowns in rounding the full step is taken unseen.
func (x *search) accept() bool {
	slope := dot(x.grad, x.step)
	if !(slope < 0) {
		return false
	}
	fraction := 1.0
	if r := x.reach(x.step); r > longestStep {
		fraction = longestStep / r
	}
	full := fraction == 1
	if full && -slope < 1e-10*x.energyScale() {
		x.move(x.trial, x.step, 1)
		x.take(true)
		x.stride = x.reach(x.step)
		return true
	}
	for try := range 6 {
		x.move(x.trial, x.step, fraction)
		e := x.energy(x.trial)
		if e <= x.cost+1e-4*slope*fraction {
			x.take(full)
			return true
		}
		if try == 0 && !math.IsInf(e, 0) && x.mend(x.cost+0.3*slope*fraction) {
			return true
		}
		full = false
		fraction /= 3
	}
	return false
}

// energyScale is the size of the energies whose differences are taken.
func (x *search) energyScale() float64 { return math.Abs(x.cost) + x.load.total*x.size }

// take makes the trial the present pose and loosens the damping after a full step.
func (x *search) take(full bool) {
	x.q.copyFrom(x.trial)
	if full {
		x.damping /= 8
	}
}

// mend goes on from a trial that costs more than it should: if one firm step from there reaches the goal, both steps
// are taken. A long step of a closed frame on lines stretches them in ways that no placing of the nodes avoids, and would
// be refused for that, although the way is right (the watchdog of constrained search; Nocedal and Wright, Numerical
// Optimization, 2006, section 15.6).
func (x *search) mend(goal float64) bool {
	x.was.copyFrom(x.q)
	copy(x.kept, x.step)
	x.q.copyFrom(x.trial)
	ok := x.firmStep(x.assemble(), goal)
	copy(x.step, x.kept)
	if !ok {
		x.q.copyFrom(x.was)
		x.assemble()
	}
	return ok
}

// firmStep takes a firmly damped step from the present pose, whose energy is given, if that is a real step down and ends
// below the goal.
func (x *search) firmStep(here, goal float64) bool {
	for _, damping := range []float64{firm, 10 * firm} {
		shift := damping * math.Max(x.load.total, 1) / x.size
		if in := x.k.factor(judge{shift: shift, weight: x.weight, small: tinyPivot, stop: true}); in.negative > 0 {
			continue
		}
		x.solveStep()
		if x.reach(x.step) > longestStep {
			continue
		}
		x.move(x.trial, x.step, 1)
		if e := x.energy(x.trial); e < goal && e <= here+0.1*dot(x.grad, x.step) {
			x.q.copyFrom(x.trial)
			return true
		}
	}
	return false
}

// plain tries the undamped step of a tangent that is not positive and takes it if it halves the imbalance. Only for
// moments that keep their direction: they have no potential (Ziegler, Principles of Structural Stability, 1968), so that
// the tangent's signs say little about where the frame comes to rest.
func (x *search) plain() bool {
	x.k.factor(judge{weight: x.weight, small: tinyPivot, rough: x.left / x.scale})
	x.solveStep()
	if r := x.reach(x.step); !(r < longestStep) {
		return false
	}
	x.move(x.trial, x.step, 1)
	x.gradientAt(x.trial)
	after, _ := x.imbalance()
	if !(after < x.left/2) {
		x.gradientAt(x.q)
		return false
	}
	x.take(true)
	return true
}
