package plan

import (
	"softloft/plan/key"
	"softloft/quantity"
)

// Crew is who is there, how fast they work, and who says go.
type Crew struct {
	People int   `key:"people" default:"4" source:"design assumption" doc:"pairs of hands, you included"`
	Names  Names `key:"names" doc:"who signs where the build stops until somebody says go"`
	Rates  Rates `key:"rates" doc:"how fast this crew works: the defaults are invented, put in your own"`
}

// Names are those who sign at a hold. Empty: a line on paper is left blank for it.
type Names struct {
	Caller  string `key:"caller" doc:"calls every lift, says when people may go beneath, signs at the end"`
	Rigging string `key:"rigging" doc:"signs for points, for the bump and for what catches"`
	Power   string `key:"power" doc:"ties in, signs for power, kills it in an emergency"`
	Floor   string `key:"floor" doc:"keeps the floor clear"`
}

// All are the names with their keys, in the order of the file.
func (n Names) All() [4][2]string {
	return [4][2]string{{"caller", n.Caller}, {"rigging", n.Rigging}, {"power", n.Power}, {"floor", n.Floor}}
}

// Rates are times of one team for one piece of work. No publication has them: each
// default is invented for demonstration.
type Rates struct {
	Piece    quantity.Duration `key:"piece" default:"45 s" source:"demo value, invented rate" doc:"a tube, stand leg or other piece brought to its place"`
	Fitting  quantity.Duration `key:"fitting" default:"40 s" source:"demo value, invented rate" doc:"a corner, tee, clamp, shackle, pulley, retainer or safety set"`
	Lamp     quantity.Duration `key:"lamp" default:"120 s" source:"demo value, invented rate" doc:"a lamp hung or brought onto its arm"`
	Address  quantity.Duration `key:"address" default:"60 s" source:"demo value, invented rate" doc:"a lamp addressed, leveled and lit on the horses"`
	Sheet    quantity.Duration `key:"sheet" default:"240 s" source:"demo value, invented rate" doc:"a cloth, crate, wrap, roof or skirt spread out and put on"`
	Tie      quantity.Duration `key:"tie" default:"12 s" source:"demo value, invented rate" doc:"a tie made"`
	Line     quantity.Duration `key:"line" default:"150 s" source:"demo value, invented rate" doc:"a line, guy or secondary run out, or made fast"`
	Overhead quantity.Duration `key:"overhead" default:"300 s" source:"demo value, invented rate" doc:"a place overhead reached, on top of the work there"`
	Stand    quantity.Duration `key:"stand" default:"150 s" source:"demo value, invented rate" doc:"a stand or its arm set up"`
	Bag      quantity.Duration `key:"bag" default:"30 s" source:"demo value, invented rate" doc:"a bag brought and hung"`
	Cable    quantity.Speed    `key:"cable" default:"0.2 m/s" source:"demo value, invented rate" doc:"cable laid and tied"`
	Haul     quantity.Speed    `key:"haul" default:"0.05 m/s" source:"demo value, invented rate" doc:"the box on its way up or down"`
	Level    quantity.Duration `key:"level" default:"60 s" source:"demo value, invented rate" doc:"one stop to level on the way"`
	Hold     quantity.Duration `key:"hold" default:"180 s" source:"demo value, invented rate" doc:"a look all over before somebody signs; marking the floor; clearing it"`
	Slack    quantity.Share    `key:"slack" default:"30%" source:"demo value, invented rate" doc:"time on top of everything"`
	Strike   quantity.Share    `key:"strike" default:"60%" source:"demo value, invented rate" doc:"time to strike, as a share of the time to build"`
}

// StandardRates are the rates of a plan that sets none.
func StandardRates() Rates {
	var crew Crew
	if _, err := key.Fill(nil, &crew); err != nil {
		return Rates{} // a fault of the tags above, which the tests of package key see
	}
	return crew.Rates
}
