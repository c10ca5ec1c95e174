package load

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"softloft/frame"
	"softloft/rig"
)

// alongMember is at how many places a member is looked at for its sag, ends
// included. Stress is found at its exact extremum by package frame.
const alongMember = 17

// bending returns the tubes of one case, each at its worst place, in the order of
// the rig's tubes, and the largest sag.
func (m *model) bending(s *solved, name string) ([]Member, float64) {
	surfaces := m.surfaces(s)
	members := make([]Member, len(m.rig.Tubes))
	for i, t := range m.rig.Tubes {
		members[i] = Member{ID: t.Part, Part: t.Part, Case: name, Use: Number(math.Inf(-1)), Stress: -1, Sag: Number(math.Inf(-1))}
	}
	largest := math.Inf(-1)
	for i, p := range m.pieces {
		row := &members[p.tube]
		m.worstOf(s, i, &m.rig.Tubes[p.tube], row)
		sag := m.sagOf(s, i, surfaces[m.rig.Tubes[p.tube].Body])
		row.Sag = Number(math.Max(float64(row.Sag), sag))
		largest = math.Max(largest, sag)
	}
	return members, largest
}

// worstOf keeps a member's forces where they are worse than what the row has.
func (m *model) worstOf(s *solved, member int, t *rig.Tube, row *Member) {
	st := s.Worst(member)
	section := m.problem.Members[member].Section
	stress := normalStress(section, st)
	if !(stress > float64(row.Stress)) {
		return
	}
	row.N, row.V, row.M, row.T = Number(st.N), Number(math.Hypot(st.Vy, st.Vz)), Number(math.Hypot(st.My, st.Mz)), Number(st.T)
	row.Stress, row.Use = Number(stress), Number(useOf(section, st, t))
}

// hardest is the tube that is used most in a state, or stressed most where the use is not
// known, at its worst place.
func (m *model) hardest(s *solved, name string) (worst Member, ok bool) {
	worst = Member{Use: Number(math.Inf(-1)), Stress: -1}
	for _, i := range m.near(s) {
		t := &m.rig.Tubes[m.pieces[i].tube]
		row := Member{ID: t.Part, Part: t.Part, Case: name, Stress: -1, Sag: Number(math.NaN())}
		m.worstOf(s, i, t, &row)
		if !ok || float64(row.Use) > float64(worst.Use) || math.IsNaN(float64(row.Use)) && row.Stress > worst.Stress {
			worst, ok = row, true
		}
	}
	return worst, ok
}

// near lists the pieces that may have the largest stress or use of a state: whose use, or
// stress where that is not known, at both ends and the middle comes to half of the largest
// there. A load that runs straight along a piece has its extreme no further from these than
// that.
func (m *model) near(s *solved) []int {
	most, rough := [2]float64{}, make([][2]float64, len(m.pieces))
	for i, p := range m.pieces {
		section, t := m.problem.Members[i].Section, &m.rig.Tubes[p.tube]
		for _, xi := range [3]float64{0, 0.5, 1} {
			st := s.Along(i, xi)
			rough[i][0] = math.Max(rough[i][0], normalStress(section, st))
			if use := useOf(section, st, t); !(use <= rough[i][1]) {
				rough[i][1] = use
			}
		}
		for k := range most {
			if rough[i][k] > most[k] {
				most[k] = rough[i][k]
			}
		}
	}
	var list []int
	for i := range rough {
		if !(rough[i][0] < most[0]/2) || !(rough[i][1] < most[1]/2) {
			list = append(list, i)
		}
	}
	return list
}

// stressed is the largest normal stress and the largest use of any tube in a state; the use
// is not known where that of one tube is not.
func (m *model) stressed(s *solved) (stress, use Number) {
	for _, i := range m.near(s) {
		row := Member{Stress: -1}
		m.worstOf(s, i, &m.rig.Tubes[m.pieces[i].tube], &row)
		stress = max(stress, row.Stress)
		if math.IsNaN(float64(use)) || math.IsNaN(float64(row.Use)) {
			use = Number(math.NaN())
			continue
		}
		use = max(use, row.Use)
	}
	return stress, use
}

// normalStress is |N|/A + √(My²+Mz²)/W, in Pa: the contract's definition, for round
// and square tubes alike.
func normalStress(section frame.Section, st frame.Station) float64 {
	return math.Abs(st.N)/section.Area + math.Hypot(st.My, st.Mz)/section.ModulusZ
}

// useOf is the equivalent stress over what the alloy allows: the corner's stress in
// a square tube, shear and torsion added after von Mises; NaN where the alloy's
// yield strength is not given.
func useOf(section frame.Section, st frame.Station, t *rig.Tube) float64 {
	normal := section.Stress(st.N, st.My, st.Mz)
	shear := 2*math.Hypot(st.Vy, st.Vz)/section.Area + math.Abs(st.T)*torsionStress(section, t)
	return math.Sqrt(normal*normal+3*shear*shear) / allowedStress(t)
}

