package frame

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Closed forms of the beam tables: AISC Steel Construction Manual, Table 3-23 (case number), and Roark's Formulas for Stress
// and Strain, Table 8.1; both from memory, the numbers are the formulas'. Inches and pounds: the solver knows no unit. The
// tube is 1-1/2 in schedule 40 with EI = 10e6·0.3099.

const (
	tubeEI     = 10e6 * 0.3099
	tubeWeight = 0.078351 // lb/in
)

func tube() (Section, Material) {
	return Section{Area: 0.7995, InertiaY: 0.3099, InertiaZ: 0.3099, Torsion: 0.6198}, Material{Young: 10e6, Shear: 3.75e6}
}

// Supports of a straight beam along x: what is held.
var (
	hinge  = [6]bool{true, true, true, true}
	roller = [6]bool{false, true, true}
)

// beamAlongX puts nodes at the given places along x and joins them.
func beamAlongX(section Section, material Material, places ...float64) Problem {
	var p Problem
	for k, x := range places {
		p.Nodes = append(p.Nodes, Node{At: r3.Vec{X: x}})
		if k > 0 {
			p.Members = append(p.Members, Member{I: k - 1, J: k, Section: section, Material: material})
		}
	}
	return p
}

func (p Problem) supported(at map[int][6]bool) Problem {
	for node := range p.Nodes {
		if fixed, ok := at[node]; ok {
			p.Supports = append(p.Supports, Support{Node: node, Fixed: fixed})
		}
	}
	return p
}

func uniform(w float64, members ...int) (l Loads) {
	for _, k := range members {
		l.Member = append(l.Member, MemberLoad{k, r3.Vec{Z: -w}, r3.Vec{Z: -w}})
	}
	return l
}

func at(node int, force float64) Loads {
	return Loads{Nodal: []NodalLoad{{Node: node, Force: r3.Vec{Z: -force}}}}
}

