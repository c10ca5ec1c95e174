package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/photometry"
	"softloft/shape"
)

// lamp is a scene's lamp, prepared.
type lamp struct {
	Lamp
	// rect is the opening; its corners run so that Normal() is against the
	// aim, as edgeVector wants it for points before the lamp.
	rect       shape.Polygon
	whole      subject
	lambertian bool
	luminance  float64 // of a Lambertian opening, cd/m2
	parts      []part
	scale      float64       // of the distribution, rad
	reach      float64       // tangent of the beam's reach; infinite where it is a right angle
	peak       r3.Vec        // of the distribution, in the lamp's own axes
	slopes     [2][2]float64 // of the beam's reach as it goes down, along x and y: least and largest
	beam       *beamCurve    // of a round beam, or nil
	touches    bool          // lies in a cloth plane, facing down
	body       *shape.Box
}

// part is what of an opening lies in one chamber.
type part struct {
	opening shape.Polygon
	chamber int
	inside  bool // within the box: sides and roof do not come between
	share   float64
}

func components(v r3.Vec) [3]float64 { return [3]float64{v.X, v.Y, v.Z} }

func (e *Engine) prepareLamp(index int, given Lamp) lamp {
	l := lamp{Lamp: given}
	u, v := r3.Scale(given.Size[0]/2, given.U), r3.Scale(given.Size[1]/2, given.V)
	l.rect = shape.Rectangle(given.Centre, u, v)
	if r3.Dot(l.rect.Normal(), given.Axis) > 0 {
		l.rect = shape.Rectangle(given.Centre, v, u)
	}
	l.scale, l.peak, l.reach = given.Distribution.Scale(), given.Distribution.Peak(), math.Inf(1)
	if reach := given.Distribution.Reach(); reach < widestReach {
		l.reach = math.Tan(reach)
	}
	l.slopes = [2][2]float64{l.slopesAlong(l.Axis.X), l.slopesAlong(l.Axis.Y)}
	l.beam = newBeamCurve(given.Distribution)
	_, l.lambertian = given.Distribution.(photometry.Lambertian)
	l.luminance = given.Lumens / (given.Size[0] * given.Size[1] * math.Pi)
	if b := given.Body; b[0] > 0 && b[1] > 0 && b[2] > 0 {
		behind := r3.Sub(given.Centre, r3.Scale(b[2], given.Axis))
		l.body = &shape.Box{Pose: shape.Pose{Origin: behind, X: given.U, Y: given.V, Z: given.Axis}, Half: b}
	}
	e.divide(&l)
	l.whole = subjectOf(l.rect, index)
	return l
}

// widestReach is the angle (rad) from which a beam counts as reaching everywhere.
const widestReach = 1.5

// divide cuts the opening at the planes and at the roof's level.
func (e *Engine) divide(l *lamp) {
	var cut shape.Cutter
	rest := l.rect
	area := rest.Area()
	for k := range l.rect { // an opening in a cloth plane lies in it exactly
		for _, p := range e.planes {
			if math.Abs(l.rect[k].Z-p.z) < snap {
				l.rect[k].Z = p.z
			}
		}
	}
	add := func(p shape.Polygon, chamber int, inside bool) {
		if p == nil {
			return
		}
		kept := append(shape.Polygon(nil), p...)
		l.parts = append(l.parts, part{kept, chamber, inside, kept.Area() / area})
	}
	up, down := r3.Vec{Z: 1}, r3.Vec{Z: -1}
	// An opening that lies in the roof's level is below it, and counts once.
	if roof := e.scene.Depth; roof > 0 && !lies(rest, roof) {
		add(cut.Clip(rest, r3.Vec{Z: roof}, up), 0, false)
		rest = cut.Clip(rest, r3.Vec{Z: roof}, down)
	}
	for c, p := range e.planes {
		if rest == nil {
			return
		}
		at := r3.Vec{Z: p.z}
		above := cut.Clip(rest, at, up)
		if above != nil {
			inside := e.scene.Depth > 0 && e.within(above)
			add(above, c, inside)
			l.touches = l.touches || lies(above, p.z)
			if lies(above, p.z) {
				return
			}
		}
		rest = cut.Clip(rest, at, down)
	}
	if rest != nil {
		add(rest, len(e.planes), false)
	}
}

// snap is the distance (m) under which an opening counts as lying in a plane.
const snap = 1e-6

func lies(p shape.Polygon, z float64) bool {
	for _, c := range p {
		if math.Abs(c.Z-z) > snap {
			return false
		}
	}
	return true
}

// within tells whether all corners lie inside the sides.
func (e *Engine) within(p shape.Polygon) bool {
	for _, c := range p {
		if math.Abs(c.X) > e.scene.Size[0]/2 || math.Abs(c.Y) > e.scene.Size[1]/2 || c.Z > e.scene.Depth || c.Z < 0 {
			return false
		}
	}
	return true
}

// intensity toward a point from a place on the opening, cd per m2 of opening,
// and the unit direction to it with its distance.
func (l *lamp) toward(from, to r3.Vec) (perArea, distance float64, direction r3.Vec) {
	d := r3.Sub(to, from)
	distance = norm(d)
	if distance == 0 {
		return 0, 0, d
	}
	direction = r3.Scale(1/distance, d)
	inLamp := r3.Vec{X: r3.Dot(direction, l.U), Y: r3.Dot(direction, l.V), Z: r3.Dot(direction, l.Axis)}
	if inLamp.Z <= 0 {
		return 0, distance, direction
	}
	return l.Lumens / (l.Size[0] * l.Size[1]) * l.intensity(inLamp), distance, direction
}
