package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/source"
)

// windID is the id of a limit's finding.
func windID(r reached) string {
	if r.kind == windTip || r.kind == windStand {
		return "load.wind." + r.kind + "." + r.part[len("stand."):]
	}
	return "load.wind." + r.kind
}

// first is the limit that comes first; false where one of them is not known, or none is
// there.
func (g *gale) first() (reached, bool) {
	best, ok := reached{q: math.Inf(1)}, true
	for _, r := range g.limits {
		if math.IsNaN(r.q) {
			ok = false
		}
		if r.q < best.q {
			best = r
		}
	}
	return best, ok && g.none == "" && g.shape.covered && !math.IsInf(best.q, 1) && g.hinge() == 0
}

// hinge is the largest moment of 1 Pa, N·m, that would turn the box about its two ears.
func (g *gale) hinge() (most float64) {
	if !g.standing() || len(g.holders) != 2 {
		return 0
	}
	for _, set := range [2][]blown{g.blown, g.pressed} {
		for _, b := range set {
			most = math.Max(most, b.hinge)
		}
	}
	return most
}

// tellWind tells it all.
func (g *gale) tellWind() {
	nan := Number(math.NaN())
	told := &Wind{First: nan, Watch: nan, Lower: nan, Gust: nan, Speed: nan, Density: Number(g.density), ClothPull: nan, ClothSag: nan, LiftOff: nan,
		Lifted: Number(g.shape.up), Pressed: Number(g.shape.down), LeftOut: g.shape.leftOut,
		Cases: []WindCase{}, Limits: []WindLimit{}, Guys: []WindGuy{}, Unknown: []string{}}
	if size := g.rig.Plan.Box.Size; g.shape.sheet {
		told.LiftOff = Number(liftOff(float64(g.answer.Mass)*gravity, float64(size[0])*float64(size[1]), g.shape.up, g.density))
	}
	if gust := g.rig.Plan.Room.Outdoors.Gust; gust != nil {
		told.Gust = Number(*gust)
	}
	if first, ok := g.first(); ok {
		v := speedOf(first.q, g.density)
		told.First, told.Governs = Number(v), windID(first)
		told.Watch, told.Lower = Number(v*source.WatchShare().Value), Number(v*source.LowerShare().Value)
		told.Beaufort = beaufort(float64(told.Lower))
	}
	told.Speed = told.Gust
	if math.IsNaN(float64(told.Speed)) {
		told.Speed = told.First
	}
	for _, r := range g.limits {
		if math.IsInf(r.q, 1) {
			continue // no wind reaches it
		}
		speed := speedOf(r.q, g.density)
		told.Limits = append(told.Limits, WindLimit{windID(r), r.what, Number(speed), Number(r.bearing / degree)})
		if math.IsNaN(r.q) {
			told.Unknown = append(told.Unknown, "when "+r.what)
		}
	}
	if g.none != "" {
		told.Unknown = append(told.Unknown, g.none)
	}
	g.tellCases(told)
	g.answer.Wind = told
}

// tellCases tells each bearing at the told speed.
func (g *gale) tellCases(told *Wind) {
	q := pressure(float64(told.Speed), g.density)
	for i, b := range g.blown {
		drag := total(b.loads())
		c := WindCase{Bearing: Number(math.Round(1e9*b.bearing/degree) / 1e9), Force: Number(q * math.Hypot(drag.X, drag.Y)), Uplift: Number(q * b.canopy.force.Z),
			At: vec(b.canopy.at), DragAt: vec(middleOfForces(b.drag)), Down: Number(-q * g.pressed[i].canopy.force.Z), Guyed: b.held, Moves: Number(q * b.moves)}
		if !g.shape.sheet {
			c.At = c.DragAt
		}
		told.Cases = append(told.Cases, c)
	}
	for i, y := range g.guys {
		row := WindGuy{Part: y.part, Takes: Number(y.takes), Pull: Number(q * g.mostOnGuy(i))}
		row.Up = row.Pull * Number(-y.toward.Z)
		row.Along = row.Pull * Number(r3.Norm(flat(y.toward)))
		told.Guys = append(told.Guys, row)
	}
	if t := &g.tube; t.why == "" && t.model != nil {
		tension, sag := t.pull(math.Max(g.shape.up*q-t.mass, g.shape.down*q+t.mass))
		told.ClothPull, told.ClothSag = Number(tension), Number(sag)
	}
}

