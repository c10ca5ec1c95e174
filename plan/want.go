package plan

import "softloft/quantity"

// Want is what the director of photography asks for.
type Want struct {
	Exposure *Exposure       `key:"exposure" doc:"the stop that is asked for and how the camera is set"`
	Even     *quantity.Stops `key:"even" doc:"most difference over the area, brightest to darkest"`
	Spill    []SpillLimit    `key:"spill" doc:"how dark walls and surfaces must stay"`
	Reserve  quantity.Stops  `key:"reserve" default:"0 stop" source:"contract" doc:"to have in hand with all lamps at full level"`
}

// Exposure is the asked stop and how the camera is set. Shutter is the angle in a
// full turn.
type Exposure struct {
	Stop    quantity.TStop `key:"stop,required" doc:"T-stop at the area"`
	ISO     float64        `key:"iso" default:"800" source:"design assumption" doc:"exposure index"`
	FPS     float64        `key:"fps" default:"24" source:"design assumption" doc:"frames per second"`
	Shutter quantity.Angle `key:"shutter" default:"180 deg" source:"common practice" doc:"open angle of a full turn"`
	Filter  quantity.Stops `key:"filter" default:"0 stop" source:"contract" doc:"what filters on the lens take"`
}

// SpillLimit asks that a surface stay a number of stops under the area's mean.
type SpillLimit struct {
	On    string         `key:"on,required" doc:"north, south, east, west, or a surface's name"`
	Under quantity.Stops `key:"under,required" doc:"stops below the area's mean"`
}
