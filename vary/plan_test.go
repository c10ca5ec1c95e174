package vary

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"softloft/kit"
	"softloft/plan"
	"softloft/quantity"
)

// bare is a panel of 12 x 12 ft that is its own source: 20 000 lm, Lambertian, nothing
// around it.
const bare = `softloft: 1
derive: none
action: {area: {at: [0 ft, 0 ft], size: [1 in, 1 in], height: 0 ft}}
want: {exposure: {stop: T4, iso: 800, fps: 24, shutter: 180 deg}}
box: {size: [12 ft, 12 ft], trim: 12 ft, sides: none, cloth: []}
lamps:
  - {kit: panel, at: [0 ft, 0 ft], above: 0 ft}
kit:
  lamp: {panel: {mass: 0 kg, size: [12 ft, 12 ft], lumens: 20000 lm, spread: lambertian}}
  cloth:
    denser: {mass: 0.1 kg/m2, through: 0, diffuse: 0.3, back: 0.2}
    thinner: {mass: 0.1 kg/m2, through: 0, diffuse: 0.6, back: 0.2}
  crate: {cells: {cell: [4 in, 4 in], depth: 4 in, reflectance: 0, mass: 1 kg}}
`

func read(t testing.TB, text string) *plan.File {
	t.Helper()
	base, mistakes := kit.Standard()
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	file, mistakes := plan.Read("plan.yaml", []byte(text), base)
	if len(mistakes) > 0 {
		t.Fatal(mistakes)
	}
	return file
}

