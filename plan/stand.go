package plan

import (
	"fmt"
	"strconv"
	"strings"

	"softloft/document"
	"softloft/quantity"
)

// Stand stands on the floor and holds the box or a lamp.
type Stand struct {
	Name    string             `key:"name" doc:"default kit and number"`
	Kit     string             `key:"kit,required" doc:"the stand"`
	At      [2]quantity.Length `key:"at,required" doc:"its mast, in the room"`
	Turn    quantity.Angle     `key:"turn" default:"0 deg" source:"contract" doc:"leg 1 lies along +x at 0 deg, the others counter-clockwise"`
	Rise    quantity.Length    `key:"rise,required" doc:"height of its top"`
	Castors Castors            `key:"castors" default:"none" source:"contract" doc:"whether it can roll"`
	Bags    *Bags              `key:"bags" doc:"weights on it"`
	Holds   *Holds             `key:"holds" doc:"what its top holds: {ear} or {arm}"`
}

// Title returns what a stand is called: its name, or kit and number. Number
// counts the stands from 1.
func (s *Stand) Title(number int) string {
	if s.Name != "" {
		return s.Name
	}
	return fmt.Sprintf("%s %d", s.Kit, number)
}

// Castors is whether a stand can roll.
type Castors string

// Words lists the states.
func (Castors) Words() []string { return []string{"none", "locked", "rolling"} }

// Bags are the weights on a stand.
type Bags struct {
	Mass  quantity.Mass `key:"mass,required" doc:"of one bag"`
	Count int           `key:"count" default:"1" source:"contract" doc:"how many"`
	At    BagPlace      `key:"at" default:"base" source:"contract" doc:"base, or leg and its number"`
}

// BagPlace is the base (Leg 0) or a leg, 1 being the first.
type BagPlace struct{ Leg int }

// ReadFrom takes base or leg and its number.
func (p *BagPlace) ReadFrom(c *document.Cursor) {
	if c.Text() == "base" {
		p.Leg = 0
		return
	}
	number, ok := strings.CutPrefix(c.Text(), "leg ")
	leg, err := strconv.Atoi(number)
	if !ok || err != nil || leg < 1 {
		c.Wrong("no such place "+quoted(c.Text()), "base, or leg 1 for the first leg")
		return
	}
	p.Leg = leg
}

// Holds is what a stand's top holds: an ear of the box or an arm.
type Holds struct {
	Ear string `key:"ear" doc:"side of the box whose ear it holds: north, south, east or west"`
	Arm *Arm   `key:"arm" doc:"an arm that a lamp hangs on"`
}

// Arm reaches from a stand's top. Bearing is a world angle.
type Arm struct {
	Kit     string          `key:"kit,required" doc:"the arm"`
	Reach   quantity.Length `key:"reach,required" doc:"from the mast to the lamp"`
	Rise    quantity.Length `key:"rise" default:"0 ft" source:"contract" doc:"of its end over the stand's top"`
	Bearing quantity.Angle  `key:"bearing" default:"0 deg" source:"contract" doc:"where it reaches: 0 deg is +x, counter-clockwise from above"`
	Head    Hand            `key:"head" default:"right" source:"contract" doc:"side of the clamp head that it leaves on, seen from the operator behind the clamp"`
}

// Hand is the side of a clamp head as seen from the operator behind it.
type Hand string

// Words lists the hands.
func (Hand) Words() []string { return []string{"right", "left"} }
