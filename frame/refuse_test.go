package frame

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// What hangs without a brace is named, not solved: the linear frame on vertical lines is free to sway.
func TestMechanismIsNamed(t *testing.T) {
	p := rigidSquare(60e3)
	p.Nodes[2].Name, p.Nodes[3].Name = "south-west", "south-east"
	for k := range p.Nodes[:2] {
		p.Nodes[k].Name = "north"
	}
	_, err := p.Linear()
	var mech *Mechanism
	if !errors.As(err, &mech) {
		t.Fatalf("a frame on vertical lines is free to sway, got %v", err)
	}
	if mech.Node == "" || !strings.HasPrefix(mech.Direction, "moves along") && !strings.HasPrefix(mech.Direction, "turns about") || !(math.Abs(mech.Ratio) < 1e-9) {
		t.Errorf("%+v", mech)
	}

	// A beam on two ball supports rolls about its own axis, and only that.
	section, material := tube()
	q := beamAlongX(section, material, 0, 100).supported(map[int][6]bool{0: {true, true, true}, 1: roller})
	q.Nodes[1].Name = "far end"
	_, err = q.Linear()
	if !errors.As(err, &mech) || mech.Direction != "turns about x" {
		t.Errorf("want a free turn about x, got %v", err)
	}

	// A hinge in the middle of a simply supported beam.
	q = beamAlongX(section, material, 0, 50, 100).supported(map[int][6]bool{0: hinge, 2: roller})
	q.Members[0].EndJ.Free[1] = true
	_, err = q.Linear()
	if !errors.As(err, &mech) {
		t.Errorf("want a mechanism, got %v", err)
	}

	// A moment on a node that nothing holds against turning.
	bars := Problem{Nodes: []Node{{}}, Cables: []Cable{
		{I: 0, J: Anchored, Anchor: r3.Vec{X: 1, Z: 1}, EA: 1e3, Unstretched: 1.4}, {I: 0, J: Anchored, Anchor: r3.Vec{X: -1, Z: 1}, EA: 1e3, Unstretched: 1.4},
		{I: 0, J: Anchored, Anchor: r3.Vec{Y: 1, Z: 1}, EA: 1e3, Unstretched: 1.4},
	}}
	f, err := bars.Linear()
	if err != nil {
		t.Fatal(err)
	}
	_, err = f.Solve(Loads{Nodal: []NodalLoad{{Node: 0, Moment: r3.Vec{X: 1}}}})
	if !errors.As(err, &mech) {
		t.Errorf("want a mechanism, got %v", err)
	}
}

func TestNothingCarries(t *testing.T) {
	p := rigidSquare(60e3)
	var falls *Falls
	if _, err := p.Equilibrium(above(100, 0), Options{Cut: []int{0, 1, 2, 3}}); !errors.As(err, &falls) {
		t.Errorf("all lines cut: %v", err)
	}
	// A pull upwards lifts the frame until its lines hold it from below.
	if _, err := p.Equilibrium(above(-100, 0), Options{}); err != nil {
		t.Errorf("an upward pull turns the frame over its lines: %v", err)
	}
	// A second frame beside it hangs on nothing.
	q := rigidSquare(60e3)
	q.Nodes = append(q.Nodes, Node{Name: "loose", At: r3.Vec{X: 9}})
	if _, err := q.Equilibrium(above(100, 0), Options{}); !errors.As(err, &falls) || falls.Node != "loose" {
		t.Errorf("a loose node: %v", err)
	}
	// A node that may slide down a frictionless wall falls without end.
	s := Problem{Nodes: []Node{{Name: "slider"}}, Supports: []Support{{Node: 0, Fixed: [6]bool{true, true}}}}
	if _, err := s.Equilibrium(at(0, 10), Options{}); !errors.As(err, &falls) {
		t.Errorf("a slider: %v", err)
	}
}

