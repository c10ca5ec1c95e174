package rig

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/kit"
)

// tees places the fittings that join the ends of ribs, bars and inner uprights to the
// tubes that they meet.
func (d *deriver) tees() {
	if !d.all() {
		return
	}
	for i := range d.Tubes {
		t := d.Tubes[i]
		if t.Role != Rib && t.Role != Bar && t.Role != Upright {
			continue
		}
		for end, at := range [2]r3.Vec{t.From, t.To} {
			d.tee(&t, end, at)
		}
	}
}

// tee places one fitting where a tube's end meets another's middle. Ends at corners
// have the corner's fitting.
func (d *deriver) tee(t *Tube, end int, at r3.Vec) {
	for i := range d.Tubes {
		other := &d.Tubes[i]
		onEnd := r3.Norm(r3.Sub(at, other.From)) < touching || r3.Norm(r3.Sub(at, other.To)) < touching
		if other.Part == t.Part || onEnd || distanceToAxis(other.From, other.To, at) >= touching {
			continue
		}
		run, _ := d.Part(other.Part)
		id, piece, ok := fits(d.Kit.Tee, run.KitID)
		if !ok {
			d.notPlaced("fitting where "+t.Part+" meets "+other.Part, "the kit has no tee that fits the tube %s", run.KitID)
			return
		}
		p := Part{ID: fmt.Sprintf("%s.tee.%d", t.Part, end+1), What: "tee", Name: piece.Label(id), KitKind: "tee", KitID: id, Body: string(t.Role),
			Demo: piece.Source.Demo("mass"), Center: at, Joined: []string{t.Part, other.Part}, Path: run.Path,
			Why: fmt.Sprintf("joins the end of %s to %s", t.Part, other.Part)}
		if other := d.kitIDOf(t.Part); other != run.KitID && !contains(piece.Fits, other) {
			p.Why += fmt.Sprintf("; it doesn't say that it fits %s as well", other)
		}
		if m, ok := piece.Mass.Of(0); ok {
			p.Mass, p.MassFrom = mass(float64(m)), "kit"
		}
		d.weigh(p, Weight{OnTube: other.Part, Station: at})
		return
	}
}

func (d *deriver) kitIDOf(part string) string {
	p, _ := d.Part(part)
	return p.KitID
}

// lengthOf returns a tube's length.
func lengthOf(t *Tube) float64 { return r3.Norm(r3.Sub(t.To, t.From)) }

// lightest returns the piece that is rated least among those rated for a force in N.
func lightest(set map[string]kit.Hardware, force float64) (string, kit.Hardware, bool) {
	best := ""
	for _, id := range kit.IDs(set) {
		rated := set[id].Rated
		if rated != nil && float64(*rated) >= force && (best == "" || *rated < *set[best].Rated) {
			best = id
		}
	}
	return best, set[best], best != ""
}
