package stock

import (
	"math"

	"softloft/document"
	"softloft/quantity"
)

// Version is the version of the stock file that this package reads.
const Version = 1

// Shop is one stock file.
type Shop struct {
	Stock    int             `key:"stock,required" doc:"version of the stock file: 1"`
	Name     string          `key:"shop" doc:"whose stock it is"`
	Currency string          `key:"currency" doc:"three letters of ISO 4217, such as USD; due where a rate stands"`
	Kerf     quantity.Length `key:"kerf" doc:"what one saw cut of a tube takes; default none"`
	Items    []Item          `key:"items,required" doc:"what there is"`

	doc *document.Document
}

// Item is one row: pieces of one kind, kit id and length on one shelf. Pointers are nil
// where nobody gave the value.
type Item struct {
	Kind   string              `key:"kind,required" doc:"kind of kit entry: tube, rope, lamp, …"`
	Kit    string              `key:"kit,required" doc:"id of the kit entry"`
	Length *quantity.Length    `key:"length" doc:"of one piece; due for tubes and ropes"`
	Count  int                 `key:"count,required" doc:"how many there are"`
	Shelf  string              `key:"shelf" doc:"where it lies"`
	Each   *quantity.Mass      `key:"each" doc:"mass of one piece, as weighed"`
	Packed *[3]quantity.Length `key:"packed" doc:"length, width and height of one piece, packed"`
	Rate   *float64            `key:"rate" doc:"what one piece costs a day, in the currency"`
	From   string              `key:"from" doc:"the house that it is rented from; absent: the shop's own"`
	Whole  *bool               `key:"whole" doc:"true where it must not be cut; default: the shop's own may be cut, what is rented not"`
}

// Rented reports whether the row is another house's.
func (i Item) Rented() bool { return i.From != "" }

// cuttable reports whether pieces may be cut from it.
func (i Item) cuttable() bool {
	if i.Whole != nil {
		return !*i.Whole
	}
	return !i.Rented()
}

// length is a piece's length in m, NaN where nobody gave it.
func (i Item) length() float64 {
	if i.Length == nil {
		return math.NaN()
	}
	return float64(*i.Length)
}

// volume is a packed piece's volume in m³, NaN where nobody gave it.
func (i Item) volume() float64 {
	if i.Packed == nil {
		return math.NaN()
	}
	return float64(i.Packed[0]) * float64(i.Packed[1]) * float64(i.Packed[2])
}

func (i Item) mass() float64 {
	if i.Each == nil {
		return math.NaN()
	}
	return float64(*i.Each)
}

// isCut tells the kinds whose pieces are cut from stock lengths.
func isCut(kind string) bool { return kind == "tube" || kind == "rope" }
