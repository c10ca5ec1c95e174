package kit

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"softloft/quantity"
)

func pointer[T any](v T) *T { return &v }

// Each entry is right but for the one value that makes the fault.
func TestFaults(t *testing.T) {
	alloy := Alloy{Young: 69e9, Poisson: 0.33, Density: 2700}
	with := func(change func(*Alloy)) Kit {
		a := alloy
		change(&a)
		return Kit{Alloy: map[string]Alloy{"x": a}}
	}
	tube := func(tube Tube) Kit {
		return Kit{Alloy: map[string]Alloy{"A": alloy}, Tube: map[string]Tube{"x": tube}}
	}
	cloth := func(c Cloth) Kit { return Kit{Cloth: map[string]Cloth{"x": c}} }
	crate := func(c Crate) Kit { return Kit{Crate: map[string]Crate{"x": c}} }
	wrap := func(w Wrap) Kit { return Kit{Wrap: map[string]Wrap{"x": w}} }
	lamp := func(change func(*Lamp)) Kit {
		l := Lamp{PowerFactor: 1, Size: [2]quantity.Length{0.6, 0.3}}
		change(&l)
		return Kit{Lamp: map[string]Lamp{"x": l}}
	}
	rope := func(r Rope) Kit { return Kit{Rope: map[string]Rope{"x": r}} }
	pulley := func(p Pulley) Kit { return Kit{Pulley: map[string]Pulley{"x": p}} }
	stand := func(change func(*Stand)) Kit {
		s := Stand{Base: 1.4, Legs: 3, Rises: [2]quantity.Length{1.5, 4}}
		change(&s)
		return Kit{Stand: map[string]Stand{"x": s}}
	}
	shackle := func(h Hardware) Kit { return Kit{Shackle: map[string]Hardware{"x": h}} }
	four := [2]quantity.Length{0.1, 0.1}

	for _, row := range []struct {
		own       Kit
		key, says string // what the only fault is at and says; "" for none
	}{
		{with(func(a *Alloy) {}), "", ""},
		{with(func(a *Alloy) { a.Young = 0 }), "E", "over 0 is due"},
		{with(func(a *Alloy) { a.Young = -1 }), "E", "one over 0 is due"},
		{with(func(a *Alloy) { a.Young = 1e30 }), "E", noRigHas},
		{with(func(a *Alloy) { a.Poisson = 0.51 }), "poisson", "ratio of 0.51"},
		{with(func(a *Alloy) { a.Poisson = -1 }), "poisson", "ratio of -1"},
		{with(func(a *Alloy) { a.Density = 0 }), "", ""},
		{with(func(a *Alloy) { a.Density = -1 }), "density", "0 or more is due"},
		{with(func(a *Alloy) { a.Yield = pointer(quantity.Pressure(0)) }), "yield", "over 0 is due"},
		{with(func(a *Alloy) {
			a.Yield, a.WeldedYield = pointer(quantity.Pressure(1e8)), pointer(quantity.Pressure(2e8))
		}), "welded_yield", "more than away from it"},
		{tube(Tube{Outer: 0.04, Wall: 0.004, Alloy: "A"}), "", ""},
		{tube(Tube{Outer: 0.04, Wall: 0.02, Alloy: "A"}), "wall", "leaves no bore"},
		{tube(Tube{Outer: 0, Wall: 0.02, Alloy: "A"}), "outer", "over 0 is due"},
		{tube(Tube{Outer: 0.04, Wall: 0, Alloy: "A"}), "wall", "over 0 is due"},
		{tube(Tube{Outer: 0.04, Wall: 0.004, Alloy: "a"}), "alloy", `no such alloy "a"`},
		{tube(Tube{Outer: 0.04, Wall: 0.004, Alloy: "A", Mass: pointer(quantity.LineMass(-1))}), "mass", "0 or more is due"},
		{tube(Tube{Outer: 0.04, Wall: 0.004, Alloy: "A", Lengths: []quantity.Length{3, 0}}), "lengths[1]", "over 0 is due"},
		{cloth(Cloth{Through: 0.5, Diffuse: 0.3, Back: 0.2}), "", ""},
		{cloth(Cloth{Through: 0.5, Diffuse: 0.3, Back: 0.3}), "", "come to 1.1"},
		{cloth(Cloth{Through: 0.4, Forward: &Forward{Part: 0.5, Sigma: 0.3}, Back: 0.2}), "", "come to 1.1"},
		{cloth(Cloth{Through: -0.1}), "through", "a share of -0.1"},
		{cloth(Cloth{Diffuse: math.NaN()}), "diffuse", "a share of NaN"},
		{cloth(Cloth{Forward: &Forward{Part: 0.5, Sigma: 0}}), "forward.sigma", "a lobe of 0 deg"},
		{cloth(Cloth{Forward: &Forward{Part: 0.5, Sigma: math.Pi / 2}}), "forward.sigma", "a lobe of 90 deg"},
		{cloth(Cloth{Hem: -0.01}), "hem", "0 or more is due"},
		{cloth(Cloth{Stretch: pointer(quantity.LineForce(0))}), "stretch", "over 0 is due"},
		{crate(Crate{Cell: four, Depth: 0.1}), "", ""},
		{crate(Crate{Cell: four, Depth: 0}), "depth", "over 0 is due"},
		{crate(Crate{Cell: [2]quantity.Length{0.1, 0}, Depth: 0.1}), "cell[1]", "over 0 is due"},
		{crate(Crate{Cell: [2]quantity.Length{0.1, 0.2}, Depth: 0.1, Wall: 0.1}), "wall", "as thick as its cell"},
		{crate(Crate{Cell: four, Depth: 0.1, Reflectance: 1}), "reflectance", "a reflectance of 1"},
		{crate(Crate{Cell: four, Depth: 0.1, Mass: &CrateMass{PerArea: pointer(quantity.AreaMass(-1))}}), "mass", "0 or more is due"},
		{wrap(Wrap{Color: "gray"}), "color", `no such color "gray"`},
		{wrap(Wrap{Color: "white", Reflectance: pointer(1.2)}), "reflectance", "a reflectance of 1.2"},
		{lamp(func(l *Lamp) {}), "", ""},
		{lamp(func(l *Lamp) { l.Size[1] = 0 }), "size[1]", "over 0 is due"},
		{lamp(func(l *Lamp) { l.PowerFactor = 0 }), "power_factor", "a share of 0"},
		{lamp(func(l *Lamp) { l.PowerFactor = 1.1 }), "power_factor", "a share of 1.1"},
		{lamp(func(l *Lamp) { l.Lumens = pointer(quantity.Flux(-1)) }), "lumens", "0 or more is due"},
		{lamp(func(l *Lamp) { l.Lumens = pointer(quantity.Flux(0)) }), "", ""},
		{lamp(func(l *Lamp) {
			l.Spread = Spread{Beam: pointer(quantity.Angle(1)), Field: pointer(quantity.Angle(0.9))}
		}), "spread", "wider than the field"},
		{lamp(func(l *Lamp) {
			l.Spread = Spread{Beam: pointer(quantity.Angle(1)), Field: pointer(quantity.Angle(math.Pi))}
		}), "spread.field", "an angle of 180 deg"},
		{lamp(func(l *Lamp) { l.Control = "foot" }), "control", `no such control "foot"`},
		{lamp(func(l *Lamp) { l.Body = &[3]quantity.Length{0.6, 0.3, 0} }), "body[2]", "over 0 is due"},
		{lamp(func(l *Lamp) { l.CG = quantity.Length(math.Inf(1)) }), "cg", noRigHas},
		{rope(Rope{Kind: "hemp", Knot: pointer(0.5)}), "", ""},
		{rope(Rope{Kind: "manila", Knot: pointer(1.2)}), "knot", "a share of 1.2"},
		{rope(Rope{Kind: "wire rope"}), "kind", `no such kind "wire rope"`},
		{rope(Rope{Breaks: pointer(quantity.Force(0))}), "breaks", "over 0 is due"},
		{pulley(Pulley{Efficiency: pointer(0.0)}), "efficiency", "a share of 0"},
		{pulley(Pulley{Rated: pointer(quantity.Force(-5))}), "rated", "one over 0 is due"},
		{stand(func(s *Stand) {}), "", ""},
		{stand(func(s *Stand) { s.Legs = 2 }), "legs", "2 legs"},
		{stand(func(s *Stand) { s.Rises = [2]quantity.Length{4, 1.5} }), "rises", "over the highest"},
		{stand(func(s *Stand) { s.Rated = []Rating{{At: 2, Load: 500}, {At: 3, Load: 600}} }), "rated", "rises with the height"},
		{stand(func(s *Stand) { s.Rated = []Rating{{At: 2, Load: 500}, {At: 2, Load: 400}} }), "rated", "two limits"},
		{stand(func(s *Stand) { s.Rated = []Rating{{At: 3, Load: 400}, {At: 2, Load: 500}} }), "", ""},
		{shackle(Hardware{}), "", ""},
		{shackle(Hardware{Rated: pointer(quantity.Force(0))}), "rated", "leave the key out"},
		{shackle(Hardware{Mass: Weight{Each: pointer(quantity.Mass(-1))}}), "mass", "0 or more is due"},
		{shackle(Hardware{Slip: pointer(quantity.Force(-1))}), "slip", "one over 0 is due"},
		{Kit{Corner: map[string]Hardware{"x": {Fits: []string{"pipe-9"}}}}, "fits[0]", `no such tube "pipe-9"`},
		{Kit{Rope: map[string]Rope{" x": {}}}, "", "is no id"},
		{Kit{Rope: map[string]Rope{"": {}}}, "", "is no id"},
		{Kit{Shackle: map[string]Hardware{"x": {Entry: Entry{Source: Sources{Each: map[string]string{"ratd": "papers"}}}}}}, "source", `a source for "ratd"`},
	} {
		says := ""
		for _, f := range row.own.Check(row.own) {
			says += fmt.Sprintf("%s|%s; %s\n", f.Key, f.Problem, f.Hint)
		}
		switch {
		case row.says == "" && says != "":
			t.Errorf("a fault where none is:\n%s", says)
		case row.says != "" && (strings.Count(says, "\n") != 1 || !strings.HasPrefix(says, row.key+"|") || !strings.Contains(says, row.says)):
			t.Errorf("want one fault at %q that says %q, got:\n%s", row.key, row.says, says)
		}
	}
}

func TestCheckLooksAtItsOwnEntriesAlone(t *testing.T) {
	base := Kit{Alloy: map[string]Alloy{"A": {Young: 1e9}}, Rope: map[string]Rope{"bad": {Knot: pointer(9.0)}}}
	own := Kit{Tube: map[string]Tube{"x": {Outer: 0.04, Wall: 0.004, Alloy: "A"}}}
	if faults := base.With(own).Check(own); len(faults) > 0 {
		t.Errorf("faults of another's entry: %v", faults)
	}
}

func TestOneIDForOneSuspender(t *testing.T) {
	base := Kit{Rope: map[string]Rope{"steel": {}}}
	own := Kit{Sling: map[string]Hardware{"steel": {}}}
	faults := base.With(own).Check(own)
	if len(faults) != 1 || faults[0].Kind != "sling" || !strings.Contains(faults[0].Problem, "is a rope as well") {
		t.Errorf("got %v", faults)
	}
}
