package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
	"softloft/plan"
	"softloft/rig"
)

// Cloth is how the tied cloth pulls on the bottom frame as built. Bow is by how much
// the pull and the rest bring the middles of opposite sides nearer, along x and y.
type Cloth struct {
	Pull Number    `json:"pull_n_per_m"`
	Sag  Number    `json:"sag_m"`
	Bow  [2]Number `json:"bow_m"`
}

// directions are where the cloth pulls the sides to: along x from west to east, and
// along y from south to north, unit vectors in the room.
type directions struct{ x, y r3.Vec }

// sides are the bottom frame's tubes: north, south, east, west; ok is false without.
func (m *model) sides() (found [4]int, ok bool) {
	for k, name := range plan.SideNames {
		found[k] = -1
		for i := range m.rig.Tubes {
			if m.rig.Tubes[i].Part == "frame."+name {
				found[k] = i
			}
		}
		if found[k] < 0 {
			return found, false
		}
	}
	return found, true
}

// pulled adds to the loads how the cloth's pull bends each piece between its joints.
// The pull itself is in the cloth's cables; a piece gets the even pull over its length
// and, at its two joints, its opposite, so that nothing is left over at any joint.
func (m *model) pulled(loads frame.Loads, d directions) frame.Loads {
	sides, ok := m.sides()
	if m.pull == 0 || !ok {
		return loads
	}
	loads.Member = loads.Member[:len(loads.Member):len(loads.Member)]
	loads.Nodal = loads.Nodal[:len(loads.Nodal):len(loads.Nodal)]
	toward := map[int]r3.Vec{sides[0]: r3.Scale(-m.pull, d.y), sides[1]: r3.Scale(m.pull, d.y), sides[2]: r3.Scale(-m.pull, d.x), sides[3]: r3.Scale(m.pull, d.x)}
	for i, p := range m.pieces {
		f, ok := toward[p.tube]
		if !ok {
			continue
		}
		b := m.problem.Members[i]
		half := r3.Scale(-r3.Norm(r3.Sub(m.problem.Nodes[b.J].At, m.problem.Nodes[b.I].At))/2, f)
		loads.Member = append(loads.Member, frame.MemberLoad{Member: i, AtI: f, AtJ: f})
		loads.Nodal = append(loads.Nodal, frame.NodalLoad{Node: b.I, Force: half}, frame.NodalLoad{Node: b.J, Force: half})
	}
	return loads
}

// across finds the directions in a state: between the middles of opposite sides.
func (m *model) across(position []r3.Vec) directions {
	if m.corners == nil {
		return directions{x: m.rig.Pose.X, y: m.rig.Pose.Y}
	}
	ne, nw, sw, se := position[m.corners[0]], position[m.corners[1]], position[m.corners[2]], position[m.corners[3]]
	return directions{
		x: r3.Unit(r3.Sub(r3.Add(ne, se), r3.Add(nw, sw))),
		y: r3.Unit(r3.Sub(r3.Add(ne, nw), r3.Add(se, sw))),
	}
}

// equilibrium is the solver with the cloth's pull. The state knows all loads; the loads
// that are the box's weight stay apart from the pull.
func (m *model) equilibrium(p *frame.Problem, loads frame.Loads, o frame.Options) (*frame.State, error) {
	if m.pull == 0 {
		return p.Equilibrium(loads, o)
	}
	d := directions{x: m.rig.Pose.X, y: m.rig.Pose.Y}
	if o.Start != nil {
		d = m.across(o.Start.Position)
	}
	return p.Equilibrium(m.pulled(loads, d), o)
}

// opposite is the side across from a tube of the bottom frame where the cloth is tied to
// pull: joints on one side are matched on the other.
func (m *model) opposite(t *rig.Tube) (*rig.Tube, bool) {
	if tie := m.rig.Plan.Box.ClothTie; tie.Sag == nil && tie.Cut == nil {
		return nil, false
	}
	across := map[string]string{"frame.north": "frame.south", "frame.south": "frame.north", "frame.east": "frame.west", "frame.west": "frame.east"}
	return m.rig.Tube(across[t.Part])
}

// soft is how much longer a cloth's cable is than it was unstretched: so much that its
// tension hardly hangs on how the frame gives.
const soft = 1000

