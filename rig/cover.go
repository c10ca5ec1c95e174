package rig

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/plan"
)

// cover places cloth, sides, roof and skirts with their weight on the tubes.
func (d *deriver) cover() {
	for i, layer := range d.box.Cloth {
		d.cloth(i, layer)
	}
	d.sides()
	d.roof()
	d.skirts()
}

// cloth places one cloth in the cloth plane, or above it by the gaps below it.
func (d *deriver) cloth(i int, layer plan.ClothLayer) {
	entry := d.Kit.Cloth[layer.Kit]
	var above float64
	for _, lower := range d.box.Cloth[i : len(d.box.Cloth)-1] {
		above += float64(lower.Gap)
	}
	part := Part{
		ID: fmt.Sprintf("cloth.%d", i+1), What: "cloth", Name: entry.Label(layer.Kit), KitKind: "cloth", KitID: layer.Kit,
		Body: string(BottomFrame), Demo: entry.Source.Demo("mass"), Center: r3.Vec{Z: above},
		Why: fmt.Sprintf("cloth %d from the lamp side: box.cloth", i+1), Path: fmt.Sprintf("box.cloth[%d]", i),
	}
	if entry.Mass != nil {
		part.Mass = mass(float64(*entry.Mass) * d.area())
		part.MassFrom = "mass per area × box.size"
	}
	d.add(part)
	if part.Mass != nil {
		d.hangOnRing("frame", part.ID, *part.Mass)
	}
}

func (d *deriver) area() float64 { return float64(d.box.Size[0]) * float64(d.box.Size[1]) }

// hangOnRing spreads a sheet's mass to the four tubes around it by 45° tributary:
// triangles on the short sides, trapezoids on the long ones. Without tubes the
// weight acts on the corners.
func (d *deriver) hangOnRing(prefix, part string, m float64) {
	perArea := m / d.area()
	peak := perArea * math.Min(float64(d.box.Size[0]), float64(d.box.Size[1])) / 2
	if _, ok := d.Rig.Tube(prefix + ".north"); !ok {
		p, _ := d.Part(part)
		d.Weights = append(d.Weights, Weight{Part: part, Mass: m, Center: p.Center})
		return
	}
	for i, side := range plan.SideNames {
		length := float64(d.box.Size[i/2])
		reach := math.Min(length, float64(d.box.Size[1-i/2])) / 2
		stations := []Station{{0, 0}, {reach, peak}, {length - reach, peak}, {length, 0}}
		if length-2*reach < touching { // a square, or so near to one that only the mass counts
			stations = []Station{{0, 0}, {length / 2, peak * (2 * (length - reach) / length)}, {length, 0}}
		}
		d.EdgeLoads = append(d.EdgeLoads, EdgeLoad{Part: part, Tube: prefix + "." + side, Stations: stations})
	}
}

// hangOnSide spreads a mass evenly along one side's tube.
func (d *deriver) hangOnSide(prefix, side, part string, m float64) {
	tube, ok := d.Rig.Tube(prefix + "." + side)
	if !ok {
		p, _ := d.Part(part)
		d.Weights = append(d.Weights, Weight{Part: part, Mass: m, Center: p.Center})
		return
	}
	length := r3.Norm(r3.Sub(tube.To, tube.From))
	per := m / length
	d.EdgeLoads = append(d.EdgeLoads, EdgeLoad{Part: part, Tube: tube.Part, Stations: []Station{{0, per}, {length, per}}})
}

// wrapFor finds the kit's wrap of a face's color.
func (d *deriver) wrapFor(color string) (string, kit.Wrap, bool) {
	for _, id := range kit.IDs(d.Kit.Wrap) {
		if d.Kit.Wrap[id].Color == color {
			return id, d.Kit.Wrap[id], true
		}
	}
	return "", kit.Wrap{}, false
}

