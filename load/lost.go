package load

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Outcomes of a loss.
const (
	Rests   = "rests"
	Tumbles = "tumbles"
	Falls   = "falls"
)

// loss is one line, drop or lamp mount that has let go, and what came of it.
type loss struct {
	what, name string
	part, path string // what a finding about it is about
	cable      int    // that is gone; -1 for a mount
	outcome    string
	why        string
	state      *solved // nil unless it rests
	estimate   float64 // N; NaN where none is made
	drop       float64 // m
	unknown    bool    // the solver found no answer
	peaks      *peaks  // of the motion in time, nil where it was not asked for
}

// label names a loss in a sentence.
func (l loss) label() string {
	switch l.what {
	case "drop":
		return l.name
	case "mount":
		return "the mount of " + l.name
	}
	return l.what + " " + l.name
}

// losses cuts every line, every drop and every lamp's mount, one at a time.
func (m *model) losses(built *solved) []loss {
	var all []loss
	for i := range m.rig.Lines {
		if m.lines[i] >= 0 {
			name := m.rig.Lines[i].Name
			all = append(all, m.lose(built, loss{what: "line", name: name, part: "line." + name + ".rope", path: m.rig.Lines[i].Path, cable: m.lines[i]}))
		}
	}
	for i := range m.rig.Drops {
		if m.drops[i] >= 0 {
			d := &m.rig.Drops[i]
			all = append(all, m.lose(built, loss{what: "drop", name: d.Name, part: d.Part, path: "box.join", cable: m.drops[i]}))
		}
	}
	return append(all, m.mounts(built)...)
}

// lose cuts one cable. A box whose center of gravity lies over the plane of what
// still holds it, and outside of it, rolls over: that is told before any tension.
func (m *model) lose(built *solved, l loss) loss {
	l.estimate = math.NaN()
	if l.what == "line" {
		if over, why := m.rollsOver(built, l.cable); over != "" {
			l.outcome, l.why = over, why
			return l
		}
	}
	after, err := m.cut(built, l.cable)
	l.rests(m, built, after, err)
	if l.state != nil {
		l.estimate = suddenFactor * m.largestTension(after)
	}
	return l
}

// rests sorts what the solver found once something is gone.
func (l *loss) rests(m *model, built, after *solved, err error) {
	switch {
	case err != nil && isFall(err):
		l.outcome, l.why = Falls, err.Error()
	case err != nil:
		l.unknown, l.why = true, err.Error()
	case m.turnedOver(built, after):
		l.outcome, l.why = Tumbles, "the box turns over before it comes to rest"
	default:
		l.outcome, l.state = Rests, after
		l.drop = m.greatestDrop(after)
	}
}

func (m *model) largestTension(s *solved) float64 {
	var most float64
	for i := range m.rig.Lines {
		if t := m.tension(s, i); t > most {
			most = t
		}
	}
	return most
}

// suddenFactor times the largest new static tension of a cut estimates the peak of
// a sudden loss. It held in all reference runs of an independent solver (worst ratio
// 1.884); it is no bound.
const suddenFactor = 2

// turnedOver reports whether some tube has turned by more than a right angle from
// where it was: its two ends then point the other way, or the box's normal does.
func (m *model) turnedOver(before, after *solved) bool {
	if m.corners != nil && r3.Dot(m.poseOf(before).Z, m.poseOf(after).Z) < 0 {
		return true
	}
	for _, t := range m.problem.Members {
		was := r3.Sub(before.Position[t.J], before.Position[t.I])
		is := r3.Sub(after.Position[t.J], after.Position[t.I])
		if r3.Dot(was, is) < 0 {
			return true
		}
	}
	return false
}

// greatestDrop is how far the joint that has sunk most stands below its planned
// place, in m.
func (m *model) greatestDrop(after *solved) float64 {
	var drop float64
	for i, node := range m.problem.Nodes {
		drop = math.Max(drop, node.At.Z-after.Position[i].Z)
	}
	return drop
}

// rollsOver looks at the attachments that are left after a cut. None left: the box
// falls. Where the center of gravity lies over them and outside of the figure that
// they make as seen from above, the box rolls over. It speaks only of a box whose
// tubes are one body.
func (m *model) rollsOver(built *solved, gone ...int) (outcome, why string) {
	var left []r3.Vec
	for _, cable := range m.lines {
		if cable >= 0 && !has(gone, cable) {
			left = append(left, built.Position[m.problem.Cables[cable].I])
		}
	}
	if len(left) == 0 {
		return Falls, "no line is left"
	}
	center, ok := built.center()
	if !ok || !m.oneBody() {
		return "", ""
	}
	foot, inside := onFigure(left, center)
	if !inside && center.Z-foot.Z > overPlane {
		return Tumbles, "the center of gravity lies over the lines that are left, and outside of them"
	}
	return "", ""
}

// overPlane is how far a center of gravity must lie over what holds it to count as
// over it, in m: less is within the elastic sag of a tube frame.
const overPlane = 0.01

func (m *model) oneBody() bool {
	for _, body := range m.nodeBody {
		if body != m.nodeBody[0] && body != "lines" {
			return false
		}
	}
	return true
}
