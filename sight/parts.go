package sight

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
	"softloft/shape"
)

// builder gives every part its body.
type builder struct {
	rig   *rig.Rig
	scene *scene
}

// The rig's words for what lies on the floor, and for the cables that hang from there to
// the box: they don't clear with it, and no key of the plan says how they are led.
const (
	floorBody  = "floor"
	feedPrefix = "feed."
)

func (b *builder) add(part string, ofBox bool, solids ...solid) {
	b.scene.bodies = append(b.scene.bodies, body{part: part, ofBox: ofBox, ofRig: !strings.HasPrefix(part, feedPrefix), solids: solids})
}

// part builds a rig's part. A line's rope is built with its line, a wrap is what sides,
// roof and skirts are cut from, and nobody knows yet how a cable lies on the floor.
func (b *builder) part(p *rig.Part) {
	if p.What == "line" || p.What == "wrap" || p.Body == floorBody {
		return
	}
	if tube, ok := b.rig.Tube(p.ID); ok {
		b.add(p.ID, true, b.tube(tube))
		return
	}
	ofBox := !p.InRoom && p.Body != rig.LinesBody && !strings.HasPrefix(p.ID, feedPrefix)
	switch p.What {
	case "cloth":
		b.add(p.ID, ofBox, b.level(p.Center.Z))
	case "roof":
		b.add(p.ID, ofBox, b.level(b.rig.Optics.Depth))
	case "side":
		b.strip(p, 0, b.rig.Optics.Depth)
	case "skirt":
		if i := sideIndex(p.ID); i >= 0 {
			b.strip(p, -b.rig.Optics.Skirts[i], 0)
		}
	case "egg-crate":
		b.add(p.ID, ofBox, b.crate())
	case "lamp":
		b.add(p.ID, ofBox, b.lamp(p))
	default:
		b.other(p, ofBox)
	}
}

func (b *builder) tube(t *rig.Tube) solid {
	from, to := b.rig.Pose.Out(t.From), b.rig.Pose.Out(t.To)
	radius := t.Section.Outer / 2
	if !t.Section.Square {
		return bar(from, to, radius)
	}
	s := block(b.squareTube(t, radius))
	s.hides = radius >= thinnestHider
	return s
}

// squareTube lies with its faces along the box's axes where it runs along one.
func (b *builder) squareTube(t *rig.Tube, radius float64) shape.Box {
	inner := squareBar(t.From, t.To, radius)
	pose := shape.Pose{Origin: b.rig.Pose.Out(inner.Pose.Origin), X: b.rig.Pose.OutDirection(inner.Pose.X),
		Y: b.rig.Pose.OutDirection(inner.Pose.Y), Z: b.rig.Pose.OutDirection(inner.Pose.Z)}
	return shape.Box{Pose: pose, Half: inner.Half}
}

func (b *builder) half() (x, y float64) { return b.rig.Optics.Size[0] / 2, b.rig.Optics.Size[1] / 2 }

// rectangle is one in the room, given in box axes.
func (b *builder) rectangle(center, u, v r3.Vec) solid {
	pose := b.rig.Pose
	return flat(shape.Rectangle(pose.Out(center), pose.OutDirection(u), pose.OutDirection(v)))
}

func (b *builder) level(z float64) solid {
	x, y := b.half()
	return b.rectangle(r3.Vec{Z: z}, r3.Vec{X: x}, r3.Vec{Y: y})
}

// strip is a side's or a skirt's cloth between two heights over the cloth plane.
func (b *builder) strip(p *rig.Part, low, high float64) {
	i := sideIndex(p.ID)
	if i < 0 || high <= low {
		return
	}
	x, y := b.half()
	centers := [4]r3.Vec{{Y: y}, {Y: -y}, {X: x}, {X: -x}}
	along := [4]r3.Vec{{X: x}, {X: x}, {Y: y}, {Y: y}}
	center := centers[i]
	center.Z = (low + high) / 2
	b.add(p.ID, true, b.rectangle(center, along[i], r3.Vec{Z: (high - low) / 2}))
}

// crate is the egg-crate's hull: nobody looks through its cells.
func (b *builder) crate() solid {
	o := &b.rig.Optics
	pose := b.rig.Pose
	pose.Origin = pose.Out(r3.Vec{Z: -o.Crate.Depth / 2})
	return block(shape.Box{Pose: pose, Half: [3]float64{o.Clear[0] / 2, o.Clear[1] / 2, o.Crate.Depth / 2}})
}

// lamp is a lamp's body behind its opening, or as flat as its opening where nobody gave
// a body.
func (b *builder) lamp(p *rig.Part) solid {
	for i := range b.rig.Optics.Lamps {
		o := &b.rig.Optics.Lamps[i]
		if o.Part != p.ID {
			continue
		}
		size := [3]float64{o.Size[0], o.Size[1], fittingSize}
		if o.Body != nil {
			size = *o.Body
		}
		center := r3.Sub(o.Center, r3.Scale(size[2]/2, o.Axis))
		pose := shape.Pose{Origin: b.rig.Pose.Out(center), X: b.rig.Pose.OutDirection(o.U),
			Y: b.rig.Pose.OutDirection(o.V), Z: b.rig.Pose.OutDirection(r3.Scale(-1, o.Axis))}
		return block(shape.Box{Pose: pose, Half: [3]float64{size[0] / 2, size[1] / 2, size[2] / 2}})
	}
	return lump(b.rig.CenterInRoom(p), 3*fittingSize)
}

// other builds what is long as a bar, and the rest as a lump.
func (b *builder) other(p *rig.Part, ofBox bool) {
	if from, to, ok := b.rig.EndsInRoom(p); ok {
		b.add(p.ID, ofBox, bar(from, to, b.thickness(p)/2))
		return
	}
	if p.What == "bag" {
		at := r3.Add(b.rig.CenterInRoom(p), r3.Vec{Z: bagTall / 2})
		b.add(p.ID, ofBox, block(shape.Box{Pose: shape.At(at), Half: [3]float64{bagLong / 2, bagWide / 2, bagTall / 2}}))
		return
	}
	size := fittingSize
	switch p.What {
	case "tie":
		size = tieSize
	case "pulley":
		if entry := b.rig.Kit.Pulley[p.KitID]; entry.Sheave != nil {
			size = float64(*entry.Sheave) * 1.5
		}
	case "corner fitting":
		ring, _, _ := strings.Cut(p.ID, ".")
		if tube, ok := b.rig.Tube(ring + ".north"); ok {
			size = 1.3 * tube.Section.Outer
		}
	}
	b.add(p.ID, ofBox, lump(b.rig.CenterInRoom(p), size))
}

// thickness is a rope's diameter, or what is assumed of what is long.
func (b *builder) thickness(p *rig.Part) float64 {
	switch p.What {
	case "stand":
		return mastDiameter
	case "stand leg":
		return legDiameter
	case "arm":
		return armDiameter
	}
	piece, ok := b.rig.Kit.Suspender(p.KitID)
	if ok && piece.Rope != nil && piece.Rope.Diameter != nil {
		return float64(*piece.Rope.Diameter)
	}
	return ropeDiameter
}
