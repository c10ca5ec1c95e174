package frame

import (
	"fmt"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// grid is an n by m grillage of tube with a cable at each corner and a weight on every node.
func grid(n, m int, spacing float64) (p Problem, l Loads) {
	section, material := pipe()
	at := func(i, j int) int { return i*m + j }
	for i := range n {
		for j := range m {
			p.Nodes = append(p.Nodes, Node{At: r3.Vec{X: spacing * float64(i), Y: spacing * float64(j)}})
			l.Nodal = append(l.Nodal, NodalLoad{Node: at(i, j), Force: r3.Vec{Z: -20}})
			if i > 0 {
				p.Members = append(p.Members, Member{I: at(i-1, j), J: at(i, j), Section: section, Material: material})
			}
			if j > 0 {
				p.Members = append(p.Members, Member{I: at(i, j-1), J: at(i, j), Section: section, Material: material})
			}
		}
	}
	for _, k := range []int{at(0, 0), at(n-1, 0), at(n-1, m-1), at(0, m-1)} {
		p.Cables = append(p.Cables, Cable{I: k, J: Anchored, Anchor: r3.Add(p.Nodes[k].At, r3.Vec{Z: 4}), EA: 60e3, Unstretched: 4})
	}
	for k := range p.Members {
		l.Member = append(l.Member, MemberLoad{k, r3.Vec{Z: -11}, r3.Vec{Z: -11}})
	}
	return p, l
}

// edit changes a load and a member, so that no two rounds are the same problem.
func edit(p *Problem, l *Loads, round int) {
	p.Members[round%len(p.Members)].Section = RoundTube(0.04216, 0.0030+0.0001*float64(round%7))
	l.Nodal[round%len(l.Nodal)].Force.Z = -20 - float64(round%11)
}

func BenchmarkEquilibriumOfTubeFrame(b *testing.B) {
	g := readGolden(b, "L2A_moved")
	b.ReportAllocs()
	steps := 0
	for round := range b.N {
		edit(&g.Problem, &g.Loads, round)
		s, err := g.Equilibrium(g.Loads, Options{})
		if err != nil {
			b.Fatal(err)
		}
		steps += s.Iterations
	}
	b.ReportMetric(float64(steps)/float64(b.N), "steps/op")
}

func BenchmarkLineLost(b *testing.B) {
	g := readGolden(b, "L2A_moved")
	before, err := g.Equilibrium(g.Loads, Options{})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	steps := 0
	for round := range b.N {
		edit(&g.Problem, &g.Loads, round)
		s, err := g.Equilibrium(g.Loads, Options{Start: before, Cut: []int{round % 4}})
		if err != nil {
			b.Fatal(err)
		}
		steps += s.Iterations
	}
	b.ReportMetric(float64(steps)/float64(b.N), "steps/op")
}

func BenchmarkEquilibriumOf60Nodes(b *testing.B) {
	p, l := grid(10, 6, 0.6)
	b.ReportAllocs()
	steps := 0
	for round := range b.N {
		edit(&p, &l, round)
		s, err := p.Equilibrium(l, Options{})
		if err != nil {
			b.Fatal(err)
		}
		steps += s.Iterations
	}
	b.ReportMetric(float64(steps)/float64(b.N), "steps/op")
}

// Factorization and one solution at a half-band of about 100 and growing length.
func BenchmarkLinear(b *testing.B) {
	for _, n := range []int{13, 26, 52} {
		p, l := grid(n, 16, 0.6)
		for k := range p.Nodes {
			p.Supports = append(p.Supports, Support{Node: k, Spring: [6]float64{1, 1, 1, 1, 1, 1}})
		}
		b.Run(fmt.Sprintf("%d", 6*len(p.Nodes)), func(b *testing.B) {
			b.ReportAllocs()
			for round := range b.N {
				edit(&p, &l, round)
				f, err := p.Linear()
				if err != nil {
					b.Fatal(err)
				}
				if _, err := f.Solve(l); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// One step of a tilt: the four lengths for four heights, from the step before.
func BenchmarkHeldHeights(b *testing.B) {
	g := readGolden(b, "L2A_moved")
	before, err := g.Equilibrium(g.Loads, Options{})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	steps := 0
	for round := range b.N {
		edit(&g.Problem, &g.Loads, round)
		o := Options{Start: before}
		for k := range 4 {
			o.Held = append(o.Held, Held{k, corners[k].Y * 0.02 * float64(round%16)})
		}
		s, err := g.Equilibrium(g.Loads, o)
		if err != nil {
			b.Fatal(err)
		}
		steps += s.Iterations
	}
	b.ReportMetric(float64(steps)/float64(b.N), "steps/op")
}
