package rig

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/plan"
)

// stands places what stands on the floor, with bags, arms and the ears that are
// held. Nothing of it weighs on the box but the ears.
func (d *deriver) stands() {
	arms := 0
	for i := range d.Plan.Stands {
		p := &d.Plan.Stands[i]
		s := d.stand(p, i)
		d.bags(&s, p.Bags)
		if p.Holds != nil && p.Holds.Ear != "" {
			d.ear(&s, p.Holds.Ear)
		}
		if p.Holds != nil && p.Holds.Arm != nil {
			arms++
			d.arm(&s, p.Holds.Arm, arms)
		}
		d.Stands = append(d.Stands, s)
	}
}

// stand places a stand: its mast, and its legs as shapes that weigh with it.
func (d *deriver) stand(p *plan.Stand, i int) Stand {
	entry := d.Kit.Stand[p.Kit]
	s := Stand{
		Name: p.Title(i + 1), Path: fmt.Sprintf("stands[%d]", i), KitID: p.Kit,
		Foot: r3.Vec{X: float64(p.At[0]), Y: float64(p.At[1])}, Rise: float64(p.Rise),
		Rises: [2]float64{float64(entry.Rises[0]), float64(entry.Rises[1])}, Turn: float64(p.Turn),
		Legs: max(entry.Legs, 3), Radius: float64(entry.Base) / 2, Mass: float(entry.Mass),
		Rated: entry.Rated, RatedSource: entry.Source.For("rated"), Demo: entry.Source.Demo("rated"),
		Receiver: float(entry.Receiver), Castors: p.Castors, HasCastors: entry.Castors,
	}
	s.Part = "stand." + s.Name
	top := s.Top()
	part := d.standPart(&s, Part{ID: s.Part, What: "stand", Name: entry.Label(p.Kit), KitKind: "stand", KitID: p.Kit,
		Mass: s.Mass, Demo: entry.Source.Demo("mass"), Center: r3.Vec{X: s.Foot.X, Y: s.Foot.Y, Z: s.Rise * massHeight},
		Why: fmt.Sprintf("stand %s: %s", s.Name, s.Path)})
	part.From, part.To = &s.Foot, &top
	d.onFloor(part)
	for leg := 1; leg <= s.Legs; leg++ {
		from, to := r3.Vec{X: s.Foot.X, Y: s.Foot.Y, Z: math.Min(s.Radius/2, s.Rise)}, s.LegFoot(leg)
		shape := d.standPart(&s, Part{ID: fmt.Sprintf("%s.leg.%d", s.Part, leg), What: "stand leg", Name: fmt.Sprintf("leg %d of %s", leg, s.Name),
			Mass: mass(0), Weightless: true, Center: r3.Scale(0.5, r3.Add(from, to)), Joined: []string{s.Part},
			Why: fmt.Sprintf("leg %d of %d, weighs with its stand", leg, s.Legs)})
		shape.From, shape.To = &from, &to
		d.onFloor(shape)
	}
	return s
}

// massHeight is where a stand's own mass is taken to be, as a share of its rise: low,
// as base and lowest stage weigh most. Design assumption; it moves no result.
const massHeight = 1.0 / 3

// standPart fills in what all parts of a stand share.
func (d *deriver) standPart(s *Stand, p Part) Part {
	p.Body, p.InRoom, p.Path = s.Part, true, s.Path
	if p.MassFrom == "" && p.Mass != nil && !p.Weightless {
		p.MassFrom = "kit"
	}
	return p
}

// onFloor places a part that the box doesn't carry.
func (d *deriver) onFloor(p Part) { d.weigh(p, Weight{Elsewhere: true}) }

// bags places a stand's weights: at its mast, or over a leg's foot.
func (d *deriver) bags(s *Stand, b *plan.Bags) {
	if b == nil {
		return
	}
	s.Bags = &Bags{Mass: float64(b.Mass), Count: b.Count, Leg: b.At.Leg}
	at, where := s.Foot, "base"
	if b.At.Leg > 0 {
		at, where = s.LegFoot(b.At.Leg), fmt.Sprintf("leg %d", b.At.Leg)
	}
	id, name := bagOf(d.Kit, s.Bags.Mass)
	for i := range b.Count {
		p := d.standPart(s, Part{ID: fmt.Sprintf("%s.bag.%d", s.Part, i+1), What: "bag", Name: name, KitID: id,
			Mass: mass(s.Bags.Mass), MassFrom: "plan", Center: at, Joined: []string{s.Part},
			Why: fmt.Sprintf("holds %s down at its %s: %s.bags", s.Name, where, s.Path)})
		if id != "" {
			p.KitKind = "bag"
		}
		d.onFloor(p)
	}
}

