package light

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// Light that sides, roof and an upper cloth return goes on by the lowest
// cloth's lobe too. Where it is a large part of what arrives, those faces are
// taken as lamps of their own, in cells of several patches; where it is little,
// its lobe counts as Lambertian.

// bounce is one face as a lamp for the lobe.
type bounce struct {
	lamp   lamp // of 1 lm/m2
	part   part
	starts []start // with what leaves there, lm
}

// bounceShare is the indirect share of what arrives from which the faces count.
const bounceShare = 0.01

// listBounces sets the faces as lamps, where they count.
func (e *Engine) listBounces() {
	last := len(e.planes) - 1
	if e.planes[last].cloth.ForwardPart == 0 {
		return
	}
	if direct, all := e.shares(); all-direct < bounceShare*all {
		return
	}
	reaches := e.reachesFloor()
	for i := range e.faces {
		f := &e.faces[i]
		if f.chamber == last && f.kind != floor && !allOpen(f.open) {
			e.bounces = append(e.bounces, e.bounceOf(f, reaches))
		}
	}
}

// shares are the lumens on the lowest cloth: straight from the lamps and lobes
// above, and in all.
func (e *Engine) shares() (direct, all float64) {
	f := e.lowest()
	s := &f.sheet
	straight := e.direct[e.faceIndex(f)]
	for j, v := range s.nodeV {
		for i, u := range s.nodeU {
			if k := j*len(s.nodeU) + i; e.clears(u, v) {
				area := s.shareU[i] * s.shareV[j]
				direct += area * straight[k]
				all += area * e.cloth[k]
			}
		}
	}
	return direct, all
}

// reachesFloor is, per patch, the share of what it sends to the lowest floor
// that lamps and ribs in the way let arrive.
func (e *Engine) reachesFloor() []float64 {
	x, f := &e.exchange, e.lowest()
	kept, lost := make([]float64, e.patchCount), make([]float64, e.patchCount)
	for i := f.first; i < f.first+f.patches(); i++ {
		row := x.factor[i*e.patchCount:][:e.patchCount]
		for j, v := range row {
			kept[j] += x.area[i] * v
		}
		for _, c := range x.behind[i] {
			lost[c.patch] += x.area[i] * c.share
		}
	}
	for j := range kept {
		if kept[j] > 0 {
			kept[j] /= kept[j] + lost[j]
		}
	}
	return kept
}

// bounceOf gathers a face's patches into cells.
func (e *Engine) bounceOf(f *face, reaches []float64) bounce {
	b := bounce{part: part{chamber: f.chamber, inside: true}}
	b.lamp = lamp{Lamp: Lamp{Axis: f.looks(), Size: [2]float64{1, 1}, Lumens: 1}, lambertian: true}
	b.lamp.whole = subjectOf(f.outline(), -1)
	nu, nv := len(f.patchU)-1, len(f.patchV)-1
	stepU, stepV := max(1, nu/cellsAlong), 1
	if f.kind == ceiling {
		stepV = max(1, nv/cellsAlong)
	}
	for j := 0; j < nv; j += stepV {
		for i := 0; i < nu; i += stepU {
			if s := e.merged(f, i, min(i+stepU, nu), j, min(j+stepV, nv), reaches); s.share > 0 {
				b.starts = append(b.starts, s)
			}
		}
	}
	return b
}

// cellsAlong is about how many cells stand along a face.
const cellsAlong = 4

// merged is what leaves a block of patches toward the cloth, at its middle
// weighed by that.
func (e *Engine) merged(f *face, i0, i1, j0, j1 int, reaches []float64) start {
	var s start
	nu := len(f.patchU) - 1
	for j := j0; j < j1; j++ {
		for i := i0; i < i1; i++ {
			k := f.first + j*nu + i
			lm := e.exchange.leaves[k] * e.exchange.area[k] * reaches[k]
			at := f.place((f.patchU[i]+f.patchU[i+1])/2, (f.patchV[j]+f.patchV[j+1])/2)
			s.at = r3.Add(s.at, r3.Scale(lm, at))
			s.share += lm
		}
	}
	if s.share > 0 {
		s.at = r3.Scale(1/s.share, s.at)
	}
	return s
}

// bounced is what the faces give by the lowest cloth's lobe, lx.
func (e *Engine) bounced(w *sight, from station, m meter) float64 {
	last := len(e.planes) - 1
	if from.chamber <= last || len(e.bounces) == 0 || from.at.Z >= 0 {
		return 0
	}
	r := &e.relays[e.primary]
	sum := 0.0
	for i := range e.bounces {
		b := &e.bounces[i]
		if !e.prepareSpot(w, r, &b.lamp, &b.part, from, m) {
			continue
		}
		w.spot.across = w.spot.across[:0] // counted in the cells
		w.spot.coarse = true
		for _, s := range b.starts {
			sum += r.part * s.share * e.spot(w, s.at)
		}
	}
	return sum
}

// parted is the engine without that light, and the one to ask for it alone where it
// changes slowly from place to place: nil where there is none of it, or where skirts or
// set walls cut it sharply and the first one has it.
func (e *Engine) parted() (sharp, bounces *Engine) {
	if len(e.bounces) == 0 || len(e.hides.below) > 0 {
		return e, nil
	}
	c := *e
	c.bounces = nil
	return &c, e
}

// bouncedAt is that light alone, lx.
func (e *Engine) bouncedAt(p, facing r3.Vec, receptor Receptor) float64 {
	w := e.memory.Get().(*sight)
	defer e.memory.Put(w)
	return e.bounced(w, e.stationAt(p), meter{receptor, r3.Unit(facing)})
}
