package source

import (
	"slices"
	"strings"
)

// Efficiency is the share of a rope's breaking strength that is left at a knot
// or an end.
type Efficiency struct {
	Name  string
	Share float64
	Citation
}

// Limit is the share as a limit, with its name.
func (e Efficiency) Limit() Limit {
	return Limit{"share of strength left, " + e.Name, e.Share, "", e.Citation}
}

// knots are shares of rope strength. Never written to.
var knots = []Efficiency{
	{"anchor bend", 0.70, Cite("knot-tests", "")},
	{"bowline", 0.60, Cite("knot-tests", "")},
	{"bowline on a bight", 0.60, Cite("knot-tests", "")},
	{"two half hitches", 0.75, Cite("knot-tests", "")},
	{"clove hitch", 0.75, Cite("knot-tests", "")},
	{"timber hitch", 0.70, Cite("knot-tests", "")},
	{"square knot", 0.45, Cite("knot-tests", "")},
	{"sheepshank", 0.45, Cite("knot-tests", "")},
	{"figure-eight end knot", 0.48, Cite("knot-tests", "")},
	{"overhand knot", 0.45, Cite("knot-tests", "")},
	{"eye splice", 0.95, Cite("knot-tests", "")},
	{"short splice", 0.90, Cite("knot-tests", "")},
}

// wireEnds are shares of wire rope strength at an end. Never written to.
var wireEnds = []Efficiency{
	{"clips", 0.80, remembered("rr-w-410", "")},
	{"swaged sleeve", 0.95, remembered("rr-w-410", "")}, // lower end of 0.95 to 1
	{"turnback", 0.80, remembered("rr-w-410", "")},      // lower end of 0.8 to 0.9
}

// bends are shares of fiber rope strength over a pin, by pin over rope
// diameter. Never written to.
var bends = []struct {
	ratio float64
	Efficiency
}{
	{1, Efficiency{"bend over a pin of the rope's diameter", 0.50, remembered("ci-1401", "")}},
	{2, Efficiency{"bend over a pin of twice the rope's diameter", 0.65, remembered("ci-1401", "")}},
	{3, Efficiency{"bend over a pin of three times the rope's diameter", 0.75, remembered("ci-1401", "")}},
	{8, Efficiency{"bend over a pin of eight times the rope's diameter", 1.00, remembered("ci-1401", "")}},
}

// Knots lists the knots and splices of fiber rope. The slice is the caller's own.
func Knots() []Efficiency { return slices.Clone(knots) }

// WireEnds lists the ends of wire rope. The slice is the caller's own.
func WireEnds() []Efficiency { return slices.Clone(wireEnds) }

// Knot finds a knot or splice by its name, whatever the case.
func Knot(name string) (Efficiency, bool) { return byName(knots, name) }

// WireEnd finds an end of wire rope by its name, whatever the case.
func WireEnd(name string) (Efficiency, bool) { return byName(wireEnds, name) }

// UnnamedKnot is the share to be used where a rope is knotted and nobody says
// how: a knot can take up to half.
func UnnamedKnot() Efficiency {
	return Efficiency{"knot not named", 0.50, Cite("ci-1401", "")}
}

// BendOver is the share of strength that a fiber rope keeps over a pin whose
// diameter is ratio times the rope's: the largest row of the table that does
// not exceed it. False below the table, and for a ratio that is not a number.
func BendOver(ratio float64) (Efficiency, bool) {
	for i := len(bends) - 1; i >= 0; i-- {
		if ratio >= bends[i].ratio {
			return bends[i].Efficiency, true
		}
	}
	return Efficiency{}, false
}

func byName(rows []Efficiency, name string) (Efficiency, bool) {
	for _, row := range rows {
		if strings.EqualFold(row.Name, strings.TrimSpace(name)) {
			return row, true
		}
	}
	return Efficiency{}, false
}