func small(t *testing.T, p Problem, l Loads) *Result {
	t.Helper()
	f, err := p.Linear()
	if err != nil {
		t.Fatal(err)
	}
	r, err := f.Solve(l)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func TestBeamTables(t *testing.T) {
	section, material := tube()
	beam := func(fixed map[int][6]bool, places ...float64) Problem {
		return beamAlongX(section, material, places...).supported(fixed)
	}
	simple := map[int][6]bool{0: hinge, 1: roller}
	fixedBoth := map[int][6]bool{0: clamped, 1: clamped}
	third := map[int][6]bool{0: hinge, 2: roller}
	for _, c := range []struct {
		name   string
		p      Problem
		l      Loads
		member int
		xi     float64
		down   float64 // deflection there
		moment float64 // its size there, 0 if not asked
	}{
		{"B1 simple, middle load (7)", beam(third, 0, 72, 144), at(1, 50), 0, 1, 1.00368, 1800},
		{"B2 simple, uniform (1)", beam(simple, 0, 144), uniform(tubeWeight, 0), 0, 0.5, 0.141551, 203.09},
		{"B3 simple, uniform, longer", beam(simple, 0, 240), uniform(tubeWeight, 0), 0, 0.5, 1.09221, 564.13},
		{"B4 cantilever, end load (22)", beam(map[int][6]bool{0: clamped}, 0, 48), at(1, 20), 0, 1, 0.237909, 0},
		{"B5 cantilever, uniform (19)", beam(map[int][6]bool{0: clamped}, 0, 48), uniform(0.1, 0), 0, 1, 0.021412, 0},
		{"B6 fixed, uniform (15), middle", beam(fixedBoth, 0, 144), uniform(0.1, 0), 0, 0.5, 0.0361324, 0.1 * 144 * 144 / 24},
		{"B6 fixed, uniform (15), end", beam(fixedBoth, 0, 144), uniform(0.1, 0), 0, 0, 0, 172.8},
		{"B7 fixed, middle load (16)", beam(map[int][6]bool{0: clamped, 2: clamped}, 0, 72, 144), at(1, 50), 0, 1, 0.250920, 900},
		{"B8 propped, uniform (12), end", beam(map[int][6]bool{0: clamped, 1: roller}, 0, 100), uniform(1, 0), 0, 0, 0, 1250},
	} {
		s := small(t, c.p, c.l).Along(c.member, c.xi)
		near(t, c.name+" deflection", -s.At.Z, c.down, 2e-5, 1e-12) // the numbers are printed to five or six digits
		if c.moment != 0 {
			near(t, c.name+" moment", math.Abs(s.My), c.moment, 3e-5, 0)
		}
	}
}

// The same cases against the formulas themselves, where the printed digits do not bound the comparison.
func TestBeamFormulas(t *testing.T) {
	section, material := tube()
	const l, w = 144.0, 0.078351
	simple := beamAlongX(section, material, 0, l).supported(map[int][6]bool{0: hinge, 1: roller})
	s := small(t, simple, uniform(w, 0)).Along(0, 0.5)
	near(t, "5wL⁴/384EI", -s.At.Z, 5*w*math.Pow(l, 4)/(384*tubeEI), 1e-11, 0)
	near(t, "wL²/8", math.Abs(s.My), w*l*l/8, 1e-11, 0)

	// Triangle from zero to w: largest moment wL²/(9√3) at L/√3 (AISC Table 3-23, case 2).
	tri := small(t, simple, Loads{Member: []MemberLoad{{0, r3.Vec{}, r3.Vec{Z: -w}}}})
	worst := tri.Worst(0)
	near(t, "triangle moment", math.Abs(worst.My), w*l*l/(9*math.Sqrt(3)), 1e-11, 0)
	near(t, "triangle place", worst.Xi, 1/math.Sqrt(3), 1e-6, 0)
	near(t, "triangle deflection at 0.5193 L", -tri.Along(0, 0.5193).At.Z, 0.01304*(w*l/2)*math.Pow(l, 3)/tubeEI, 1e-3, 0)

	// Propped cantilever: 3/8 and 5/8 of the load, largest deflection wL⁴/185EI at 0.5785 L from the clamp.
	propped := small(t, beamAlongX(section, material, 0, l).supported(map[int][6]bool{0: clamped, 1: roller}), uniform(w, 0))
	near(t, "5/8", propped.Reaction[0].Force.Z, 5*w*l/8, 1e-11, 0)
	near(t, "3/8", propped.Reaction[1].Force.Z, 3*w*l/8, 1e-11, 0)
	near(t, "wL⁴/185EI", -propped.Along(0, 0.5785).At.Z, w*math.Pow(l, 4)/(185*tubeEI), 2e-3, 0)

	// Two and three equal spans (cases 29 and 36 to 39).
	two := small(t, beamAlongX(section, material, 0, l, 2*l).supported(map[int][6]bool{0: hinge, 1: roller, 2: roller}), uniform(w, 0, 1))
	three := small(t, beamAlongX(section, material, 0, l, 2*l, 3*l).supported(map[int][6]bool{0: hinge, 1: roller, 2: roller, 3: roller}), uniform(w, 0, 1, 2))
	for k, share := range []float64{0.375, 1.25, 0.375} {
		near(t, "two spans", two.Reaction[k].Force.Z, share*w*l, 1e-10, 0)
	}
	for k, share := range []float64{0.4, 1.1, 1.1, 0.4} {
		near(t, "three spans", three.Reaction[k].Force.Z, share*w*l, 1e-10, 0)
	}
	near(t, "over the middle support", math.Abs(two.Along(0, 1).My), w*l*l/8, 1e-10, 0)
	near(t, "over an inner support", math.Abs(three.Along(1, 0).My), w*l*l/10, 1e-10, 0)
}

// B11: a beam with both overhangs loaded (Timoshenko, Strength of Materials I, p. 98, problem 4, read): up 0.182 in at
// the middle, 11 400 psi. The closed form is (w·a²/2)·l²/8EI.
func TestOverhangs(t *testing.T) {
	const l, a, w, h, inertia = 240.0, 120.0, 10000.0 / 12, 30.0, 7892.0
	section := Section{Area: 50, InertiaY: inertia, InertiaZ: inertia, Torsion: 1, ModulusY: inertia / (h / 2), ModulusZ: inertia / (h / 2)}
	p := beamAlongX(section, Material{Young: 30e6, Shear: 12e6}, 0, a, a+l, l+2*a).supported(map[int][6]bool{1: hinge, 2: roller})
	r := small(t, p, uniform(w, 0, 2))
	near(t, "middle", r.Along(1, 0.5).At.Z, 0.182, 3e-3, 0)
	near(t, "middle, closed form", r.Along(1, 0.5).At.Z, w*a*a/2*l*l/(8*30e6*inertia), 1e-10, 0)
	near(t, "stress", r.Worst(1).Stress, 11400, 3e-3, 0)
}

// B12: a deep simply supported beam with shear flexibility (AFNOR SSLL02/89, inputs read): 5pl⁴/384EI + pl²/8GA_s =
// 1.25926 mm, 0.99621 mm of it from bending.
func TestDeepBeam(t *testing.T) {
	section := Section{Area: 31e-4, InertiaY: 2810e-8, InertiaZ: 2810e-8, Torsion: 1e-8}
	material := Material{Young: 2e11, Shear: 2e11 / 2.6}
	fixed := map[int][6]bool{0: hinge, 2: roller}
	p := beamAlongX(section, material, 0, 0.72, 1.44).supported(fixed)
	near(t, "bending", -small(t, p, uniform(1e5, 0, 1)).Displacement[1].Move.Z, 0.99621e-3, 1e-5, 0)
	section.ShearAreaY, section.ShearAreaZ = section.Area/2.42, section.Area/2.42
	p = beamAlongX(section, material, 0, 0.72, 1.44).supported(fixed)
	near(t, "with shear", -small(t, p, uniform(1e5, 0, 1)).Displacement[1].Move.Z, 1.25926e-3, 1e-5, 0)
	// One member in place of two: the deflection between the nodes must say the same.
	p = beamAlongX(section, material, 0, 1.44).supported(map[int][6]bool{0: hinge, 1: roller})
	near(t, "one member", -small(t, p, uniform(1e5, 0)).Along(0, 0.5).At.Z, 1.25926e-3, 1e-5, 0)
}

// B13: torques 5 and 10 at 36 and 132 of a bar of 168 with fixed ends: T·b/L gives 6.0714 and 8.9286. B14: a tube twisted by
// 100 over 144 turns by TL/GJ = 0.0061955 rad, shear 153.3 psi.
func TestTorsion(t *testing.T) {
	section, material := tube()
	p := beamAlongX(section, material, 0, 36, 132, 168).supported(map[int][6]bool{0: clamped, 3: clamped})
	r := small(t, p, Loads{Nodal: []NodalLoad{{Node: 1, Moment: r3.Vec{X: 5}}, {Node: 2, Moment: r3.Vec{X: 10}}}})
	near(t, "left", r.Reaction[0].Moment.X, -6.0714, 1e-5, 0)
	near(t, "right", r.Reaction[1].Moment.X, -8.9286, 1e-5, 0)

	p = beamAlongX(section, material, 0, 144).supported(map[int][6]bool{0: clamped})
	r = small(t, p, Loads{Nodal: []NodalLoad{{Node: 1, Moment: r3.Vec{X: 100}}}})
	near(t, "turn", r.Displacement[1].Turn.X, 0.0061955, 1e-5, 0)
	near(t, "shear stress", r.Along(0, 0.3).T*0.95/0.6198, 153.3, 5e-4, 0)
}

// B15: three spans of 20 ft under 2 k/ft with supports settled by 5/8, 1-1/2 and 3/4 in (Kassimali, Structural Analysis, 3rd
// edition, example 13.14, read; the book rounds on the way, so 7.6 %).
func TestSettlement(t *testing.T) {
	section := Section{Area: 100, InertiaY: 7800, InertiaZ: 7800, Torsion: 1}
	p := beamAlongX(section, Material{Young: 29000, Shear: 11000}, 0, 240, 480, 720).supported(map[int][6]bool{0: hinge, 1: roller, 2: roller, 3: roller})
	for k, down := range []float64{0, 0.625, 1.5, 0.75} {
		p.Supports[k].Moved[2] = -down
	}
	r := small(t, p, uniform(2.0/12, 0, 1, 2))
	for k, want := range []float64{-1.098, 122.373, -61.451, 60.176} {
		near(t, "reaction", r.Reaction[k].Force.Z, want, 0.076, 0)
	}
	s := rest(t, &p, uniform(2.0/12, 0, 1, 2), Options{})
	for k := range r.Reaction {
		near(t, "with large rotations", s.Reaction[k].Force.Z, r.Reaction[k].Force.Z, 2e-2, 0.5)
	}
}

// B16: two bars of 15 ft at 30° under 5000 lb: 10 000 psi, 0.12 in (Timoshenko, Strength of Materials I, p. 10, problem 2,
// inputs read). B17: a bar between walls, 500 and 1000 lb at 0.4 and 0.7 of its length: 900 and 600 lb (p. 26, problem 10,
// read).
func TestBars(t *testing.T) {
	bar := Section{Area: 0.5}
	material := Material{Young: 30e6}
	x := 180 * math.Cos(math.Pi/6)
	p := Problem{
		Nodes: []Node{{At: r3.Vec{X: -x, Z: 90}}, {At: r3.Vec{}}, {At: r3.Vec{X: x, Z: 90}}},
		Members: []Member{
			{I: 0, J: 1, Section: bar, Material: material, EndI: Pinned(), EndJ: Pinned()},
			{I: 1, J: 2, Section: bar, Material: material, EndI: Pinned(), EndJ: Pinned()},
		},
		Supports: []Support{{Node: 0, Fixed: clamped}, {Node: 2, Fixed: clamped}, {Node: 1, Fixed: [6]bool{false, true, false, true, true, true}}},
	}
	r := small(t, p, at(1, 5000))
	near(t, "stress", r.Along(0, 0.5).N/0.5, 10000, 1e-10, 0)
	near(t, "drop", -r.Displacement[1].Move.Z, 0.12, 1e-10, 0)

	section, material := tube()
	p = beamAlongX(section, material, 0, 4, 7, 10).supported(map[int][6]bool{0: clamped, 3: clamped})
	r = small(t, p, Loads{Nodal: []NodalLoad{{Node: 1, Force: r3.Vec{X: -500}}, {Node: 2, Force: r3.Vec{X: -1000}}}})
	near(t, "wall", r.Reaction[0].Force.X, 600, 1e-10, 0)
	near(t, "other wall", r.Reaction[1].Force.X, 900, 1e-10, 0)
}

// F17: a member between clamps with both hinges about its bending axis: wL²/8 = 900 (statics), no moment at the ends; with
// one hinge it is the propped cantilever.
func TestHingedEnds(t *testing.T) {
	section, material := tube()
	p := beamAlongX(section, material, 0, 120).supported(map[int][6]bool{0: clamped, 1: clamped})
	p.Members[0].EndI.Free[1], p.Members[0].EndJ.Free[1] = true, true
	r := small(t, p, uniform(0.5, 0))
	near(t, "middle", math.Abs(r.Worst(0).My), 900, 1e-10, 0)
	near(t, "end", r.Along(0, 0).My, 0, 0, 1e-9)
	near(t, "deflection", -r.Along(0, 0.5).At.Z, 5*0.5*math.Pow(120, 4)/(384*tubeEI), 1e-10, 0)
	p.Members[0].EndJ.Free[1] = false
	r = small(t, p, uniform(0.5, 0))
	near(t, "propped end", math.Abs(r.Along(0, 1).My), 0.5*120*120/8, 1e-10, 0)
	near(t, "propped reaction", r.Reaction[0].Force.Z, 3.0/8*0.5*120, 1e-10, 0)
	// Sprung ends run from hinged to clamped: M = wL²/12 · 1/(1+2EI/(kL)) at each end (slope deflection).
	k := 3000.0
	p.Members[0].EndI = End{Spring: [3]float64{0, k, 0}}
	p.Members[0].EndJ = End{Spring: [3]float64{0, k, 0}}
	r = small(t, p, uniform(0.5, 0))
	near(t, "sprung end", math.Abs(r.Along(0, 0).My), 0.5*120*120/12/(1+2*tubeEI/(k*120)), 1e-10, 0)
}

// F18: a beam at 45° with 5 kip at both thirds, times 1.4: each vertical reaction is 7.0 (statics).
func TestSlopedBeam(t *testing.T) {
	section, material := tube()
	p := chain(r3.Vec{}, r3.Vec{X: 100, Z: 100}, 3, section, material)
	p = p.supported(map[int][6]bool{0: {true, true, true, true, false, true}, 3: {false, true, true}})
	r := small(t, p, Loads{Nodal: []NodalLoad{{Node: 1, Force: r3.Vec{Z: -7}}, {Node: 2, Force: r3.Vec{Z: -7}}}})
	near(t, "left", r.Reaction[0].Force.Z, 7, 1e-10, 0)
	near(t, "right", r.Reaction[1].Force.Z, 7, 1e-10, 0)
}
