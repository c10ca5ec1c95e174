package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/rig"
	"softloft/source"
)

// Wind is what wind does to the box outdoors. Cases are at Speed: the plan's gust, else
// the first limit. Bearings are where the wind comes from. First, Watch and Lower are not
// known where a limit that could come first is not.
type Wind struct {
	First   Number      `json:"first_limit_mps"`
	Governs string      `json:"governs"` // id of a finding
	Watch   Number      `json:"watch_mps"`
	Lower   Number      `json:"lower_mps"`
	Gust    Number      `json:"gust_mps"`
	Speed   Number      `json:"speed_mps"`
	Density Number      `json:"density_kg_m3"`
	Cases   []WindCase  `json:"cases"`
	Limits  []WindLimit `json:"limits"`
	Guys    []WindGuy   `json:"guys"`
	// ClothPull is the lifted cloth's pull on its tubes, N/m, at Speed; ClothSag how far
	// it belies then.
	ClothPull Number `json:"cloth_pull_n_per_m"`
	ClothSag  Number `json:"cloth_sag_m"`
	// LiftOff is the speed at which the canopy's uplift comes to the weight of the box as
	// built, wherever it acts.
	LiftOff Number `json:"lift_off_mps"`
	// Lifted and Pressed are the canopy's net coefficients.
	Lifted   Number   `json:"lifted"`
	Pressed  Number   `json:"pressed"`
	LeftOut  []string `json:"left_out"`
	Unknown  []string `json:"not_known"`
	Beaufort int      `json:"lower_beaufort"`
}

// WindCase is wind from one bearing: force along the ground, uplift, and where the uplift
// acts; DragAt is where the force does.
type WindCase struct {
	Bearing Number `json:"bearing_deg"`
	Force   Number `json:"force_n"`
	Uplift  Number `json:"uplift_n"`
	At      Vec    `json:"at_m"`
	DragAt  Vec    `json:"drag_at_m"`
	Down    Number `json:"down_n"` // pressed down instead
	Guyed   bool   `json:"guys_hold"`
	Moves   Number `json:"moves_m"` // sideways
}

// WindLimit is the speed at which one limit is reached from the worst bearing.
type WindLimit struct {
	ID      string `json:"id"`
	What    string `json:"what"`
	Speed   Number `json:"speed_mps"`
	Bearing Number `json:"bearing_deg"`
}

// WindGuy is the largest pull on a guy at Speed, what its rope takes, and what lifts and
// drags its stake then.
type WindGuy struct {
	Part  string `json:"part"`
	Pull  Number `json:"pull_n"`
	Takes Number `json:"takes_n"`
	Up    Number `json:"stake_up_n"`
	Along Number `json:"stake_along_n"`
}

// gale is the analysis under way.
type gale struct {
	*work
	shape   *windShape
	holders []holder
	lengths []float64 // of lines
	guys    []guy
	limits  []reached
	density float64
	none    string // why nothing is known of what holds the box
	tube    tubeWind
	blown   []blown // lifted, one for each bearing
	pressed []blown
}

// wind works out what wind does. A box indoors gets none.
func (w *work) wind() {
	room := w.rig.Plan.Room
	if room == nil || room.Outdoors == nil {
		return
	}
	g := &gale{work: w, shape: windShapeOf(w.rig), density: source.AirDensity().Value, guys: w.guysOf()}
	g.findHolders()
	for _, b := range w.bearings() {
		g.blown = append(g.blown, g.blows(b, true))
		g.pressed = append(g.pressed, g.blows(b, false))
	}
	if g.none == "" {
		g.hold()
	}
	g.armStands()
	g.clothOnTubes()
	g.tellWind()
	g.concludeWind()
}

// findHolders lists the ears, or the lines.
func (g *gale) findHolders() {
	f := &g.floor
	switch {
	case f.holdsBox && (f.why != "" || f.sharing == ""):
		g.none = "what each stand carries of the box is not known"
	case f.holdsBox:
		for k, i := range f.ears {
			s := &g.rig.Stands[i]
			g.holders = append(g.holders, holder{at: g.rig.EarInRoom(s.Ear), now: f.built[k], stand: s, index: i})
		}
	case g.built == nil:
		g.none = "how the box hangs is not known"
	default:
		for i, cable := range g.model.lines {
			if cable >= 0 {
				g.holders = append(g.holders, holder{at: g.built.Position[g.model.problem.Cables[cable].I], now: g.model.tension(g.built, i), index: i})
				g.lengths = append(g.lengths, math.Max(g.built.Cables[cable].Length, touching))
			}
		}
	}
}

// note keeps a limit with the least pressure of its kind.
func (g *gale) note(r reached) {
	for i := range g.limits {
		have := &g.limits[i]
		if have.kind == r.kind && (have.kind != windTip && have.kind != windStand || have.part == r.part) {
			if math.IsNaN(r.q) && !math.IsNaN(have.q) || r.q < have.q {
				*have = r
			}
			return
		}
	}
	g.limits = append(g.limits, r)
}

// hold finds the pressures at which what holds the box gives out, over all bearings.
func (g *gale) hold() {
	for _, set := range [2][]blown{g.blown, g.pressed} {
		for i := range set {
			for _, r := range g.limitsOf(&set[i]) {
				g.note(r)
			}
		}
	}
	if !g.standing() {
		g.onDrops()
	}
}

