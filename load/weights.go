package load

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
	"softloft/quantity"
	"softloft/rig"
)

const gravity = float64(quantity.StandardGravity)

// down is the weight of a mass, in N.
func down(mass float64) r3.Vec { return r3.Vec{Z: -mass * gravity} }

// built returns the loads of the rig as planned. The error names a load that
// nothing can take.
func (m *model) built() (frame.Loads, error) { return m.loads(m.rig.Weights) }

// grown returns the loads with the provision up: today's lamps times the reserve,
// and the named lamps at their places.
func (m *model) grown() (frame.Loads, error) {
	reserve := 1.0
	if p := m.rig.Plan.Provision; p != nil && p.Reserve != nil {
		reserve = math.Max(1, *p.Reserve) // a reserve below what hangs there today is none
	}
	var weights []rig.Weight
	for _, w := range m.rig.Weights {
		if part, ok := m.rig.Part(w.Part); ok && part.What == "lamp" {
			w.Mass *= reserve
		}
		weights = append(weights, w)
	}
	return m.loads(append(weights, m.rig.Provision...))
}

func (m *model) loads(weights []rig.Weight) (frame.Loads, error) {
	var loads frame.Loads
	for i, p := range m.pieces {
		loads.Member = append(loads.Member, m.pieceLoads(i, p)...)
	}
	for _, w := range weights {
		switch {
		case w.Elsewhere || w.Mass == 0:
		case math.IsNaN(w.Mass):
			return loads, fmt.Errorf("the mass of %s is not known", w.Part)
		case w.OnTube != "":
			node, ok := m.nodeAt(w.Station)
			if !ok {
				return loads, fmt.Errorf("%s hangs where no tube is", w.Part)
			}
			offset := m.rig.Pose.OutDirection(r3.Sub(w.Center, m.atNode[node]))
			loads.Offset = append(loads.Offset, frame.OffsetLoad{Node: node, Offset: offset, Force: down(w.Mass)})
		default:
			rider, err := m.rider(w)
			if err != nil {
				return loads, err
			}
			loads.Rider = append(loads.Rider, rider)
		}
	}
	return loads, nil
}

// rider puts a weight on the bottom frame's four corners: shares bilinear in its
// place, its height kept over their plane.
func (m *model) rider(w rig.Weight) (frame.RiderLoad, error) {
	if m.corners == nil {
		return frame.RiderLoad{}, fmt.Errorf("%s has no tube that carries it, and there is no bottom frame", w.Part)
	}
	size := m.rig.Plan.Box.Size
	u, v := 2*w.Center.X/float64(size[0]), 2*w.Center.Y/float64(size[1])
	return frame.RiderLoad{
		Nodes:  *m.corners,
		Share:  [4]float64{(1 + u) * (1 + v) / 4, (1 - u) * (1 + v) / 4, (1 - u) * (1 - v) / 4, (1 + u) * (1 - v) / 4},
		Height: w.Center.Z, Force: down(w.Mass),
	}, nil
}

// pieceLoads returns a tube's own weight and what is spread along it, over one
// piece. A load that bends within the piece becomes the trapezoid of the same
// total and the same first moment, so that no weight is lost at a joint.
func (m *model) pieceLoads(member int, p piece) []frame.MemberLoad {
	t := &m.rig.Tubes[p.tube]
	length := p.to - p.from
	total, first := t.MassPerLength*length, t.MassPerLength*length*length/2
	for _, e := range m.rig.EdgeLoads {
		if e.Tube == t.Part {
			i0, i1 := moments(e.Stations, p.from, p.to)
			total, first = total+i0, first+i1
		}
	}
	if total == 0 {
		return nil
	}
	atJ := 6*first/(length*length) - 2*total/length
	atI := 2*total/length - atJ
	// Joints that were merged stand a hair apart from the tube's own stations.
	ends := m.problem.Members[member]
	between := r3.Norm(r3.Sub(m.problem.Nodes[ends.J].At, m.problem.Nodes[ends.I].At))
	scale := length / between
	return []frame.MemberLoad{{Member: member, AtI: down(atI * scale), AtJ: down(atJ * scale)}}
}

// moments integrates a load between two places: its mass in kg, and its first
// moment about the first place in kg·m. Simpson's rule is exact for what is linear
// between stations.
func moments(stations []rig.Station, from, to float64) (total, first float64) {
	for k := 1; k < len(stations); k++ {
		a, b := stations[k-1], stations[k]
		low, high := math.Max(a.At, from), math.Min(b.At, to)
		if high <= low {
			continue
		}
		at := func(s float64) float64 { return a.PerLength + (b.PerLength-a.PerLength)*(s-a.At)/(b.At-a.At) }
		middle := (low + high) / 2
		h := (high - low) / 6
		total += h * (at(low) + 4*at(middle) + at(high))
		first += h * (at(low)*(low-from) + 4*at(middle)*(middle-from) + at(high)*(high-from))
	}
	return total, first
}