// mostOnGuy is a guy's largest pull for 1 Pa, from any bearing; NaN where nothing is known
// of what holds the box.
func (g *gale) mostOnGuy(i int) (most float64) {
	for _, set := range [2][]blown{g.blown, g.pressed} {
		for _, b := range set {
			if b.guys == nil {
				return math.NaN()
			}
			most = math.Max(most, b.guys[i])
		}
	}
	return most
}

// middleOfForces is where forces act together, weighted by their size.
func middleOfForces(loads []force) (at r3.Vec) {
	var sum float64
	for _, l := range loads {
		at = r3.Add(at, r3.Scale(r3.Norm(l.force), l.at))
		sum += r3.Norm(l.force)
	}
	if sum == 0 {
		return r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
	}
	return r3.Scale(1/sum, at)
}

// concludeWind holds the gust to each limit, and to the first.
func (g *gale) concludeWind() {
	subject := g.subject("box", "room.outdoors")
	if !g.shape.covered {
		g.add(finding.Unknown("load.wind", subject, "Wind on the box", fmt.Sprintf(
			"the cloth leans by %.1f°: the published coefficients of canopies end at 30°", g.shape.slope/degree)))
		return
	}
	if g.none != "" {
		unknown := finding.Unknown("load.wind", subject, "Wind on the box", g.none)
		unknown.Causes = []string{"load.stands", "load.hangs"}
		g.add(unknown)
		return
	}
	if most := g.hinge(); most > 0 {
		g.add(finding.Unknown("load.wind.hinge", subject, "The box in wind, on two ears", fmt.Sprintf(
			"wind turns it about the line of its ears, with up to %.1f N m for each Pa, and nobody states what moment the heads hold", most)))
	}
	if g.rig.Plan.Room.Outdoors.Gust == nil {
		g.add(finding.Unknown("load.wind", subject, "The gust, against the speed at which the first limit is reached", "no gust is stated: room.outdoors.gust, the gust at the height of the cloth"))
		return
	}
	var causes []string
	for _, r := range g.limits {
		if math.IsInf(r.q, 1) {
			continue
		}
		f := g.againstGust(r)
		if f.Result != finding.Within {
			causes = append(causes, f.ID)
		}
		g.add(f)
	}
	g.concludeStakes()
	g.concludeFirst(causes)
}

// gustInput is the gust that the plan states.
func (g *gale) gustInput() finding.Input {
	return finding.Input{Symbol: "v", Name: "gust at the height of the cloth", Value: float64(*g.rig.Plan.Room.Outdoors.Gust), Unit: "m/s", Origin: g.origin("room.outdoors.gust")}
}

// againstGust holds the gust to the speed at which one limit is reached.
func (g *gale) againstGust(r reached) finding.Finding {
	subject := g.subject(r.part, r.path)
	statement := "The gust, against the speed at which " + r.what
	if r.why != "" {
		return finding.Unknown(windID(r), subject, statement, r.why)
	}
	f := finding.Check{
		ID: windID(r), Subject: subject, Statement: statement, Relation: finding.AtMost, Unit: "m/s", Case: bearingName(r.bearing),
		Value: finding.Given(g.gustInput()),
		Limit: finding.Work{Formula: "v_max = sqrt(2 * q / ρ)", Name: "speed at which it is reached", Inputs: []finding.Input{
			{Symbol: "q", Name: "velocity pressure at which it is reached" + fromBearing(r.bearing), Value: r.q, Unit: "Pa", Origin: windOrigin},
			finding.Cited("ρ", source.AirDensity()),
		}},
		Source: source.Cite("en-1991-1-4", ""), Assumptions: g.assumed(r),
	}.Conclude()
	if f.Result == finding.NotKnown && g.floor.holdsBox {
		f.Causes = append(f.Causes, g.massCauses()...)
	}
	return f
}

const windOrigin = "canopy, sides and tubes in wind from every bearing, docs/method-wind.md"

func bearingName(b float64) string {
	if math.IsNaN(b) {
		return "wind"
	}
	return fmt.Sprintf("wind from %.0f°", b/degree)
}

func fromBearing(b float64) string {
	if math.IsNaN(b) {
		return ""
	}
	return fmt.Sprintf(", worst from %.0f°", b/degree)
}

