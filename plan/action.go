package plan

import "softloft/quantity"

// Action is what is played.
type Action struct {
	Area  *Area  `key:"area" doc:"the area to be lit"`
	Marks []Mark `key:"marks" doc:"performers' places"`
}

// Area is the floor of the action: a rectangle at a height.
type Area struct {
	At     [2]quantity.Length `key:"at" default:"[0 m, 0 m]" source:"contract" doc:"its middle, in the room"`
	Size   [2]quantity.Length `key:"size,required" doc:"along x and y"`
	Height quantity.Length    `key:"height" default:"0 m" source:"design assumption" doc:"height over the floor at which light is asked for"`
}

// Mark is a performer's place. Faces 0 is +x, counter-clockwise from above.
type Mark struct {
	Name  string             `key:"name,required" doc:"what the mark is called"`
	At    [2]quantity.Length `key:"at,required" doc:"in the room"`
	Eyes  quantity.Length    `key:"eyes" default:"1.6 m" source:"design assumption" doc:"height of the eyes over the floor"`
	Faces quantity.Angle     `key:"faces" default:"0 deg" source:"contract" doc:"where the face looks: 0 deg is +x, counter-clockwise from above"`
}

// Camera stands, runs on a track, booms or orbits.
type Camera struct {
	Name    string               `key:"name,required" doc:"what the camera is called"`
	At      *[3]quantity.Length  `key:"at" doc:"place of one that stands; or orbit, or track"`
	Looks   *[3]quantity.Length  `key:"looks" doc:"place that it looks at"`
	Lens    *quantity.Length     `key:"lens" doc:"focal length"`
	Sensor  [2]quantity.Length   `key:"sensor" default:"[24.9 mm, 14 mm]" source:"design assumption" doc:"used width and height"`
	Squeeze float64              `key:"squeeze" default:"1" source:"contract" doc:"of an anamorphic lens"`
	Pan     [2]quantity.Angle    `key:"pan" default:"[0 deg, 0 deg]" source:"contract" doc:"least and most, about the look"`
	Tilt    [2]quantity.Angle    `key:"tilt" default:"[0 deg, 0 deg]" source:"contract" doc:"least and most, about the look"`
	Orbit   *Orbit               `key:"orbit" doc:"circle that it runs on"`
	Track   [][3]quantity.Length `key:"track" doc:"places along its track"`
	Boom    *[2]quantity.Length  `key:"boom" doc:"least and most height over the floor"`
}

// Orbit is a circle that a camera runs on.
type Orbit struct {
	Around [2]quantity.Length `key:"around" default:"[0 m, 0 m]" source:"contract" doc:"its middle, in the room"`
	Radius quantity.Length    `key:"radius,required" doc:"from the middle to the camera"`
	Height quantity.Length    `key:"height,required" doc:"of the camera over the floor"`
	From   quantity.Angle     `key:"from" default:"0 deg" source:"contract" doc:"where it starts: 0 deg is +x, counter-clockwise from above"`
	To     quantity.Angle     `key:"to" default:"360 deg" source:"contract" doc:"where it ends"`
}
