package photometry

import (
	"bytes"
	"math"
	"strings"
)

// readLM63 reads an LM-63 file of any version.
func readLM63(f *LampFile, name string, data []byte) error {
	f.Format, f.Axis = LM63, AlongC0
	h := &header63{f: f, s: &scanner{name: name, data: data, line: 1}}
	if err := h.read(); err != nil {
		return err
	}
	f.Version, f.Name = h.version, h.title()
	return f.records(h)
}

// records reads the numbers behind the header: a comma parts numbers, and where that
// doesn't come out, or leaves something over, it is tried as a decimal point.
func (f *LampFile) records(h *header63) error {
	first, second := *h.s, *h.s
	b, err := h.body(&first)
	if err == nil && !(b.left && first.tight > 0) {
		return f.fill63(h, b, &first)
	}
	if !bytes.Contains(second.data[second.at:], []byte(",")) {
		return f.orFill(h, b, &first, err)
	}
	second.decimalComma = true
	with, worse := h.body(&second)
	if worse == nil && !with.left && second.tight > 0 {
		f.odd("commas are decimal signs; a point is due")
		return f.fill63(h, with, &second)
	}
	return f.orFill(h, b, &first, err)
}

func (f *LampFile) orFill(h *header63, b *body63, s *scanner, err error) error {
	if err != nil {
		return err
	}
	return f.fill63(h, b, s)
}

// body63 is the numeric part of an LM-63 file.
type body63 struct {
	tilt                  *Tilt
	lamps                 int
	lumens, multiplier    float64
	kind, units           int
	width, length, height float64
	ballast, field12      float64
	watts                 float64
	layout                layout
	line                  int    // of the first record
	left                  bool   // something stands behind the last value
	leftText              string // which
	leftLine              int
}

// body reads the numbers with a scanner of its own.
func (h *header63) body(s *scanner) (*body63, error) {
	b := &body63{}
	var err error
	if h.include {
		if b.tilt, err = readTilt(s); err != nil {
			return nil, err
		}
	}
	s.skip()
	b.line = s.line
	nv, nh, err := b.first(s)
	if err != nil {
		return nil, err
	}
	for _, field := range []struct {
		to   *float64
		what string
	}{{&b.ballast, "the ballast factor"}, {&b.field12, "the field behind the ballast factor"}, {&b.watts, "the input watts"}} {
		if *field.to, err = s.number(field.what); err != nil {
			return nil, err
		}
	}
	if err := b.table(s, nv, nh); err != nil {
		return nil, err
	}
	b.leftText, b.leftLine, b.left = s.rest()
	return b, nil
}

// first reads the record of ten numbers.
func (b *body63) first(s *scanner) (nv, nh int, err error) {
	for _, field := range []struct {
		whole *int
		real  *float64
		what  string
	}{
		{&b.lamps, nil, "the number of lamps"}, {nil, &b.lumens, "the lumens per lamp"}, {nil, &b.multiplier, "the candela multiplier"},
		{&nv, nil, "the number of vertical angles"}, {&nh, nil, "the number of horizontal angles"},
		{&b.kind, nil, "the photometric type"}, {&b.units, nil, "the units type"},
		{nil, &b.width, "the opening's width"}, {nil, &b.length, "the opening's length"}, {nil, &b.height, "the opening's height"},
	} {
		if field.whole != nil {
			*field.whole, err = s.whole(field.what)
		} else {
			*field.real, err = s.number(field.what)
		}
		if err != nil {
			return 0, 0, err
		}
	}
	return nv, nh, nil
}

// table reads angles and candela, once the rest of the file has room for them.
func (b *body63) table(s *scanner, nv, nh int) error {
	if nv < 1 || nh < 1 {
		return s.errorAt(b.line, "%d vertical and %d horizontal angles; at least 2 and 1 are due", nv, nh)
	}
	if due := float64(nv) + float64(nh) + float64(nv)*float64(nh); due > float64(s.room()) {
		return s.errorAt(b.line, "%d vertical times %d horizontal angles need %.0f numbers, and the rest of the file has room for %d at most; it is cut off or its header is wrong", nv, nh, due, s.room())
	}
	l := &b.layout
	var err error
	if l.v, err = s.numbers(nv, "a vertical angle"); err != nil {
		return err
	}
	line := s.line
	if l.h, err = s.numbers(nh, "a horizontal angle"); err != nil {
		return err
	}
	for _, axis := range []struct {
		angles []float64
		what   string
	}{{l.v, "vertical angles"}, {l.h, "horizontal angles"}} {
		if err := ascending(axis.angles, axis.what); err != nil {
			return s.errorAt(line, "%v", err)
		}
	}
	l.where = func(format string, values ...any) error { return s.errorAt(line, format, values...) }
	l.cd, err = s.candela(nv * nh)
	return err
}

// candela reads intensities, none of which is negative.
func (s *scanner) candela(n int) ([]float64, error) {
	all := make([]float64, n)
	for i := range all {
		s.skip()
		line := s.line
		value, err := s.number("a candela value")
		if err != nil {
			return nil, s.counted(err, i, n)
		}
		if value < 0 {
			return nil, s.errorAt(line, "a negative intensity, %g; 0 or more is due", value)
		}
		all[i] = math.Abs(value)
	}
	return all, nil
}

