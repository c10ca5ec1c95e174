package photometry

import "math"

// Opening is a lamp's luminous opening. Sizes are in m, never negative; AlongC0 lies
// in the plane C0-C180, AlongC90 in C90-C270, Height along the aim.
type Opening struct {
	Shape                     string
	AlongC0, AlongC90, Height float64
}

// Shapes that aren't plain sizes.
const (
	pointShape   = "point"
	unknownShape = "not known"
)

// Known reports whether the file tells a size.
func (o Opening) Known() bool {
	return o.Shape != pointShape && o.Shape != unknownShape && o.Shape != ""
}

// Length and Width are the sizes in the words of the file's form.
func (o Opening) Length(axis LengthAxis) float64 {
	if axis == AlongC90 {
		return o.AlongC90
	}
	return o.AlongC0
}

// Width is the size across Length.
func (o Opening) Width(axis LengthAxis) float64 {
	if axis == AlongC90 {
		return o.AlongC0
	}
	return o.AlongC90
}

// Area is what the opening shows straight ahead, in m2; nil where the file gives no
// size there.
func (o Opening) Area() *float64 {
	area := o.AlongC0 * o.AlongC90
	switch o.Shape {
	case "disk", "ellipse", "upright cylinder", "upright elliptic cylinder", "sphere", "ellipsoid":
		area *= math.Pi / 4
	case unknownShape:
		return nil
	}
	return positive(area)
}

// form is one row of the standard's tables of openings: which sign width, length and
// height have there, and what must be alike.
type form struct {
	signs string // of width, length, height: + - 0, or * for any
	alike bool   // all that are negative have the same size
	shape string
}

// oldForms are those of LM-63-1986 and 1991.
var oldForms = []form{
	{"000", false, pointShape},
	{"++0", false, "rectangle"},
	{"-00", false, "disk"},
	{"-0+", false, "upright cylinder"},
	{"-+0", false, "ellipse"},
	{"-++", false, "ellipsoid"},
	{"+++", false, "box"}, {"0++", false, "box"}, {"+0+", false, "box"}, {"00+", false, "box"},
}

// forms1995 are those of LM-63-1995.
var forms1995 = []form{
	{"000", false, pointShape},
	{"++0", false, "rectangle"},
	{"+++", false, "box"}, {"0++", false, "box"}, {"+0+", false, "box"}, {"00+", false, "box"},
	{"-00", false, "disk"},
	{"-0-", true, "sphere"},
	{"-0+", false, "upright cylinder"},
	{"0+-", false, "cylinder along the length"},
	{"+0-", false, "cylinder along the width"},
	{"-++", false, "upright elliptic cylinder"}, {"+-+", false, "upright elliptic cylinder"},
	{"-+-", false, "ellipsoid"}, {"+--", false, "ellipsoid"},
	{"-+0", false, "ellipse"}, {"+-0", false, "ellipse"},
}

// forms2002 are those of LM-63-2002 and 2019.
var forms2002 = []form{
	{"000", false, pointShape},
	{"++0", false, "rectangle"},
	{"+0+", false, "upright rectangle"}, {"0++", false, "upright rectangle"},
	{"+++", false, "box"}, {"00+", false, "box"},
	{"--0", true, "disk"}, {"--0", false, "ellipse"},
	{"--+", true, "upright cylinder"}, {"--+", false, "upright elliptic cylinder"},
	{"---", true, "sphere"}, {"---", false, "ellipsoid"},
	{"-+-", false, "cylinder along the length"},
	{"+--", false, "cylinder along the width"},
	{"-0-", true, "upright disk"}, {"-0-", false, "upright ellipse"},
	{"0--", true, "upright disk"}, {"0--", false, "upright ellipse"},
}

// openingLM63 reads width, length and height as a version of LM-63 means them; unit
// is what 1 is in m.
func (f *LampFile) openingLM63(year int, width, length, height, unit float64) Opening {
	forms := forms2002
	switch {
	case year < 1995:
		forms = oldForms
	case year < 2002:
		forms = forms1995
	}
	shape := shapeIn(forms, width, length, height)
	if shape == "" {
		shape = f.shapeElsewhere(width, length, height)
	}
	width, length, height = math.Abs(width)*unit, math.Abs(length)*unit, math.Abs(height)*unit
	o := Opening{Shape: shape, AlongC0: length, AlongC90: width, Height: height}
	o.fillRound(year)
	f.judge(o)
	return o
}

// shapeElsewhere finds what other versions would take the sizes for.
func (f *LampFile) shapeElsewhere(width, length, height float64) string {
	for _, other := range []struct {
		version string
		forms   []form
	}{{"1995", forms1995}, {"2002", forms2002}, {"1991", oldForms}} {
		if shape := shapeIn(other.forms, width, length, height); shape != "" {
			f.odd("sizes %g, %g, %g of the opening mean nothing in this version: taken as the %s of LM-63-%s", width, length, height, shape, other.version)
			return shape
		}
	}
	f.odd("sizes %g, %g, %g of the opening mean nothing in any version of LM-63: its shape is not known", width, length, height)
	return unknownShape
}

func shapeIn(forms []form, width, length, height float64) string {
	sizes := [3]float64{width, length, height}
	for _, candidate := range forms {
		if candidate.fits(sizes) {
			return candidate.shape
		}
	}
	return ""
}

func (c form) fits(sizes [3]float64) bool {
	size := 0.0
	for i, value := range sizes {
		if sign(value) != c.signs[i] {
			return false
		}
		if value < 0 && c.alike {
			if size != 0 && size != value {
				return false
			}
			size = value
		}
	}
	return true
}

func sign(value float64) byte {
	switch {
	case value > 0:
		return '+'
	case value < 0:
		return '-'
	}
	return '0'
}

// fillRound writes the second diameter of shapes that the file gives by one.
func (o *Opening) fillRound(year int) {
	switch o.Shape {
	case "disk", "upright cylinder", "sphere":
		d := math.Max(o.AlongC0, o.AlongC90)
		o.AlongC0, o.AlongC90 = d, d
	case "cylinder along the length":
		if year < 2002 && o.AlongC90 == 0 {
			o.AlongC90 = o.Height
		}
	case "cylinder along the width":
		if year < 2002 && o.AlongC0 == 0 {
			o.AlongC0 = o.Height
		}
	}
}

// judge notes sizes that no lamp has.
func (f *LampFile) judge(o Opening) {
	largest := math.Max(math.Max(o.AlongC0, o.AlongC90), o.Height)
	switch {
	case o.Shape == pointShape:
		f.odd("the opening is a point in the file: its size is not known, ask for it")
	case largest > 4:
		f.odd("the opening is %.3g m long: feet, meters or millimeters may be mixed up", largest)
	case largest < 0.003:
		f.odd("the opening is only %.3g mm long: feet, meters or millimeters may be mixed up", largest*1000)
	}
}
