package photometry

import (
	"bytes"
	"fmt"
	"path"
	"strings"
)

// Format is a form of lamp file.
type Format string

// The forms that are read.
const (
	LM63     Format = "LM-63"
	EULUMDAT Format = "EULUMDAT"
	GDTF     Format = "GDTF"
)

// Kind says what a file's intensities stand for.
type Kind string

// Absolute intensities are as measured; relative ones belong to the lumens that are
// stated; flux and two angles leave the shape between them open.
const (
	Absolute  Kind = "absolute"
	Relative  Kind = "relative"
	TwoAngles Kind = "flux and angles"
)

// LampFile is what a lamp file says. A pointer is nil where the file doesn't tell,
// also where it holds a 0 that can't be meant.
type LampFile struct {
	Format     Format
	Version    string // of the form; empty where it has none
	Name       string // what the file calls the lamp
	Photometry Kind

	// LumensStated is what the file claims: of the light sources where photometry
	// is relative, of the whole lamp otherwise. LumensIntegrated is the integral
	// of its intensities; nil where it has none.
	LumensStated, LumensIntegrated *float64

	// Downward is the share of the flux up to a right angle from the aim; nil where
	// the table is not of planes about the aim.
	Downward *float64

	Peak *Peak
	// Beam and Field are the full angles (rad) between the outermost directions
	// with 50 % and 10 % of the peak, across the lamp's length and along it.
	Beam, Field Widths
	// Axis tells in which plane the length of the opening lies.
	Axis LengthAxis

	Power   *float64 // W
	Mass    *float64 // kg
	Opening Opening

	Planes, Angles int // as the file has them; 0 where there is no table

	// Sets are the lamp sets of which one is fitted; all numbers above are for the
	// first.
	Sets []LampSet
	Tilt *Tilt
	Odd  []string // what breaks the form or needs an eye

	// Distribution is nil where the file doesn't fix one.
	Distribution Distribution
}

// Peak is the largest intensity and its direction (rad): C counter-clockwise from
// C0, gamma from the aim. Modeled is set where no intensity was measured and the
// peak follows from flux and two angles by the law of Beam.
type Peak struct {
	Candela, C, Gamma float64
	Modeled           bool
}

// Widths are full angles (rad) in two planes; nil where not known.
type Widths struct{ Across, Along *float64 }

// LengthAxis is the plane in which the length of an opening lies.
type LengthAxis string

// LM-63 has the length along C0-C180 (from C0 to C180 through the aim), EULUMDAT
// along C90-C270.
const (
	AlongC0  LengthAxis = "C0-C180"
	AlongC90 LengthAxis = "C90-C270"
)

// LampSet is one of the lamp sets that a luminaire may be fitted with.
type LampSet struct {
	Count            int
	Type             string
	LumensStated     *float64 // of all lamps of the set
	LumensIntegrated *float64
	Power            *float64 // W, of the whole set
}

// Lumens is what leaves the lamp: integrated where there is a table, else stated.
func (l *LampFile) Lumens() *float64 {
	if l.LumensIntegrated != nil {
		return l.LumensIntegrated
	}
	return l.LumensStated
}

// Efficacy is lumens per watt; nil where either isn't known.
func (l *LampFile) Efficacy() *float64 {
	lumens := l.Lumens()
	if lumens == nil || l.Power == nil {
		return nil
	}
	return known(*lumens / *l.Power)
}

// Share is the integrated flux over the stated one; nil where either isn't known.
func (l *LampFile) Share() *float64 {
	if l.LumensIntegrated == nil || l.LumensStated == nil {
		return nil
	}
	return known(*l.LumensIntegrated / *l.LumensStated)
}

// ReadFile reads a lamp file of any form; the form is told by the content, and by the
// name's ending where the content doesn't tell. Name stands in errors, with the line.
// It holds at most ten times the file's size.
func ReadFile(name string, data []byte) (*LampFile, error) {
	f := &LampFile{Axis: AlongC0}
	read, data, err := f.reader(name, data)
	if err != nil {
		return nil, err
	}
	if err := read(f, name, data); err != nil {
		return nil, err
	}
	return f, nil
}

type reader func(f *LampFile, name string, data []byte) error

// reader finds out the form of a file and cuts off what stands before its text.
func (f *LampFile) reader(name string, data []byte) (reader, []byte, error) {
	if bytes.HasPrefix(data, []byte("PK")) {
		return readGDTF, data, nil
	}
	data, err := f.text(name, data)
	if err != nil {
		return nil, nil, err
	}
	ending := strings.ToLower(path.Ext(name))
	switch {
	case bytes.HasPrefix(bytes.TrimSpace(data), []byte("<")):
		return readBareGDTF, data, nil
	case looksLikeLM63(data), ending == ".ies":
		return readLM63, data, nil
	case ending == ".ldt", ending == ".eul", looksLikeEULUMDAT(data):
		return readEULUMDAT, data, nil
	}
	return nil, nil, fmt.Errorf("%s: no lamp file that can be read; LM-63 (.ies) has a line that begins with TILT=, EULUMDAT (.ldt) has one value in each line, GDTF (.gdtf) is a zip", name)
}

func (f *LampFile) odd(format string, values ...any) {
	f.Odd = append(f.Odd, fmt.Sprintf(format, values...))
}

// positive is a number that a 0 or less leaves open.
func positive(value float64) *float64 {
	if value > 0 {
		return known(value)
	}
	return nil
}
