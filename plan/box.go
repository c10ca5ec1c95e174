package plan

import "softloft/quantity"

// Box is the source: frames, sides, cloth and crate. Size is between tube
// center-lines. Exactly one of Trim and ClothAt is given. Depth runs from the
// cloth plane to the upper frame or the ribs; nil where there is neither.
type Box struct {
	Size     [2]quantity.Length  `key:"size,required" doc:"between the center-lines of the bottom frame's tubes"`
	At       [2]quantity.Length  `key:"at" default:"[0 m, 0 m]" source:"contract" doc:"middle of the cloth plane, in the room"`
	Trim     *quantity.Length    `key:"trim" doc:"height of the lowest edge when level: the cloth plane, or the lower edge of crate or skirt; or cloth_at"`
	ClothAt  *quantity.Length    `key:"cloth_at" doc:"height of the cloth plane; or trim"`
	Turn     quantity.Angle      `key:"turn" default:"0 deg" source:"contract" doc:"about the vertical, counter-clockwise from above"`
	Tilt     *Tilt               `key:"tilt" doc:"about the box's own x or y, after the turn"`
	Depth    *quantity.Length    `key:"depth" doc:"cloth plane to upper frame or ribs"`
	Frame    string              `key:"frame" doc:"tube of the bottom frame"`
	Corners  Fixity              `key:"corners" default:"rigid" source:"contract" doc:"whether the bottom frame's corners hold a moment"`
	Join     Join                `key:"join" default:"none" source:"contract" doc:"what holds the bottom frame to the upper frame or the ribs: none, {uprights} or {drops}"`
	Upper    *Upper              `key:"upper" doc:"upper frame: none, or its tube"`
	Ribs     *Ribs               `key:"ribs" doc:"tubes across that lamps hang on"`
	Cloth    []ClothLayer        `key:"cloth" doc:"diffusion, lamp side first: ids, or {kit, gap}; may be empty"`
	ClothTie ClothTie            `key:"cloth_tie" default:"slack" source:"contract" doc:"how the cloth is tied: slack, {sag}, or {cut, pretension}"`
	Clear    *[2]quantity.Length `key:"clear" doc:"area that passes light; default size less twice the cloth's hem"`
	Leak     *quantity.Length    `key:"leak" unused:"leak" doc:"gap at the ties that no wrap covers; 0 with derive: none, else derived"`
	Sides    Sides               `key:"sides" default:"white" source:"contract" doc:"inner face of the side cloths: white, black, silver, none, {reflectance}, or one of these by side"`
	Roof     Face                `key:"roof" default:"open" source:"contract" doc:"inner face of the roof cloth: open, white, black, silver or {reflectance}"`
	Skirt    Skirts              `key:"skirt" doc:"black drop below the cloth plane: one length, or one by side; default none"`
	Crate    string              `key:"crate" doc:"egg-crate under the cloth"`
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
	About Axis           `key:"about" default:"x" source:"contract" doc:"the box's own axis through the middle of the cloth plane"`
	By    quantity.Angle `key:"by" default:"0 deg" source:"contract" doc:"right-hand rule"`
}

// Join is what holds the bottom frame to the upper frame or the ribs: nothing
// where both are nil.
type Join struct {
	Uprights *Uprights `key:"uprights" doc:"tubes between the two levels"`
	Drops    *Drops    `key:"drops" doc:"slings or chains that the bottom frame hangs on"`
}

// Uprights are tubes between two frames.
type Uprights struct {
	Tube  string `key:"tube,required" doc:"their tube"`
	Count int    `key:"count" default:"4" source:"contract" doc:"how many, corners first"`
}

// Drops are slings or chains on which the bottom frame hangs. Length is nil where
// it follows from the depth.
type Drops struct {
	Kit    string           `key:"kit,required" doc:"sling, webbing, safety or rope"`
	Count  int              `key:"count" default:"4" source:"design assumption" doc:"how many, corners first"`
	Length *quantity.Length `key:"length" doc:"default the depth"`
}

// Upper is the upper frame. A box without one has none: Tube is empty.
type Upper struct {
	Tube    string `key:"tube,required" doc:"its tube"`
	Corners Fixity `key:"corners" default:"rigid" source:"contract" doc:"whether its corners hold a moment"`
	Welded  bool   `key:"welded" default:"false" source:"contract" doc:"whether its corners are welded"`
}

// Ribs are tubes across the top that lamps hang on.
type Ribs struct {
	Tube  string     `key:"tube,required" doc:"their tube"`
	At    []RibPlace `key:"at" doc:"positions across: y where they run along x, x where along y; the first is rib 1; or count"`
	Count int        `key:"count" doc:"how many, evenly at i/(n+1) of the width; or at"`
	Along Axis       `key:"along" default:"x" source:"contract" doc:"the axis that they run along"`
	Level Level      `key:"level" default:"upper" source:"contract" doc:"upper: at the depth; lower: in the cloth plane"`
	Ends  Fixity     `key:"ends" default:"rigid" source:"contract" doc:"whether their ends hold a moment"`
}

// RibPlace is a rib's position across the box.
type RibPlace = quantity.Length

// Level is which frame a rib belongs to.
type Level string

// Words lists the levels.
func (Level) Words() []string { return []string{"upper", "lower"} }
