package load

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"softloft/finding"
)

// drawn is a random rig: a square frame on four lines, some of them bridles, points out or
// in, ribs or none, lamps and added loads anywhere, cloth slack or tied, turned and tilted.
func drawn(t *rapid.T) string {
	h := hungSquare{
		out: rapid.Float64Range(-0.8, 0.8).Draw(t, "out"), above: rapid.Float64Range(2, 5).Draw(t, "above"),
		ribs: rapid.SampledFrom([]string{"", ribsAt, atThird, pinned}).Draw(t, "ribs"), hung: "  safety: {kit: wire}\n",
	}
	if rapid.Bool().Draw(t, "tied") {
		h.box += fmt.Sprintf("  cloth_tie: {sag: %.6g mm}\n", rapid.Float64Range(30, 200).Draw(t, "sag"))
	}
	h.box += fmt.Sprintf("  turn: %.6g deg\n", rapid.Float64Range(-180, 180).Draw(t, "turn"))
	if rapid.Bool().Draw(t, "tilted") {
		h.box += fmt.Sprintf("  tilt: {about: %s, by: %.6g deg}\n", rapid.SampledFrom([]string{"x", "y"}).Draw(t, "about"), rapid.Float64Range(-25, 25).Draw(t, "tilt"))
	}
	place := rapid.Float64Range(-1.5, 1.5)
	h.lamps = "lamps:\n"
	for i := range rapid.IntRange(1, 4).Draw(t, "lamps") {
		h.lamps += fmt.Sprintf("  - {name: l%d, kit: panel, at: [%.6g m, %.6g m], above: %.6g m}\n", i, place.Draw(t, "x"), place.Draw(t, "y"), rapid.Float64Range(-0.5, 0.2).Draw(t, "z"))
	}
	if rapid.Bool().Draw(t, "added") {
		h.rest = fmt.Sprintf("added:\n  - {name: load, mass: %.6g kg, at: [%.6g m, %.6g m, %.6g m]}\n", rapid.Float64Range(0, 80).Draw(t, "mass"), place.Draw(t, "x"), place.Draw(t, "y"), -0.2)
	}
	if rapid.Bool().Draw(t, "bridles") {
		for i := range 4 {
			h.points += fmt.Sprintf("    - {name: B%d, at: [%.6g m, %.6g m, %.6g m], allows: 5 kN, direction: any}\n", i,
				3*math.Cos(float64(i)*1.5708+0.3), 3*math.Sin(float64(i)*1.5708+0.3), 5+h.above+0.5)
		}
		h.to[rapid.IntRange(0, 3).Draw(t, "which")] = fmt.Sprintf("{bridle: [B%d, B%d], apex: %.6g m}", 0, rapid.IntRange(1, 3).Draw(t, "other"), 5+h.above-0.8)
	}
	if rapid.Bool().Draw(t, "hauled") {
		h.hung += "  pulley: block\n"
	}
	if rapid.Bool().Draw(t, "lifted") {
		h.rest += fmt.Sprintf("lift: {lines: [%s], lead: %.6g mm}\n", rapid.SampledFrom([]string{"L1, L2, L3, L4", "L1, L3", "L2, L3, L4", "L4"}).Draw(t, "lifters"),
			rapid.Float64Range(0, 200).Draw(t, "lead"))
	}
	if rapid.Bool().Draw(t, "provision") {
		h.rest += fmt.Sprintf("provision: {reserve: %.4g}\n", rapid.Float64Range(1, 3).Draw(t, "reserve"))
	}
	switch rapid.IntRange(0, 3).Draw(t, "levels") {
	case 1:
		h.box += "  depth: 0.8 m\n  upper: {tube: pipe}\n  join: {uprights: {tube: pipe, count: 4}}\n"
	case 2:
		h.box += "  depth: 0.8 m\n  upper: {tube: pipe}\n  join: {drops: {kit: line, count: 4}}\n"
	case 3:
		h.box += "  corners: pinned\n"
	}
	return strings.Replace(h.text(), "  cloth_at", "  at: [0.1 m, -0.2 m]\n  cloth_at", 1)
}

// Every state that is reported balances: forces and moments recomputed from the answers'
// JSON alone, places, forces, mass and center, to 1e-9 of the weight.
func TestEveryStateBalances(t *testing.T) {
	states := 0
	rapid.Check(t, func(rt *rapid.T) {
		got, found := RunWith(deriveOr(rt, drawn(rt)), Options{})
		for _, f := range found {
			if f.Result == finding.NotKnown && f.Why == "" {
				rt.Errorf("%s is not known and does not say why", f.ID)
			}
		}
		text, err := json.Marshal(got)
		if err != nil {
			rt.Fatal(err)
		}
		states += balancedJSON(rt, text)
	})
	if states < 100 {
		t.Errorf("only %d states were reported", states)
	}
	t.Logf("%d states", states)
}

