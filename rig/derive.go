package rig

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/document"
	"softloft/kit"
	"softloft/plan"
	"softloft/shape"
)

// Derive places every part that a plan names or implies. The plan has been read
// and checked: names in it that the kit must know are known. Order of parts and of
// everything else follows the plan's order, so that the same plan gives the same
// bytes.
func Derive(p *plan.Plan, doc *document.Document, k kit.Kit) *Rig {
	d := &deriver{Rig: &Rig{Plan: p, Doc: doc, Kit: k}, box: p.Box}
	d.setPose()
	d.bottomFrame()
	d.upperFrame()
	d.ribs()
	d.uprights()
	d.corners()
	d.cover()
	d.ties()
	d.crate()
	d.stands()
	d.lamps()
	d.tees()
	d.drops()
	d.added()
	d.points()
	d.lines()
	d.secondary()
	d.guys()
	d.cables()
	d.notYet()
	d.measured()
	d.join()
	d.optics()
	return d.Rig
}

// deriver is a rig under construction.
type deriver struct {
	*Rig
	box *plan.Box
}

// all reports whether parts that the plan doesn't name are derived.
func (d *deriver) all() bool { return d.Plan.Derive != "none" }

// setPose puts the box axes into the room: turn about the vertical, then tilt
// about the box's own axis through its origin, which keeps its place.
func (d *deriver) setPose() {
	d.LowestBy = d.crateDepth()
	for _, drop := range d.box.Skirt {
		d.LowestBy = math.Max(d.LowestBy, float64(drop))
	}
	if d.box.ClothAt != nil {
		d.ClothAt = float64(*d.box.ClothAt)
	} else if d.box.Trim != nil {
		d.ClothAt = float64(*d.box.Trim) + d.LowestBy
	}
	origin := r3.Vec{X: float64(d.box.At[0]), Y: float64(d.box.At[1]), Z: d.ClothAt}
	d.Pose = shape.At(origin).Rotated(r3.Vec{Z: 1}, float64(d.box.Turn))
	if tilt := d.box.Tilt; tilt != nil {
		about := d.Pose.X
		if tilt.About == "y" {
			about = d.Pose.Y
		}
		d.Pose = d.Pose.Rotated(about, float64(tilt.By))
	}
}

func (d *deriver) crateDepth() float64 {
	if d.box.Crate == "" {
		return 0
	}
	return float64(d.Kit.Crate[d.box.Crate].Depth)
}

// half returns half the box's size.
func (d *deriver) half() (x, y float64) {
	return float64(d.box.Size[0]) / 2, float64(d.box.Size[1]) / 2
}

// depth returns the height of the upper frame or ribs over the cloth plane.
func (d *deriver) depth() float64 {
	if d.box.Depth == nil {
		return 0
	}
	return float64(*d.box.Depth)
}

// add places a part and returns its id.
func (d *deriver) add(p Part) string {
	d.Parts = append(d.Parts, p)
	return p.ID
}

// weigh places a part that has a mass where it stands.
func (d *deriver) weigh(p Part, w Weight) {
	d.add(p)
	if p.Mass == nil {
		return
	}
	w.Part, w.Mass, w.Center = p.ID, *p.Mass, p.Center
	d.Weights = append(d.Weights, w)
}

func (d *deriver) notPlaced(what, why string, values ...any) {
	d.NotPlaced = append(d.NotPlaced, NotPlaced{What: what, Why: fmt.Sprintf(why, values...)})
}

func mass(m float64) *float64 { return &m }
