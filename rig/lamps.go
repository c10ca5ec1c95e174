package rig

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/plan"
)

// lamps places today's lamps, and the named ones that may still go up as weights.
func (d *deriver) lamps() {
	for i := range d.Plan.Lamps {
		d.lamp(&d.Plan.Lamps[i], i)
	}
	if d.Plan.Provision == nil {
		return
	}
	for i := range d.Plan.Provision.Lamps {
		d.provided(&d.Plan.Provision.Lamps[i], i)
	}
}

// lampName returns a lamp's name: its own, or kit and number.
func lampName(l *plan.Lamp, number int) string {
	if l.Name != "" {
		return l.Name
	}
	return fmt.Sprintf("%s %d", l.Kit, number)
}

// aim is where a lamp looks and how its opening lies, in box axes. Tilt 0 is
// straight down, leaning toward +x; pan turns that counter-clockwise seen from
// above; roll turns the opening about the axis.
type aim struct{ axis, u, v r3.Vec }

func aimOf(l *plan.Lamp) aim {
	sinT, cosT := math.Sincos(float64(l.Aims.Tilt))
	sinP, cosP := math.Sincos(float64(l.Aims.Pan))
	turn := func(v r3.Vec) r3.Vec {
		return r3.Vec{X: cosP*v.X - sinP*v.Y, Y: sinP*v.X + cosP*v.Y, Z: v.Z}
	}
	axis := turn(r3.Vec{X: sinT, Z: -cosT})
	u := turn(r3.Vec{X: cosT, Z: sinT})
	v := turn(r3.Vec{Y: 1})
	sinR, cosR := math.Sincos(float64(l.Roll))
	return aim{
		axis: axis,
		u:    r3.Add(r3.Scale(cosR, u), r3.Scale(sinR, v)),
		v:    r3.Add(r3.Scale(-sinR, u), r3.Scale(cosR, v)),
	}
}

// lamp places one lamp, its bar and its safety.
func (d *deriver) lamp(l *plan.Lamp, i int) {
	entry := d.Kit.Lamp[l.Kit]
	name := lampName(l, i+1)
	id := "lamp." + name
	path := fmt.Sprintf("lamps[%d]", i)
	w, holder := d.carry(l, entry, id, path, true)
	part := Part{
		ID: id, What: "lamp", Name: name + ", " + entry.Label(l.Kit), KitKind: "lamp", KitID: l.Kit,
		Body: string(BottomFrame), Demo: entry.Source.Demo("mass"), Center: w.Center,
		Why: "lamp " + holder + ": " + path, Path: path,
	}
	if entry.Mass != nil {
		part.Mass, part.MassFrom = mass(float64(*entry.Mass)), "kit"
	}
	if w.OnTube != "" {
		part.Joined = []string{w.OnTube}
	}
	s, onStand := d.Stand(l)
	if onStand {
		part.Body, part.Joined = s.Part, []string{s.Arm.Part}
	}
	d.weigh(part, w)
	if onStand {
		d.onArm(s.Arm.Number, weightOf(part), hookOf(l, entry), true, false)
		d.onArmMount(part, entry, s)
	}
	d.supply(l, entry, part, w)
	d.mount(part, entry, w)
	d.lampSafety(l, part, w)
}

// Stand returns the stand whose arm carries a lamp.
func (r *Rig) Stand(l *plan.Lamp) (*Stand, bool) {
	if l.On == nil || l.On.Arm == 0 {
		return nil, false
	}
	return r.Holder(l.On.Arm)
}

// hookOf returns where a lamp is held, in box axes: its clamp's height behind the
// opening.
func hookOf(l *plan.Lamp, entry kit.Lamp) r3.Vec {
	opening := r3.Vec{X: float64(l.At[0]), Y: float64(l.At[1]), Z: float64(l.Above)}
	return r3.Sub(opening, r3.Scale(float64(entry.Hook), aimOf(l).axis))
}

// carry says what carries a lamp and where its center of gravity is. A new bar is
// placed where place is true.
func (d *deriver) carry(l *plan.Lamp, entry kit.Lamp, id, path string, place bool) (Weight, string) {
	opening := r3.Vec{X: float64(l.At[0]), Y: float64(l.At[1]), Z: float64(l.Above)}
	axis := aimOf(l).axis
	center := r3.Sub(opening, r3.Scale(float64(entry.CG), axis))
	hook := r3.Sub(opening, r3.Scale(float64(entry.Hook), axis))
	w := Weight{Center: center}
	on := l.On
	switch {
	case on == nil:
		return w, "carried in a way that the plan doesn't say (acts on the four corners)"
	case on.Arm > 0:
		w.Elsewhere = true
		return w, fmt.Sprintf("on arm %d", on.Arm)
	case on.Rib > 0:
		w.OnTube = fmt.Sprintf("rib.%d", on.Rib)
	case on.Frame != "":
		w.OnTube = "frame." + on.Frame
	case on.Bar != "":
		w.OnTube = "bar." + id
		if place {
			d.bar(w.OnTube, l, path)
		}
	}
	tube, ok := d.Rig.Tube(w.OnTube)
	if !ok {
		if place {
			d.Odd = append(d.Odd, Oddity{ID: "rig.carried." + id, Part: id, Path: path, Unknown: true,
				Statement: fmt.Sprintf("Lamp %s is said to be on %s, which is not placed", id, w.OnTube)})
		}
		w.OnTube = ""
		return w, "whose tube is not placed (acts on the four corners)"
	}
	w.Station = nearest(tube.From, tube.To, hook)
	return w, "on " + w.OnTube
}

