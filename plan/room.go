package plan

import (
	"softloft/document"
	"softloft/quantity"
)

// Room is where it happens. Size is x, y and height; x east, y north, z up from
// the floor. Origin is measured from the south-west corner; nil is the middle.
type Room struct {
	Size        *[3]quantity.Length `key:"size" doc:"x (east), y (north) and height"`
	Origin      *[2]quantity.Length `key:"origin" doc:"where x and y are 0, from the south-west corner; default the middle"`
	Reflectance Reflectances        `key:"reflectance" doc:"shares of light that the room's faces throw back"`
	Outdoors    *Outdoors           `key:"outdoors" doc:"instead of walls and ceiling"`
	Surfaces    []Surface           `key:"surfaces" doc:"set walls, flats: they shade, take spill, hide, block"`
	Obstacles   []Obstacle          `key:"obstacles" doc:"what is in the way, or must be kept clear of"`
	Floor       *Floor              `key:"floor" doc:"what the floor bears"`
	Points      []Point             `key:"points" doc:"what the building's owner states of places that may be loaded"`
	Beams       []Beam              `key:"beams" doc:"limits of all points on a beam together"`
}

// Reflectances are the shares of light that the room's faces throw back.
type Reflectances struct {
	Floor   float64  `key:"floor" default:"0.2" source:"common practice" doc:"of the floor"`
	Walls   float64  `key:"walls" default:"0.3" source:"contract" doc:"of each wall that is not named"`
	Ceiling float64  `key:"ceiling" default:"0.1" source:"contract" doc:"of the ceiling"`
	North   *float64 `key:"north" doc:"of the north wall"`
	South   *float64 `key:"south" doc:"of the south wall"`
	East    *float64 `key:"east" doc:"of the east wall"`
	West    *float64 `key:"west" doc:"of the west wall"`
}

// Outdoors is the weather to withstand.
type Outdoors struct {
	Gust    *quantity.Speed `key:"gust" doc:"at the height of the cloth"`
	From    Bearing         `key:"from" default:"any" source:"contract" doc:"where the wind comes from, as a world angle, or any"`
	Blocked *quantity.Share `key:"blocked" doc:"share of the open height under the cloth that is closed on any side by set walls, vehicles, buildings; absent: the worse of 0 % and 100 % is taken"`
}

// Bearing is a direction that wind comes from; Any is every direction.
type Bearing struct {
	Any bool
	At  quantity.Angle
}

// ReadFrom takes the word any or an angle.
func (b *Bearing) ReadFrom(c *document.Cursor) {
	if c.IsText() && c.Text() == "any" {
		b.Any = true
		return
	}
	c.Into(&b.At)
}

// Surface is a flat polygon in the room.
type Surface struct {
	Name        string               `key:"name,required" doc:"what spill and findings call it"`
	Corners     [][3]quantity.Length `key:"corners,required" doc:"around the edge, three or more in one plane"`
	Reflectance float64              `key:"reflectance" default:"0.3" source:"design assumption" doc:"share of light that it throws back"`
}

// Obstacle is something in the way, or something to keep clear of.
type Obstacle struct {
	Name  string              `key:"name,required" doc:"what findings call it"`
	Kind  ObstacleKind        `key:"kind" default:"duct" source:"contract" doc:"what it is"`
	At    [3]quantity.Length  `key:"at,required" doc:"its middle, in the room"`
	Size  *[3]quantity.Length `key:"size" doc:"x, y and height; absent: a point"`
	Clear *quantity.Length    `key:"clear" doc:"distance to keep"`
}

// ObstacleKind is what an obstacle is.
type ObstacleKind string

// Words lists the kinds.
func (ObstacleKind) Words() []string { return []string{"duct", "sprinkler", "lamp", "wall"} }

// Floor is what the floor may carry.
type Floor struct {
	Allows *quantity.Pressure `key:"allows" doc:"load per area that the owner states"`
}

// Point is a place in the building that may be loaded, as its owner states.
// Allows is nil where nobody stated it.
type Point struct {
	Name      string             `key:"name,required" doc:"what lines call it"`
	At        [3]quantity.Length `key:"at,required" doc:"in the room"`
	Allows    *quantity.Force    `key:"allows" doc:"load that the owner states; absent: not known"`
	Direction Direction          `key:"direction" default:"vertical" source:"contract" doc:"whether it may be pulled sideways"`
	On        string             `key:"on" doc:"the beam that it sits on"`
	Kind      PointKind          `key:"kind" default:"beam" source:"contract" doc:"what it is"`
	StatedBy  string             `key:"stated_by" doc:"who stated what it allows"`
	StatedOn  string             `key:"stated_on" doc:"when"`
}

// Direction is how a point may be pulled.
type Direction string

// Words lists the directions.
func (Direction) Words() []string { return []string{"vertical", "any"} }

// PointKind is what a point is.
type PointKind string

// Words lists the kinds.
func (PointKind) Words() []string { return []string{"beam", "pipe grid", "truss", "eye"} }

// Beam carries several points.
type Beam struct {
	Name   string          `key:"name,required" doc:"what points call it"`
	Allows *quantity.Force `key:"allows" doc:"load of all points on it together"`
}