// bagOf finds the kit's bag of a mass: they come in sizes.
func bagOf(k kit.Kit, m float64) (id, name string) {
	for _, id := range kit.IDs(k.Bag) {
		if each := k.Bag[id].Mass.Each; each != nil && math.Abs(float64(*each)-m) < 1e-3*m {
			return id, k.Bag[id].Label(id)
		}
	}
	return "", fmt.Sprintf("bag of %.3g kg", m)
}

// arm places an arm and the head that holds it on the stand's top.
func (d *deriver) arm(s *Stand, a *plan.Arm, number int) {
	entry := d.Kit.Arm[a.Kit]
	sin, cos := math.Sincos(float64(a.Bearing))
	from := s.Top()
	to := r3.Add(from, r3.Vec{X: float64(a.Reach) * cos, Y: float64(a.Reach) * sin, Z: float64(a.Rise)})
	s.Arm = &Arm{Part: s.Part + ".arm", KitID: a.Kit, Number: number, From: from, To: to, Reach: float64(a.Reach), Longest: float(entry.Length), Hand: a.Head}
	p := d.standPart(s, Part{ID: s.Arm.Part, What: "arm", Name: entry.Label(a.Kit), KitKind: "arm", KitID: a.Kit, Demo: entry.Source.Demo("mass"),
		Center: r3.Scale(0.5, r3.Add(from, to)), Joined: []string{s.Part},
		Why: fmt.Sprintf("arm %d, on %s: %s.holds", number, s.Name, s.Path)})
	p.From, p.To = &from, &to
	p.Mass, p.MassFrom = pieceMass(entry, r3.Norm(r3.Sub(to, from)))
	d.onFloor(p)
	s.Arm.Pieces = append(s.Arm.Pieces, OnArm{Part: p.ID, Mass: p.Mass, Away: r3.Sub(p.Center, from)})
	d.head(s)
}

// head places the clamp head that holds an arm. The head takes an off-center load on
// the side where the load tightens it (common practice).
func (d *deriver) head(s *Stand) {
	if !d.all() {
		d.notPlaced("head of "+s.Name, "derive: none; the plan names no head for its arm")
		return
	}
	ids := kit.IDs(d.Kit.Head)
	if len(ids) == 0 {
		d.notPlaced("head of "+s.Name, "the kit has no head")
		return
	}
	entry := d.Kit.Head[ids[0]]
	p := d.standPart(s, Part{ID: s.Part + ".head", What: "head", Name: entry.Label(ids[0]), KitKind: "head", KitID: ids[0], Demo: entry.Source.Demo("mass"),
		Center: s.Top(), Joined: []string{s.Part, s.Arm.Part},
		Why: fmt.Sprintf("holds the arm on %s, which leaves it on the %s as seen from behind the clamp: the load must tighten it", s.Name, s.Arm.Hand)})
	p.Mass, p.MassFrom = pieceMass(entry, 0)
	d.onFloor(p)
	s.Arm.Pieces = append(s.Arm.Pieces, OnArm{Part: p.ID, Mass: p.Mass})
}

// onArm notes a mass that hangs on an arm. hook is where it is held, in box axes.
func (d *deriver) onArm(number int, w Weight, hook r3.Vec, lamp, provision bool) {
	if s, ok := d.Holder(number); ok {
		s.Arm.Holds = append(s.Arm.Holds, OnArm{Part: w.Part, Lamp: lamp, Provision: provision, Mass: known(w.Mass),
			Away: d.Pose.OutDirection(r3.Sub(w.Center, hook))})
	}
}

// known returns a mass, nil where it is NaN.
func known(m float64) *float64 {
	if math.IsNaN(m) {
		return nil
	}
	return &m
}

// reweighOnArm lets a measured mass count on an arm too.
func (d *deriver) reweighOnArm(part string, m float64) {
	for i := range d.Stands {
		s := &d.Stands[i]
		if s.Part == part {
			s.Mass = mass(m)
		}
		if s.Arm == nil {
			continue
		}
		for _, set := range [2][]OnArm{s.Arm.Pieces, s.Arm.Holds} {
			for k := range set {
				if set[k].Part == part {
					set[k].Mass = mass(m)
				}
			}
		}
	}
}
