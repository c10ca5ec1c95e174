package plan

import (
	"math"
	"slices"
)

// guy checks a guy: what it holds, its rope, and that it is made fast to something.
func (c *checker) guy(path string, g *Guy) {
	if g.From.Name != "" {
		c.known(path+".from", "corner or stand", g.From.Name, append(slices.Clone(CornerNames[:]), c.standNames()...))
	}
	c.known(path+".rope", "rope", g.Rope, c.suspenders())
	given(c, notNegative, path+".allows", "a limit", g.Allows)
	if !c.Doc.Has(path + ".to") {
		return
	}
	at := vector{float64(g.To[0]), float64(g.To[1]), float64(g.To[2])}
	switch {
	case at[2] < -madeFast:
		c.wrong(path+".to", "a guy made fast "+c.length(-at[2])+" under the floor", "the floor (height 0), or something that stands on it")
	case at[2] > madeFast && !c.somethingAt(at):
		c.wrong(path+".to", "a guy made fast to the air, "+c.length(at[2])+" over the floor", "the floor (height 0), or a point, an obstacle or a surface of the room that is there")
	}
}

// madeFast is how near a guy's end must be to what it is made fast to, in m: stakes stand
// out of the ground, rings off a wall.
const madeFast = 0.3

// somethingAt tells whether a point, an obstacle or a surface of the room is at a place.
func (c *checker) somethingAt(at vector) bool {
	room := c.Plan.Room
	if room == nil {
		return false
	}
	for _, p := range room.Points {
		if within(at, [3]float64{float64(p.At[0]), float64(p.At[1]), float64(p.At[2])}, [3]float64{}) {
			return true
		}
	}
	for _, o := range room.Obstacles {
		var half [3]float64
		if o.Size != nil {
			half = [3]float64{float64(o.Size[0]) / 2, float64(o.Size[1]) / 2, float64(o.Size[2]) / 2}
		}
		if within(at, [3]float64{float64(o.At[0]), float64(o.At[1]), float64(o.At[2])}, half) {
			return true
		}
	}
	for i := range room.Surfaces {
		if middle, half := boundsOf(room.Surfaces[i]); within(at, middle, half) {
			return true
		}
	}
	return false
}

// boundsOf is the middle and the half size of what a surface's corners span.
func boundsOf(s Surface) (middle, half [3]float64) {
	for k := range middle {
		low, high := math.Inf(1), math.Inf(-1)
		for _, corner := range s.Corners {
			low, high = math.Min(low, float64(corner[k])), math.Max(high, float64(corner[k]))
		}
		middle[k], half[k] = (low+high)/2, (high-low)/2
	}
	return middle, half
}

// within tells whether a place is in a block, or as near to it as counts.
func within(at vector, middle, half [3]float64) bool {
	for k := range middle {
		if !(math.Abs(at[k]-middle[k]) <= half[k]+madeFast) {
			return false
		}
	}
	return true
}
