package fit

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/plan"
	"softloft/rig"
	"softloft/shape"
	"softloft/source"
)

// obstacles holds everything to its distance from what is in the way.
func obstacles(r *rig.Rig) []finding.Finding {
	room := r.Plan.Room
	if room == nil {
		return nil
	}
	var found []finding.Finding
	all := bodies(r)
	for i := range room.Obstacles {
		o := &room.Obstacles[i]
		path := fmt.Sprintf("room.obstacles[%d]", i)
		if o.Kind == "sprinkler" {
			found = append(found, sprinkler(r, o, path))
			continue
		}
		found = append(found, obstacle(r, o, path, all)...)
	}
	return append(found, shadow(r)...)
}

// obstacle holds what comes nearest to an obstacle to the distance that it asks for;
// without one, nothing may touch it.
func obstacle(r *rig.Rig, o *plan.Obstacle, path string, all []block) []finding.Finding {
	way := obstacleBlock(o)
	nearest, least := block{}, math.Inf(1)
	for _, b := range all {
		if d := apart(b, way); d < least {
			nearest, least = b, d
		}
	}
	id, at := "fit.clear."+o.Name, subject(r, nearest.part, path)
	if least <= 1e-6 {
		return []finding.Finding{finding.Refused(id, at, fmt.Sprintf("%s and %s (%s)", capital(nearest.name), o.Name, o.Kind), "the one passes through the other")}
	}
	if o.Clear == nil {
		return nil
	}
	return []finding.Finding{finding.Check{
		ID: id, Subject: at, Statement: fmt.Sprintf("Distance from %s to %s", nearest.name, o.Name), Relation: finding.AtLeast, Unit: "m",
		Value:       finding.Given(finding.Input{Symbol: "d", Name: "nearest of box, lines and stands", Value: least, Unit: "m", Origin: "places, as planned"}),
		Limit:       finding.Given(finding.Input{Symbol: "d_min", Name: "distance to keep", Value: float64(*o.Clear), Unit: "m", Origin: r.Origin(path + ".clear")}),
		Source:      source.Cite("plan", path),
		Assumptions: []string{"lines and stands as lines without thickness, the box as a block"},
	}.Conclude()}
}

func obstacleBlock(o *plan.Obstacle) block {
	b := block{name: o.Name, Box: shape.Box{Pose: shape.At(r3.Vec{X: float64(o.At[0]), Y: float64(o.At[1]), Z: float64(o.At[2])})}}
	if o.Size != nil {
		for axis, size := range o.Size {
			b.Half[axis] = float64(size) / 2
		}
	}
	return b
}

// sprinkler holds the top of all that hangs or stands to the free height under a
// sprinkler's deflector, which is its place.
func sprinkler(r *rig.Rig, o *plan.Obstacle, path string) finding.Finding {
	top, highest := math.Inf(-1), block{}
	for _, b := range append([]block{boxBlock(r)}, allStands(r)...) {
		if b.top() > top {
			top, highest = b.top(), b
		}
	}
	limit := source.SprinklerClear()
	clear := finding.Input{Symbol: "h_min", Name: limit.Name, Value: limit.Value, Unit: "m", Origin: limit.Citation.String()}
	if o.Clear != nil {
		clear.Value, clear.Name, clear.Origin = float64(*o.Clear), "distance to keep", r.Origin(path+".clear")
	}
	return finding.Check{
		ID: "fit.sprinkler." + o.Name, Subject: subject(r, highest.part, path), Relation: finding.AtLeast, Unit: "m",
		Statement: fmt.Sprintf("Free height under sprinkler %s, over %s", o.Name, highest.name),
		Value: finding.Work{Formula: "h = z_s - z_t", Name: "free height under the deflector", Inputs: []finding.Input{
			{Symbol: "z_s", Name: "deflector", Value: float64(o.At[2]), Unit: "m", Origin: r.Origin(path + ".at")},
			{Symbol: "z_t", Name: "highest place of " + highest.name, Value: top, Unit: "m", Origin: "places, as planned"},
		}},
		Limit: finding.Given(clear), Source: limit.Citation, Assumptions: []string{"the fire authority decides"},
	}.Conclude()
}

func allStands(r *rig.Rig) []block {
	var all []block
	for i := range r.Stands {
		all = append(all, standBlocks(&r.Stands[i])...)
	}
	return all
}

// shadow tells that a box over four feet wide keeps the water of the sprinklers over it
// from the floor: nobody but the fire authority decides on that.
func shadow(r *rig.Rig) []finding.Finding {
	limit := source.SprinklerShadow()
	wide := math.Min(r.Optics.Size[0], r.Optics.Size[1])
	for i, o := range r.Plan.Room.Obstacles {
		if o.Kind == "sprinkler" && wide > limit.Value {
			return []finding.Finding{finding.Unknown("fit.sprinkler_shadow", subject(r, "box", fmt.Sprintf("room.obstacles[%d]", i)),
				"The box under sprinklers", fmt.Sprintf("it is %.2f m wide, over the %.2f m from which a thing shadows them (common practice): the fire authority decides", wide, limit.Value))}
		}
	}
	return nil
}

// capital opens a sentence.
func capital(text string) string {
	if text == "" {
		return text
	}
	return string(text[0]-'a'+'A') + text[1:]
}