// sheet places a wrap of a face. Where nothing is derived, or the kit has no wrap
// of that color, the face shades without a mass, and that is said.
func (d *deriver) sheet(p Part, color string, area float64) (m float64, known bool) {
	id, wrap, ok := d.wrapFor(color)
	switch {
	case !d.all():
		p.Weightless = true
		p.Why += "; derive: none places no wrap for it, it shades and weighs nothing"
		d.notPlaced(p.Name, "derive: none; the plan names its color, not a wrap, so its weight is not known")
	case !ok || wrap.Mass == nil:
		p.MassFrom = "no wrap of this color in the kit"
	default:
		p.Name += ", " + wrap.Label(id)
		p.KitKind, p.KitID, p.Demo = "wrap", id, wrap.Source.Demo("mass")
		p.Mass, p.MassFrom = mass(float64(*wrap.Mass)*area), "mass per area × area"
	}
	if p.Weightless {
		p.Mass = mass(0)
	}
	d.add(p)
	if p.Mass == nil || p.Weightless {
		return 0, false
	}
	return *p.Mass, true
}

// sides places the side cloths, which run from the cloth plane up to the depth. An
// upper frame carries them; without one the bottom frame does.
func (d *deriver) sides() {
	if d.depth() == 0 {
		return
	}
	on := "frame"
	if _, ok := d.Rig.Tube("upper.north"); ok {
		on = "upper"
	}
	wrapped := map[string]bool{}
	if d.all() {
		for _, group := range d.sideColors() {
			wrapped[group.color] = d.wraps(group.color, on, group.sides)
		}
	}
	for i, side := range plan.SideNames {
		face := d.box.Sides[i]
		if face.Word == "none" {
			continue
		}
		p := Part{
			ID: "side." + side, What: "side", Name: side + " side", Body: d.bodyOf(on),
			Center: r3.Add(d.sideCenter(i), r3.Vec{Z: d.depth() / 2}),
			Why:    "side from the cloth plane up to box.depth: box.sides", Path: "box.sides",
		}
		if color := colorOf(face); wrapped[color] {
			p.Mass, p.Weightless = mass(0), true
			p.Why += "; it is a stretch of wrap." + color + " and weighs with it"
			d.weigh(p, Weight{})
			continue
		}
		if m, ok := d.sheet(p, colorOf(face), d.depth()*d.sideLength(i)); ok {
			d.hangOnSide(on, side, p.ID, m)
		}
	}
}

// colored are the sides of one color, as indices of plan.SideNames.
type colored struct {
	color string
	sides []int
}

// sideColors groups the sides that are there by the color of their wrap.
func (d *deriver) sideColors() []colored {
	var groups []colored
	for i := range plan.SideNames {
		if d.box.Sides[i].Word == "none" {
			continue
		}
		color := colorOf(d.box.Sides[i])
		k := 0
		for k < len(groups) && groups[k].color != color {
			k++
		}
		if k == len(groups) {
			groups = append(groups, colored{color: color})
		}
		groups[k].sides = append(groups[k].sides, i)
	}
	return groups
}

// sideCenter returns the middle of a side in the cloth plane.
func (d *deriver) sideCenter(i int) r3.Vec {
	x, y := d.half()
	return [4]r3.Vec{{Y: y}, {Y: -y}, {X: x}, {X: -x}}[i]
}

// colorOf returns the wrap's color that a face asks for: a measured reflectance
// comes nearest to white or black.
func colorOf(f plan.Face) string {
	if f.Reflectance == nil {
		return f.Word
	}
	if *f.Reflectance < 0.4 {
		return "black"
	}
	return "white"
}

// roof places the roof cloth at the box's depth.
func (d *deriver) roof() {
	if d.box.Roof.Word == "open" || d.box.Roof.Word == "none" || d.depth() == 0 {
		return
	}
	p := Part{
		ID: "roof", What: "roof", Name: "roof", Body: string(BottomFrame), Center: r3.Vec{Z: d.depth()},
		Why: "roof at box.depth: box.roof", Path: "box.roof",
	}
	on := "frame"
	if _, ok := d.Rig.Tube("upper.north"); ok {
		on, p.Body = "upper", string(UpperFrame)
	}
	if m, ok := d.sheet(p, colorOf(d.box.Roof), d.area()); ok {
		d.hangOnRing(on, p.ID, m)
	}
}

// skirts places the black drops below the cloth's edge.
func (d *deriver) skirts() {
	for i, side := range plan.SideNames {
		drop := float64(d.box.Skirt[i])
		if drop == 0 {
			continue
		}
		p := Part{
			ID: "skirt." + side, What: "skirt", Name: side + " skirt", Body: string(BottomFrame),
			Center: r3.Sub(d.sideCenter(i), r3.Vec{Z: drop / 2}),
			Why:    "black drop below the cloth plane: box.skirt", Path: "box.skirt",
		}
		if m, ok := d.sheet(p, "black", drop*float64(d.box.Size[i/2])); ok {
			d.hangOnSide("frame", side, p.ID, m)
		}
	}
}

