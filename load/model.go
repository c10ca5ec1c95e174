package load

import (
	"fmt"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
	"softloft/rig"
)

// touching is how near two places count as one joint, in m; as in rig.
const touching = 2e-3

// assumedEA is the stiffness of a line or drop whose kit entry gives none, in N:
// of the order of a wire or chain. How four lines share hangs on the frame far more
// than on it; it is listed among the assumptions.
const assumedEA = 1e6

// model is a rig as a frame problem, in the room, in the planned pose.
type model struct {
	rig      *rig.Rig
	problem  frame.Problem
	atNode   []r3.Vec // of each node, in box axes
	nodeBody []string
	pieces   []piece
	lines    []int     // cable of each rig line; -1 where it holds nothing
	planned  []r3.Vec  // place of each line's attachment in the room
	drops    []int     // cable of each rig drop
	stiff    []float64 // EA of each line's rope, N; 0 where it holds nothing
	corners  *[4]int   // nodes of the bottom frame: ne, nw, sw, se
	pull     float64   // N/m, of the tied cloth on the bottom frame's sides, inward
	strips   []clothStrip
	assumed  []string
}

// piece is one member of a tube between two joints, with its place on the tube.
type piece struct {
	tube     int // index into rig.Tubes
	from, to float64
}

// build makes the frame problem. The error says what of the rig cannot be one.
func build(r *rig.Rig) (*model, error) {
	m := &model{rig: r}
	for i := range r.Tubes {
		if err := m.addTube(i); err != nil {
			return nil, err
		}
	}
	m.holdLoose()
	m.findCorners()
	for i := range r.Lines {
		m.addLine(&r.Lines[i])
	}
	for i := range r.Drops {
		m.addDrop(&r.Drops[i])
	}
	if len(m.problem.Members) == 0 {
		return nil, fmt.Errorf("no tube is placed, so nothing can carry the load")
	}
	return m, nil
}

// node returns the joint at a place in box axes, a new one where none is there.
func (m *model) node(at r3.Vec, name, body string) int {
	if i, ok := m.nodeAt(at); ok {
		return i
	}
	m.problem.Nodes = append(m.problem.Nodes, frame.Node{Name: name, At: m.rig.Pose.Out(at)})
	m.atNode = append(m.atNode, at)
	m.nodeBody = append(m.nodeBody, body)
	return len(m.atNode) - 1
}

func (m *model) nodeAt(at r3.Vec) (int, bool) {
	for i, place := range m.atNode {
		if r3.Norm(r3.Sub(place, at)) < touching {
			return i, true
		}
	}
	return 0, false
}

// addTube splits a tube at every place where something joins it or its load bends,
// and adds the members between.
func (m *model) addTube(i int) error {
	t := &m.rig.Tubes[i]
	section, material, err := properties(t)
	if err != nil {
		return err
	}
	along := r3.Sub(t.To, t.From)
	length := r3.Norm(along)
	stations := m.stations(t, length)
	nodes := make([]int, len(stations))
	for k, s := range stations {
		nodes[k] = m.node(r3.Add(t.From, r3.Scale(s/length, along)), m.jointName(t, s, length), t.Body)
	}
	for k := 1; k < len(stations); k++ {
		member := frame.Member{Name: fmt.Sprintf("%s, piece %d", t.Part, k), I: nodes[k-1], J: nodes[k], Section: section, Material: material}
		if k == 1 && t.PinnedFrom {
			member.EndI = hinged
		}
		if k == len(stations)-1 && t.PinnedTo {
			member.EndJ = frame.Pinned()
		}
		m.problem.Members = append(m.problem.Members, member)
		m.pieces = append(m.pieces, piece{tube: i, from: stations[k-1], to: stations[k]})
	}
	return nil
}

// hinged is the pinned start of a tube: free to bend, its twist held, so that what
// hangs between two pinned ends cannot spin. The other end is free in all three.
var hinged = frame.End{Free: [3]bool{false, true, true}}

// jointName names a place on a tube as a crew would.
func (m *model) jointName(t *rig.Tube, s, length float64) string {
	switch {
	case s < touching:
		return "start of " + t.Part
	case s > length-touching:
		return "end of " + t.Part
	}
	return fmt.Sprintf("%s at %.2f m", t.Part, s)
}

// properties turns a tube into a section and a material.
func properties(t *rig.Tube) (frame.Section, frame.Material, error) {
	section := frame.RoundTube(t.Section.Outer, t.Section.Wall)
	if t.Section.Square {
		section = frame.SquareTube(t.Section.Outer, t.Section.Wall)
	}
	material := frame.Material{Young: float64(t.Alloy.Young), Shear: t.Alloy.Shear(), Density: float64(t.Alloy.Density)}
	if !(section.Area > 0) || !(material.Young > 0) || !(material.Shear > 0) {
		return section, material, fmt.Errorf("tube %s has no stiffness: its section or its alloy's E is 0", t.Part)
	}
	return section, material, nil
}

// stations returns the places along a tube, in order, at which it is split.
func (m *model) stations(t *rig.Tube, length float64) []float64 {
	places := m.joints(t, length)
	if other, ok := m.opposite(t); ok {
		places = append(places, m.joints(other, length)...)
	}
	slices.Sort(places)
	return apart(places)
}

