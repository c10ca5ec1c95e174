package power_test

import (
	"fmt"
	"strings"
	"testing"

	"softloft/kit"
	"softloft/plan"
	"softloft/power"
	"softloft/rig"
)

// BenchmarkManyLamps has as many lamps as a plan may, of seventeen powers.
func BenchmarkManyLamps(b *testing.B) {
	var text strings.Builder
	text.WriteString("softloft: 1\nderive: none\nbox: {size: [8 ft, 8 ft], cloth_at: 10 ft}\npower: {phases: 3, cable: cable-12/3, tie_in: [0 ft, 30 ft, 0 ft]}\nkit:\n  lamp:\n")
	for i := range 17 {
		fmt.Fprintf(&text, "    k%d: {size: [1 ft, 1 ft], mass: 5 kg, power: %d W}\n", i, 90+137*i%811)
	}
	text.WriteString("lamps:\n")
	for i := range 2000 {
		fmt.Fprintf(&text, "  - {kit: k%d, at: [0 ft, 0 ft], above: 2 ft}\n", i%17)
	}
	base, _ := kit.Standard()
	file, mistakes := plan.Read("test.yaml", []byte(text.String()), base)
	if len(mistakes) > 0 {
		b.Fatal(mistakes)
	}
	r := rig.Derive(file.Plan, file.Doc, file.Kit)
	for b.Loop() {
		power.Run(r)
	}
}
