package photometry

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"strings"
)

// readGDTF reads a GDTF file: a zip with description.xml at its root.
func readGDTF(f *LampFile, name string, data []byte) error {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return fmt.Errorf("%s: a zip that cannot be opened (%w); it is cut off or damaged", name, err)
	}
	for _, entry := range archive.File {
		if !strings.EqualFold(entry.Name, description) {
			continue
		}
		if entry.Name != description {
			f.odd("the description is named %q", shorten([]byte(entry.Name)))
		}
		opened, err := entry.Open()
		if err != nil {
			return fmt.Errorf("%s: %s cannot be unpacked (%w)", name, description, err)
		}
		defer opened.Close()
		return describe(f, name+", "+description, opened)
	}
	return fmt.Errorf("%s: a zip without %s; a GDTF file has one at its root", name, description)
}

const description = "description.xml"

// readBareGDTF reads a description that was taken out of its zip.
func readBareGDTF(f *LampFile, name string, data []byte) error {
	f.odd("a bare description, not a GDTF zip")
	return describe(f, name, bytes.NewReader(data))
}

// Limits of a description: a zip of a few kilobytes can unpack to gigabytes.
const (
	largestDescription = 64 << 20
	largestElement     = 256 << 10
)

// meter stops a reader that gives more than a description may have, or an element
// that is longer than any.
type meter struct {
	from        io.Reader
	given, mark int64 // mark: where the element began
}

func (m *meter) Read(p []byte) (int, error) {
	if m.given > largestDescription {
		return 0, fmt.Errorf("more than %d megabytes; no lamp's description is so long", largestDescription>>20)
	}
	if m.given-m.mark > largestElement {
		return 0, fmt.Errorf("an element of more than %d kilobytes; none is so long", largestElement>>10)
	}
	n, err := m.from.Read(p[:min(len(p), 4096)])
	m.given += int64(n)
	return n, err
}

// describe walks over a description, element by element.
func describe(f *LampFile, name string, from io.Reader) error {
	f.Format, f.Photometry = GDTF, TwoAngles
	limit := &meter{from: from}
	decoder := xml.NewDecoder(limit)
	decoder.CharsetReader = charset
	g := &gdtf{f: f, places: map[string]*place{}}
	for {
		token, err := decoder.RawToken()
		line, _ := decoder.InputPos()
		if err == io.EOF {
			break
		}
		if err != nil {
			return fmt.Errorf("%s, line %d: %w", name, line, plainXML(err))
		}
		limit.mark = decoder.InputOffset()
		if err := g.take(token); err != nil {
			return fmt.Errorf("%s, line %d: %w", name, line, err)
		}
	}
	if len(g.open) > 0 {
		return fmt.Errorf("%s: the file ends within the element %s; it is cut off", name, g.open[len(g.open)-1])
	}
	if !g.isGDTF {
		return fmt.Errorf("%s: no element GDTF; that is no lamp's description", name)
	}
	return g.finish(name)
}

func plainXML(err error) error {
	if syntax, ok := err.(*xml.SyntaxError); ok {
		return fmt.Errorf("not well-formed XML: %s", syntax.Msg)
	}
	return err
}

// charset takes encodings of one byte a sign, whatever they call themselves.
func charset(label string, input io.Reader) (io.Reader, error) {
	switch strings.ToLower(label) {
	case "us-ascii", "ascii", "iso-8859-1", "latin1", "windows-1252":
		return &latin1{from: input}, nil
	}
	return nil, fmt.Errorf("text in %s; GDTF is written in UTF-8", label)
}

// latin1 turns ISO 8859-1 into UTF-8.
type latin1 struct {
	from io.Reader
	rest []byte
}

func (l *latin1) Read(p []byte) (int, error) {
	if len(l.rest) == 0 {
		var raw [512]byte
		n, err := l.from.Read(raw[:])
		if n == 0 {
			return 0, err
		}
		for _, b := range raw[:n] {
			l.rest = append(l.rest, string(rune(b))...)
		}
	}
	n := copy(p, l.rest)
	l.rest = l.rest[n:]
	return n, nil
}

// finish turns what was gathered into what the lamp does.
func (g *gdtf) finish(name string) error {
	f := g.f
	total, err := g.total()
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	f.Mass = g.mass
	if g.massSeen && g.mass == nil {
		f.odd("the weight is 0, which is what the form writes where nobody gave it: not known")
	}
	if total.count == 0 {
		return fmt.Errorf("%s: no beam; a GDTF file without a geometry of kind Beam says nothing about light", name)
	}
	f.LumensStated, f.Power = total.lumens(), total.watts()
	if f.Power == nil {
		f.Power = g.consumers()
	}
	f.Sets = []LampSet{{Count: total.count, LumensStated: f.LumensStated, Power: f.Power}}
	if total.count > 1 {
		f.odd("%d beams: flux and power are their sum", total.count)
	}
	g.angles(total)
	g.opening(total)
	return nil
}

// angles turns beam and field into a distribution where both are given.
func (g *gdtf) angles(total sum) {
	f, b := g.f, total.first
	if !total.alike {
		f.odd("beams differ in angles, kind or radius: how the light is spread is not known")
		return
	}
	if b.beam != nil {
		f.Beam = Widths{Across: radians(*b.beam), Along: radians(*b.beam)}
	}
	if b.field != nil {
		f.Field = Widths{Across: radians(*b.field), Along: radians(*b.field)}
	}
	switch {
	case b.beam == nil || b.field == nil:
		return // told where the attributes are looked at
	case *b.beam == *b.field:
		f.odd("beam and field are both %.4g deg, so where the light ends is not known: no distribution", *b.beam)
		return
	case b.kind == "None" || b.kind == "Glow" || b.kind == "Rectangle":
		f.odd("the beam's kind is %s, which two angles don't describe: no distribution", b.kind)
		return
	}
	law, err := NewBeam(*b.beam*degree, *b.field*degree)
	if err != nil {
		f.odd("%v: no distribution", err)
		return
	}
	f.Distribution = law
	if f.LumensStated != nil {
		f.Peak = &Peak{Candela: law.peak * *f.LumensStated, Modeled: true}
	}
}

func radians(degrees float64) *float64 { return known(degrees * degree) }

// opening is a disk of the beam's radius, where one beam is all.
func (g *gdtf) opening(total sum) {
	f, radius := g.f, total.first.radius
	f.Opening = Opening{Shape: unknownShape}
	switch {
	case total.count > 1:
		f.odd("the opening of several beams together is not told: ask for its size")
	case radius != nil:
		f.Opening = Opening{Shape: "disk", AlongC0: 2 * *radius, AlongC90: 2 * *radius}
		f.judge(f.Opening)
	}
}

// consumers is the power of what draws current, where no beam tells its own.
func (g *gdtf) consumers() *float64 {
	if g.payLoad > 0 && !math.IsInf(g.payLoad, 0) {
		return known(g.payLoad)
	}
	return nil
}