// setPull spans the cloth between matching joints of opposite sides: each cable pulls as
// hard as the cloth over the pieces beside the joint.
func (m *model) setPull(pull float64) {
	m.pull = pull
	sides, ok := m.sides()
	if !ok {
		return
	}
	if m.strips == nil {
		m.span(sides[0], sides[1])
		m.span(sides[2], sides[3])
		m.square()
	}
	m.spread(nil)
}

// spread gives each cable of the cloth its tension: at its planned length, or at the one
// that it has in a state, once the frame has given way.
func (m *model) spread(s *solved) {
	for _, strip := range m.strips {
		c := &m.problem.Cables[strip.cable]
		length := soft * c.Unstretched
		if s != nil {
			length = s.Cables[strip.cable].Length
		}
		c.EA = math.Max(m.pull, 1e-9) * strip.width / (length/c.Unstretched - 1)
	}
}

// biasEA is what a cloth bears along its bias to keep a frame of pinned corners square, N:
// an assumption. Its own pull T folds such a frame with T·a²; the two diagonals hold it with
// EA·a/√2. They are a hair short, so that they carry a newton and never hang slack.
const (
	biasEA    = 2e3
	biasShort = 0.5e-3
)

// square adds the two diagonals of the cloth where the corners are pinned: without them the
// pull itself would fold the frame. In a frame that stays square they carry next to nothing.
func (m *model) square() {
	if m.corners == nil || m.rig.Plan.Box.Corners != "pinned" {
		return
	}
	m.assumed = append(m.assumed, fmt.Sprintf("the corners are pinned: the cloth itself keeps the frame square (EA = %.0f kN along its diagonals is assumed)", biasEA/1000))
	for k := range 2 {
		one, other := m.corners[k], m.corners[k+2]
		m.problem.Cables = append(m.problem.Cables, frame.Cable{Name: "cloth, diagonal", I: one, J: other, EA: biasEA,
			Unstretched: (1 - biasShort) * r3.Norm(r3.Sub(m.atNode[one], m.atNode[other]))})
	}
}

// strips of cloth between two sides: a cable and how much of the side it stands for.
type clothStrip struct {
	cable int
	width float64 // m
}

func (m *model) span(one, two int) {
	width := map[int]float64{}
	var order []int
	for i, p := range m.pieces {
		if p.tube != one {
			continue
		}
		b := m.problem.Members[i]
		for _, node := range [2]int{b.I, b.J} {
			if _, ok := width[node]; !ok {
				order = append(order, node)
			}
			width[node] += (p.to - p.from) / 2
		}
	}
	shift := r3.Sub(m.rig.Tubes[two].From, m.rig.Tubes[one].From)
	for _, node := range order {
		other, ok := m.nodeAt(r3.Add(m.atNode[node], shift))
		if !ok {
			continue
		}
		m.strips = append(m.strips, clothStrip{cable: len(m.problem.Cables), width: width[node]})
		m.problem.Cables = append(m.problem.Cables, frame.Cable{Name: "cloth", I: node, J: other, EA: 1, Unstretched: r3.Norm(shift) / soft})
	}
}

// tie works out the cloth's pull, for a sag that the plan states or together with the
// frame, before anything else is solved.
func (w *work) tie(loads frame.Loads) {
	m, tie := w.model, w.rig.Plan.Box.ClothTie
	if len(w.rig.Plan.Box.Cloth) == 0 || tie.Sag == nil && tie.Cut == nil {
		return
	}
	if _, ok := m.sides(); !ok {
		m.assumed = append(m.assumed, "the cloth is tied to no bottom frame that is placed: its pull is left out")
		return
	}
	s, ok := w.strip()
	switch {
	case !ok || s.w == 0:
	case tie.Sag != nil:
		m.setPull(s.k * s.w * s.a * s.a / float64(*tie.Sag))
	default:
		w.tieTogether(s, loads)
	}
	if state, err := m.rest(loads); err == nil && m.pull > 0 {
		m.spread(state)
	}
}

