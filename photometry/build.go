package photometry

import (
	"fmt"
	"math"
)

// layout is a table as a file has it: in degrees, in the file's lines.
type layout struct {
	kind  goniometer
	v, h  []float64
	cd    []float64
	where func(format string, values ...any) error // an error with its place
}

const degree = math.Pi / 180

// table checks a layout, finds its mirror and turns it into a Table in radians. It
// takes the layout's slices.
func (f *LampFile) table(l layout) (*Table, error) {
	if len(l.v) < 2 {
		return nil, l.where("one vertical angle; at least two are due")
	}
	if err := ascending(l.v, "vertical angles"); err != nil {
		return nil, l.where("%v", err)
	}
	if err := ascending(l.h, "horizontal angles"); err != nil {
		return nil, l.where("%v", err)
	}
	t := &Table{kind: l.kind, v: l.v, h: l.h, cd: l.cd}
	var err error
	if l.kind == typeC {
		t.mirror, err = f.planesC(l)
	} else {
		t.mirror, t.mirrorV, err = f.planesAB(l)
	}
	if err != nil {
		return nil, err
	}
	return f.finish(t, l)
}

// finish turns the angles into radians and integrates.
func (f *LampFile) finish(t *Table, l layout) (*Table, error) {
	f.Planes, f.Angles = len(t.h), len(t.v)
	f.pole(t)
	f.seam(t)
	for _, axis := range [][]float64{t.v, t.h} {
		for i := range axis {
			axis[i] *= degree
		}
	}
	t.flux = t.integral()
	if math.IsInf(t.flux, 0) || math.IsNaN(t.flux) {
		return nil, l.where("intensities so large that their sum is no number")
	}
	if t.flux <= 0 {
		return nil, l.where("all intensities are 0; a lamp file without light says nothing")
	}
	return t, nil
}

func ascending(angles []float64, what string) error {
	for i := 1; i < len(angles); i++ {
		if !(angles[i] > angles[i-1]) {
			return fmt.Errorf("%s that don't rise: %g comes after %g; each must be larger than the one before", what, angles[i], angles[i-1])
		}
	}
	return nil
}

// even is how far (deg) an angle may be off a bound and still be it.
const even = 1e-6

func near(a, b float64) bool { return math.Abs(a-b) <= even }

// planesC finds the mirror of a type C table from its planes.
func (f *LampFile) planesC(l layout) (mirror, error) {
	first, last := l.v[0], l.v[len(l.v)-1]
	if first < -even || last > 180+even {
		return 0, l.where("vertical angles from %g to %g deg; those of type C lie from 0 to 180", first, last)
	}
	if !(near(first, 0) || near(first, 90)) || !(near(last, 90) || near(last, 180)) {
		f.odd("vertical angles run from %g to %g deg, not from 0 or 90 to 90 or 180: outside of them is taken as dark", first, last)
	}
	return f.mirrorC(l)
}

func (f *LampFile) mirrorC(l layout) (mirror, error) {
	from, to := l.h[0], l.h[len(l.h)-1]
	switch {
	case len(l.h) == 1:
		if !near(from, 0) {
			f.odd("the only plane is at %g deg, not at 0: taken for all around", from)
		}
		return round, nil
	case near(from, 0) && near(to, 90):
		return quadrant, nil
	case near(from, 0) && near(to, 180):
		return about0, nil
	case near(from, 180) && near(to, 360):
		f.odd("planes run from 180 to 360 deg: taken as mirrored about the plane 0-180")
		return about0, nil
	case near(from, 90) && near(to, 270):
		return about90, nil
	case near(from, -90) && near(to, 90):
		if f.Format == LM63 {
			f.odd("planes run from -90 to 90 deg: taken as mirrored about the plane 90-270")
		}
		return about90, nil
	}
	return f.wholeC(l)
}

// wholeC takes planes all around, the last one at 360 deg or left out.
func (f *LampFile) wholeC(l layout) (mirror, error) {
	from, to := l.h[0], l.h[len(l.h)-1]
	gap, step := from+360-to, 0.0
	for i := 1; i < len(l.h); i++ {
		step = math.Max(step, l.h[i]-l.h[i-1])
	}
	if from < -180-even || to > 360+even || gap < -even || gap > 1.5*step {
		return 0, l.where("horizontal angles from %g to %g deg; the planes of type C run from 0 to 0, 90, 180 or 360, or from 90 to 270", from, to)
	}
	if !near(from, 0) {
		f.odd("planes run from %g to %g deg, not from 0", from, to)
	}
	if gap > even && f.Format == LM63 {
		f.odd("the plane at %g deg is left out: taken to be the one at %g", from+360, from)
	}
	return whole, nil
}