// crate places the egg-crate, whose top touches the cloth plane from below.
func (d *deriver) crate() {
	if d.box.Crate == "" {
		return
	}
	entry := d.Kit.Crate[d.box.Crate]
	p := Part{
		ID: "crate", What: "egg-crate", Name: entry.Label(d.box.Crate), KitKind: "crate", KitID: d.box.Crate,
		Body: string(BottomFrame), Demo: entry.Source.Demo("mass"), Center: r3.Vec{Z: -float64(entry.Depth) / 2},
		Why: "egg-crate under the cloth: box.crate", Path: "box.crate",
	}
	if m, ok := entry.Mass.Of(d.area()); ok {
		p.Mass, p.MassFrom = mass(float64(m)), "kit mass × box.size"
	}
	d.add(p)
	if p.Mass != nil {
		d.hangOnRing("frame", p.ID, *p.Mass)
	}
}

// corners places the fittings that join the frames' tubes, where the kit has one
// that fits the tube. They weigh on the corners.
func (d *deriver) corners() {
	if !d.all() {
		if len(d.Tubes) > 0 {
			d.notPlaced("corner fittings", "derive: none; the plan names no fitting")
		}
		return
	}
	x, y := d.half()
	signs := [4][2]float64{{1, 1}, {-1, 1}, {-1, -1}, {1, -1}}
	for _, ring := range []struct {
		prefix string
		body   Role
		z      float64
	}{{"frame", BottomFrame, 0}, {"upper", UpperFrame, d.depth()}} {
		tube, ok := d.Rig.Tube(ring.prefix + ".north")
		if !ok {
			continue
		}
		part, _ := d.Part(tube.Part)
		id, fitting, ok := d.cornerFor(part.KitID)
		if !ok {
			d.notPlaced("corner fittings of the "+string(ring.body), "the kit has no corner that fits the tube %s", part.KitID)
			continue
		}
		for i, name := range plan.CornerNames {
			at := r3.Vec{X: signs[i][0] * x, Y: signs[i][1] * y, Z: ring.z}
			p := Part{
				ID: ring.prefix + ".corner." + name, What: "corner fitting", Name: fitting.Label(id), KitKind: "corner", KitID: id,
				Body: string(ring.body), Demo: fitting.Source.Demo("mass"), Center: at,
				Why: fmt.Sprintf("joins %s of the %s at the %s corner", d.atCorner(), ring.body, name), Path: part.Path,
			}
			if m, ok := fitting.Mass.Of(0); ok {
				p.Mass, p.MassFrom = mass(float64(m)), "kit"
			}
			d.weigh(p, Weight{OnTube: d.tubeAt(at), Station: at})
		}
	}
}

// cornerFor returns the fitting that joins tubes of one kind at a corner: one for three
// tubes where uprights stand on the corners and the kit has one. Ids of those start
// with threeWay.
func (d *deriver) cornerFor(tube string) (string, kit.Hardware, bool) {
	two, three := map[string]kit.Hardware{}, map[string]kit.Hardware{}
	for id, piece := range d.Kit.Corner {
		if strings.HasPrefix(id, threeWay) {
			three[id] = piece
		} else {
			two[id] = piece
		}
	}
	if d.joinsCorner() {
		if id, piece, ok := fits(three, tube); ok {
			return id, piece, true
		}
	}
	return fits(two, tube)
}

// threeWay opens the id of a corner fitting that joins two tubes and an upright.
const threeWay = "corner3-"

// atCorner says what meets at a corner.
func (d *deriver) atCorner() string {
	if d.joinsCorner() {
		return "two tubes and an upright"
	}
	return "two tubes"
}

// fits returns the first piece, by id, that says that it fits another.
func fits(set map[string]kit.Hardware, other string) (string, kit.Hardware, bool) {
	for _, id := range kit.IDs(set) {
		for _, name := range set[id].Fits {
			if name == other {
				return id, set[id], true
			}
		}
	}
	return "", kit.Hardware{}, false
}