// joints returns the places along a tube at which something joins it or its load bends.
func (m *model) joints(t *rig.Tube, length float64) []float64 {
	places := []float64{0, length}
	add := func(at r3.Vec) {
		if s, ok := along(t, at); ok {
			places = append(places, s)
		}
	}
	for i := range m.rig.Tubes {
		if other := &m.rig.Tubes[i]; other.Part != t.Part {
			add(other.From)
			add(other.To)
		}
	}
	for i := range m.rig.Lines {
		add(m.rig.Lines[i].Attach)
	}
	for i := range m.rig.Drops {
		add(m.rig.Drops[i].Upper)
		add(m.rig.Drops[i].Lower)
	}
	for _, w := range slices.Concat(m.rig.Weights, m.rig.Provision) {
		if w.OnTube == t.Part {
			add(w.Station)
		}
	}
	for _, e := range m.rig.EdgeLoads {
		if e.Tube != t.Part {
			continue
		}
		for _, s := range e.Stations {
			places = append(places, s.At)
		}
	}
	return places
}

// apart drops places that touch the one before; the ends stay.
func apart(places []float64) []float64 {
	kept := places[:1]
	for _, s := range places[1:] {
		if s-kept[len(kept)-1] >= touching {
			kept = append(kept, s)
		}
	}
	last := places[len(places)-1]
	if len(kept) == 1 {
		return append(kept, last)
	}
	kept[len(kept)-1] = math.Max(kept[len(kept)-1], last)
	return kept
}

// along returns where a place lies on a tube's center-line, in m from its start.
func along(t *rig.Tube, at r3.Vec) (float64, bool) {
	axis := r3.Sub(t.To, t.From)
	length := r3.Norm(axis)
	s := r3.Dot(r3.Sub(at, t.From), axis) / length
	if s < -touching || s > length+touching {
		return 0, false
	}
	s = math.Max(0, math.Min(length, s))
	foot := r3.Add(t.From, r3.Scale(s/length, axis))
	return s, r3.Norm(r3.Sub(at, foot)) < touching
}

// findCorners notes the bottom frame's corner joints, on which loads ride that no
// tube is named for.
func (m *model) findCorners() {
	north, ok := m.rig.Tube("frame.north")
	south, okSouth := m.rig.Tube("frame.south")
	if !ok || !okSouth {
		return
	}
	var corners [4]int
	for i, at := range [4]r3.Vec{north.To, north.From, south.From, south.To} {
		corners[i], ok = m.nodeAt(at)
		if !ok {
			return
		}
	}
	m.corners = &corners
}

// stiffness returns EA in N, an assumed one where the kit gives none.
func (m *model) stiffness(ea float64, what string) float64 {
	if ea > 0 {
		return ea
	}
	text := fmt.Sprintf("the kit gives no stiffness for %s: EA = %.0f kN is assumed", what, assumedEA/1000)
	if !slices.Contains(m.assumed, text) {
		m.assumed = append(m.assumed, text)
	}
	return assumedEA
}

// addLine adds a line's cable, and a bridle's apex with its legs. A line that holds
// no tube, or whose point is not stated, adds nothing.
func (m *model) addLine(l *rig.Line) {
	m.planned = append(m.planned, m.rig.Pose.Out(l.Attach))
	top, ok := m.rig.Top(l)
	start, okNode := m.nodeAt(l.Attach)
	if !ok || !okNode || l.Rope == nil {
		m.lines, m.stiff = append(m.lines, -1), append(m.stiff, 0)
		return
	}
	ea := m.stiffness(l.Rope.EA, "rope "+l.Rope.ID)
	length := r3.Norm(r3.Sub(top, m.rig.Pose.Out(l.Attach)))
	if l.Length != nil {
		length = *l.Length
	}
	// The haul side stretches with the load side: both carry the same tension.
	share := length / (length + m.rig.HaulLength(l))
	cable := frame.Cable{Name: l.Name, I: start, J: frame.Anchored, Anchor: top, EA: ea * share, Unstretched: length}
	if l.Bridle != nil {
		cable.J = m.addBridle(l, ea)
	}
	m.lines, m.stiff = append(m.lines, len(m.problem.Cables)), append(m.stiff, ea)
	m.problem.Cables = append(m.problem.Cables, cable)
}

// addBridle adds an apex that three ropes hold, and its two legs.
func (m *model) addBridle(l *rig.Line, ea float64) int {
	apex := len(m.problem.Nodes)
	m.problem.Nodes = append(m.problem.Nodes, frame.Node{Name: "apex of " + l.Name, At: l.Bridle.ApexInRoom})
	m.atNode = append(m.atNode, r3.Vec{X: math.Inf(1)}) // no place of the box
	m.nodeBody = append(m.nodeBody, rig.LinesBody)
	m.problem.Supports = append(m.problem.Supports, frame.Support{Node: apex, Fixed: [6]bool{3: true, 4: true, 5: true}})
	for _, name := range l.Bridle.Points {
		if p, ok := m.rig.PointNamed(name); ok {
			m.problem.Cables = append(m.problem.Cables, frame.Cable{
				Name: legName(l.Name, name), I: apex, J: frame.Anchored, Anchor: p.InRoom, EA: ea,
				Unstretched: r3.Norm(r3.Sub(p.InRoom, l.Bridle.ApexInRoom)),
			})
		}
	}
	return apex
}

func legName(line, point string) string { return line + " to " + point }

// addDrop adds a drop's cable between two bodies.
func (m *model) addDrop(d *rig.Drop) {
	upper, okUpper := m.nodeAt(d.Upper)
	lower, okLower := m.nodeAt(d.Lower)
	if !okUpper || !okLower || d.UpperTube == "" || d.LowerTube == "" {
		m.drops = append(m.drops, -1)
		return
	}
	m.drops = append(m.drops, len(m.problem.Cables))
	m.problem.Cables = append(m.problem.Cables, frame.Cable{
		Name: d.Name, I: lower, J: upper, EA: m.stiffness(d.EA, "the drops"), Unstretched: d.Length,
	})
}
