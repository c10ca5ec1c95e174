package load

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
	"softloft/rig"
	"softloft/source"
)

// tellStand tells one stand.
func (w *work) tellStand(i int) Stand {
	s, c, f := &w.rig.Stands[i], &w.floor.standing[i], &w.floor
	load, moment := topLoad(c.built)
	grown, _ := topLoad(c.grown)
	nan := Number(math.NaN())
	told := Stand{Name: s.Name, Holds: "nothing", Load: Number(load), Moment: Number(moment), Grown: Number(grown), Even: nan, Diagonal: nan,
		TipMargin: finite(c.tip.margin), Edge: c.tip.edgeName(), EdgeAt: Number(c.tip.edge), Tightens: tightens(s),
		BagsNeeded: Number(w.bagsFor(i, source.TipRatio().Value)), BagsForOne: Number(w.bagsFor(i, 1)), FootMost: Number(mostOnFoot(s, c.built))}
	switch {
	case s.Arm != nil:
		told.Holds, told.Sharing = "arm", byStatics
	case s.Ear != nil:
		told.Holds, told.Sharing = "ear", f.sharing
		told.Even = Number(f.total[0] / float64(len(f.ears)))
		told.Diagonal = Number(w.diagonal())
	}
	if s.Bags != nil {
		told.BagsPlanned = Number(s.Bags.Mass * float64(s.Bags.Count))
	}
	told.BagCounts = w.bagCounts(told)
	return told
}

func finite(x float64) Number {
	if math.IsInf(x, 0) {
		return Number(math.NaN())
	}
	return Number(x)
}

// bagsFor is the mass at the base that a ratio needs, the worse of built and grown.
func (w *work) bagsFor(i int, ratio float64) float64 {
	push := float64(w.rig.Plan.Rules.Push)
	return needed(&w.rig.Stands[i], w.floor.standing[i].built, push, ratio)
}

// bagCounts tells how many bags of each real size hold a stand.
func (w *work) bagCounts(told Stand) []BagCount {
	counts := []BagCount{}
	for _, id := range kit.IDs(w.rig.Kit.Bag) {
		each, ok := w.rig.Kit.Bag[id].Mass.Of(0)
		if !ok || !(each > 0) {
			continue
		}
		counts = append(counts, BagCount{Kit: id, Each: Number(each), Needed: bagsOf(told.BagsNeeded, float64(each)), ForOne: bagsOf(told.BagsForOne, float64(each))})
	}
	return counts
}

// bagsOf counts whole bags.
func bagsOf(mass Number, each float64) Number { return Number(math.Ceil(float64(mass)/each - 1e-9)) }

// diagonal is half of the box's weight with what may still go up, for a stand of four
// or more; NaN where the rule doesn't apply.
func (w *work) diagonal() float64 {
	f := &w.floor
	if len(f.ears) < 4 || w.rig.Plan.Rules.LoadCells {
		return math.NaN()
	}
	return source.DiagonalShare().Value * math.Max(f.total[0], f.total[1])
}

// tellStanding tells how a box on its ears rests, and how its tubes bear it.
func (w *work) tellStanding() {
	f := &w.floor
	if len(f.ears) > 0 {
		w.answer.Assumptions = append(w.answer.Assumptions, "stands are taken as rigid on a level floor, their ears as pins; what the box does when a stand gives way is not worked out")
	}
	if f.frame == nil || f.why != "" {
		return
	}
	w.answer.Pose = f.model.pose(f.frame)
	if center, ok := f.frame.center(); ok {
		v := vec(center)
		w.answer.Center = &v
	}
	w.answer.Frame = w.framed()
	force, moment := w.balanceOnEars()
	w.answer.Residual = &ResidualSum{ForceN: Number(force), MomentNm: Number(moment)}
}

// balanceOnEars sets what the ears do to the box against its reported weight at its
// reported center: what is left, in N and N·m.
func (w *work) balanceOnEars() (force, moment float64) {
	s := w.floor.frame
	weight := down(float64(w.answer.Mass))
	center, _ := s.center()
	sumF, sumM := weight, r3.Cross(center, weight)
	for _, r := range s.Reaction {
		sumF = r3.Add(sumF, r.Force)
		sumM = r3.Add(sumM, r3.Add(r3.Cross(s.Position[r.Node], r.Force), r.Moment))
	}
	return r3.Norm(sumF), r3.Norm(sumM)
}

// framed tells the tubes of a box on its ears. Sag is measured from the surface through
// the ears.
func (w *work) framed() *Frame {
	f := &w.floor
	var nodes []int
	for _, i := range f.ears {
		if node, ok := f.model.nodeAt(w.rig.Stands[i].Ear.At); ok {
			nodes = append(nodes, node)
		}
	}
	surface := f.model.fit(f.frame, nodes)
	told := &Frame{Sag: Number(math.Inf(-1)), Stress: Number(math.NaN()), Use: Number(math.NaN())}
	for i, t := range w.rig.Tubes {
		told.Members = append(told.Members, f.bears(f.frame, "built", i, &t, surface))
	}
	for _, m := range told.Members {
		told.Sag = Number(math.Max(float64(told.Sag), float64(m.Sag)))
		told.Stress = Number(greater(float64(told.Stress), float64(m.Stress)))
	}
	if f.frameGrown != nil && f.frameGrown != f.frame {
		var grown []Member
		for i, t := range w.rig.Tubes {
			grown = append(grown, f.bears(f.frameGrown, "grown", i, &t, f.model.fit(f.frameGrown, nodes)))
		}
		told.Members = worse(told.Members, grown)
	}
	for _, m := range told.Members {
		if math.IsNaN(float64(m.Use)) {
			told.Use = m.Use
			break
		}
		told.Use = Number(greater(float64(told.Use), float64(m.Use)))
	}
	return told
}

// bears tells one tube in one case.
func (f *floor) bears(s *solved, name string, tube int, t *rig.Tube, from surface) Member {
	row := Member{ID: t.Part, Part: t.Part, Case: name, Use: Number(math.Inf(-1)), Stress: -1, Sag: Number(math.Inf(-1))}
	for k, p := range f.model.pieces {
		if p.tube == tube {
			f.model.worstOf(s, k, t, &row)
			row.Sag = Number(math.Max(float64(row.Sag), f.model.sagOf(s, k, from)))
		}
	}
	return row
}