func over(t testing.TB, text, ask string, options Options) *Answer {
	t.Helper()
	file := read(t, text)
	parsed, err := Parse(ask, file)
	if err != nil {
		t.Fatal(err)
	}
	a, err := Of(file, parsed, options)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// TestDistance: stops below a panel of 12 x 12 ft that gives 20 000 lm, at ISO 800, 1/48 s
// and C = 250. Configuration factors: Siegel and Howell, Thermal Radiation Heat Transfer,
// 4th edition, p. 842 (the formula from memory, checked by quadrature); the stop from
// ISO 2720:1974.
func TestDistance(t *testing.T) {
	const exitance = 1494.987558 // lm/m2
	want := map[float64]float64{1: 0.97779149, 2: 0.91688173, 4: 0.73520258, 8: 0.41285009, 12: 0.2394564705, 16: 0.15096256, 32: 0.04276230}
	a := over(t, bare, "trim=1ft,2ft,4ft,8ft,12ft,16ft,32ft", Options{Workers: 2})
	if len(a.Rows) != len(want) {
		t.Fatalf("%d rows", len(a.Rows))
	}
	for _, row := range a.Rows {
		factor := want[math.Round(float64(row.Value)/float64(quantity.Foot))]
		stop := math.Sqrt(exitance * factor * 800 / 48 / 250)
		// The area is an inch wide, not a point: 1e-4 of its light at 1 ft.
		if math.Abs(float64(row.Stop)/stop-1) > 1e-4 {
			t.Errorf("at %s: T%.6f, want T%.6f", row.Text, float64(row.Stop), stop)
		}
	}
}

// TestDoubling: what a doubled distance costs, in stops; toward 2, as the inverse square
// has it. Sides of the square away and stops: from the same closed form.
func TestDoubling(t *testing.T) {
	for _, c := range []struct {
		ask  string
		lost float64
	}{
		{"trim=3ft,6ft", 0.584683}, {"trim=6ft,12ft", 1.210452}, {"trim=12ft,24ft", 1.704386}, {"trim=24ft,48ft", 1.914663}, {"trim=60ft,120ft", 1.985704},
	} {
		a := over(t, bare, c.ask, Options{})
		lost := 2 * math.Log2(float64(a.Rows[0].Stop)/float64(a.Rows[1].Stop))
		if math.Abs(lost-c.lost) > 1e-4 {
			t.Errorf("%s: lost %.6f stop, want %.6f", c.ask, lost, c.lost)
		}
	}
}

// TestCloth: a cloth that passes half as much costs one stop (by the definition of a
// stop). The opening touches the cloth, so nothing comes back.
func TestCloth(t *testing.T) {
	a := over(t, bare, "cloth=none,thinner,denser", Options{})
	for i, want := range []float64{-math.Log2(0.6), 1} {
		lost := 2 * math.Log2(float64(a.Rows[i].Stop)/float64(a.Rows[i+1].Stop))
		if math.Abs(lost-want) > 1e-3 {
			t.Errorf("from %s to %s: %.5f stop, want %.5f", a.Rows[i].Text, a.Rows[i+1].Text, lost, want)
		}
	}
	if len(a.Changes) > 0 {
		t.Errorf("words have no way between them: %v", a.Changes)
	}
}

// TestMonotone: the farther away, the less light; half the level is one stop less (by the
// definition of a stop).
func TestMonotone(t *testing.T) {
	a := over(t, bare, "trim=20ft..2ft/7", Options{Workers: 2})
	for i := 1; i < len(a.Rows); i++ {
		if !(a.Rows[i].Stop > a.Rows[i-1].Stop) {
			t.Errorf("T%v at %s, T%v at %s", a.Rows[i-1].Stop, a.Rows[i-1].Text, a.Rows[i].Stop, a.Rows[i].Text)
		}
	}
	a = over(t, bare, "level=25%,50%,100%", Options{})
	for i := 1; i < len(a.Rows); i++ {
		if gained := 2 * math.Log2(float64(a.Rows[i].Stop/a.Rows[i-1].Stop)); math.Abs(gained-1) > 1e-9 {
			t.Errorf("from %s to %s: %v stop", a.Rows[i-1].Text, a.Rows[i].Text, gained)
		}
	}
}

// TestChange: the panel gives T4.885246 at 12 ft (the closed form of TestDistance). With
// that asked for, it is over from there, whichever way one looks.
func TestChange(t *testing.T) {
	asked := strings.Replace(bare, "stop: T4,", "stop: T4.885246,", 1)
	for _, ask := range []string{"trim=8ft..17ft/4", "trim=17ft..8ft/4", "trim=17ft,8ft,14ft"} {
		a := over(t, asked, ask, Options{Workers: 2})
		found := false
		for _, c := range a.Changes {
			if c.Finding == "" || !strings.HasPrefix(c.Finding, "light.") {
				continue
			}
			low, high := math.Min(float64(c.From), float64(c.To)), math.Max(float64(c.From), float64(c.To))
			at := 12 * float64(quantity.Foot)
			found = low <= at*(1+1e-6) && high >= at*(1-1e-6) && high-low <= 0.01*at && c.Narrow
			if down := strings.HasPrefix(ask, "trim=17ft.."); (c.After == "over") == down {
				t.Errorf("%s: %+v", ask, c)
			}
		}
		if !found {
			t.Errorf("%s: the change at 12 ft is not among %+v", ask, a.Changes)
		}
	}
}

// TestKeep: with a longer skirt or a crate the cloth stays and the trim comes down, or the
// other way round where that is asked for.
func TestKeep(t *testing.T) {
	foot := float64(quantity.Foot)
	byCloth := strings.Replace(bare, "trim: 12 ft", "cloth_at: 12 ft", 1)
	for _, c := range []struct {
		plan, ask string
		keep      Keep
		trims     []float64 // ft
	}{
		{bare, "skirt=0ft..2ft/3", KeepCloth, []float64{12, 11, 10}},
		{bare, "skirt=0ft..2ft/3", "", []float64{12, 11, 10}},
		{bare, "skirt=0ft..2ft/3", KeepTrim, []float64{12, 12, 12}},
		{byCloth, "skirt=0ft..2ft/3", KeepCloth, []float64{12, 11, 10}},
		{byCloth, "skirt=0ft..2ft/3", KeepTrim, []float64{12, 12, 12}},
		{bare, "crate=none,cells", KeepCloth, []float64{12, 12 - 1.0/3}},
		{bare, "crate=cells,none", KeepTrim, []float64{12, 12}},
		{bare, "trim=9ft,10ft", KeepCloth, []float64{9, 10}},
	} {
		a := over(t, c.plan, c.ask, Options{Keep: c.keep})
		for i, want := range c.trims {
			if got := float64(a.Rows[i].Trim) / foot; math.Abs(got-want) > 1e-9 {
				t.Errorf("%s keeping %q, %s: trim %v ft, want %v", c.ask, c.keep, a.Rows[i].Text, got, want)
			}
		}
	}
}

// TestRefused: a value that the plan refuses is a row with the reason; all refused is an
// error.
func TestRefused(t *testing.T) {
	a := over(t, bare, "trim=-6ft..12ft/3", Options{})
	if !strings.Contains(a.Rows[0].Refused, "a height of -1.8288 m") || strings.Contains(a.Rows[0].Refused, "plan.yaml") || a.Rows[2].Refused != "" {
		t.Errorf("%+v", a.Rows)
	}
	if len(a.Changes) == 0 || a.Changes[0].Before != "refused" || math.Abs(float64(a.Changes[0].To)) > 0.05 {
		t.Errorf("%+v", a.Changes)
	}
	file := read(t, bare)
	for ask, want := range map[string]string{"trim=-6ft..-2ft/3": "the plan refuses every value", "crate=this,that": `no crate "this"`, "cloth_at=3m,4m": "trim and by cloth_at"} {
		parsed, err := Parse(ask, file)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := Of(file, parsed, Options{}); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: told %v", ask, err)
		}
	}
}

// TestSame: any number of workers gives the same bytes, and all plans are counted.
func TestSame(t *testing.T) {
	var texts []string
	for _, workers := range []int{0, 1, 4} {
		last := [2]int{}
		a := over(t, bare, "trim=8ft..17ft/4", Options{Workers: workers, Progress: func(done, due int) { last = [2]int{done, due} }})
		if last[0] != last[1] || last[0] < 4 {
			t.Errorf("%d workers: told %v", workers, last)
		}
		text, err := json.Marshal(a)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(text))
	}
	if texts[0] != texts[1] || texts[1] != texts[2] {
		t.Errorf("the answers differ: %s", texts)
	}
}