// fill63 turns what was read into what the lamp does.
func (f *LampFile) fill63(h *header63, b *body63, s *scanner) error {
	f.oddBody(b, s)
	factor, err := f.factor63(h, b, s)
	if err != nil {
		return err
	}
	f.Tilt = b.tilt
	f.flux63(b)
	switch b.kind {
	case 1:
		b.layout.kind = typeC
		if h.year == 0 && b.layout.v[0] < 0 { // 1986 had one number for both
			b.layout.kind = typeA
			f.odd("photometric type is 1 and vertical angles begin at %g deg: read as type A", b.layout.v[0])
		}
	case 2:
		b.layout.kind = typeB
	case 3:
		b.layout.kind = typeA
	default:
		return s.errorAt(b.line, "%d as photometric type; 1 (C), 2 (B) or 3 (A) is due", b.kind)
	}
	t, err := f.table(b.layout)
	if err != nil {
		return err
	}
	if err := f.measure(t, factor); err != nil {
		return s.errorAt(b.line, "%v", err)
	}
	f.size63(h, b)
	f.compare63()
	return nil
}

func (f *LampFile) oddBody(b *body63, s *scanner) {
	if s.degrees > 0 {
		f.odd("degree signs stand behind numbers")
	}
	if b.left {
		f.odd("line %d: something stands behind the last candela value and is not read: %q", b.leftLine, b.leftText)
	}
}

// factor63 is what turns the table into candela: multiplier and ballast factor, and up
// to 1991 the ballast-lamp photometric factor, which later files keep for other use.
func (f *LampFile) factor63(h *header63, b *body63, s *scanner) (float64, error) {
	if b.multiplier <= 0 {
		return 0, s.errorAt(b.line, "a candela multiplier of %g; more than 0 is due, mostly 1", b.multiplier)
	}
	factor := b.multiplier
	switch {
	case b.ballast < 0:
		return 0, s.errorAt(b.line, "a ballast factor of %g; more than 0 is due, mostly 1", b.ballast)
	case b.ballast == 0:
		f.odd("the ballast factor is 0: taken as 1")
	default:
		factor *= b.ballast
	}
	if b.field12 == 1 || b.field12 == 0 {
		return factor, nil
	}
	if h.year >= 1995 {
		f.odd("the field behind the ballast factor is %g, not 1: it has no meaning since 1995 and is left out", b.field12)
		return factor, nil
	}
	if b.field12 < 0 {
		return 0, s.errorAt(b.line, "a ballast-lamp photometric factor of %g; more than 0 is due, mostly 1", b.field12)
	}
	f.odd("the ballast-lamp photometric factor is %g: candela are multiplied by it", b.field12)
	return factor * b.field12, nil
}

// flux63 tells absolute from relative photometry.
func (f *LampFile) flux63(b *body63) {
	set := LampSet{Count: b.lamps}
	f.Photometry = Relative
	switch {
	case b.lumens < 0:
		f.Photometry = Absolute
		if b.lumens != -1 {
			f.odd("%g lumens per lamp: taken as -1, which says absolute", b.lumens)
		}
	case b.lumens == 0:
		f.odd("0 lumens per lamp: what the lamps give is not known")
	case b.lamps < 1:
		f.odd("%d lamps: what the lamps give is not known", b.lamps)
	default:
		set.LumensStated = known(float64(b.lamps) * b.lumens)
	}
	f.LumensStated = set.LumensStated
	f.Power = positive(b.watts)
	if f.Power == nil {
		f.odd("input watts are %g: the power is not known", b.watts)
	}
	set.Power = f.Power
	f.Sets = []LampSet{set}
}

func (f *LampFile) size63(h *header63, b *body63) {
	unit := 0.3048
	switch b.units {
	case 1:
	case 2:
		unit = 1
	default:
		f.odd("units type is %d, not 1 (feet) or 2 (meters): the opening's size is not known", b.units)
		f.Opening = Opening{Shape: unknownShape}
		return
	}
	f.Opening = f.openingLM63(h.year, b.width, b.length, b.height, unit)
}

// compare63 notes a relative file whose light is more than its lamps'.
func (f *LampFile) compare63() {
	f.Sets[0].LumensIntegrated = f.LumensIntegrated
	if share := f.Share(); f.Photometry == Relative && share != nil && *share > 1.01 {
		f.odd("the intensities add up to %.4g lm, %.3g times the %.4g lm of the lamps: more than they give, so the file is mostly an absolute one with a wrong label", *f.LumensIntegrated, *share, *f.LumensStated)
	}
}

// looksLikeLM63 tells by the first line and by a line that begins with TILT=.
func looksLikeLM63(data []byte) bool {
	s := scanner{data: data, line: 1}
	for first := true; ; first = false {
		line, _, ok := s.next()
		if !ok {
			return false
		}
		if _, named := versionLine(line); first && named {
			return true
		}
		if _, ok := tiltLine(line); ok {
			return true
		}
	}
}

// tiltLine returns what stands behind TILT= at a line's beginning.
func tiltLine(line []byte) (value []byte, ok bool) {
	line = bytes.TrimSpace(line)
	if len(line) < 5 || !bytes.EqualFold(line[:4], []byte("TILT")) {
		return nil, false
	}
	return bytes.CutPrefix(bytes.TrimLeft(line[4:], " \t"), []byte("="))
}

// versionLine tells the version of LM-63 by its first line: the year, 0 where the line
// doesn't name one that is known.
func versionLine(line []byte) (year int, named bool) {
	text := strings.ToUpper(strings.Join(strings.Fields(string(line[:min(len(line), 80)])), ""))
	if !strings.HasPrefix(text, "IES") || !strings.Contains(text, "LM-63") && !strings.HasPrefix(text, "IESNA91") {
		return 0, false
	}
	for _, known := range []struct {
		ending string
		year   int
	}{{"86", 1986}, {"91", 1991}, {"95", 1995}, {"02", 2002}, {"19", 2019}} {
		if strings.HasSuffix(text, known.ending) {
			return known.year, true
		}
	}
	return 0, true
}
