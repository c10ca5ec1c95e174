package light

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Direct light on the patches. Where it changes little from patch to patch, the middles
// tell the mean; where it falls off steeply, as at the edge of a crate's pool, the
// patches are cut finer, and what each part leaves beyond its patch's mean is kept: a
// receiver near the floor sees where the pool ends.

// fineLight is a part of one of the room's faces that is cut finer.
type fineLight struct {
	side  roomSide  // first is 0
	extra []float64 // leaves each part beyond its patch's mean, lm/m2
	lit   []bool
}

// seen is what the unevenness gives a meter, lx.
func (f *fineLight) seen(w *glance, h *Hall, eye r3.Vec, m meter) float64 {
	sum := 0.0
	h.seenSide(w, &f.side, eye, m, f.lit, func(part int, share float64) { sum += share * f.extra[part] })
	return sum
}

const (
	// steep is the step to a neighboring patch, over the brightest, from which both are
	// cut finer.
	steep = 0.04
	// mostParts is the number of parts along a fine patch's edge; mostFine bounds all
	// parts of a face, by cutting less.
	mostParts, mostFine = 4, 1600
)

// directOn is what comes straight from the box: the mean over each patch, lx, and
// where it is uneven.
func (h *Hall) directOn(e *Engine) (mean []float64, fine []fineLight) {
	mean = make([]float64, h.count)
	at := func(p, faces r3.Vec) float64 { return e.At(h.pose.In(p), h.pose.InDirection(faces), Flat) }
	overCores(h.count, func(i int) {
		if i >= h.first {
			l := &h.leaves[i-h.first]
			for _, p := range placesIn(l.polygon, 1, 1, nil) {
				mean[i] += p.weight * at(r3.Add(p.at, r3.Scale(onFace, l.looks)), l.looks)
			}
			return
		}
		s := h.sideOf(i)
		p, q := s.cell(i - s.first)
		mean[i] = at(r3.Scale(0.5, r3.Add(p, q)), s.inward())
	})
	most := 0.0
	for _, lux := range mean {
		most = math.Max(most, lux)
	}
	for k := range h.sides {
		s := &h.sides[k]
		middle := append([]float64(nil), mean[s.first:s.first+s.patches()]...)
		uneven := s.unevenPatches(middle, most)
		s.curve(middle, mean[s.first:])
		if f, found := s.finer(uneven); found {
			h.finely(s, &f, uneven, mean[s.first:], at)
			fine = append(fine, f)
		}
	}
	return mean, fine
}

// sideOf is the face of a room's patch.
func (h *Hall) sideOf(patch int) *roomSide {
	k := 0
	for patch >= h.sides[k].first+h.sides[k].patches() {
		k++
	}
	return &h.sides[k]
}

// unevenPatches are those that differ from a neighbor, corners included, by much.
func (s *roomSide) unevenPatches(middle []float64, most float64) []bool {
	nu, nv := s.nu(), s.nv()
	out := make([]bool, len(middle))
	for k, lux := range middle {
		for j := max(k/nu-1, 0); j <= min(k/nu+1, nv-1); j++ {
			for i := max(k%nu-1, 0); i <= min(k%nu+1, nu-1); i++ {
				out[k] = out[k] || math.Abs(middle[j*nu+i]-lux) > steep*most
			}
		}
	}
	return out
}

// curve turns values at the middles into means: a 24th of the second difference along
// both edges is the mean's lead over the middle of a smooth function.
func (s *roomSide) curve(middle, mean []float64) {
	nu, nv := s.nu(), s.nv()
	for k, lux := range middle {
		i, j := k%nu, k/nu
		lead := 0.0
		if i > 0 && i < nu-1 {
			lead += middle[k-1] + middle[k+1] - 2*lux
		}
		if j > 0 && j < nv-1 {
			lead += middle[k-nu] + middle[k+nu] - 2*lux
		}
		mean[k] = math.Max(0, lux+lead/24)
	}
}

// finer is the part of a face that holds its uneven patches, cut finer; false where
// there are none.
func (s *roomSide) finer(uneven []bool) (fineLight, bool) {
	nu := s.nu()
	i0, i1, j0, j1 := nu, -1, s.nv(), -1
	for k, is := range uneven {
		if is {
			i0, i1, j0, j1 = min(i0, k%nu), max(i1, k%nu), min(j0, k/nu), max(j1, k/nu)
		}
	}
	if i1 < 0 {
		return fineLight{}, false
	}
	parts := mostParts
	for parts > 2 && (i1-i0+1)*(j1-j0+1)*parts*parts > mostFine {
		parts--
	}
	f := fineLight{side: *s}
	f.side.first = 0
	f.side.lineU = even(s.lineU[i0], s.lineU[i1+1], (i1-i0+1)*parts)
	f.side.lineV = even(s.lineV[j0], s.lineV[j1+1], (j1-j0+1)*parts)
	return f, true
}

// finely reads the parts of the uneven patches and sets their means.
func (h *Hall) finely(s *roomSide, f *fineLight, uneven []bool, mean []float64, at func(p, faces r3.Vec) float64) {
	n := f.side.patches()
	f.extra, f.lit = make([]float64, n), make([]bool, n)
	patch := make([]int, n)
	overCores(n, func(i int) {
		p, q := f.side.cell(i)
		middle := r3.Scale(0.5, r3.Add(p, q))
		x := components(middle)
		patch[i] = cellAt(s.lineV, x[s.v])*s.nu() + cellAt(s.lineU, x[s.u])
		if uneven[patch[i]] {
			f.lit[i] = true
			f.extra[i] = at(middle, s.inward())
		}
	})
	count := make([]float64, s.patches())
	sum := make([]float64, s.patches())
	for i, k := range patch {
		count[k]++
		sum[k] += f.extra[i]
	}
	for k, is := range uneven {
		if is {
			mean[k] = sum[k] / count[k]
		}
	}
	for i, k := range patch {
		if f.lit[i] {
			f.extra[i] = h.reflect[s.first+k] * (f.extra[i] - mean[k])
			f.lit[i] = f.extra[i] != 0
		}
	}
}

// spreadUneven is what the uneven parts give every patch beyond the patches' means, at
// the patch's middle: those of its own face give nothing.
func (l *RoomLight) spreadUneven() {
	h := l.hall
	l.uneven = make([]float64, h.count)
	overCores(h.count, func(i int) {
		if len(l.fine) == 0 || !h.lit[i] {
			return
		}
		var eye r3.Vec
		m := meter{receptor: Flat}
		if i < h.first {
			s := h.sideOf(i)
			p, q := s.cell(i - s.first)
			eye, m.faces = h.inside(r3.Scale(0.5, r3.Add(p, q))), s.inward()
		} else {
			leaf := &h.leaves[i-h.first]
			eye, _ = leaf.polygon.Bound()
			eye, m.faces = r3.Add(eye, r3.Scale(onFace, leaf.looks)), leaf.looks
		}
		if h.inBlock(eye) {
			return
		}
		w := h.memory.Get().(*glance)
		defer h.memory.Put(w)
		h.look(w, eye)
		for k := range l.fine {
			l.uneven[i] += l.fine[k].seen(w, h, eye, m)
		}
	})
}
