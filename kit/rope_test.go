package kit

import (
	"strings"
	"testing"

	"softloft/quantity"
)

const poundForce = float64(quantity.PoundForce)

func TestManilaAgainstThePublishedTable(t *testing.T) {
	k := standard(t)
	// Cordage Institute CI 1308-96, three-strand manila: read. Pounds for 100 ft, breaking strength in lb.
	for _, row := range []struct {
		size         string
		mass, breaks float64
	}{
		{"1/4", 1.82, 540}, {"5/16", 2.64, 900}, {"3/8", 3.79, 1215}, {"1/2", 6.96, 2385}, {"5/8", 12.7, 3960}, {"3/4", 15.9, 4860},
	} {
		rope := k.Rope["manila-"+row.size]
		near(t, row.size+" mass", float64(*rope.Mass)/pound*foot*100, row.mass, 1e-9)
		near(t, row.size+" breaks", float64(*rope.Breaks)/poundForce, row.breaks, 1e-9)
	}
}

func TestOtherRopesAsPrinted(t *testing.T) {
	k := standard(t)
	for id, pounds := range map[string]float64{
		"nylon-3/8": 3340, "nylon-1/2": 5750, "nylon-5/8": 9350, // a published rope table: read
		"polyester-1/4": 1650, "polyester-3/8": 3700, "polyester-1/2": 6400, "polyester-5/8": 10400, // another, average strength: read
		"wire-1/8": 2000, "wire-3/16": 4200, "wire-1/4": 7000, // Federal Specification RR-W-410, 7x19: from memory
	} {
		near(t, id, float64(*k.Rope[id].Breaks)/poundForce, pounds, 1e-9)
	}
}

// Published tables have misprints that one row alone doesn't show: manila 3/16 in as 4.06, nylon
// 1-1/8 in as 29,80. A thicker rope of a kind is stronger, heavier and stiffer.
func TestRopesRiseWithTheirDiameter(t *testing.T) {
	k := standard(t)
	families := map[string][]Rope{}
	for _, id := range IDs(k.Rope) {
		family := id[:strings.LastIndex(id, "-")]
		families[family] = append(families[family], k.Rope[id])
	}
	if len(families) < 5 {
		t.Fatalf("only %d families of rope", len(families))
	}
	for family, ropes := range families {
		for _, a := range ropes {
			for _, b := range ropes {
				if *a.Diameter < *b.Diameter && !(*a.Breaks < *b.Breaks && *a.Mass < *b.Mass && *a.Stiffness < *b.Stiffness) {
					t.Errorf("%s: %s isn't weaker, lighter and softer than %s", family, a.Name, b.Name)
				}
			}
		}
	}
}

// EA is a fifth of the strength over the stretch at a fifth of the strength, from memory; typed to
// two or three digits.
func TestStiffnessFollowsFromTheStretch(t *testing.T) {
	k := standard(t)
	stretch := map[string]float64{"manila": 0.09, "nylon": 0.18, "polyester": 0.075, "braid": 0.03, "wire": 0.005}
	for _, id := range IDs(k.Rope) {
		rope := k.Rope[id]
		family := id[:strings.LastIndex(id, "-")]
		near(t, id, float64(*rope.Stiffness), 0.2*float64(*rope.Breaks)/stretch[family], 0.02)
	}
	// A published fall case has 5 mm wire of 13.3 kN with EA 558 kN: the wires here are as stiff, in proportion.
	wire := k.Rope["wire-3/16"]
	near(t, "wire", float64(*wire.Stiffness / *wire.Breaks), 558/13.3, 0.06)
}

// Half-inch manila, 2385 lb, with a bowline that keeps 60 %, at a design factor of 10: 143 lb.
// CI 1308-96 and published knot tests; worked by hand.
func TestKnottedManila(t *testing.T) {
	rope := standard(t).Rope["manila-1/2"]
	near(t, "load", float64(*rope.Breaks)**rope.Knot/10/poundForce, 143.1, 1e-9)
}

func TestRatingsAsPublished(t *testing.T) {
	k := standard(t)
	for id, pounds := range map[string]float64{ // Federal Specification RR-C-271, short tons: from memory
		"shackle-1/4": 0.5 * 2000, "shackle-5/16": 0.75 * 2000, "shackle-3/8": 1 * 2000, "shackle-1/2": 2 * 2000, "shackle-5/8": 3.25 * 2000,
	} {
		near(t, id, float64(*k.Shackle[id].Rated)/poundForce, pounds, 1e-9)
	}
	for id, pounds := range map[string]float64{ // OSHA, Guidance on Safe Sling Use, grade 80 chain, one leg: read
		"chain-7/32": 2100, "chain-9/32": 3500, "chain-5/16": 4500,
	} {
		near(t, id, float64(*k.Sling[id].Rated)/poundForce, pounds, 1e-9)
	}
	// Couplers: safe slip loads, class A, and mass as BS 1139 and TG20:13 have them: read.
	near(t, "coupler", float64(*k.Corner["coupler-48"].Slip), 6100, 1e-9)
	near(t, "swivel", float64(*k.Clamp["swivel-48"].Slip), 3600, 1e-9)
	near(t, "coupler's mass", float64(*k.Corner["coupler-48"].Mass.Each), 1, 1e-9)
}