// torsionStress is the shear stress of a unit torque: r/J in a round tube, Bredt's
// 1/(2·A_m·t) in a square one.
func torsionStress(section frame.Section, t *rig.Tube) float64 {
	if !t.Section.Square {
		return t.Section.Outer / 2 / section.Torsion
	}
	middle := t.Section.Outer - t.Section.Wall
	return 1 / (2 * middle * middle * t.Section.Wall)
}

// allowedStress is the yield strength, of the weld where the tube is welded, over
// the factor; NaN where it is not given.
func allowedStress(t *rig.Tube) float64 {
	yield := t.Alloy.Yield
	if t.Welded {
		yield = t.Alloy.WeldedYield
	}
	if yield == nil {
		return math.NaN()
	}
	return float64(*yield) / yieldFactor
}

// yieldFactor is the safety factor on yield of the Aluminum Design Manual for
// building-type structures, from memory, and of TG20's 1.65 for scaffold tube.
const yieldFactor = 1.65

// surface is the bilinear surface a + b·x + c·y + d·x·y, in box axes, from which a
// body's sag is measured.
type surface [4]float64

func (f surface) at(x, y float64) float64 { return f[0] + f[1]*x + f[2]*y + f[3]*x*y }

// surfaces fits, for each body, how far its attachments have moved along the box's
// normal: exactly through four of them, by least squares through more, a plane or a
// line through fewer.
func (m *model) surfaces(s *solved) map[string]surface {
	held := map[string][]int{}
	note := func(cable, node int) {
		if cable >= 0 {
			held[m.nodeBody[node]] = append(held[m.nodeBody[node]], node)
		}
	}
	for _, cable := range m.lines {
		if cable >= 0 {
			note(cable, m.problem.Cables[cable].I)
		}
	}
	for _, cable := range m.drops {
		if cable >= 0 {
			note(cable, m.problem.Cables[cable].I)
		}
	}
	fitted := map[string]surface{}
	for body, nodes := range held {
		fitted[body] = m.fit(s, nodes)
	}
	return fitted
}

// fit solves the least-squares problem of smallest norm, so that few or collinear
// attachments give a plane or a line.
func (m *model) fit(s *solved, nodes []int) surface {
	a, b := mat.NewDense(len(nodes), 4, nil), mat.NewDense(len(nodes), 1, nil)
	scale := m.scale()
	for i, node := range nodes {
		x, y := m.atNode[node].X/scale, m.atNode[node].Y/scale
		a.SetRow(i, []float64{1, x, y, x * y})
		b.Set(i, 0, m.raised(s, node))
	}
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDThin) {
		return surface{}
	}
	var x mat.Dense
	svd.SolveTo(&x, b, svd.Rank(1e-9))
	return surface{x.At(0, 0), x.At(1, 0) / scale, x.At(2, 0) / scale, x.At(3, 0) / (scale * scale)}
}

func (m *model) scale() float64 {
	return math.Max(float64(m.rig.Plan.Box.Size[0]), float64(m.rig.Plan.Box.Size[1]))
}

// raised is how far a joint has moved along the box's normal, in m.
func (m *model) raised(s *solved, node int) float64 {
	return m.poseOf(s).In(s.Position[node]).Z - m.atNode[node].Z
}

// sagOf is the largest drop of a member below its body's surface, in m.
func (m *model) sagOf(s *solved, member int, from surface) float64 {
	pose := m.poseOf(s)
	ends := m.problem.Members[member]
	a, b := m.atNode[ends.I], m.atNode[ends.J]
	worst := math.Inf(-1)
	for k := range alongMember {
		xi := float64(k) / (alongMember - 1)
		planned := r3.Add(a, r3.Scale(xi, r3.Sub(b, a)))
		raised := pose.In(s.Along(member, xi).At).Z - planned.Z
		worst = math.Max(worst, from.at(planned.X, planned.Y)-raised)
	}
	return worst
}

// worse keeps, tube by tube, the case with the larger use, or the larger stress
// where the use is not known.
func worse(a, b []Member) []Member {
	kept := append([]Member(nil), a...)
	for i := range kept {
		byUse := float64(b[i].Use) > float64(kept[i].Use)*(1+1e-9)
		if math.IsNaN(float64(kept[i].Use)) {
			byUse = float64(b[i].Stress) > float64(kept[i].Stress)*(1+1e-9)
		}
		if byUse {
			kept[i] = b[i]
		}
	}
	return kept
}
