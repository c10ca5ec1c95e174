package light

import "math"

// The empty room's form factors in closed form. The patches of a room are cut evenly,
// so that the factor of two of them depends on how many steps they are apart: a small
// table of the corner terms holds all.

// emptyRoom fills the factors between the room's faces as if nothing stood in it.
func (h *Hall) emptyRoom() {
	for i := range h.sides {
		for j := i + 1; j < len(h.sides); j++ {
			if f, g := &h.sides[i], &h.sides[j]; f.normal == g.normal {
				h.parallelSides(f, g)
			} else {
				h.squareSides(f, g)
			}
		}
	}
}

// join sets the factors of two patches from their exchange area, m2: area times
// factor, the same both ways.
func (h *Hall) join(i, j int, exchange float64) {
	if h.void[i] || h.void[j] {
		return
	}
	h.factor[i*h.count+j] = exchange / h.area[i]
	h.factor[j*h.count+i] = exchange / h.area[j]
}

// parallelSides joins two faces that look at each other.
func (h *Hall) parallelSides(f, g *roomSide) {
	nu, nv := f.nu(), f.nv()
	du, dv, z := f.lineU[1]-f.lineU[0], f.lineV[1]-f.lineV[0], math.Abs(f.level-g.level)
	corner := func(a, b int) float64 { return parallelCorner(float64(a)*du, float64(b)*dv, z) }
	table := second(nu, nv, corner)
	for k := range f.patches() {
		for l := range g.patches() {
			h.join(f.first+k, g.first+l, table[abs(k/nu-l/nu)*nu+abs(k%nu-l%nu)])
		}
	}
}

// second is the second difference of an even function of two counts of steps, over
// both: what the corner terms of two patches so many steps apart add up to.
func second(nu, nv int, corner func(a, b int) float64) []float64 {
	at := make([]float64, (nu+1)*(nv+1))
	for b := range nv + 1 {
		for a := range nu + 1 {
			at[b*(nu+1)+a] = corner(a, b)
		}
	}
	along := func(a, b int) float64 {
		row := at[abs(b)*(nu+1):]
		return 2*row[a] - row[a+1] - row[abs(a-1)]
	}
	out := make([]float64, nu*nv)
	for b := range nv {
		for a := range nu {
			out[b*nu+a] = 2*along(a, b) - along(a, b+1) - along(a, b-1)
		}
	}
	return out
}

// squareSides joins two faces at a right angle: by how far a patch of each is off
// their common line, and how many steps along it they are apart.
func (h *Hall) squareSides(f, g *roomSide) {
	common := 3 - f.normal - g.normal
	offF, alongF := f.linesOf(g.normal), f.linesOf(common)
	offG := g.linesOf(f.normal)
	nf, ng, n := len(offF)-1, len(offG)-1, len(alongF)-1
	step := alongF[1] - alongF[0]
	// terms[c][a][b]: corner terms a and b lines off, c steps along.
	terms := make([]float64, (n+1)*(nf+1)*(ng+1))
	at := func(c, a, b int) *float64 { return &terms[(abs(c)*(nf+1)+a)*(ng+1)+b] }
	for c := range n + 1 {
		for a, x := range offF {
			for b, y := range offG {
				*at(c, a, b) = perpendicularCorner(math.Abs(x-g.level), math.Abs(y-f.level), float64(c)*step)
			}
		}
	}
	table := make([]float64, n*nf*ng)
	for c := range n {
		for a := range nf {
			for b := range ng {
				sum := 0.0
				for k, sign := range [2]float64{1, -1} {
					for l, other := range [2]float64{1, -1} {
						sum += sign * other * (2**at(c, a+k, b+l) - *at(c+1, a+k, b+l) - *at(c-1, a+k, b+l))
					}
				}
				table[(c*nf+a)*ng+b] = math.Abs(sum)
			}
		}
	}
	for k := range f.patches() {
		a, c := f.split(k, g.normal)
		for l := range g.patches() {
			b, d := g.split(l, f.normal)
			h.join(f.first+k, g.first+l, table[(abs(c-d)*nf+a)*ng+b])
		}
	}
}

// linesOf are the lines along one of a face's axes.
func (s *roomSide) linesOf(axis int) []float64 {
	if axis == s.u {
		return s.lineU
	}
	return s.lineV
}

// split tells a patch's count along an axis and along the other one.
func (s *roomSide) split(patch, axis int) (along, other int) {
	i, j := patch%s.nu(), patch/s.nu()
	if axis == s.u {
		return i, j
	}
	return j, i
}

func abs(n int) int { return max(n, -n) }
