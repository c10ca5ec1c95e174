package sight

import (
	"fmt"
	"strings"

	"softloft/finding"
	"softloft/source"
)

func (k *work) subject(key string) finding.Subject {
	line, column := k.rig.Place(key)
	return finding.On("camera."+k.camera.Name, line, column)
}

func (k *work) unknown(why string) {
	k.findings = append(k.findings, finding.Unknown("sight.camera."+k.camera.Name, k.subject(k.path), "What camera "+k.camera.Name+" sees", why))
}

// trouble concludes where a camera cannot be where the plan wants it; false where
// nothing it would see means anything.
func (k *work) trouble() bool {
	name := k.camera.Name
	if at, ok := inBox(k.rig, k.way); ok {
		why := "what it sees from there is not worked out" + k.where(at)
		k.answer.Missing = append(k.answer.Missing, "the camera is inside the box")
		k.findings = append(k.findings, finding.Refused("sight.inside."+name, k.subject(k.path), "Camera "+name+" is inside the box", why))
		return false
	}
	if at, ok := inWall(k.rig, k.way); ok {
		k.findings = append(k.findings, finding.Refused("sight.wall."+name, k.subject(k.path),
			"The way of camera "+name+" leads through a wall, the floor or the ceiling of the room", "it leaves room.size"+k.where(at)))
	}
	if at, ok := throughSet(k.scene, k.way); ok {
		k.findings = append(k.findings, finding.Refused("sight.set."+name, k.subject(k.path),
			"The way of camera "+name+" leads through a set wall", "it crosses one of room.surfaces or a wall of room.obstacles"+k.where(at)))
	}
	return true
}

func (k *work) where(main float64) string {
	switch k.way.kind {
	case "orbit":
		return fmt.Sprintf(", at %.1f° of its orbit", main/degree)
	case "track":
		return fmt.Sprintf(", at %.0f %% of its track", 100*main)
	}
	return ""
}

// conclude holds the number of parts in shot to none, and the planned trim to the one
// at which the box clears.
func (k *work) conclude() {
	parts := k.inShot()
	name := k.camera.Name
	statement := "Camera " + name + ", parts of the rig in shot"
	if len(parts) > 0 {
		statement += ": " + told(parts)
	}
	k.findings = append(k.findings, finding.Check{
		ID: "sight.shot." + name, Subject: k.subject(k.path), Statement: statement, Relation: finding.AtMost,
		Value: finding.Given(finding.Input{Symbol: "n", Name: "parts that come into shot, anywhere on the camera's way", Value: float64(len(parts)),
			Origin: "looked for along the whole way, docs/method-sight.md"}),
		Limit:  finding.Given(finding.Input{Symbol: "n_max", Name: "parts in shot that are wanted", Value: 0, Origin: "nothing of the rig belongs in a shot"}),
		Source: source.Cite("definition", "geometry of the lens's frame"), Assumptions: k.assumptions(),
	}.Conclude())
	k.cable()
	k.trim()
}

// cable says that the cables to the box are in shot as the rig leads them. The plan has
// no say in how they are led, so that nothing is over.
func (k *work) cable() {
	for _, each := range k.answer.Sees {
		if strings.HasPrefix(each.Part, feedPrefix) {
			k.findings = append(k.findings, finding.Unknown("sight.cable."+k.camera.Name, k.subject("power"),
				"Camera "+k.camera.Name+", cable up to the box", "straight up from the floor it is in shot, and the plan does not say how it is led: lead it from above, or out of the frame"))
			return
		}
	}
}

