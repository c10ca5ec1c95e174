package plan

import (
	"math"

	"softloft/kit"
	"softloft/quantity"
)

// ClothHeight returns the height of the cloth plane over the floor: as given, or
// over trim by the deepest of crate and skirts.
func (b *Box) ClothHeight(k kit.Kit) quantity.Length {
	if b.ClothAt != nil {
		return *b.ClothAt
	}
	var below quantity.Length
	if crate, ok := k.Crate[b.Crate]; ok {
		below = crate.Depth
	}
	for _, drop := range b.Skirt {
		below = max(below, drop)
	}
	if b.Trim == nil {
		return below
	}
	return *b.Trim + below
}

// Hem returns the widest hem of a box's cloths.
func Hem(b *Box, k kit.Kit) quantity.Length {
	var hem quantity.Length
	for _, layer := range b.Cloth {
		hem = max(hem, k.Cloth[layer.Kit].Hem)
	}
	return hem
}

// RibCount returns how many ribs the box has.
func (b *Box) RibCount() int {
	switch {
	case b.Ribs == nil:
		return 0
	case len(b.Ribs.At) > 0:
		return len(b.Ribs.At)
	}
	return b.Ribs.Count
}

// attachment returns where a line holds the box, in box axes in m.
func (b *Box) attachment(f From) vector {
	at := vector{float64(f.At[0]), float64(f.At[1]), float64(f.At[2])}
	x, y := float64(b.Size[0])/2, float64(b.Size[1])/2
	switch f.Corner {
	case "ne":
		at = vector{x, y}
	case "nw":
		at = vector{-x, y}
	case "sw":
		at = vector{-x, -y}
	case "se":
		at = vector{x, -y}
	}
	if !f.Deep && b.Upper != nil && b.Upper.Tube != "" && b.Depth != nil {
		at[2] = float64(*b.Depth)
	}
	return at
}

// inRoom takes a place from box axes into the room, as planned: tilted about the
// box's own axis, turned about the vertical, put where the box is.
func (b *Box) inRoom(at vector, k kit.Kit) vector {
	if b.Tilt != nil {
		sin, cos := math.Sincos(float64(b.Tilt.By))
		if b.Tilt.About == "y" {
			at[2], at[0] = cos*at[2]-sin*at[0], sin*at[2]+cos*at[0]
		} else {
			at[1], at[2] = cos*at[1]-sin*at[2], sin*at[1]+cos*at[2]
		}
	}
	sin, cos := math.Sincos(float64(b.Turn))
	return vector{
		float64(b.At[0]) + cos*at[0] - sin*at[1],
		float64(b.At[1]) + sin*at[0] + cos*at[1],
		float64(b.ClothHeight(k)) + at[2],
	}
}
