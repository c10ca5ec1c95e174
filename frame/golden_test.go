package frame

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// table reads one of the golden files: a header line, then numbers and tags.
type table struct {
	column map[string]int
	rows   [][]string
}

func readTable(t testing.TB, name string) table {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	tab := table{map[string]int{}, all[1:]}
	for k, h := range all[0] {
		tab.column[h] = k
	}
	return tab
}

func (tab table) number(t testing.TB, row int, name string) float64 {
	t.Helper()
	c, ok := tab.column[name]
	if !ok {
		t.Fatalf("no column %s", name)
	}
	v, err := strconv.ParseFloat(tab.rows[row][c], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// goldenFrame is one of the frames in testdata with its expected answer.
type goldenFrame struct {
	Problem
	Loads
	nodes, members, lines table
}

// pipe is the tube of the golden frames.
func pipe() (Section, Material) {
	return RoundTube(0.04216, 0.00356), Material{Young: 69e9, Shear: 69e9 / (2 * 1.33), Density: 2700}
}

func readGolden(t testing.TB, name string) *goldenFrame {
	t.Helper()
	g := &goldenFrame{
		nodes:   readTable(t, "golden_"+name+"_nodes.csv"),
		members: readTable(t, "golden_"+name+"_members.csv"),
		lines:   readTable(t, "golden_"+name+"_lines.csv"),
	}
	vec := func(tab table, row int, x, y, z string) r3.Vec {
		return r3.Vec{X: tab.number(t, row, x), Y: tab.number(t, row, y), Z: tab.number(t, row, z)}
	}
	for k := range g.nodes.rows {
		g.Nodes = append(g.Nodes, Node{At: vec(g.nodes, k, "x_m", "y_m", "z_m")})
		g.Nodal = append(g.Nodal, NodalLoad{k, vec(g.nodes, k, "Fx_N", "Fy_N", "Fz_N"), vec(g.nodes, k, "Mx_Nm", "My_Nm", "Mz_Nm")})
	}
	section, material := pipe()
	for k := range g.members.rows {
		i, j := int(g.members.number(t, k, "i")), int(g.members.number(t, k, "j"))
		g.Members = append(g.Members, Member{I: i, J: j, Section: section, Material: material})
		load := MemberLoad{k, r3.Vec{Z: g.members.number(t, k, "w_i_Npm")}, r3.Vec{Z: g.members.number(t, k, "w_j_Npm")}}
		g.Member = append(g.Member, load)
		// The file's node loads hold the members' consistent loads as well: take them out again.
		g.takeOut(i, j, load)
	}
	for k := range g.lines.rows {
		g.Cables = append(g.Cables, Cable{
			I: int(g.lines.number(t, k, "node")), J: Anchored, Anchor: vec(g.lines, k, "ax", "ay", "az"),
			EA: g.lines.number(t, k, "EA_N"), Unstretched: g.lines.number(t, k, "L0_m"),
		})
	}
	return g
}

// takeOut removes a member's fixed-end forces and moments from its nodes' loads: L/20·(7w1+3w2), L²/60·(3w1+2w2).
func (g *goldenFrame) takeOut(i, j int, m MemberLoad) {
	d := r3.Sub(g.Nodes[j].At, g.Nodes[i].At)
	l := r3.Norm(d)
	e := r3.Scale(1/l, d)
	force := func(a, b r3.Vec) r3.Vec { return r3.Scale(l/20, r3.Add(r3.Scale(7, a), r3.Scale(3, b))) }
	moment := func(a, b r3.Vec) r3.Vec {
		return r3.Scale(l*l/60, r3.Cross(e, r3.Add(r3.Scale(3, a), r3.Scale(2, b))))
	}
	g.Nodal[i].Force = r3.Sub(g.Nodal[i].Force, force(m.AtI, m.AtJ))
	g.Nodal[j].Force = r3.Sub(g.Nodal[j].Force, force(m.AtJ, m.AtI))
	g.Nodal[i].Moment = r3.Sub(g.Nodal[i].Moment, moment(m.AtI, m.AtJ))
	g.Nodal[j].Moment = r3.Add(g.Nodal[j].Moment, moment(m.AtJ, m.AtI))
}

// near fails where got is further from want than rel of want or abs.
func near(t *testing.T, what string, got, want, rel, abs float64) {
	t.Helper()
	if !(math.Abs(got-want) <= math.Max(rel*math.Abs(want), abs)) {
		t.Errorf("%s: got %.9g, want %.9g (%.2e off)", what, got, want, (got-want)/want)
	}
}

func TestGoldenLinear(t *testing.T) {
	for _, name := range []string{"L1", "L2A", "L2A_moved", "L2B"} {
		t.Run(name, func(t *testing.T) {
			g := readGolden(t, name)
			g.Supports = []Support{
				{Node: 0, Fixed: [6]bool{true, true}},
				{Node: g.Cables[3].I, Fixed: [6]bool{false, true}},
			}
			f, err := g.Linear()
			if err != nil {
				t.Fatal(err)
			}
			r, err := f.Solve(g.Loads)
			if err != nil {
				t.Fatal(err)
			}
			for k, d := range r.Displacement {
				near(t, "uz", d.Move.Z, g.nodes.number(t, k, "uz_m"), 1e-6, 1e-11)
				near(t, "rx", d.Turn.X, g.nodes.number(t, k, "rx_rad"), 1e-6, 1e-11)
				near(t, "ry", d.Turn.Y, g.nodes.number(t, k, "ry_rad"), 1e-6, 1e-11)
			}
			for k, c := range r.Cables {
				near(t, "tension", c.Tension, g.lines.number(t, k, "tension_N"), 1e-6, 0)
			}
			for k := range r.spans {
				a, b, w := r.Along(k, 0), r.Along(k, 1), r.Worst(k)
				near(t, "torsion", math.Abs(a.T), math.Abs(g.members.number(t, k, "torsion_Nm")), 1e-6, 1e-7)
				near(t, "M i", math.Hypot(a.My, a.Mz), math.Abs(g.members.number(t, k, "M_i_Nm")), 1e-6, 1e-7)
				near(t, "M j", math.Hypot(b.My, b.Mz), math.Abs(g.members.number(t, k, "M_j_Nm")), 1e-6, 1e-7)
				// The reference looked for its largest moment at a row of places; the true one may lie between them.
				top := r.Along(k, g.members.number(t, k, "x_at_Mmax_m")/r.spans[k].length)
				near(t, "M max", math.Hypot(top.My, top.Mz), g.members.number(t, k, "M_max_Nm"), 1e-6, 0)
				near(t, "stress", top.Stress, g.members.number(t, k, "sigma_max_Pa"), 1e-6, 0)
				if w.Stress < top.Stress*(1-1e-12) || w.Stress > top.Stress*1.0001 {
					t.Errorf("member %d: worst %g Pa at %g, but %g Pa at %g", k, w.Stress, w.Xi, top.Stress, top.Xi)
				}
			}
		})
	}
}

func TestGoldenEquilibrium(t *testing.T) {
	for _, name := range []string{"L1", "L2A", "L2A_moved", "L2B"} {
		t.Run(name, func(t *testing.T) {
			g := readGolden(t, name)
			s, err := g.Equilibrium(g.Loads, Options{})
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%d iterations, residual %.2g N, out of balance %.2g N, stable %v, neutral %v", s.Iterations, s.Residual, s.OutOfBalance(g.Loads), s.Stable, s.Neutral)
			for k, c := range s.Cables {
				near(t, "tension", c.Tension, g.lines.number(t, k, "tension_N"), 2e-4, 0)
			}
			for k := range s.spans {
				near(t, "stress", s.Worst(k).Stress, g.members.number(t, k, "sigma_max_Pa"), 1e-2, 0)
			}
		})
	}
}