// trim is concluded where a box in shot can be raised, or is over the clear trim; a box
// that is out of frame below the clear trim is not held to it.
func (k *work) trim() {
	trim, clear := plannedTrim(k.rig), float64(k.answer.ClearTrim)
	if !k.boxInShot() && !(trim >= clear) {
		return
	}
	key := "box.trim"
	if k.rig.Plan.Box.ClothAt != nil {
		key = "box.cloth_at"
	}
	k.findings = append(k.findings, finding.Check{
		ID: "sight.trim." + k.camera.Name, Subject: k.subject(key), Statement: "Camera " + k.camera.Name + ", trim at which the box clears the frame",
		Relation: finding.AtLeast, Unit: "m",
		Value: finding.Work{Formula: "h = z - d", Name: "height of the lowest edge of the level box", Inputs: []finding.Input{
			{Symbol: "z", Name: "cloth plane over the floor", Value: k.rig.ClothAt, Unit: "m", Origin: k.rig.Origin(key)},
			{Symbol: "d", Name: "lowest edge below the cloth plane", Value: k.rig.LowestBy, Unit: "m", Origin: "crate and skirts of the box"},
		}},
		Limit: finding.Given(finding.Input{Symbol: "h_clear", Name: "lowest trim at and above which nothing of the box is in frame", Value: clear, Unit: "m",
			Origin: "solved along the whole way of " + k.rig.Origin(k.path) + ", docs/method-sight.md"}),
		Source: source.Cite("definition", "geometry of the lens's frame"), Assumptions: k.assumptions(),
	}.Conclude())
}

// inShot are the parts of the rig that are seen, each once.
func (k *work) inShot() []string {
	seen := map[string]bool{}
	for _, each := range k.answer.Sees {
		seen[each.Part] = true
	}
	var parts []string
	for i := range k.scene.bodies {
		if b := &k.scene.bodies[i]; b.ofRig && seen[b.part] {
			parts = append(parts, b.part)
		}
	}
	return parts
}

func (k *work) boxInShot() bool {
	seen := map[string]bool{}
	for _, each := range k.answer.Sees {
		seen[each.Part] = true
	}
	for i := range k.scene.bodies {
		if b := &k.scene.bodies[i]; b.ofBox && seen[b.part] {
			return true
		}
	}
	return false
}

// told lists some parts, and how many more there are.
func told(parts []string) string {
	const most = 6
	if len(parts) <= most {
		return strings.Join(parts, ", ")
	}
	return strings.Join(parts[:most], ", ") + fmt.Sprintf(" and %d more", len(parts)-most)
}

// assumptions are the frame with where it comes from, and what is taken for granted.
func (k *work) assumptions() []string {
	f := k.answer.FieldOfView
	c := k.camera
	out := []string{
		fmt.Sprintf("field of view %.2f° × %.2f°: 2·atan(squeeze·w/(2·f)) × 2·atan(h/(2·f)), f = %.4g mm (%s), w × h = %.4g × %.4g mm (%s), squeeze %.4g (%s)",
			float64(f.Horizontal), float64(f.Vertical), 1000*float64(*c.Lens), k.rig.Origin(k.path+".lens"),
			1000*float64(c.Sensor[0]), 1000*float64(c.Sensor[1]), k.rig.Origin(k.path+".sensor"), c.Squeeze, k.rig.Origin(k.path+".squeeze")),
		fmt.Sprintf("tilt %.4g° to %.4g° (%s), pan %.4g° to %.4g° (%s), about the look",
			float64(c.Tilt[0])/degree, float64(c.Tilt[1])/degree, k.rig.Origin(k.path+".tilt"),
			float64(c.Pan[0])/degree, float64(c.Pan[1])/degree, k.rig.Origin(k.path+".pan")),
		"focus at infinity: a lens that breathes or is focused near may take in a little more or less",
		"the box in its planned pose; cloth and ropes straight; the egg-crate as a closed block",
		"sizes nobody gives: ropes 12 mm, fittings, tie-offs and points 0.1 m, stands' masts 50 mm, legs 30 mm, arms 40 mm, bags 0.4 × 0.3 × 0.16 m",
	}
	if len(k.rig.Plan.Stands) == 0 {
		out[len(out)-1] = "sizes nobody gives: ropes 12 mm, fittings, tie-offs and points 0.1 m"
	}
	return out
}
