package load

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
	"softloft/rig"
)

// mounts lets every lamp's mount go, one at a time. A lamp with a safety comes to hang
// on it, free to swing under its place on the tube; one without falls.
func (m *model) mounts(built *solved) []loss {
	var all []loss
	worked := 0
	for i := range m.rig.Weights {
		w := &m.rig.Weights[i]
		p, ok := m.rig.Part(w.Part)
		if ok && p.What == "lamp" && !w.Elsewhere {
			l := m.unmount(built, w, p, worked > mostWorked)
			if l.state != nil {
				worked += len(m.problem.Nodes)
			}
			all = append(all, l)
		}
	}
	return all
}

// mostWorked is how many joints are solved for, over all lamps, before the rest is told as
// not worked out: some seconds.
const mostWorked = 150_000

func (m *model) unmount(built *solved, w *rig.Weight, p *rig.Part, tooMany bool) loss {
	l := loss{what: "mount", name: strings.TrimPrefix(p.ID, "lamp."), part: p.ID, path: p.Path, cable: -1, estimate: math.NaN()}
	if _, ok := m.rig.Part(p.ID + ".safety"); !ok {
		l.outcome, l.why = Falls, "no safety catches the lamp"
		return l
	}
	if tooMany {
		l.unknown, l.why = true, fmt.Sprintf("there are too many lamps on a frame of %d joints to let each one go", len(m.problem.Nodes))
		return l
	}
	loads, below := m.swinging(built.loads, w)
	after, err := m.settle(built, loads)
	l.rests(m, built, after, err)
	if l.state != nil && below > 0 {
		l.state.hanging = []hanging{{share: w.Mass * gravity / weightN(loads, &m.problem), below: below}}
	}
	return l
}

// swinging returns the loads with one lamp hanging free under its place on the tube,
// and how far under it, in m. A lamp that no tube is named for stays a load on the
// four corners: nothing changes.
func (m *model) swinging(loads frame.Loads, w *rig.Weight) (frame.Loads, float64) {
	if w.OnTube == "" {
		return loads, 0
	}
	node, ok := m.nodeAt(w.Station)
	if !ok {
		return loads, 0
	}
	arm := m.rig.Pose.OutDirection(r3.Sub(w.Center, m.atNode[node]))
	kept := loads.Offset[:0:0]
	taken := false
	for _, o := range loads.Offset {
		if !taken && o.Node == node && o.Offset == arm && o.Force == down(w.Mass) {
			taken = true
			continue
		}
		kept = append(kept, o)
	}
	if !taken {
		return loads, 0
	}
	loads.Offset = kept
	loads.Nodal = append(loads.Nodal[:len(loads.Nodal):len(loads.Nodal)], frame.NodalLoad{Node: node, Force: down(w.Mass)})
	slack := 0.0
	if h := m.rig.Plan.Hang; h != nil && h.Safety != nil {
		slack = float64(h.Safety.Slack)
	}
	return loads, r3.Norm(r3.Sub(w.Center, w.Station)) + slack
}