type fataler interface {
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// balancedJSON checks every state of an answer as it is printed.
func balancedJSON(t fataler, text []byte) (states int) {
	type state struct {
		Center *[3]float64           `json:"centre_m"`
		Force  map[string][3]float64 `json:"force_on_box_n"`
		At     map[string][3]float64 `json:"at_m"`
	}
	var a struct {
		Mass   *float64    `json:"mass_kg"`
		Center *[3]float64 `json:"centre_m"`
		Lines  []struct {
			Name  string      `json:"name"`
			At    *[3]float64 `json:"at_m"`
			Force *[3]float64 `json:"force_on_box_n"`
		} `json:"lines"`
		Tilt []state `json:"tilt_path"`
		Lost []state `json:"lost"`
	}
	if err := json.Unmarshal(text, &a); err != nil {
		t.Fatalf("%v in %s", err, text)
	}
	built := state{Center: a.Center, Force: map[string][3]float64{}, At: map[string][3]float64{}}
	for _, l := range a.Lines {
		if l.Force != nil {
			built.Force[l.Name], built.At[l.Name] = *l.Force, *l.At
		}
	}
	all := append(append([]state{}, a.Tilt...), a.Lost...)
	if len(built.Force) > 0 {
		all = append(all, built)
	}
	for i, s := range all {
		if s.Center == nil || len(s.Force) == 0 {
			continue
		}
		states++
		weight := *a.Mass * 9.80665
		force := [3]float64{0, 0, -weight}
		moment := [3]float64{-s.Center[1] * weight, s.Center[0] * weight, 0}
		for name, f := range s.Force {
			p := s.At[name]
			moment[0] += p[1]*f[2] - p[2]*f[1]
			moment[1] += p[2]*f[0] - p[0]*f[2]
			moment[2] += p[0]*f[1] - p[1]*f[0]
			for k := range 3 {
				force[k] += f[k]
			}
		}
		for k := range 3 {
			if math.Abs(force[k]) > 1e-9*weight || math.Abs(moment[k]) > 1e-9*weight*5 {
				t.Errorf("state %d of %d: left over %.3g N, %.3g N m of %.1f N", i, len(all), force, moment, weight)
				return states
			}
		}
	}
	return states
}

// The same rig turned by 90° in the room, points and all, carries the same.
func TestTurnedRigIsTheSame(t *testing.T) {
	base := hungSquare{above: 3, lengths: all(3), out: 0.4, ribs: ribsAt, lamps: moved, hung: "  safety: {kit: wire}\n"}
	base.lengths = all(math.Sqrt(9 + 2*0.4*0.4))
	want, _ := analyze(t, base.text())
	// Turned by a quarter the box's north-east corner lies where the north-west one was.
	turned := base
	turned.box = "  turn: 90 deg\n"
	turned.corners = [4]string{"se", "ne", "nw", "sw"}
	got, _ := analyze(t, turned.text())
	for i := range want.Lines {
		j := (i + 1) % 4 // ne goes to the second point now
		near(t, want.Lines[i].Name, float64(got.Lines[j].Cases.Built), float64(want.Lines[i].Cases.Built), 1e-7)
		near(t, want.Lines[i].Name+" after a loss", float64(got.Lines[j].Cases.LostWorst), float64(want.Lines[i].Cases.LostWorst), 1e-5)
	}
	near(t, "sag", float64(got.Frame.Sag), float64(want.Frame.Sag), 1e-6)
	near(t, "turn", float64(got.Pose.Turn), 90+float64(want.Pose.Turn), 1e-6)
}

// The same rig in feet and pounds carries the same.
func TestUnitsDoNotMatter(t *testing.T) {
	base := hungSquare{above: 3, lengths: all(3), ribs: ribsAt, lamps: moved}
	want, _ := analyze(t, base.text())
	text := strings.NewReplacer("size: [3.658 m, 3.658 m]", "size: [12.0013123359580 ft, 12.0013123359580 ft]", "cloth_at: 5 m", "cloth_at: 16.4041994750656 ft",
		"mass: 9.5 kg", "mass: 20.9439149069 lb", "42.16 mm", "1.65984251968504 in", "length: 3 m", "length: 9.84251968503937 ft", "EA", "EA").Replace(base.text())
	got, _ := analyze(t, text)
	for i := range want.Lines {
		near(t, want.Lines[i].Name, float64(got.Lines[i].Cases.Built), float64(want.Lines[i].Cases.Built), 1e-6)
	}
}

// The same plan gives the same bytes.
func TestSameBytes(t *testing.T) {
	text := fourLines()
	var was []byte
	for range 3 {
		got, found := analyze(t, text)
		is, err := json.Marshal([]any{got, found})
		if err != nil {
			t.Fatal(err)
		}
		if was != nil && string(was) != string(is) {
			t.Fatal("two runs give different bytes")
		}
		was = is
	}
}