// assumed lists what one limit rests on.
func (g *gale) assumed(r reached) []string {
	told := []string{g.blockedText()}
	switch r.kind {
	case windTip:
		told = append(told, fmt.Sprintf("restoring over overturning moment %.1f, level ground; the drag goes to all stands alike, or to the guys where they hold better that way", source.TipRatio().Value))
	case windLift:
		told = append(told, "from there on only pins' retainers and guys hold the box down, which nobody rated for that; masses as stated, cloth dry")
	case windSlide:
		told = append(told, fmt.Sprintf("friction %.1f of feet or locked castors on the ground is assumed: nobody states it", source.FloorFriction().Value))
	case windGuy, windStake:
		told = append(told, "guys are snug, only pull, and take all of the drag where they hold better than the stands alone; their stretch shares it")
	case windTube:
		told = append(told, g.tube.sag, "small displacements; the cloth is taken as tight to the wind", "no buckling check of a tube in compression")
		if math.IsInf(g.tube.cloth.stretch, 1) {
			told = append(told, "the kit gives no stretch of the cloth: it is taken not to stretch, which pulls harder")
		}
	case windSlack:
		told = append(told, "from there on the box drops back into its lines after each gust, with a shock that is not worked out")
	}
	return append(told, g.shape.leftOut...)
}

// blockedText says how blocked the canopy is taken to be.
func (g *gale) blockedText() string {
	if b := g.rig.Plan.Room.Outdoors.Blocked; b != nil {
		return fmt.Sprintf("net coefficients %+.2f and −%.2f of a canopy blocked to %.0f %%", g.shape.down, g.shape.up, 100*float64(*b))
	}
	return fmt.Sprintf("net coefficients %+.2f and −%.2f: what blocks the wind under the cloth is not given, the worse of open and blocked is taken (open: −%.2f)",
		g.shape.down, g.shape.up, g.shape.upOpen)
}

// concludeStakes tells what the guys ask of what they are made fast to, where nobody
// states what that takes.
func (g *gale) concludeStakes() {
	worst := -1
	for i, y := range g.guys {
		if math.IsNaN(y.stake) && (worst < 0 || g.mostOnGuy(i) > g.mostOnGuy(worst)) {
			worst = i
		}
	}
	if worst < 0 || g.mostOnGuy(worst) == 0 {
		return
	}
	y := &g.guys[worst]
	pull := g.mostOnGuy(worst) * pressure(float64(*g.rig.Plan.Room.Outdoors.Gust), g.density)
	g.add(finding.Unknown("load.wind.stakes", g.subject(y.part, y.path), "What the guys are made fast to", fmt.Sprintf(
		"nobody states what stakes, rings or weights take (hang.guys[].allows); the gust asks up to %.0f N of %s: %.0f N up and %.0f N along the ground",
		pull, y.part, -pull*y.toward.Z, pull*r3.Norm(flat(y.toward)))))
}

// concludeFirst holds the gust to the first limit and tells the speeds to watch at and to
// lower at.
func (g *gale) concludeFirst(causes []string) {
	subject := g.subject("box", "room.outdoors")
	statement := "The gust, against the speed at which the first limit is reached"
	first, ok := g.first()
	if !ok {
		unknown := finding.Unknown("load.wind", subject, statement, "a limit that may come first is not known, or nothing that was looked at limits it")
		unknown.Causes = append(causes, "load.wind.hinge")
		g.add(unknown)
		return
	}
	v := speedOf(first.q, g.density)
	watch, lower := v*source.WatchShare().Value, v*source.LowerShare().Value
	g.add(finding.Check{
		ID: "load.wind", Subject: subject, Statement: statement + ": " + first.what, Relation: finding.AtMost, Unit: "m/s", Case: bearingName(first.bearing), Causes: causes,
		Value:  finding.Given(g.gustInput()),
		Limit:  finding.Given(finding.Input{Symbol: "v_first", Name: "first of all limits", Value: v, Unit: "m/s", Origin: windOrigin, Finding: windID(first)}),
		Source: source.WatchShare().Citation, Assumptions: []string{
			fmt.Sprintf("watch from %.1f m/s (%.0f mph), lower at %.1f m/s (%.0f mph): 60 and 80 %% of the first limit, 36 and 64 %% of its force", watch, watch/mph, lower, lower/mph),
			"a gust of three seconds at the height of the cloth, not a mean and not at the ground",
		},
	}.Conclude())
}

// mph is a mile per hour in m/s.
const mph = 0.44704

// valueOf is what a limit's work comes to; NaN where that is not known.
func valueOf(limit finding.Work) float64 {
	return finding.Check{ID: "value", Relation: finding.AtMost, Unit: "N", Limit: limit, Source: source.Cite("plan", ""),
		Value: finding.Given(finding.Input{Symbol: "v_1", Value: 1, Unit: "N"})}.Conclude().Limit
}