// One line, weight on it: the frame may turn about the vertical without cost, and that is told beside a good answer.
func TestNeutralTurnIsTold(t *testing.T) {
	p := rigidSquare(60e3)
	s := rest(t, &p, above(656.339, -0.5), Options{Cut: []int{1, 2, 3}})
	near(t, "tension", s.Cables[0].Tension, 656.339, 1e-9, 0)
	if len(s.Neutral) != 1 || !s.Stable {
		t.Errorf("want one neutral motion of a stable state, got %v, stable %v", s.Neutral, s.Stable)
	}
}

func TestRefusals(t *testing.T) {
	nan := math.NaN()
	good := func() Problem { return rigidSquare(60e3) }
	for name, spoil := range map[string]func(*Problem){
		"node NaN":            func(p *Problem) { p.Nodes[1].At.Y = nan },
		"member without end":  func(p *Problem) { p.Members[0].J = 17 },
		"member of no length": func(p *Problem) { p.Nodes[1].At = p.Nodes[0].At },
		"member of no area":   func(p *Problem) { p.Members[2].Area = 0 },
		"no bending":          func(p *Problem) { p.Members[2].InertiaZ = 0 },
		"no torsion":          func(p *Problem) { p.Members[2].Torsion = 0 },
		"NaN modulus":         func(p *Problem) { p.Members[2].Young = nan },
		"infinite spring":     func(p *Problem) { p.Members[2].EndI.Spring[1] = math.Inf(1) },
		"negative shear area": func(p *Problem) { p.Members[2].ShearAreaY = -1 },
		"cable of no length":  func(p *Problem) { p.Cables[0].Unstretched = 0 },
		"cable without EA":    func(p *Problem) { p.Cables[0].EA = nan },
		"cable to itself":     func(p *Problem) { p.Cables[0].J = 0 },
		"cable to nowhere":    func(p *Problem) { p.Cables[0].J = -2 },
		"anchor infinite":     func(p *Problem) { p.Cables[0].Anchor.X = math.Inf(1) },
		"support nowhere":     func(p *Problem) { p.Supports = []Support{{Node: 4}} },
		"support spring":      func(p *Problem) { p.Supports = []Support{{Node: 1, Spring: [6]float64{-1}}} },
		"empty":               func(p *Problem) { *p = Problem{} },
	} {
		p := good()
		spoil(&p)
		if _, err := p.Equilibrium(Loads{}, Options{}); err == nil {
			t.Errorf("%s: equilibrium must refuse", name)
		}
		if _, err := p.Linear(); err == nil {
			t.Errorf("%s: linear must refuse", name)
		}
	}
	for name, l := range map[string]Loads{
		"force NaN":    {Nodal: []NodalLoad{{Node: 0, Force: r3.Vec{X: nan}}}},
		"node":         {Nodal: []NodalLoad{{Node: 4}}},
		"arm":          {Offset: []OffsetLoad{{Node: -1}}},
		"shares":       {Rider: []RiderLoad{{Nodes: [4]int{0, 1, 2, 3}, Share: [4]float64{1, 1}}}},
		"flat rider":   {Rider: []RiderLoad{{Nodes: [4]int{0, 0, 0, 0}, Share: [4]float64{1}}}},
		"rider's node": {Rider: []RiderLoad{{Nodes: [4]int{0, 1, 2, 9}, Share: [4]float64{1}, Height: 1}}},
		"member":       {Member: []MemberLoad{{Member: 9}}},
		"member NaN":   {Member: []MemberLoad{{Member: 0, AtJ: r3.Vec{Z: nan}}}},
	} {
		p := good()
		if _, err := p.Equilibrium(l, Options{}); err == nil {
			t.Errorf("%s: must be refused", name)
		}
	}
	p := good()
	if _, err := p.Equilibrium(above(1, 0), Options{Start: &State{}}); err == nil {
		t.Error("a start of another frame must be refused")
	}
	if _, err := p.Equilibrium(above(1, 0), Options{Cut: []int{4}}); err == nil {
		t.Error("a cut of no cable must be refused")
	}
	s := rest(t, &p, above(1, 0), Options{})
	if st := s.Along(9, 0.5); !math.IsNaN(st.N) {
		t.Error("a member that does not exist has no force")
	}
	if st := s.Along(0, 1.5); !math.IsNaN(st.My) {
		t.Error("beyond a member's end there is no moment")
	}
}
