package plan

import "softloft/quantity"

// Room is where it happens. Size is x, y and height; x east, y north, z up from
// the floor. Origin is measured from the south-west corner; nil is the middle.
type Room struct {
	Size        *[3]quantity.Length `key:"size"`
	Origin      *[2]quantity.Length `key:"origin" doc:"from the south-west corner; default the middle"`
	Reflectance Reflectances        `key:"reflectance"`
	Outdoors    *Outdoors           `key:"outdoors" doc:"instead of walls and ceiling"`
	Surfaces    []Surface           `key:"surfaces" doc:"set walls, flats: shade, take spill, hide, block"`
	Obstacles   []Obstacle          `key:"obstacles" unused:"fit"`
	Floor       *Floor              `key:"floor" unused:"fit"`
	Points      []Point             `key:"points" doc:"what the building's owner states"`
	Beams       []Beam              `key:"beams" doc:"limit of all points on a beam together"`
}

// Reflectances are the shares of light that the room's faces throw back.
type Reflectances struct {
	Floor   float64  `key:"floor" default:"0.2" source:"common practice"`
	Walls   float64  `key:"walls" default:"0.3" source:"contract"`
	Ceiling float64  `key:"ceiling" default:"0.1" source:"contract"`
	North   *float64 `key:"north"`
	South   *float64 `key:"south"`
	East    *float64 `key:"east"`
	West    *float64 `key:"west"`
}

// Outdoors is the weather to withstand.
type Outdoors struct {
	Gust *quantity.Speed `key:"gust" unused:"wind"`
	From Bearing         `key:"from" default:"any" source:"contract" unused:"wind"`
}

// Bearing is a direction that wind comes from; Any is every direction.
type Bearing struct {
	Any bool
	At  quantity.Angle
}

// Surface is a flat polygon in the room.
type Surface struct {
	Name        string               `key:"name,required"`
	Corners     [][3]quantity.Length `key:"corners,required"`
	Reflectance float64              `key:"reflectance" default:"0.3" source:"design assumption"`
}

// Obstacle is something in the way, or something to keep clear of.
type Obstacle struct {
	Name  string              `key:"name,required"`
	Kind  ObstacleKind        `key:"kind,required"`
	At    [3]quantity.Length  `key:"at,required"`
	Size  *[3]quantity.Length `key:"size"`
	Clear *quantity.Length    `key:"clear"`
}

// ObstacleKind is what an obstacle is.
type ObstacleKind string

// Words lists the kinds.
func (ObstacleKind) Words() []string { return []string{"duct", "sprinkler", "lamp", "wall"} }

// Floor is what the floor may carry.
type Floor struct {
	Allows *quantity.Pressure `key:"allows"`
}

// Point is a place in the building that may be loaded, as its owner states.
// Allows is nil where nobody stated it.
type Point struct {
	Name      string             `key:"name,required"`
	At        [3]quantity.Length `key:"at,required"`
	Allows    *quantity.Force    `key:"allows"`
	Direction Direction          `key:"direction" default:"vertical" source:"contract"`
	On        string             `key:"on" doc:"the beam that it sits on"`
	Kind      PointKind          `key:"kind" default:"beam" source:"contract"`
	StatedBy  string             `key:"stated_by"`
	StatedOn  string             `key:"stated_on"`
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
	Name   string          `key:"name,required"`
	Allows *quantity.Force `key:"allows"`
}

// Action is what is played.
type Action struct {
	Area  *Area  `key:"area"`
	Marks []Mark `key:"marks"`
}

// Area is the floor of the action: a rectangle at a height.
type Area struct {
	At     [2]quantity.Length `key:"at" default:"[0 m, 0 m]" source:"contract"`
	Size   [2]quantity.Length `key:"size,required"`
	Height quantity.Length    `key:"height" default:"0 m" source:"design assumption"`
}

// Mark is a performer's place. Faces 0 is +x, counter-clockwise from above.
type Mark struct {
	Name  string             `key:"name,required"`
	At    [2]quantity.Length `key:"at,required"`
	Eyes  quantity.Length    `key:"eyes" default:"1.6 m" source:"design assumption"`
	Faces quantity.Angle     `key:"faces" default:"0 deg" source:"contract"`
}

// Camera stands, runs on a track, booms or orbits.
type Camera struct {
	Name    string               `key:"name,required"`
	At      *[3]quantity.Length  `key:"at"`
	Looks   *[3]quantity.Length  `key:"looks"`
	Lens    *quantity.Length     `key:"lens"`
	Sensor  [2]quantity.Length   `key:"sensor" default:"[24.9 mm, 14 mm]" source:"design assumption"`
	Squeeze float64              `key:"squeeze" default:"1" source:"contract"`
	Pan     [2]quantity.Angle    `key:"pan" default:"[0 deg, 0 deg]" source:"contract"`
	Tilt    [2]quantity.Angle    `key:"tilt" default:"[0 deg, 0 deg]" source:"contract"`
	Orbit   *Orbit               `key:"orbit"`
	Track   [][3]quantity.Length `key:"track"`
	Boom    *[2]quantity.Length  `key:"boom"`
}

// Orbit is a circle that a camera runs on.
type Orbit struct {
	Around [2]quantity.Length `key:"around" default:"[0 m, 0 m]" source:"contract"`
	Radius quantity.Length    `key:"radius,required"`
	Height quantity.Length    `key:"height,required"`
	From   quantity.Angle     `key:"from" default:"0 deg" source:"contract"`
	To     quantity.Angle     `key:"to" default:"360 deg" source:"contract"`
}
