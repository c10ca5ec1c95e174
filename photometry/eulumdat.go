package photometry

import (
	"bytes"
	"math"
)

// eulumdat is the head of a EULUMDAT file: its first 26 lines, by line number.
type eulumdat struct {
	symmetry      int
	planes        int // around, not those that are stored
	angles        int
	length, width float64 // of the luminous area, m
	heights       [4]float64
	body          [2]float64 // length and width of the luminaire, m
	downward      *float64   // downward flux fraction, %
	output        *float64   // light output ratio, %
	conversion    float64
	tilt          float64 // rad
}

// readEULUMDAT reads a EULUMDAT file: one value in each line.
func readEULUMDAT(f *LampFile, name string, data []byte) error {
	f.Format, f.Axis, f.Photometry = EULUMDAT, AlongC90, Relative
	r := &lines{scanner: &scanner{name: name, data: data, line: 1, decimalComma: true}, f: f}
	e := &eulumdat{}
	if err := e.head(r); err != nil {
		return err
	}
	if err := e.sets(r); err != nil {
		return err
	}
	for range 10 { // direct ratios, which nothing here uses
		if _, err := r.maybe("a direct ratio"); err != nil {
			return err
		}
	}
	l, err := e.table(r)
	if err != nil {
		return err
	}
	r.close()
	return e.fill(f, l)
}

func (e *eulumdat) head(r *lines) error {
	r.text("the company") // line 1
	kind, err := r.whole("line 2, the type (1, 2 or 3)")
	if err != nil {
		return err
	}
	if kind < 1 || kind > 3 {
		r.f.odd("line 2: type %d, not 1, 2 or 3", kind)
	}
	if e.symmetry, err = r.whole("line 3, the symmetry (0 to 4)"); err != nil {
		return err
	}
	if e.symmetry < 0 || e.symmetry > 4 {
		return r.errorAt(3, "symmetry %d; 0 to 4 is due", e.symmetry)
	}
	if err := e.counts(r); err != nil {
		return err
	}
	r.text("the report") // line 8
	r.f.Name = r.text("the luminaire's name")
	r.text("the luminaire's number")
	r.text("the file's name")
	r.text("date and user") // line 12
	return e.sizes(r)
}

// counts reads lines 4 to 7.
func (e *eulumdat) counts(r *lines) error {
	var err error
	if e.planes, err = r.whole("line 4, the number of C planes"); err != nil {
		return err
	}
	if _, err = r.maybe("the distance between planes"); err != nil {
		return err
	}
	if e.angles, err = r.whole("line 6, the number of angles in each plane"); err != nil {
		return err
	}
	if _, err = r.maybe("the distance between angles"); err != nil {
		return err
	}
	if e.planes < 1 || e.angles < 2 {
		return r.errorAt(4, "%d planes with %d angles; at least 1 with 2 are due", e.planes, e.angles)
	}
	if due := float64(e.planes) + float64(e.angles) + float64(e.stored())*float64(e.angles); due > float64(r.room()) {
		return r.errorAt(4, "%d planes with %d angles each need %.0f numbers, and the rest of the file has room for %d at most; it is cut off or its header is wrong", e.planes, e.angles, due, r.room())
	}
	return nil
}

// stored is how many planes the file holds.
func (e *eulumdat) stored() int {
	switch e.symmetry {
	case 1:
		return 1
	case 2, 3:
		return e.planes/2 + 1
	case 4:
		return e.planes/4 + 1
	}
	return e.planes
}

// sizes reads lines 13 to 25. Millimeters become meters.
func (e *eulumdat) sizes(r *lines) error {
	var err error
	for _, field := range []struct {
		to   *float64
		unit float64
		what string
	}{
		{&e.body[0], 0.001, "the luminaire's length"}, {&e.body[1], 0.001, "the luminaire's width"}, {new(float64), 1, "the luminaire's height"},
		{&e.length, 0.001, "the luminous length"}, {&e.width, 0.001, "the luminous width"},
		{&e.heights[0], 0.001, "the luminous height at C0"}, {&e.heights[1], 0.001, "the luminous height at C90"},
		{&e.heights[2], 0.001, "the luminous height at C180"}, {&e.heights[3], 0.001, "the luminous height at C270"},
	} {
		value, err := r.maybe(field.what)
		if err != nil {
			return err
		}
		if value != nil {
			*field.to = *value * field.unit
		}
	}
	if e.downward, err = r.maybe("the downward flux fraction"); err != nil {
		return err
	}
	if e.output, err = r.maybe("the light output ratio"); err != nil {
		return err
	}
	factor, err := r.maybe("the conversion factor")
	if err != nil {
		return err
	}
	e.conversion = 1
	switch {
	case factor == nil || *factor == 0:
		r.f.odd("line 24: no factor for the intensities: taken as 1")
	case *factor < 0:
		return r.errorAt(24, "a factor of %g for the intensities; more than 0 is due, mostly 1", *factor)
	default:
		e.conversion = *factor
	}
	tilt, err := r.maybe("the tilt at measurement")
	if tilt != nil {
		e.tilt = *tilt * degree
	}
	return err
}

