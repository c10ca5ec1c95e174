package load

import (
	"fmt"
	"strings"
	"testing"
)

// fourLines is the four-line reference with all of its static cases: built, grown, lift
// with a corner leading, each line and each lamp's mount lost, and a tilt of 16 steps.
func fourLines() string {
	h := hungSquare{above: 3, ribs: ribsAt, lamps: onRibs, hung: "  safety: {kit: wire}\n  pulley: block\n"}
	h.box = "  tilt: {about: x, by: 15 deg}\n"
	h.rest = "provision:\n" + strings.Replace(strings.ReplaceAll(lampA, "A,", "extra,"), "0.9 m, 0.9 m", "0.9 m, 0 m", 1) +
		"  reserve: 1.1\nlift: {lead: 50 mm}\n"
	h.rest = strings.Replace(h.rest, "  - {name: extra", "  lamps:\n  - {name: extra", 1)
	return h.text()
}

// BenchmarkStaticCases works out every static case of one rig. Each round edits a load
// and a member, so that nothing can be kept from the round before. Limit: 20 ms.
func BenchmarkStaticCases(b *testing.B) {
	r := derive(b, fourLines())
	for n := range b.N {
		for i := range r.Weights {
			r.Weights[i].Mass = 9.5 + 1e-3*float64(n%100)
		}
		r.Tubes[0].Section.Wall = 3.56e-3 * (1 + 1e-4*float64(n%100))
		got, _ := Run(r)
		if got.Frame == nil || len(got.TiltPath) != 17 || len(got.Lost) != 8 {
			b.Fatal(fmt.Sprint(len(got.Lost), len(got.TiltPath), got.Unknown))
		}
	}
}
