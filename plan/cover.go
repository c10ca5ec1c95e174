package plan

import "softloft/quantity"

// ClothLayer is one cloth, with the gap to the next one below.
type ClothLayer struct {
	Kit string          `key:"kit,required" doc:"the cloth"`
	Gap quantity.Length `key:"gap" default:"0 m" source:"contract" doc:"to the next cloth below"`
}

// ClothTie is how the cloth is tied: slack, to a sag, or cut to a size with a
// pretension. All nil is slack.
type ClothTie struct {
	Sag        *quantity.Length    `key:"sag" doc:"of its middle below its edges"`
	Cut        *[2]quantity.Length `key:"cut" doc:"size that it was cut to; with pretension"`
	Pretension *quantity.LineForce `key:"pretension" doc:"pull along each edge; with cut"`
}

// Face is an inner face of the box: one of the words white, black, silver, none
// (for a side) and open (for the roof), or a reflectance that somebody measured.
type Face struct {
	Word        string
	Reflectance *float64 `key:"reflectance,required" doc:"share of light that the face throws back"`
}

// Sides are the four side cloths, in the order of SideNames: north (+y), south,
// east (+x), west.
type Sides [4]Face

// SideNames names the four sides in the order in which they are kept everywhere.
var SideNames = [4]string{"north", "south", "east", "west"}

// SideWords are the words for a side's face, RoofWords those for the roof's: the
// first is the default.
func SideWords() []string { return []string{"white", "black", "silver", "none"} }

// RoofWords are the words for the roof's face; the first is the default.
func RoofWords() []string { return []string{"open", "white", "black", "silver"} }

// Skirts are the drops below the cloth plane, by side; 0 is none.
type Skirts [4]quantity.Length
