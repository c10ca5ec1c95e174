package frame

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// NotHeld says that no length of a cable brings its node to the wished height.
type NotHeld struct {
	Cable string
	Short float64 // m, what is missing upwards (below zero: downwards)
}

func (n *NotHeld) Error() string {
	return fmt.Sprintf("cable %s: no length found that brings its lower end to the wished height, %.4g m are missing; check the heights against each other", n.Cable, n.Short)
}

const (
	mostRounds      = 60
	heightTolerance = 1e-11 // of the frame's size
)

// hold is a wish for a height. While loose the cable would have to push and hangs slack instead.
type hold struct {
	cable, node int
	height      float64 // from the model's origin
	loose       bool
}

func (x *search) holdsOf(o *Options) ([]hold, error) {
	var out []hold
	seen := map[int]bool{}
	for _, h := range o.Held {
		if h.Cable < 0 || h.Cable >= len(x.cables) || !finiteNumber(h.Height) {
			return nil, fmt.Errorf("held: cable %d of %d at height %g m", h.Cable, len(x.cables), h.Height)
		}
		c := &x.cables[h.Cable]
		name := x.p.cableName(h.Cable)
		switch {
		case seen[h.Cable]:
			return nil, fmt.Errorf("held: cable %s is asked to hold two heights", name)
		case c.gone:
			return nil, fmt.Errorf("held: cable %s is cut; it can hold no height", name)
		case x.number[c.i][2] == held:
			return nil, fmt.Errorf("held: cable %s: node %s is fixed along z by a support already", name, x.p.nodeName(c.i))
		}
		seen[h.Cable] = true
		out = append(out, hold{cable: h.Cable, node: c.i, height: h.Height - x.origin.Z})
	}
	return out, nil
}

// runHeld finds the lengths: Newton's method on the heights, with the change of every node by every length from the
// factor of the last state, and a rest found anew after each change.
func (x *search) runHeld(holds []hold) error {
	x.guess(holds)
	for range mostRounds {
		if err := x.run(); err != nil {
			return err
		}
		if x.sort(holds) {
			continue
		}
		if worst(x.short(holds)) <= heightTolerance*x.size {
			return nil
		}
		if !x.relengthen(holds) {
			break
		}
	}
	short := x.short(holds)
	k := 0
	for i := range short {
		if math.Abs(short[i]) > math.Abs(short[k]) {
			k = i
		}
	}
	return &NotHeld{Cable: x.p.cableName(holds[k].cable), Short: short[k]}
}

// guess starts with the frame lifted as a whole to the mean of the heights and each cable as long as its line then.
func (x *search) guess(holds []hold) {
	lift := 0.0
	for _, h := range holds {
		lift += (h.height - x.q.at[h.node].Z) / float64(len(holds))
	}
	for k := range x.q.at {
		if x.number[k][2] != held {
			x.q.at[k].Z += lift
		}
	}
	for _, h := range holds {
		c := &x.cables[h.cable]
		at := x.q.at[h.node]
		at.Z = h.height
		share := x.load.total / float64(len(holds))
		c.natural = math.Max(r3.Norm(r3.Sub(x.far(c), at)), 1e-6) / (1 + share/c.ea)
	}
}

func (m *search) far(c *cable) r3.Vec {
	if c.j == Anchored {
		return c.anchor
	}
	return m.q.at[c.j]
}

// short is how much each taut cable's node stands under its height.
func (x *search) short(holds []hold) []float64 {
	out := make([]float64, len(holds))
	for k, h := range holds {
		if !h.loose {
			out[k] = h.height - x.q.at[h.node].Z
		}
	}
	return out
}

func worst(v []float64) float64 {
	w := 0.0
	for _, a := range v {
		w = math.Max(w, math.Abs(a))
	}
	return w
}