// planesAB finds the mirrors of a type A or B table.
func (f *LampFile) planesAB(l layout) (mirror, bool, error) {
	if len(l.h) < 2 {
		return 0, false, l.where("one horizontal angle in a table of type %c; nothing says how the light spreads to the sides", l.kind)
	}
	limitH, limitV := 90.0, 180.0
	if l.kind == typeA {
		limitH, limitV = limitV, limitH
	}
	for _, axis := range []struct {
		name   string
		angles []float64
		limit  float64
	}{{"horizontal", l.h, limitH}, {"vertical", l.v, limitV}} {
		if from, to := axis.angles[0], axis.angles[len(axis.angles)-1]; from < -axis.limit-even || to > axis.limit+even {
			return 0, false, l.where("%s angles from %g to %g deg; those of type %c lie from -%g to %g", axis.name, from, to, l.kind, axis.limit, axis.limit)
		}
	}
	across, upright := whole, false
	if near(l.h[0], 0) {
		across = about0
	}
	if near(l.v[0], 0) {
		upright = true
		f.odd("vertical angles of type %c begin at 0: the lower half is taken to mirror the upper one", l.kind)
	}
	return across, upright, nil
}

// seam notes a plane at 360 deg that differs from the one at 0.
func (f *LampFile) seam(t *Table) {
	n, last := len(t.v), len(t.h)-1
	if t.kind != typeC || t.mirror != whole || !near(t.h[last]-t.h[0], 360) {
		return
	}
	if f.Format == EULUMDAT {
		f.odd("the plane at 360 deg is listed, which repeats the one at 0")
	}
	for j := range n {
		if a, b := t.cd[j], t.cd[last*n+j]; math.Abs(a-b) > 1e-6*math.Max(a, b) {
			f.odd("the planes at %g and %g deg are the same direction and differ", t.h[0], t.h[last])
			return
		}
	}
}

// pole notes planes that don't agree where they meet.
func (f *LampFile) pole(t *Table) {
	if t.kind != typeC || !near(t.v[0], 0) {
		return
	}
	low, high, n := t.cd[0], t.cd[0], len(t.v)
	for i := range t.h {
		low, high = math.Min(low, t.cd[i*n]), math.Max(high, t.cd[i*n])
	}
	if high-low > 0.01*high {
		f.odd("straight ahead the planes differ: from %.4g to %.4g of the file's units", low, high)
	}
}

// measure fills in what follows from a table whose values times gain are candela.
func (f *LampFile) measure(t *Table, gain float64) error {
	peak, h, v := t.peak()
	direction := t.kind.direction(h, v)
	c, gamma := typeC.angles(direction)
	if t.kind == typeC && t.mirror != round {
		c = h // also straight ahead, where the direction has no C
	}
	if t.mirror == round {
		c = 0
	}
	f.Distribution, t.aim = t, direction
	f.Peak = &Peak{Candela: peak * gain, C: turn(c), Gamma: gamma}
	f.LumensIntegrated = known(t.flux * gain)
	if f.LumensIntegrated == nil || known(f.Peak.Candela) == nil {
		return fmt.Errorf("intensities so large that their sum is no number")
	}
	f.widths(t, peak)
	t.scale, t.grain = t.steepness(peak, f.Beam), t.grains(peak)
	f.behind(t)
	return nil
}

// widths tells beam and field, where the peak lies before the opening.
func (f *LampFile) widths(t *Table, peak float64) {
	if f.Peak.Gamma > math.Pi/2+slack {
		f.odd("the peak lies behind the opening (gamma %.4g deg): beam and field are not told", f.Peak.Gamma/degree)
		return
	}
	level, upright := t.cutThrough(false), t.cutThrough(true)
	f.Beam = f.pair(&level, &upright, 0.5*peak)
	f.Field = f.pair(&level, &upright, 0.1*peak)
	if f.Beam.Across == nil || f.Beam.Along == nil || f.Field.Across == nil || f.Field.Along == nil {
		f.odd("beam or field is not known in a plane where the intensity doesn't reach that share of the peak, or is still over it at the last angle")
	}
}

func (f *LampFile) pair(level, upright *cut, at float64) Widths {
	if f.Axis == AlongC0 {
		return Widths{Across: upright.width(at), Along: level.width(at)}
	}
	return Widths{Across: level.width(at), Along: upright.width(at)}
}

// behind notes light that leaves backward, where a lamp's back is taken to absorb.
func (f *LampFile) behind(t *Table) {
	if t.kind != typeC {
		return
	}
	f.Downward = known(t.integralTo(math.Pi/2) / t.flux)
	if share := 1 - *f.Downward; share > 0.01 {
		f.odd("%.3g %% of the light leaves backward (gamma over 90 deg)", 100*share)
	}
}