// strip reads the cloth's middle strip off the plan and the kit. Several layers that are
// cut alike sag alike: their weights and stiffnesses add.
func (w *work) strip() (strip, bool) {
	box := w.rig.Plan.Box
	a, b := float64(box.Size[0]), float64(box.Size[1])
	short := 0
	if b < a {
		short = 1
	}
	s := strip{k: membrane(a, b), a: math.Min(a, b), stretch: 0}
	for _, layer := range box.Cloth {
		entry := w.rig.Kit.Cloth[layer.Kit]
		if entry.Mass == nil {
			return s, false
		}
		s.w += float64(*entry.Mass) * gravity
		if entry.Stretch == nil {
			s.stretch = math.Inf(1)
		} else {
			s.stretch += float64(*entry.Stretch)
		}
	}
	if p := box.ClothTie.Pretension; p != nil {
		s.laced = float64(*p)
	}
	if cut := box.ClothTie.Cut; cut != nil && s.laced == 0 {
		s.slack = math.Max(0, float64(cut[short])-s.a)
	}
	return s, true
}

// tieTogether finds the pull at which the cloth's strip and the frame's opening fit: the
// frame gives way nearly in proportion, so a few rounds suffice.
func (w *work) tieTogether(s strip, loads frame.Loads) {
	m := w.model
	if math.IsInf(s.stretch, 1) {
		m.assumed = append(m.assumed, "the kit gives no stretch of the cloth: it is taken not to stretch, which pulls harder")
	}
	slackFrame, err := m.rest(loads)
	if err != nil {
		return
	}
	open := m.bows(slackFrame)
	m.setPull(s.w * s.a)
	for range 8 {
		state, err := m.rest(loads)
		if err != nil {
			m.setPull(0)
			m.assumed = append(m.assumed, "cloth and frame were not brought together: the cloth's pull is left out")
			return
		}
		m.spread(state)
		bow := m.bows(state)
		s.give = (m.closing(s, bow) - m.closing(s, open)) / m.pull
		next := s.tension()
		done := math.Abs(next/m.pull-1) < 1e-7
		m.setPull(next)
		if done {
			return
		}
	}
}

// closing is the closing of the opening along the strip: the shorter way's, the mean of
// both in a square.
func (m *model) closing(s strip, bow [2]float64) float64 {
	size := m.rig.Plan.Box.Size
	switch {
	case size[0] == size[1]:
		return (bow[0] + bow[1]) / 2
	case size[0] < size[1]:
		return bow[0]
	}
	return bow[1]
}

// bows is by how much the middles of opposite sides are nearer than the box's size, along
// x and y, in m.
func (m *model) bows(s *solved) (bow [2]float64) {
	sides, ok := m.sides()
	if !ok {
		return bow
	}
	apart := func(one, two int) float64 { return r3.Norm(r3.Sub(m.middleOf(s, one), m.middleOf(s, two))) }
	size := m.rig.Plan.Box.Size
	return [2]float64{float64(size[0]) - apart(sides[2], sides[3]), float64(size[1]) - apart(sides[0], sides[1])}
}

// middleOf is where the middle of a tube has moved to.
func (m *model) middleOf(s *solved, tube int) r3.Vec {
	t := &m.rig.Tubes[tube]
	half := r3.Norm(r3.Sub(t.To, t.From)) / 2
	for i, p := range m.pieces {
		if p.tube == tube && half >= p.from && half <= p.to {
			return s.Along(i, (half-p.from)/(p.to-p.from)).At
		}
	}
	return r3.Vec{X: math.NaN()}
}

// tellCloth tells the pull.
func (w *work) tellCloth() {
	if w.model.pull == 0 {
		return
	}
	bow := w.model.bows(w.built)
	told := &Cloth{Pull: Number(w.model.pull), Bow: [2]Number{Number(bow[0]), Number(bow[1])}}
	if s, ok := w.strip(); ok {
		told.Sag = Number(s.sag(w.model.pull))
	}
	w.answer.Cloth = told
}

// clothAssumed says how the cloth is taken to pull.
func (w *work) clothAssumed() string {
	switch tie := w.rig.Plan.Box.ClothTie; {
	case len(w.rig.Plan.Box.Cloth) == 0:
		return ""
	case w.model.pull > 0:
		s, _ := w.strip()
		return fmt.Sprintf("the cloth sags %.0f mm and pulls %.1f N on every meter of the bottom frame's tubes, inward (a membrane of uniform tension)",
			1000*s.sag(w.model.pull), w.model.pull)
	case tie.Sag == nil && tie.Cut == nil:
		return "the cloth is tied slack: it hangs on the tubes and does not pull them inward"
	}
	return ""
}
