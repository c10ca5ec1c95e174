package power_test

import (
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"softloft/kit"
	"softloft/plan"
	"softloft/power"
	"softloft/rig"
)

// The circuits that are told are those for which the rig has placed cable, the length is
// that of the placed cables, and the drop is that of each stretch with the current of
// the lamps behind it: Kirchhoff's laws on the chain, stretch by stretch.
func TestCircuitsAreTheRigsFeeds(t *testing.T) {
	base, _ := kit.Standard()
	examples, err := filepath.Glob("../examples/*.yaml")
	if err != nil || len(examples) == 0 {
		t.Fatal("no examples", err)
	}
	checked := 0
	for _, name := range examples {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		file, mistakes := plan.Read(name, text, base)
		if len(mistakes) > 0 {
			t.Fatal(mistakes)
		}
		r := rig.Derive(file.Plan, file.Doc, file.Kit)
		a, _ := power.Run(r)
		if a == nil || r.Loom == nil {
			continue
		}
		for _, c := range a.Circuits {
			if feed, ok := feedOf(r, c); ok && c.Phase > 0 {
				checkFeed(t, name, r, feed, c)
				checked++
			}
		}
	}
	if checked == 0 {
		t.Error("no circuit of any example was compared")
	}
}

// feedOf finds the feed of a circuit that has no lamp on an arm.
func feedOf(r *rig.Rig, c power.Circuit) (rig.Feed, bool) {
	for _, lamp := range c.Lamps {
		if part, ok := r.Part("lamp." + lamp + ".cable"); ok && slices.Equal(part.Joined, []string{"lamp." + lamp}) {
			return rig.Feed{}, false
		}
	}
	for _, feed := range r.Loom.Feeds {
		if strings.Join(feed.Lamps, "\n") == "lamp."+strings.Join(c.Lamps, "\nlamp.") {
			return feed, true
		}
	}
	return rig.Feed{Part: "none"}, true
}

func checkFeed(t *testing.T, name string, r *rig.Rig, feed rig.Feed, c power.Circuit) {
	t.Helper()
	up, ok := r.Part(feed.Part)
	if !ok {
		t.Errorf("%s: circuit %s of %v is not among the rig's feeds %v", name, c.Name, c.Lamps, r.Loom.Feeds)
		return
	}
	floor, _ := r.Part(feed.Run)
	conductor, known := power.Designated(r.Plan.Power.Cable)
	left, volts := float64(c.Amps), 0.0
	length := up.Length + floor.Length
	volts += power.Lost(conductor, left, length, 1)
	for _, lamp := range feed.Lamps {
		if cable, ok := r.Part(lamp + ".cable"); ok {
			length += cable.Length
			volts += power.Lost(conductor, left, cable.Length, 1)
		}
		part, _ := r.Part(lamp)
		entry := r.Kit.Lamp[part.KitID]
		left -= power.Amps(float64(*entry.Power), float64(r.Plan.Power.Volts), entry.PowerFactor, 1)
	}
	if math.Abs(left) > 1e-9 {
		t.Errorf("%s: circuit %s: %g A are left after the last lamp", name, c.Name, left)
	}
	if math.Abs(length-float64(c.Length)) > 1e-3 {
		t.Errorf("%s: circuit %s has %.4f m of cable, the rig has placed %.4f m", name, c.Name, float64(c.Length), length)
	}
	if known && math.Abs(volts-float64(c.Drop)) > 1e-3*volts {
		t.Errorf("%s: circuit %s loses %.5f V, by stretches %.5f V", name, c.Name, float64(c.Drop), volts)
	}
}