// bar places a tube across the two parallel tubes that lie nearest on either side
// of a lamp, at the lamp's other coordinate.
func (d *deriver) bar(id string, l *plan.Lamp, path string) {
	at := r3.Vec{X: float64(l.At[0]), Y: float64(l.At[1])}
	along := d.box.Ribs != nil && d.box.Ribs.Along == "x"
	across := at.X
	if along {
		across = at.Y
	}
	low, high, z := d.neighbors(across, along)
	if math.IsInf(low, 0) || math.IsInf(high, 0) {
		return
	}
	from, to := r3.Vec{X: low, Y: at.Y, Z: z}, r3.Vec{X: high, Y: at.Y, Z: z}
	if along {
		from, to = r3.Vec{X: at.X, Y: low, Z: z}, r3.Vec{X: at.X, Y: high, Z: z}
	}
	if d.barPlaced(id, from, to) {
		return
	}
	pinned := l.On.Ends == "pinned"
	d.tube(Tube{Part: id, Body: string(Bar), Role: Bar, From: from, To: to, PinnedFrom: pinned, PinnedTo: pinned},
		l.On.Bar, "bar across to the two nearest tubes: "+path+".on", path+".on")
}

// barPlaced reports whether a tube already lies there.
func (d *deriver) barPlaced(id string, from, to r3.Vec) bool {
	for _, t := range d.Tubes {
		if t.Part == id || r3.Norm(r3.Sub(t.From, from))+r3.Norm(r3.Sub(t.To, to)) < touching {
			return true
		}
	}
	return false
}

// neighbors returns the places of the tubes on either side of a coordinate, among
// the ribs and the frame's sides that run parallel to them, at the ribs' level.
func (d *deriver) neighbors(across float64, along bool) (low, high, z float64) {
	low, high = math.Inf(-1), math.Inf(1)
	if _, ok := d.Rig.Tube("rib.1"); ok && d.box.Ribs.Level != "lower" {
		z = d.depth()
	}
	for _, t := range d.Tubes {
		place := t.From.X
		if along {
			place = t.From.Y
		}
		parallel := math.Abs(t.From.X-t.To.X) < touching
		if along {
			parallel = math.Abs(t.From.Y-t.To.Y) < touching
		}
		if t.Role == Bar || !parallel || math.Abs(t.From.Z-z) > touching || math.Abs(t.To.Z-z) > touching {
			continue
		}
		if place <= across && place > low {
			low = place
		}
		if place > across && place < high {
			high = place
		}
	}
	return low, high, z
}

// supply places a power supply that isn't inside the head: at the lamp, unless it
// stays off the box.
func (d *deriver) supply(l *plan.Lamp, entry kit.Lamp, lamp Part, w Weight) {
	if entry.Supply.Mass == nil || entry.Supply.OffBox {
		return
	}
	p := Part{
		ID: lamp.ID + ".supply", What: "power supply", Name: "power supply of " + lamp.Name, KitKind: "lamp", KitID: lamp.KitID,
		Body: lamp.Body, Mass: mass(float64(*entry.Supply.Mass)), MassFrom: "kit", Demo: entry.Source.Demo("supply"),
		Center: w.Center, Joined: []string{lamp.ID}, Why: "power supply at the lamp", Path: lamp.Path,
	}
	d.weigh(p, w)
	if s, ok := d.Stand(l); ok {
		d.onArm(s.Arm.Number, weightOf(p), p.Center, false, false)
	}
}

// weightOf returns a part's mass at its center, NaN where nobody gave it.
func weightOf(p Part) Weight {
	w := Weight{Part: p.ID, Mass: math.NaN(), Center: p.Center}
	if p.Mass != nil {
		w.Mass = *p.Mass
	}
	return w
}

// provided keeps a lamp that may still go up as a weight, and lists it.
func (d *deriver) provided(l *plan.Lamp, i int) {
	entry := d.Kit.Lamp[l.Kit]
	id := "provision." + lampName(l, i+1)
	w, _ := d.carry(l, entry, id, fmt.Sprintf("provision.lamps[%d]", i), false)
	w.Part = id
	w.Mass = math.NaN()
	if entry.Mass != nil {
		w.Mass = float64(*entry.Mass)
	}
	d.Provision = append(d.Provision, w)
	if s, ok := d.Stand(l); ok {
		d.onArm(s.Arm.Number, w, hookOf(l, entry), true, true)
	}
}

// added places what hangs besides: it acts on the bottom frame's four corners.
func (d *deriver) added() {
	for i, a := range d.Plan.Added {
		at := r3.Vec{X: float64(a.At[0]), Y: float64(a.At[1]), Z: float64(a.At[2])}
		d.weigh(Part{
			ID: "added." + a.Name, What: "added load", Name: a.Name, Body: string(BottomFrame),
			Mass: mass(float64(a.Mass)), MassFrom: "plan", Center: at,
			Why: "hangs besides: added", Path: fmt.Sprintf("added[%d]", i),
		}, Weight{})
	}
}
