package plan

import "softloft/quantity"

// Hang is how the box hangs from points.
type Hang struct {
	Rope      string     `key:"rope" doc:"rope, wire, sling or webbing of every line that names none"`
	Pulley    string     `key:"pulley" default:"none" source:"contract" doc:"pulley of every line that names none; none: dead-hung"`
	Lines     []Line     `key:"lines" doc:"what carries the box"`
	Secondary *Secondary `key:"secondary" doc:"second means that catches the box"`
	Safety    *Safety    `key:"safety" doc:"second means that catches each lamp"`
	Guys      []Guy      `key:"guys" doc:"ropes that hold it against the wind"`
}

// Line is a rope or wire that carries. Length is unstretched, load side; given for
// all lines or for none.
type Line struct {
	Name    string           `key:"name,required" doc:"what the line is called"`
	From    From             `key:"from,required" doc:"where it holds the box: a corner nw, ne, se, sw, or a place in box axes"`
	To      To               `key:"to,required" doc:"a point, or {bridle, apex}"`
	Length  *quantity.Length `key:"length" doc:"unstretched, load side; for all lines or for none; absent: each attachment is held at its planned height"`
	Pulley  string           `key:"pulley" doc:"default hang.pulley"`
	Rope    string           `key:"rope" doc:"default hang.rope"`
	Clamp   string           `key:"clamp" doc:"clamp at the point"`
	Shackle string           `key:"shackle" doc:"shackle at the box"`
	TieOff  *TieOff          `key:"tie_off" doc:"where the haul side ends"`
}

// From is a line's attachment: a corner's name, or a place in box axes with two
// coordinates (Deep false) or three.
type From struct {
	Corner string
	At     [3]quantity.Length
	Deep   bool
}

// CornerNames names the corners, counter-clockwise from the north-east: they stay
// with the box when it turns.
var CornerNames = [4]string{"ne", "nw", "sw", "se"}

// To is where a line goes: a point, or the apex of a bridle between two.
type To struct {
	Point  string
	Bridle *Bridle `key:",inline"`
}

// Bridle is two legs from two points to one apex.
type Bridle struct {
	Points [2]string       `key:"bridle,required" doc:"the two points"`
	Apex   quantity.Length `key:"apex,required" doc:"height of the apex over the floor"`
}

// TieOff is where the haul side ends.
type TieOff struct {
	At     [3]quantity.Length `key:"at,required" doc:"in the room"`
	Allows *quantity.Force    `key:"allows" doc:"load that it may carry; absent: not known"`
}

// Secondary is the second means that catches the box.
type Secondary struct {
	Kit   string          `key:"kit,required" doc:"safety, sling, webbing or rope"`
	Slack quantity.Length `key:"slack" default:"0 in" source:"design assumption" doc:"fall before it is taut"`
}

// Safety is the second means that catches a lamp.
type Safety struct {
	Kit   string          `key:"kit,required" doc:"safety, sling, webbing or rope"`
	Slack quantity.Length `key:"slack" default:"0 in" source:"design assumption" doc:"fall before it is taut"`
}

// Guy holds the box or a stand against the wind.
type Guy struct {
	From   GuyFrom            `key:"from,required" doc:"a corner, a stand's name, or a place in box axes"`
	To     [3]quantity.Length `key:"to,required" doc:"where it is made fast, in the room"`
	Rope   string             `key:"rope" doc:"default hang.rope"`
	Allows *quantity.Force    `key:"allows" doc:"pull that its stake, ring or weight may take; absent: not known"`
}

// GuyFrom is where a guy holds: a corner's or a stand's name, or a place in box
// axes as in From.
type GuyFrom struct {
	Name string
	At   [3]quantity.Length
	Deep bool
}

// Lift is the box on its way up.
type Lift struct {
	Lines         []string        `key:"lines" doc:"lines that lift it; default all"`
	StartFactor   float64         `key:"start_factor" default:"1.25" source:"common practice" doc:"force at the start over force at rest"`
	Lead          quantity.Length `key:"lead" default:"0 in" source:"contract" doc:"how far one corner may run ahead"`
	PeoplePerLine int             `key:"people_per_line" default:"1" source:"contract" doc:"hands on each line"`
}
