package plan

import "softloft/quantity"

// Hang is how the box hangs from points.
type Hang struct {
	Rope      string     `key:"rope" doc:"rope of every line that names none"`
	Pulley    string     `key:"pulley" default:"none" source:"contract" doc:"pulley of every line that names none"`
	Lines     []Line     `key:"lines"`
	Secondary *Secondary `key:"secondary" unused:"secondary"`
	Safety    *Secondary `key:"safety" unused:"safety"`
	Guys      []Guy      `key:"guys" unused:"guys"`
}

// Line is a rope or wire that carries. Length is unstretched, load side; given for
// all lines or for none.
type Line struct {
	Name    string           `key:"name,required"`
	From    From             `key:"from,required"`
	To      To               `key:"to,required"`
	Length  *quantity.Length `key:"length"`
	Pulley  string           `key:"pulley"`
	Rope    string           `key:"rope"`
	Clamp   string           `key:"clamp"`
	Shackle string           `key:"shackle"`
	TieOff  *TieOff          `key:"tie_off"`
}

// From is a line's attachment: a corner's name, or a place in box axes with two
// coordinates (Deep false) or three.
type From struct {
	Corner string
	At     [3]quantity.Length
	Deep   bool
}

// To is where a line goes: a point, or the apex of a bridle between two.
type To struct {
	Point  string
	Bridle *Bridle
}

// Bridle is two legs from two points to one apex.
type Bridle struct {
	Points [2]string       `key:"bridle,required"`
	Apex   quantity.Length `key:"apex,required" doc:"height of the apex above the floor"`
}

// TieOff is where the haul side ends.
type TieOff struct {
	At     [3]quantity.Length `key:"at,required"`
	Allows *quantity.Force    `key:"allows"`
}

// Secondary is the second means that catches the box or a lamp.
type Secondary struct {
	Kit   string          `key:"kit,required"`
	Slack quantity.Length `key:"slack" default:"0 in" source:"design assumption"`
}

// Guy holds the box or a stand against the wind.
type Guy struct {
	From string             `key:"from,required"`
	To   [3]quantity.Length `key:"to,required"`
	Rope string             `key:"rope"`
}

// Lift is the box on its way up.
type Lift struct {
	Lines         []string        `key:"lines"`
	StartFactor   float64         `key:"start_factor" default:"1.25" source:"common practice"`
	Lead          quantity.Length `key:"lead" default:"0 in" source:"contract"`
	PeoplePerLine int             `key:"people_per_line" default:"1" source:"contract"`
}

// Stand stands on the floor and holds the box or a lamp.
type Stand struct {
	Name    string             `key:"name,required"`
	Kit     string             `key:"kit,required"`
	At      [2]quantity.Length `key:"at,required"`
	Turn    quantity.Angle     `key:"turn" default:"0 deg" source:"contract"`
	Rise    quantity.Length    `key:"rise,required"`
	Castors Castors            `key:"castors" default:"none" source:"contract"`
	Bags    *Bags              `key:"bags"`
	Holds   *Holds             `key:"holds"`
}

// Castors is whether a stand can roll.
type Castors string

// Words lists the states.
func (Castors) Words() []string { return []string{"none", "locked", "rolling"} }

// Bags are the weights on a stand.
type Bags struct {
	Mass  quantity.Mass `key:"mass,required"`
	Count int           `key:"count" default:"1" source:"contract"`
	At    BagPlace      `key:"at" default:"base" source:"contract"`
}

// BagPlace is the base (Leg 0) or a leg, 1 being the first.
type BagPlace struct{ Leg int }

// Holds is what a stand's top holds: an ear of the box or an arm.
type Holds struct {
	Ear string `key:"ear"`
	Arm *Arm   `key:"arm"`
}

// Arm reaches from a stand's top. Bearing is a world angle.
type Arm struct {
	Kit     string          `key:"kit,required"`
	Reach   quantity.Length `key:"reach,required"`
	Rise    quantity.Length `key:"rise" default:"0 ft" source:"contract"`
	Bearing quantity.Angle  `key:"bearing" default:"0 deg" source:"contract"`
	Head    Hand            `key:"head" default:"right" source:"contract"`
}

// Hand is the side of a clamp head as seen from the operator behind it.
type Hand string

// Words lists the hands.
func (Hand) Words() []string { return []string{"right", "left"} }
