package light

import "softloft/finding"

// Number is a number of the answers: null where it is not known.
type Number = finding.Number

// Vec is a place or direction of the answers, in the room: x, y, z.
type Vec [3]Number

// Answer is what the light analysis tells, as in the answers JSON: SI, degrees.
type Answer struct {
	Probes    []ProbeAnswer `json:"probes"`
	Area      *AreaAnswer   `json:"area"`
	Marks     []MarkAnswer  `json:"marks"`
	Spill     []SpillAnswer `json:"spill"`
	Cloth     *ClothAnswer  `json:"cloth"`
	Flux      *FluxAnswer   `json:"flux"`
	Constants Constants     `json:"constants"`
	Missing   []string      `json:"missing"`
}

// Constants are the meter constants that the stops rest on.
type Constants struct {
	Flat Number `json:"c_flat"`
	Dome Number `json:"c_dome"`
}

// ProbeAnswer is one meter point or patch; x runs fastest.
type ProbeAnswer struct {
	Name     string   `json:"name"`
	N        [2]int   `json:"n"`
	Points   []Vec    `json:"points"`
	Facing   Vec      `json:"facing"`
	Receptor string   `json:"receptor"`
	Lux      []Number `json:"lux"`
}

// AreaAnswer is the light on the action: flat, facing up.
type AreaAnswer struct {
	Mean    Number `json:"lux_mean"`
	Min     Number `json:"lux_min"`
	Max     Number `json:"lux_max"`
	Even    Number `json:"even_stops"`
	Stop    Number `json:"stop"`
	Level   Number `json:"level_for_want"`
	Reserve Number `json:"reserve_stops"`
}

// MarkAnswer is the light on a performer: a dome at the eyes that looks where the
// performer faces.
type MarkAnswer struct {
	Name           string `json:"name"`
	Stop           Number `json:"stop"`
	Dome           Number `json:"lux_dome"`
	VectorScalar   Number `json:"vector_scalar"`
	VectorAltitude Number `json:"vector_altitude_deg"`
	// Looks, Edges and SourceSeen are worked out in looks.go and softness.go.
	Looks      *LooksAnswer `json:"looks"`
	Edges      *EdgesAnswer `json:"edges_m"`
	SourceSeen Number       `json:"source_seen_by_eye"`
}

// SpillAnswer is the light on a wall or surface, under the area's mean.
type SpillAnswer struct {
	On         string `json:"on"`
	Mean       Number `json:"lux_mean"`
	Max        Number `json:"lux_max"`
	StopsBelow Number `json:"stops_below"`
}

// ClothAnswer is what arrives on the lowest cloth. HotSpot is how far its brightest
// place lies over the mean.
type ClothAnswer struct {
	Mean       Number `json:"lux_mean"`
	Min        Number `json:"lux_min"`
	Max        Number `json:"lux_max"`
	Efficiency Number `json:"efficiency"`
	HotSpot    Number `json:"hot_spot_stops"`
}

// FluxAnswer is where the lamps' light goes, in lm. Lost leaves over the sides or
// through an open roof.
type FluxAnswer struct {
	Lamps    Number `json:"lamps_lm"`
	Out      Number `json:"out_lm"`
	Absorbed Number `json:"absorbed_lm"`
	Lost     Number `json:"lost_lm"`
	Closure  Number `json:"closure_before_correction"`
	// RoomClosure is that of the room's exchange; null outdoors.
	RoomClosure Number `json:"room_closure"`
}