// mostSets is how many lamp sets the form allows.
const mostSets = 20

// sets reads the lamp sets, six lines each.
func (e *eulumdat) sets(r *lines) error {
	n, err := r.whole("line 26, the number of lamp sets")
	if err != nil {
		return err
	}
	if n < 0 || n > mostSets {
		return r.errorAt(26, "%d lamp sets; 1 to %d are due", n, mostSets)
	}
	for range n {
		set, absolute, err := oneSet(r)
		if err != nil {
			return err
		}
		if absolute {
			r.f.Photometry = Absolute
		}
		r.f.Sets = append(r.f.Sets, set)
	}
	if n == 0 {
		r.f.odd("no lamp set: lumens and power are not known")
	}
	if n > 1 {
		r.f.odd("%d lamp sets, of which one is fitted at a time: the numbers are for the first", n)
		if r.f.Photometry == Absolute {
			r.f.odd("an absolute file has one lamp set; this has %d", n)
		}
	}
	return nil
}

// oneSet reads a set: a negative count marks the flux as the whole luminaire's.
func oneSet(r *lines) (set LampSet, absolute bool, err error) {
	if set.Count, err = r.whole("the number of lamps"); err != nil {
		return set, false, err
	}
	set.Type = r.text("the lamps' type")
	flux, err := r.maybe("the lamps' flux")
	if err != nil {
		return set, false, err
	}
	r.text("the color of the light")
	r.text("the color rendering")
	watts, err := r.maybe("the power")
	if err != nil {
		return set, false, err
	}
	set.LumensStated, set.Power = orUnknown(flux), orUnknown(watts)
	if set.LumensStated == nil {
		r.f.odd("the flux of a lamp set is not given: its intensities are known per lumen only")
	}
	if set.Power == nil {
		r.f.odd("the power of a lamp set is not given")
	}
	absolute = set.Count < 0
	if absolute {
		set.Count = -set.Count
	}
	return set, absolute, nil
}

func orUnknown(value *float64) *float64 {
	if value == nil {
		return nil
	}
	return positive(*value)
}

// table reads angles and intensities.
func (e *eulumdat) table(r *lines) (layout, error) {
	l := layout{kind: typeC}
	line := r.line
	l.where = func(format string, values ...any) error { return r.errorAt(line, format, values...) }
	around, err := r.numbers(e.planes, "a C angle")
	if err != nil {
		return l, err
	}
	if err := ascending(around, "C angles"); err != nil {
		return l, r.errorAt(line, "%v", err)
	}
	if l.h, err = e.planesOf(around, l.where); err != nil {
		return l, err
	}
	line = r.line
	if l.v, err = r.numbers(e.angles, "a gamma angle"); err != nil {
		return l, err
	}
	if err := ascending(l.v, "gamma angles"); err != nil {
		return l, r.errorAt(line, "%v", err)
	}
	n := len(l.h) * e.angles
	if n > r.room() {
		return l, r.errorAt(r.line, "%d intensities are due, and the rest of the file has room for %d at most; it is cut off or its header is wrong", n, r.room())
	}
	l.cd, err = r.candela(n)
	return l, err
}

// planesOf picks the angles of the planes that are stored: for the mirror about
// C90-C270 those from C270 over C0 to C90, as -90 to 90 deg.
func (e *eulumdat) planesOf(around []float64, where func(string, ...any) error) ([]float64, error) {
	n := e.stored()
	switch e.symmetry {
	case 1:
		return []float64{0}, nil
	case 2, 4:
		end := map[int]float64{2: 180, 4: 90}[e.symmetry]
		if n > len(around) || !near(around[0], 0) || !near(around[n-1], end) {
			return nil, where("symmetry %d stores %d planes up to C%g, and the C angles in the file don't end there", e.symmetry, n, end)
		}
		return around[:n], nil
	case 3:
		return e.planes90(around, n, where)
	}
	return around, nil
}