// limitsOf lists the limits of what holds the box in wind from one bearing.
func (g *gale) limitsOf(b *blown) []reached {
	if g.standing() {
		return append(g.onStands(b), g.onGuys(b)...)
	}
	return append(g.onLines(b), g.onGuys(b)...)
}

// onStands lists when a stand lets the box go, tips, slides or has too much on it.
func (g *gale) onStands(b *blown) (all []reached) {
	ratio := source.TipRatio().Value
	for i, h := range g.holders {
		s, down := h.stand, b.down[i]
		note := func(kind, what string, q float64) {
			all = append(all, reached{kind: kind, what: what, part: s.Part, path: s.Path, q: q, bearing: b.bearing})
		}
		loads := g.floor.standing[h.index].built
		note(windLift, "the box lifts off stand "+s.Name, runsOut(-h.now, -down, 0))
		note(windTip, "stand "+s.Name+" tips", tipsAt(s, loads, b.side[i], down, flat(r3.Sub(h.at, s.Top())), ratio))
		most, row := ratedAt(s)
		note(windStand, "stand "+s.Name+", pressed down, is over what it is rated for"+row, runsOut(h.now, down, most))
		if side := r3.Norm(b.side[i]); side > 0 {
			friction := frictionOf(s)
			note(windSlide, "stand "+s.Name+" slides", runsOut(-friction*weightOn(loads), side-friction*down, 0))
		}
	}
	return all
}

// frictionOf is the friction of a stand's feet on the ground; none on rolling castors.
func frictionOf(s *rig.Stand) float64 {
	if s.HasCastors && s.Castors == "rolling" {
		return 0
	}
	return source.FloorFriction().Value
}

// weightOn is all that a stand puts on the ground, N.
func weightOn(loads []onStand) (sum float64) {
	for _, l := range loads {
		sum += l.mass * gravity
	}
	return sum
}

// onLines lists when a line is slack or over what its rope takes.
func (g *gale) onLines(b *blown) (all []reached) {
	for i, h := range g.holders {
		l := &g.rig.Lines[h.index]
		part := "line." + l.Name + ".rope"
		all = append(all, reached{kind: windSlack, what: "line " + l.Name + " is slack", part: part, path: l.Path, q: runsOut(-h.now, -b.down[i], 0), bearing: b.bearing},
			reached{kind: windLine, what: "line " + l.Name + " is over what its rope may carry", part: part, path: l.Path,
				q: runsOut(h.now, b.down[i], g.ropeTakes(l.Rope)), bearing: b.bearing})
	}
	return all
}

// onGuys lists when a guy is over what its rope or its stake takes.
func (g *gale) onGuys(b *blown) (all []reached) {
	for i, y := range g.guys {
		if !(b.guys[i] > 0) {
			continue
		}
		all = append(all, reached{kind: windGuy, what: y.part + " is over what its rope may carry", part: y.part, path: y.path, q: runsOut(0, b.guys[i], y.takes), bearing: b.bearing})
		if !math.IsNaN(y.stake) {
			all = append(all, reached{kind: windStake, what: "the stake of " + y.part + " is over what it is stated to take", part: y.part, path: y.path,
				q: runsOut(0, b.guys[i], y.stake), bearing: b.bearing})
		}
	}
	return all
}

// onDrops notes when a drop under the upper frame is slack: the cloth lifts the bottom
// frame alone.
func (g *gale) onDrops() {
	var places []r3.Vec
	var which []int
	for i, cable := range g.model.drops {
		if cable >= 0 {
			places, which = append(places, g.built.Position[g.model.problem.Cables[cable].I]), append(which, i)
		}
	}
	if len(places) == 0 || !g.shape.sheet {
		return
	}
	for _, b := range g.blown {
		down, _ := handOn(places, []force{b.canopy})
		for k, i := range which {
			d := &g.rig.Drops[i]
			now := g.built.Cables[g.model.drops[i]].Tension
			g.note(reached{kind: windSlack, what: d.Name + " is slack", part: d.Part, path: "box.join", q: runsOut(-now, -down[k], 0), bearing: b.bearing})
		}
	}
}

// armStands notes when a stand whose arm holds lamps tips by the wind on them.
func (g *gale) armStands() {
	for i := range g.rig.Stands {
		s := &g.rig.Stands[i]
		if s.Arm == nil {
			continue
		}
		for _, bearing := range g.bearings() {
			var moment r3.Vec
			for _, b := range g.shape.bodies {
				if f := b.force(blowOf(bearing)); b.stand == s.Part {
					moment = r3.Add(moment, r3.Scale(f.at.Z/s.Rise, f.force))
				}
			}
			g.note(reached{kind: windTip, what: "stand " + s.Name + " tips", part: s.Part, path: s.Path, bearing: bearing,
				q: tipsAt(s, g.floor.standing[i].built, moment, 0, r3.Vec{}, source.TipRatio().Value)})
		}
	}
}

// ropeOf finds a rope, sling or webbing of the kit as lines have it.
func (w *work) ropeOf(id string) *rig.Rope {
	piece, ok := w.rig.Kit.Suspender(id)
	if !ok {
		return &rig.Rope{ID: id}
	}
	return rig.RopeOf(piece)
}

// ropeTakes is what a rope may carry after rules and factors, N; NaN where not known.
func (w *work) ropeTakes(rope *rig.Rope) float64 {
	if rope == nil {
		return math.NaN()
	}
	limit, _ := w.ropeLimit(&rig.Line{Rope: rope})
	return valueOf(limit)
}

func guyPart(i int) string { return fmt.Sprintf("guy.%d", i+1) }
