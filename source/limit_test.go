package source

import (
	"math"
	"testing"
)

// ISO 2720:1974, ranges read: C flat 240 to 400, 250 common; C hemispherical 320
// to 540; K 10.6 to 13.4, 12.5 common.
func TestMeterConstants(t *testing.T) {
	for _, c := range []struct {
		got             Calibration
		value, low, top float64
	}{{FlatReceptor(), 250, 240, 400}, {DomeReceptor(), 340, 320, 540}, {Reflected(), 12.5, 10.6, 13.4}} {
		if c.got.Value != c.value || c.got.Low != c.low || c.got.High != c.top || !c.got.Read() {
			t.Errorf("%+v", c.got)
		}
	}
	// Dome against flat: log2(340/250) = 0.443607 stop (computed independently).
	if got := math.Log2(DomeReceptor().Value / FlatReceptor().Value); math.Abs(got-0.443607) > 5e-7 {
		t.Errorf("dome against flat is %g stop", got)
	}
}

// The assumed reflectances lie in what is published: a lighting encyclopedia,
// read: white 0.8, black paint 0.1; black masking cloth 0.02 to 0.05, read.
func TestReflectances(t *testing.T) {
	for word, want := range map[string][2]float64{
		"white": {0.8, 0.8}, "black": {0.02, 0.05}, "outer face": {0.02, 0.05}, "silver": {0.75, 0.75}, // silver: design assumption
		"floor": {0.2, 0.2}, "walls": {0.3, 0.3}, "ceiling": {0.1, 0.1}, // the contract's defaults
	} {
		if got, ok := ReflectanceOf(word); !ok || got.Value < want[0] || got.Value > want[1] || got.Source != "design-assumption" {
			t.Errorf("%s: %+v, want %v", word, got, want)
		}
	}
	if _, ok := ReflectanceOf("pink"); ok {
		t.Error("pink has a reflectance")
	}
}

// EN 1991-1-4 Table 7.6, second-hand: at 20° half blocked the least coefficient
// is -1.35 by interpolation, the largest 0.8.
func TestCanopies(t *testing.T) {
	rows := Canopies()
	for i, row := range rows {
		if want := float64(i) * 5 * degree; math.Abs(row.Slope-want) > 1e-12 {
			t.Errorf("row %d is at %g rad", i, row.Slope)
		}
		if i > 0 && (row.Max <= rows[i-1].Max || row.Open >= rows[i-1].Open) {
			t.Errorf("row %d does not go on from the one before", i)
		}
	}
	if at := rows[4]; at.Max != 0.8 || math.Abs((at.Open+at.Block)/2+1.35) > 1e-12 {
		t.Errorf("20° is %+v", at)
	}
	if flat := rows[0]; flat.Max != 0.2 || flat.Open != -0.5 || flat.Block != -1.3 {
		t.Errorf("0° is %+v", flat)
	}
}

func TestOtherLimits(t *testing.T) {
	for name, c := range map[string]struct {
		got  Limit
		want float64
		tol  float64
	}{
		"fall":         {LampFall(), 0.20, 0},              // DGUV 215-313, read: at most 20 cm
		"means":        {IndependentMeans(), 2, 0},         // DGUV 215-314 4.1, read
		"LC":           {LoadConstant(), 23, 0},            // NIOSH 1991, metric set
		"LI":           {LiftingIndexGoal(), 1, 0},         // p. 20, read
		"LI high":      {LiftingIndexHigh(), 3, 0},         // p. 20, read
		"tower stops":  {TowerWorkStops(), 7.6, 0.005},     // published beside 17 mph
		"watch":        {WatchShare(), 0.6, 0},             // a park authority, read
		"lower":        {LowerShare(), 0.8, 0},             // same
		"air":          {AirDensity(), 2 * 0.625, 0},       // q = 0.625 v²
		"sprinkler":    {SprinklerClear(), 0.4572, 1e-12},  // 18 in
		"shadow":       {SprinklerShadow(), 1.2192, 1e-12}, // 4 ft
		"continuous":   {ContinuousShare(), 16.0 / 20, 0},  // 20 A: 16 A, from memory
		"lighting":     {LightingDrop(), 6.9 / 230, 1e-12}, // BS 7671, read: 6.9 V of 230
		"other":        {OtherDrop(), 11.5 / 230, 1e-12},   // 11.5 V
		"height":       {HeightOverBase(), 4, 0},
		"tip":          {TipRatio(), 1.5, 0},
		"choke":        {ChokeKeeps(), 0.75, 0},
		"start factor": {StartFactor(), 1.25, 0},
	} {
		if math.Abs(c.got.Value-c.want) > c.tol {
			t.Errorf("%s: %+v, want %g", name, c.got, c.want)
		}
	}
	// HSE figures: two people at 20 kg each lift 26.7 kg, three 30 kg.
	for people, want := range map[int]float64{1: 20, 2: 26.7, 3: 30} {
		if share, ok := TeamShare(people); !ok || math.Abs(share.Value*20*float64(people)-want) > 0.05 {
			t.Errorf("%d people lift %g kg, want %g", people, share.Value*20*float64(people), want)
		}
	}
	for _, people := range []int{0, 4, -1} {
		if _, ok := TeamShare(people); ok {
			t.Errorf("%d people have a share", people)
		}
	}
}
