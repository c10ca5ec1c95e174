package load

import (
	"fmt"
	"strings"
	"testing"

	"softloft/finding"
	"softloft/kit"
	"softloft/plan"
	"softloft/rig"
)

// hungSquare writes the plan of the reference cases: a square tube frame on four
// elastic lines, with cloth on its edges; ribs and four lamps where asked for. Each
// field replaces a part of the plan's text.
type hungSquare struct {
	half      [2]float64 // half the box's size; 1.829 m where 0
	out       float64    // how far the points stand out from the corners, in x and in y
	above     float64    // of the points over the cloth plane
	lengths   [4]float64
	ribs      string // ribs and lamps; "" for neither
	lamps     string
	young     string    // of the tubes
	stiffness string    // EA of the lines
	box       string    // further lines of the box
	rest      string    // further keys of the plan
	sheet     string    // mass of the cloth
	density   string    // of the tubes
	section   string    // of the tubes
	hung      string    // further keys of hang
	corners   [4]string // of the lines; ne, nw, sw, se where empty
	to        [4]string // where the lines go; P1 to P4 where empty
	points    string    // further points
}

func (h hungSquare) text() string {
	points, lines := "", ""
	half := h.half
	if half == [2]float64{} {
		half = [2]float64{1.829, 1.829}
	}
	for i, corner := range []struct {
		name string
		x, y float64
	}{{"ne", 1, 1}, {"nw", -1, 1}, {"sw", -1, -1}, {"se", 1, -1}} {
		points += fmt.Sprintf("    - {name: P%d, at: [%.12g m, %.12g m, %.12g m], allows: 20 kN, direction: any}\n",
			i+1, corner.x*(half[0]+h.out), corner.y*(half[1]+h.out), 5+h.above)
		length := ""
		if h.lengths[i] > 0 {
			length = fmt.Sprintf(", length: %.12g m", h.lengths[i])
		}
		lines += fmt.Sprintf("    - {name: L%d, from: %s, to: %s%s}\n", i+1, or(h.corners[i], corner.name), or(h.to[i], fmt.Sprintf("P%d", i+1)), length)
	}
	return `softloft: 1
derive: none
room:
  points:
` + points + h.points + `box:
  size: [` + fmt.Sprintf("%.12g m, %.12g m", 2*half[0], 2*half[1]) + `]
  cloth_at: 5 m
  frame: pipe
` + h.box + h.ribs + `  cloth: [sheet]
  sides: none
` + h.lamps + h.rest + `hang:
  rope: line
` + h.hung + `  lines:
` + lines + strings.NewReplacer("YOUNG", or(h.young, "69 GPa"), "EA", or(h.stiffness, "60 kN"),
		"SHEET", or(h.sheet, "0.25 kg/m2"), "DENSITY", or(h.density, "2700 kg/m3"), "SECTION", or(h.section, "outer: 42.16 mm, wall: 3.56 mm")).Replace(`kit:
  alloy:
    soft: {E: YOUNG, poisson: 0.33, density: DENSITY, yield: 240 MPa}
    air: {E: YOUNG, poisson: 0.33, density: 0 kg/m3}
  tube:
    pipe: {shape: round, SECTION, alloy: soft}
    nothing: {shape: round, outer: 42.16 mm, wall: 3.56 mm, alloy: air}
  cloth:
    sheet: {mass: SHEET, diffuse: 0.5, back: 0.3}
  lamp:
    panel: {mass: 9.5 kg, size: [0.3 m, 0.3 m], lumens: 20000 lm}
  rope:
    line: {kind: wire, diameter: 5 mm, stiffness: EA, mass: 0 kg/m, breaks: 120 kN, knot: 0.8}
  pulley:
    block: {rated: 5 kN, efficiency: 0.9, sheave: 100 mm, mass: 0 kg}
  safety:
    wire: {rated: 1 kN, mass: 0 kg}
`)
}

func or(text, other string) string {
	if text == "" {
		return other
	}
	return text
}

const (
	ribsAt  = "  ribs: {tube: pipe, at: [-0.9 m, 0.9 m], along: y, level: lower, ends: rigid}\n"
	onRibs  = "lamps:\n" + lampA + lampB + lampC + lampD
	lampA   = "  - {name: A, kit: panel, at: [0.9 m, 0.9 m], above: 0 m, on: {rib: 2}}\n"
	lampB   = "  - {name: B, kit: panel, at: [-0.9 m, 0.9 m], above: 0 m, on: {rib: 1}}\n"
	lampC   = "  - {name: C, kit: panel, at: [-0.9 m, -0.9 m], above: 0 m, on: {rib: 1}}\n"
	lampD   = "  - {name: D, kit: panel, at: [0.9 m, -0.9 m], above: 0 m, on: {rib: 2}}\n"
	moved   = "lamps:\n  - {name: A, kit: panel, at: [1.6 m, 1.6 m], above: 0 m, on: {bar: nothing}}\n" + lampB + lampC + lampD
	allAt3  = 3.0
	pinned  = "  ribs: {tube: pipe, at: [-0.9 m, 0.9 m], along: y, level: lower, ends: pinned}\n"
	atThird = "  ribs: {tube: pipe, at: [-0.609666666667 m, 0.609666666667 m], along: y, level: lower, ends: rigid}\n"
)

func all(length float64) [4]float64 { return [4]float64{length, length, length, length} }

// derive reads a plan and places its parts.
func derive(t testing.TB, text string) *rig.Rig {
	t.Helper()
	file, mistakes := plan.Read("test.yaml", []byte(text), kit.Kit{})
	if len(mistakes) > 0 {
		t.Fatalf("the plan is not read:\n%v", mistakes)
	}
	return rig.Derive(file.Plan, file.Doc, file.Kit)
}

// deriveOr is derive within a property.
func deriveOr(t fataler, text string) *rig.Rig {
	file, mistakes := plan.Read("test.yaml", []byte(text), kit.Kit{})
	if len(mistakes) > 0 {
		t.Fatalf("the plan is not read:\n%v\n%s", mistakes, text)
	}
	return rig.Derive(file.Plan, file.Doc, file.Kit)
}

// analyze runs the analysis on a plan's text.
func analyze(t testing.TB, text string) (Answer, []finding.Finding) {
	t.Helper()
	return Run(derive(t, text))
}
