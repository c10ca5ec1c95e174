package load

import (
	"encoding/json"
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Any weather, lean, cloth and side on a hung box: it ends, its JSON has no number that is
// none, every case is there, the first limit is the least of all, the two speeds are below
// it, and twice the wind is four times the force.
func TestWildWeather(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gust := rapid.Float64Range(0.01, 90).Draw(t, "gust")
		box := fmt.Sprintf("  tilt: {about: %s, by: %.3g deg}\n", rapid.SampledFrom([]string{"x", "y"}).Draw(t, "about"), rapid.Float64Range(-45, 45).Draw(t, "tilt"))
		if rapid.Bool().Draw(t, "skirts") {
			box += fmt.Sprintf("  skirt: %.3g m\n", rapid.Float64Range(0, 2).Draw(t, "skirt"))
		}
		if rapid.Bool().Draw(t, "tied") {
			box += fmt.Sprintf("  cloth_tie: {sag: %.3g cm}\n", rapid.Float64Range(0.1, 100).Draw(t, "sag"))
		}
		blocked := ""
		if rapid.Bool().Draw(t, "stated") {
			blocked = fmt.Sprintf(", blocked: %.3g%%", rapid.Float64Range(0, 100).Draw(t, "blocked"))
		}
		plan := func(gust float64) string {
			return outdoors(fmt.Sprintf("gust: %.12g m/s%s", gust, blocked), hungSquare{above: 6, box: box})
		}
		one, _ := Run(deriveOr(t, plan(gust)))
		two, _ := Run(deriveOr(t, plan(2*gust)))
		if _, err := json.Marshal(one); err != nil {
			t.Fatal(err)
		}
		if one.Wind == nil || len(one.Wind.Cases) != 72 {
			t.Fatalf("%+v", one.Wind)
		}
		for k, c := range one.Wind.Cases {
			if other := two.Wind.Cases[k]; math.Abs(float64(other.Force-4*c.Force)) > 1e-9*float64(4*c.Force)+1e-12 {
				t.Fatalf("%g N, then %g N", float64(c.Force), float64(other.Force))
			}
		}
		if math.IsNaN(float64(one.Wind.First)) {
			return
		}
		for _, l := range one.Wind.Limits {
			if l.Speed < one.Wind.First {
				t.Fatalf("first %g m/s, %s at %g m/s", float64(one.Wind.First), l.ID, float64(l.Speed))
			}
		}
		if !(one.Wind.Watch <= one.Wind.Lower && one.Wind.Lower <= one.Wind.First) || one.Wind.First != two.Wind.First {
			t.Fatalf("%+v", one.Wind)
		}
	})
}