// sort lets cables hang slack that would have to push, takes them up again where the node came to stand too low, and
// tightens those that are slack for no reason. It reports whether anything changed.
func (x *search) sort(holds []hold) bool {
	changed := false
	for k := range holds {
		h := &holds[k]
		c := &x.cables[h.cable]
		p := c.pull(x.q.at)
		low := h.height - x.q.at[h.node].Z
		switch {
		case h.loose && p.tension > 0 && low > heightTolerance*x.size:
			h.loose, changed = false, true
		case !h.loose && p.tension == 0 && low <= heightTolerance*x.size:
			at := x.q.at[h.node]
			at.Z = h.height
			c.natural, h.loose, changed = r3.Norm(r3.Sub(x.far(c), at)), true, true
		case !h.loose && p.tension == 0:
			c.natural, changed = math.Max(p.length-low, p.length/2), true
		}
	}
	return changed
}

// relengthen changes the lengths of the taut cables by one Newton step on the heights. The force on the node changes by
// EA·l/L0² per length, along the cable.
func (x *search) relengthen(holds []hold) bool {
	var taut []hold
	var missing []float64
	for _, h := range holds {
		if !h.loose {
			taut = append(taut, h)
			missing = append(missing, h.height-x.q.at[h.node].Z)
		}
	}
	n := len(taut)
	moves := make([][]float64, n)
	x.k.factor(judge{weight: x.weight, small: tinyPivot, rough: x.left / x.scale})
	for j, h := range taut {
		moves[j] = make([]float64, len(x.owner))
		x.lengthening(&x.cables[h.cable], moves[j])
		x.k.solve(moves[j])
	}
	a := make([][]float64, n)
	for i, h := range taut {
		a[i] = make([]float64, n)
		for j := range taut {
			a[i][j] = -moves[j][x.number[h.node][2]]
		}
	}
	change, ok := solveDense(a, missing)
	if !ok {
		return false
	}
	x.apply(taut, change, moves)
	return true
}

// lengthening writes the derivative of the gradient by a cable's unstretched length.
func (x *search) lengthening(c *cable, g []float64) {
	p := c.pull(x.q.at)
	d := c.ea * p.length / (c.natural * c.natural)
	put := func(node int, sign float64) {
		for axis := range 3 {
			if i := x.number[node][axis]; i >= 0 {
				g[i] += sign * d * component(p.e, axis)
			}
		}
	}
	put(c.i, 1)
	if c.j != Anchored {
		put(c.j, -1)
	}
}

// apply changes the lengths, and the pose by what that moves; large changes are cut down.
func (x *search) apply(taut []hold, change []float64, moves [][]float64) {
	fraction := math.Min(1, 0.3*x.size/math.Max(worst(change), 1e-300))
	for j, h := range taut {
		c := &x.cables[h.cable]
		to := c.natural + fraction*change[j]
		c.natural = math.Max(to, c.natural/2)
	}
	clear(x.step)
	for j := range taut {
		for i := range x.step {
			x.step[i] -= fraction * change[j] * moves[j][i]
		}
	}
	if r := x.reach(x.step); r < longestStep {
		x.move(x.trial, x.step, 1)
		if !math.IsInf(x.energy(x.trial), 0) {
			x.q.copyFrom(x.trial)
		}
	}
}

// solveDense solves a small system by elimination with row exchange; false if it is singular.
func solveDense(a [][]float64, b []float64) ([]float64, bool) {
	n := len(b)
	x := append([]float64(nil), b...)
	for c := range n {
		p := c
		for r := c + 1; r < n; r++ {
			if math.Abs(a[r][c]) > math.Abs(a[p][c]) {
				p = r
			}
		}
		if !(math.Abs(a[p][c]) > 1e-13) {
			return nil, false
		}
		a[p], a[c], x[p], x[c] = a[c], a[p], x[c], x[p]
		for r := c + 1; r < n; r++ {
			f := a[r][c] / a[c][c]
			for k := c; k < n; k++ {
				a[r][k] -= f * a[c][k]
			}
			x[r] -= f * x[c]
		}
	}
	for c := n - 1; c >= 0; c-- {
		for k := c + 1; k < n; k++ {
			x[c] -= a[c][k] * x[k]
		}
		x[c] /= a[c][c]
	}
	return x, true
}
