package plan

import (
	"fmt"

	"softloft/quantity"
)

// Lamp is a lamp's place in the box. At and Above are the center of its opening
// in box axes. Aims.Tilt 0 is straight down, leaning toward +x; Pan turns that
// counter-clockwise seen from above.
type Lamp struct {
	Name  string             `key:"name" doc:"default kit and number"`
	Kit   string             `key:"kit,required" doc:"the lamp"`
	At    [2]quantity.Length `key:"at,required" doc:"center of its opening, in box axes"`
	Above quantity.Length    `key:"above,required" doc:"height of its opening over the cloth plane"`
	Aims  Aims               `key:"aims" doc:"where it points"`
	Roll  quantity.Angle     `key:"roll" default:"0 deg" source:"contract" doc:"about its axis"`
	Level quantity.Share     `key:"level" default:"100%" source:"contract" doc:"share of its full light"`
	On    *On                `key:"on" doc:"what carries it: {rib}, {bar}, {arm} or {frame}; absent: not known"`
}

// Title returns what a lamp is called: its name, or kit and number. Number counts
// the lamps of its list from 1.
func (l *Lamp) Title(number int) string {
	if l.Name != "" {
		return l.Name
	}
	return fmt.Sprintf("%s %d", l.Kit, number)
}

// Aims is where a lamp points.
type Aims struct {
	Tilt quantity.Angle `key:"tilt" default:"0 deg" source:"contract" doc:"0 deg is straight down, leaning toward +x"`
	Pan  quantity.Angle `key:"pan" default:"0 deg" source:"contract" doc:"turns the tilt counter-clockwise seen from above"`
}

// On is what carries a lamp: exactly one of Rib (1 is the first), Bar (a tube),
// Arm (1 is the first) and Frame (a side's name) is set.
type On struct {
	Rib   int    `key:"rib" doc:"number of the rib; 1 is the first"`
	Bar   string `key:"bar" doc:"tube across the two tubes nearest on either side"`
	Ends  Fixity `key:"ends" default:"pinned" source:"design assumption" when:"bar" doc:"whether the bar's ends hold a moment"`
	Arm   int    `key:"arm" doc:"number of the arm, in the order of stands; 1 is the first"`
	Frame string `key:"frame" doc:"side of the bottom frame: north, south, east or west"`
}

// Provision is what may still go up: named lamps, and a multiple of today's
// lamps' mass and power.
type Provision struct {
	Lamps   []Lamp   `key:"lamps" doc:"lamps at their places"`
	Reserve *float64 `key:"reserve" doc:"multiple of today's lamps' mass and power"`
}

// Added is a load that hangs besides, in box axes.
type Added struct {
	Name string             `key:"name,required" doc:"what it is"`
	Mass quantity.Mass      `key:"mass,required" doc:"what it weighs"`
	At   [3]quantity.Length `key:"at,required" doc:"its center of gravity, in box axes"`
}

// Measured is a mass that somebody weighed.
type Measured struct {
	Part string        `key:"part,required" doc:"a lamp's kit id (each of them), box, or a part's name"`
	Mass quantity.Mass `key:"mass,required" doc:"the reading"`
	By   string        `key:"by" doc:"who weighed it"`
	On   string        `key:"on" doc:"when"`
}
