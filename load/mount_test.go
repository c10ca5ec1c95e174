package load

import (
	"strings"
	"testing"

	"softloft/finding"
)

// A lamp whose clamp is on the north tube and whose weight leans in to y = 1 m. Its mount
// lets go: it hangs from its safety under the tube, at y = 1.829 m, and lower by its arm
// and the safety's slack. Statics of a rigid box: the two north lines have W·(1/2 + y/2h).
func TestLampOntoItsSafety(t *testing.T) {
	h := stiffBox(0)
	h.young, h.rest = "1000 GPa", ""
	h.lengths = all(3)
	h.lamps = "lamps:\n  - {name: key, kit: panel, at: [0 m, 1 m], above: -0.2 m, on: {frame: north}}\n"
	h.hung = "  safety: {kit: wire, slack: 100 mm}\n"
	got, _ := analyze(t, h.text())
	weight := 9.5 * 9.80665
	near(t, "built", float64(got.Lines[0].Cases.Built+got.Lines[1].Cases.Built), weight*(0.5+1/(2*1.829)), 1e-3)
	var mount Lost
	for _, l := range got.Lost {
		if l.What == "mount" {
			mount = l
		}
	}
	if mount.Name != "key" || mount.Outcome != Rests {
		t.Fatalf("the mount: %+v", mount)
	}
	near(t, "after", float64(mount.Tension["L1"]+mount.Tension["L2"]), weight, 1e-3)
	arm := 0.8528 // √(0.829² + 0.2²)
	near(t, "center's height", float64(mount.Center[2]), float64(mount.Pose.At[2])-arm-0.1, 2e-3)
	balanced(t, got)

	_, found := analyze(t, strings.Replace(h.text(), h.hung, "", 1))
	if f := named(found, "load.lost.mount.key"); f.Result != finding.Over || f.Why == "" {
		t.Errorf("a lamp without a safety: %+v", f)
	}
}
