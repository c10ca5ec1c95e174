package plan

import "softloft/quantity"

// Box is the source: frames, sides, cloth and crate. Size is between tube
// center-lines. Exactly one of Trim and ClothAt is given. Depth runs from the
// cloth plane to the upper frame or the ribs; nil where there is neither.
type Box struct {
	Size     [2]quantity.Length  `key:"size,required"`
	At       [2]quantity.Length  `key:"at" default:"[0 m, 0 m]" source:"contract"`
	Trim     *quantity.Length    `key:"trim" doc:"height of the lowest edge when level"`
	ClothAt  *quantity.Length    `key:"cloth_at" doc:"height of the cloth plane"`
	Turn     quantity.Angle      `key:"turn" default:"0 deg" source:"contract"`
	Tilt     *Tilt               `key:"tilt"`
	Depth    *quantity.Length    `key:"depth"`
	Frame    string              `key:"frame" doc:"tube of the bottom frame"`
	Corners  Fixity              `key:"corners" default:"rigid" source:"contract"`
	Join     Join                `key:"join" default:"none" source:"contract"`
	Upper    *Upper              `key:"upper"`
	Ribs     *Ribs               `key:"ribs"`
	Cloth    []ClothLayer        `key:"cloth" doc:"lamp side first; may be empty"`
	ClothTie ClothTie            `key:"cloth_tie" default:"slack" source:"contract"`
	Clear    *[2]quantity.Length `key:"clear" doc:"area that passes light"`
	Leak     *quantity.Length    `key:"leak" unused:"leak" doc:"gap at the ties that no wrap covers"`
	Sides    Sides               `key:"sides" default:"white" source:"contract"`
	Roof     Face                `key:"roof" default:"open" source:"contract"`
	Skirt    Skirts              `key:"skirt" doc:"drop below the cloth plane"`
	Crate    string              `key:"crate"`
}

// Fixity is whether a joint holds a moment.
type Fixity string

// Words lists the fixities.
func (Fixity) Words() []string { return []string{"rigid", "pinned"} }

// Axis is one of the box's own horizontal axes.
type Axis string

// Words lists the axes.
func (Axis) Words() []string { return []string{"x", "y"} }

// Tilt turns the box about its own x or y through its origin.
type Tilt struct {
	About Axis           `key:"about" default:"x" source:"contract"`
	By    quantity.Angle `key:"by" default:"0 deg" source:"contract"`
}

// Join is what holds the bottom frame to the upper frame or the ribs: nothing
// where both are nil.
type Join struct {
	Uprights *Uprights
	Drops    *Drops
}

// Uprights are tubes between two frames.
type Uprights struct {
	Tube  string `key:"tube,required"`
	Count int    `key:"count" default:"4" source:"contract"`
}

// Drops are slings or chains on which the bottom frame hangs. Length is nil where
// it follows from the depth.
type Drops struct {
	Kit    string           `key:"kit,required"`
	Count  int              `key:"count" default:"4" source:"design assumption"`
	Length *quantity.Length `key:"length"`
}

// Upper is the upper frame. A box without one has none: Tube is empty.
type Upper struct {
	Tube    string
	Corners Fixity
	Welded  bool
}

// Ribs are tubes across the top that lamps hang on.
type Ribs struct {
	Tube  string     `key:"tube,required"`
	At    []RibPlace `key:"at" doc:"positions across"`
	Count int        `key:"count" doc:"evenly, at i/(n+1) of the width"`
	Along Axis       `key:"along" default:"x" source:"contract"`
	Level Level      `key:"level" default:"upper" source:"contract"`
	Ends  Fixity     `key:"ends" default:"rigid" source:"contract"`
}

// RibPlace is a rib's position across the box.
type RibPlace = quantity.Length

// Level is which frame a rib belongs to.
type Level string

// Words lists the levels.
func (Level) Words() []string { return []string{"upper", "lower"} }

// ClothLayer is one cloth, with the gap to the next one below.
type ClothLayer struct {
	Kit string
	Gap quantity.Length
}

// ClothTie is how the cloth is tied: slack, to a sag, or cut to a size with a
// pretension. All nil is slack.
type ClothTie struct {
	Sag        *quantity.Length
	Cut        *[2]quantity.Length
	Pretension *quantity.LineForce
}

// Face is an inner face of the box: one of the words white, black, silver, none
// (or open, for a roof), or a reflectance that somebody measured.
type Face struct {
	Word        string
	Reflectance *float64
}

// Sides are the four side cloths, in the order of Sides' names: north (+y),
// south, east (+x), west.
type Sides [4]Face

// SideNames names the four sides in the order in which they are kept everywhere.
var SideNames = [4]string{"north", "south", "east", "west"}

// Skirts are the drops below the cloth plane, by side; 0 is none.
type Skirts [4]quantity.Length

// Lamp is a lamp's place in the box. At and Above are the center of its opening
// in box axes. Aims.Tilt 0 is straight down, leaning toward +x; Pan turns that
// counter-clockwise seen from above.
type Lamp struct {
	Name  string             `key:"name" doc:"default kit and number"`
	Kit   string             `key:"kit,required"`
	At    [2]quantity.Length `key:"at,required"`
	Above quantity.Length    `key:"above,required"`
	Aims  Aims               `key:"aims"`
	Roll  quantity.Angle     `key:"roll" default:"0 deg" source:"contract"`
	Level quantity.Share     `key:"level" default:"100%" source:"contract"`
	On    *On                `key:"on"`
}

// Aims is where a lamp points.
type Aims struct {
	Tilt quantity.Angle `key:"tilt" default:"0 deg" source:"contract"`
	Pan  quantity.Angle `key:"pan" default:"0 deg" source:"contract"`
}

// On is what carries a lamp: exactly one of Rib (1 is the first), Bar (a tube),
// Arm (1 is the first) and Frame (a side's name) is set.
type On struct {
	Rib   int    `key:"rib"`
	Bar   string `key:"bar"`
	Ends  Fixity `key:"ends" default:"pinned" source:"design assumption"`
	Arm   int    `key:"arm"`
	Frame string `key:"frame"`
}

// Provision is what may still go up: named lamps, and a multiple of today's
// lamps' mass and power.
type Provision struct {
	Lamps   []Lamp   `key:"lamps"`
	Reserve *float64 `key:"reserve"`
}

// Added is a load that hangs besides, in box axes.
type Added struct {
	Name string             `key:"name,required"`
	Mass quantity.Mass      `key:"mass,required"`
	At   [3]quantity.Length `key:"at,required"`
}

// Measured is a mass that somebody weighed.
type Measured struct {
	Part string        `key:"part,required" doc:"a lamp's kit id, box, or a part's name"`
	Mass quantity.Mass `key:"mass,required"`
	By   string        `key:"by"`
	On   string        `key:"on"`
}
