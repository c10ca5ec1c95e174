package light

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/photometry"
)

// table reads a reference table: a line that names its source, a header, rows.
func table(t testing.TB, name string) (column func(row []string, name string) float64, rows [][]string) {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	all, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	index := map[string]int{}
	for i, h := range all[0] {
		index[h] = i
	}
	column = func(row []string, name string) float64 {
		i, ok := index[name]
		if !ok {
			t.Fatalf("no column %s", name)
		}
		x, err := strconv.ParseFloat(row[i], 64)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	return column, all[1:]
}

// downward is a lamp that aims straight down.
func downward(x, y, z, a, b, lumens float64) Lamp {
	return Lamp{Centre: r3.Vec{X: x, Y: y, Z: z}, Axis: r3.Vec{Z: -1}, U: r3.Vec{X: 1}, V: r3.Vec{Y: -1},
		Size: [2]float64{a, b}, Lumens: lumens, Distribution: photometry.Lambertian{}}
}

const width, trim = 3.658, 4.572 // of the reference scenes, m

// panelScene is the reference panel as an opening in the cloth plane.
func panelScene() Scene {
	return Scene{Size: [2]float64{width, width}, Clear: [2]float64{width, width}, Roof: Roof{Open: true},
		Lamps: []Lamp{downward(0, 0, 0, width, width, 1000*width*width)}}
}

// boxScene is the reference box: black sides, open roof, four lamps, a cloth.
func boxScene() Scene {
	black := Side{Present: true, Inner: 0.04, Outer: 0.04}
	s := Scene{Size: [2]float64{width, width}, Clear: [2]float64{width, width}, Depth: 0.61,
		Sides: [4]Side{black, black, black, black}, Roof: Roof{Open: true},
		Cloths: []Cloth{{Diffuse: 0.18, Back: 0.55}}}
	for _, x := range []float64{-0.9, 0.9} {
		for _, y := range []float64{-0.9, 0.9} {
			s.Lamps = append(s.Lamps, downward(x, y, 0.9, 0.3, 0.3, 20000))
		}
	}
	return s
}

func prepared(t testing.TB, s Scene) *Engine {
	t.Helper()
	e, err := Prepare(s)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

var (
	up     = r3.Vec{Z: 1}
	alongX = r3.Vec{X: 1}
)

// below is a reference point, whose z is over the floor.
func below(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z - trim} }

func TestPanelAgainstClosedForm(t *testing.T) {
	e := prepared(t, panelScene())
	col, rows := table(t, "panel_closed.csv")
	h, v := spread{reference: closedForm}, spread{reference: closedForm}
	for _, r := range rows {
		p := below(col(r, "x_m"), col(r, "y_m"), col(r, "z_m"))
		h.add(e.At(p, up, Flat), col(r, "E_horizontal_lx"))
		v.add(e.At(p, alongX, Flat), col(r, "E_vertical_plus_x_lx"))
	}
	h.check(t, "panel, facing up", 1e-6, 1e-6)
	v.check(t, "panel, facing +x", 1e-6, 1e-6)
}

func TestBlackCrate(t *testing.T) {
	s := panelScene()
	s.Crate = &Crate{CellX: 0.1, CellY: 0.1, Depth: 0.1}
	e := prepared(t, s)
	col, rows := table(t, "crate_black.csv")
	hf, vf := spread{reference: "the thin-wall formula"}, spread{reference: "the thin-wall formula"}
	hm, vm := spread{reference: cellMesh}, spread{reference: cellMesh}
	for _, r := range rows {
		p := below(col(r, "x_m"), col(r, "y_m"), col(r, "z_m"))
		h, v := e.At(p, up, Flat), e.At(p, alongX, Flat)
		hf.add(h, col(r, "E_h_thinwall_formula_lx"))
		vf.add(v, col(r, "E_v_thinwall_formula_lx"))
		hm.add(h, col(r, "E_h_exact_mesh_lx"))
		vm.add(v, col(r, "E_v_exact_mesh_lx"))
	}
	hf.check(t, "black crate, facing up, against the formula", 1e-5, 1e-5)
	vf.check(t, "black crate, facing +x, against the formula", 1e-5, 1e-5)
	hm.check(t, "black crate, facing up, against the mesh", 1e-2, 1.155e-2)
	vm.check(t, "black crate, facing +x, against the mesh", 1e-2, 2.3e-2)
}

func TestBoxAgainstReference(t *testing.T) {
	e := prepared(t, boxScene())
	cloth := e.Cloth()
	col, rows := table(t, "box_black_cloth.csv")
	w := new(sight)
	direct, solved, traced := spread{reference: closedForm}, spread{reference: radiosity}, spread{reference: tracer}
	for i, r := range rows {
		x, y := cloth.X[i/9], cloth.Y[i%9]
		rel(t, "cloth grid x", x, col(r, "x_m"), 1e-5)
		rel(t, "cloth grid y", y, col(r, "y_m"), 1e-5)
		direct.add(e.lampLight(w, station{r3.Vec{X: x, Y: y}, 0, true}, meter{Flat, up}), col(r, "E_direct_exact_lx"))
		lux := cloth.Lux[i%9][i/9]
		solved.add(lux, col(r, "E_cloth_radiosity_lx"))
		traced.add(lux, col(r, "E_cloth_tracer_lx"))
	}
	direct.check(t, "cloth, direct", 1e-5, 1e-5)
	solved.check(t, "cloth, against radiosity", 1e-2, 3e-2)
	traced.check(t, "cloth, against the path tracer", 1e-2, 3e-2)

	col, rows = table(t, "box_black_floor.csv")
	within := spread{reference: tracer + " and " + radiosity}
	got := map[string]*spread{}
	facing := map[string]r3.Vec{"h": up, "v": alongX}
	for _, r := range rows {
		p := below(col(r, "x_m"), col(r, "y_m"), col(r, "z_m"))
		lux := e.At(p, facing[r[1]], Flat)
		for _, c := range []string{"radiosity", "tracer", "walk", "second_walk"} {
			key := r[1] + " against " + c
			if got[key] == nil {
				got[key] = &spread{reference: map[string]string{"radiosity": radiosity, "tracer": tracer, "walk": "independent random walks", "second_walk": "other independent random walks"}[c]}
			}
			want := col(r, "E_"+c+"_lx")
			got[key].add(lux, want)
			if c == "radiosity" {
				within.add(lux, want)
			} else {
				within.beyond(lux, want, col(r, "SE_"+c+"_lx"))
			}
		}
	}
	within.check(t, "below, beyond two standard errors", 1e-2, 3e-2)
	for key, s := range got {
		s.check(t, "below, "+key, 1e-2, math.Inf(1)) // the worst point stands above, less the reference's own error
	}
	// The same reference: lumens that reach the cloth directly, the walls, and
	// pass over the walls; that arrive on the cloth in all, and leave below.
	flux := e.Flux()
	lumens := spread{reference: radiosity}
	lumens.rel(t, "cloth direct lm", flux.ToFacesLm[floor], 57779.3, 1e-4)
	lumens.rel(t, "walls direct lm", flux.ToFacesLm[wall], 18605.9, 1e-4)
	lumens.rel(t, "over the walls lm", flux.PastLm, 3614.8, 1e-3)
	lumens.rel(t, "cloth lm", cloth.MeanLux*width*width, 58206, 1e-4)
	lumens.rel(t, "out lm", flux.OutLm, 10477, 1e-4)
	lumens.told(t, "lumens on cloth and walls, past, and out")
	balance(t, e)
}

// balance holds the tally: in = out + absorbed + lost.
func balance(t *testing.T, e *Engine) {
	t.Helper()
	f := e.Flux()
	rel(t, "tally", f.OutLm+f.AbsorbedLm+f.LostLm, f.LampsLm, 1e-4)
	if f.ClosureBeforeCorrection > 1e-10 {
		t.Errorf("closure %g", f.ClosureBeforeCorrection)
	}
	t.Logf("tally %+v, off by %.3g", f, (f.OutLm+f.AbsorbedLm+f.LostLm)/f.LampsLm-1)
}