func (e *eulumdat) planes90(around []float64, n int, where func(string, ...any) error) ([]float64, error) {
	start := -1
	for i, c := range around {
		if near(c, 270) {
			start = i
		}
	}
	if start < 0 {
		return nil, where("symmetry 3 stores planes from C270, and no C angle is 270")
	}
	stored := make([]float64, n)
	for k := range stored {
		i := start + k
		stored[k] = around[i%len(around)] - 360
		if i >= len(around) {
			stored[k] += 360
		}
	}
	if !near(stored[n-1], 90) {
		return nil, where("symmetry 3 stores %d planes from C270 to C90, and the C angles in the file end at C%g", n, stored[n-1])
	}
	return stored, nil
}

// fill turns what was read into what the lamp does: candela are table times factor
// times the flux of the whole set in thousands.
func (e *eulumdat) fill(f *LampFile, l layout) error {
	t, err := f.table(l)
	if err != nil {
		return err
	}
	perLumen := e.conversion / 1000
	for i := range f.Sets {
		if set := &f.Sets[i]; set.LumensStated != nil {
			set.LumensIntegrated = known(t.flux * perLumen * *set.LumensStated)
		}
	}
	gain := perLumen
	if len(f.Sets) > 0 {
		f.Power, f.LumensStated = f.Sets[0].Power, f.Sets[0].LumensStated
		if f.LumensStated != nil {
			gain *= *f.LumensStated
		}
	}
	if err := f.measure(t, gain); err != nil {
		return l.where("%v", err)
	}
	if f.LumensStated == nil { // candela are per lumen of lamps that nobody told
		f.LumensIntegrated, f.Peak = nil, nil
	}
	e.compare(f, t.flux*perLumen)
	e.opening(f)
	return nil
}

// compare notes where the intensities contradict the light output ratio.
func (e *eulumdat) compare(f *LampFile, share float64) {
	if e.output == nil || *e.output <= 0 {
		f.odd("line 23: no light output ratio: the intensities can't be held against it")
	} else if math.Abs(100*share-*e.output) > 0.02**e.output {
		f.odd("the intensities add up to %.4g %% of the lamps' light and the light output ratio is %.4g %%; steps too wide for a narrow beam do that as well", 100*share, *e.output)
	}
	if e.downward != nil && *e.downward > 0 && f.Downward != nil && math.Abs(100**f.Downward-*e.downward) > 1 {
		f.odd("%.4g %% of the light leaves downward by the intensities, %.4g %% by the downward flux fraction", 100**f.Downward, *e.downward)
	}
	if e.tilt != 0 {
		f.odd("measured at a tilt of %.4g deg: directions are those of the file", e.tilt/degree)
	}
}

// opening reads the luminous area: the length lies along C90-C270, a width of 0 is
// round.
func (e *eulumdat) opening(f *LampFile) {
	height := 0.0
	for _, h := range e.heights {
		height = math.Max(height, h)
	}
	o := Opening{Shape: "rectangle", AlongC0: e.width, AlongC90: e.length, Height: height}
	switch {
	case e.length < 0 || e.width < 0:
		f.odd("the luminous area has a negative size: it is not known")
		o = Opening{Shape: unknownShape}
	case e.length == 0 && e.width == 0:
		o.Shape = pointShape
	case e.width == 0:
		o.Shape, o.AlongC0 = "disk", e.length
	}
	if tall, ok := map[string]string{"rectangle": "box", "disk": "upright cylinder"}[o.Shape]; ok && height > 0 {
		o.Shape = tall
	}
	if e.body[0] > 0 && e.length > e.body[0]+1e-9 || e.body[1] > 0 && e.width > e.body[1]+1e-9 {
		f.odd("the luminous area is larger than the luminaire")
	}
	f.Opening = o
	if o.Shape != unknownShape {
		f.judge(o)
	}
}

// looksLikeEULUMDAT tells by lines 2 to 6.
func looksLikeEULUMDAT(data []byte) bool {
	s := scanner{data: data, line: 1, decimalComma: true}
	s.next()
	for i := range 5 {
		line, number, ok := s.next()
		if !ok {
			return false
		}
		value, err := s.value(bytes.TrimSpace(line), number, "")
		if err != nil || i == 0 && (value < 0 || value > 3) || i == 1 && (value < 0 || value > 4) {
			return false
		}
	}
	return true
}
