package photometry

import (
	"encoding/xml"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// gdtf gathers what matters while a description is walked over.
type gdtf struct {
	f        *LampFile
	open     []string // elements that are open, outermost first
	isGDTF   bool
	mass     *float64 // kg
	massSeen bool
	payLoad  float64 // W, of all consumers
	places   map[string]*place
	order    []string // names of top-level geometries as they come
	current  *place   // the top-level geometry that is open
	modes    []string // geometry of each mode
	told     map[string]bool
}

// place is a top-level geometry: its beams and what it refers to.
type place struct {
	beams []beam
	uses  []string
}

// beam is a beam's attributes as the file gives them: nil where it doesn't, or where
// the value can't be meant. Angles are in degrees as written.
type beam struct {
	lumens, watts, beam, field, radius *float64
	kind                               string
}

// deepest is how far elements may stand within each other.
const deepest = 200

// mostPlaces bounds geometries, modes and beams that are kept.
const mostPlaces = 5000

func (g *gdtf) take(token xml.Token) error {
	switch element := token.(type) {
	case xml.StartElement:
		if len(g.open) >= deepest {
			return errors.New("elements stand too deep within each other")
		}
		g.open = append(g.open, element.Name.Local)
		return g.start(element)
	case xml.EndElement:
		if len(g.open) == 0 || g.open[len(g.open)-1] != element.Name.Local {
			return fmt.Errorf("element %s ends where it isn't open", shorten([]byte(element.Name.Local)))
		}
		g.open = g.open[:len(g.open)-1]
		if g.depth("Geometries") == 0 {
			g.current = nil
		}
	}
	return nil
}

// depth is how many elements stand open within the innermost of a name; -1 where none
// is open.
func (g *gdtf) depth(name string) int {
	for i := len(g.open) - 1; i >= 0; i-- {
		if g.open[i] == name {
			return len(g.open) - 1 - i
		}
	}
	return -1
}

func (g *gdtf) start(e xml.StartElement) error {
	switch e.Name.Local {
	case "GDTF":
		g.isGDTF = true
		g.f.Version = attribute(e, "DataVersion")
	case "FixtureType":
		g.f.Name = attribute(e, "Name")
	case "Weight":
		if g.depth("Properties") > 0 {
			g.weight(e)
		}
	case "DMXMode":
		if len(g.modes) < mostPlaces {
			g.modes = append(g.modes, attribute(e, "Geometry"))
		}
	}
	if g.depth("Geometries") > 0 {
		return g.geometry(e)
	}
	return nil
}

func (g *gdtf) weight(e xml.StartElement) {
	g.massSeen = true
	if value := g.number(e, "Value"); value != nil {
		g.mass = positive(*value)
	}
}

// geometry notes a geometry of any kind.
func (g *gdtf) geometry(e xml.StartElement) error {
	if g.depth("Geometries") == 1 {
		name := attribute(e, "Name")
		if len(g.order) >= mostPlaces {
			return errors.New("too many geometries")
		}
		g.current = &place{}
		if _, twice := g.places[name]; twice {
			g.f.odd("two geometries are named %q: the first is used", shorten([]byte(name)))
		} else {
			g.places[name] = g.current
			g.order = append(g.order, name)
		}
	}
	if g.current == nil {
		return nil
	}
	if len(g.current.beams)+len(g.current.uses) >= mostPlaces {
		return errors.New("too many beams and references")
	}
	switch e.Name.Local {
	case "Beam":
		g.current.beams = append(g.current.beams, g.beam(e))
	case "GeometryReference":
		g.current.uses = append(g.current.uses, attribute(e, "Geometry"))
	case "WiringObject":
		if attribute(e, "ComponentType") == "Consumer" {
			if value := g.number(e, "ElectricalPayLoad"); value != nil && *value > 0 {
				g.payLoad += *value
			}
		}
	}
	return nil
}

// beam reads a beam's attributes. One that is left out has a value in the standard
// that nobody measured, so it is not known.
func (g *gdtf) beam(e xml.StartElement) beam {
	b := beam{kind: attribute(e, "BeamType")}
	for _, field := range []struct {
		to        **float64
		attribute string
		standard  string
	}{
		{&b.lumens, "LuminousFlux", "10000 lm"}, {&b.watts, "PowerConsumption", "1000 W"},
		{&b.beam, "BeamAngle", "25 deg"}, {&b.field, "FieldAngle", "25 deg"}, {&b.radius, "BeamRadius", "0.05 m"},
	} {
		value := g.number(e, field.attribute)
		if value != nil {
			*field.to = positive(*value)
		}
		if *field.to == nil {
			g.once("%s is not given or 0: not known, although the standard would put in %s", field.attribute, field.standard)
		}
	}
	return b
}

// once notes something odd one time.
func (g *gdtf) once(format string, values ...any) {
	text := fmt.Sprintf(format, values...)
	if g.told == nil {
		g.told = map[string]bool{}
	}
	if !g.told[text] {
		g.told[text] = true
		g.f.Odd = append(g.f.Odd, text)
	}
}

func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			text, _ := words([]byte(a.Value[:min(len(a.Value), 256)]))
			return text
		}
	}
	return ""
}

// number reads a number attribute; nil where it is left out or none.
func (g *gdtf) number(e xml.StartElement, name string) *float64 {
	text := attribute(e, name)
	if text == "" {
		return nil
	}
	value, err := strconv.ParseFloat(strings.TrimSpace(text), 64)
	if err != nil || math.IsInf(value, 0) || math.IsNaN(value) {
		g.once("%s of %s is no number: %q", name, e.Name.Local, shorten([]byte(text)))
		return nil
	}
	return &value
}

// sum is all beams of a geometry together.
type sum struct {
	count     int
	lm, w     float64
	noLm, noW bool // one of them doesn't tell
	first     beam
	alike     bool
}

func (s sum) lumens() *float64 {
	if s.noLm || s.count == 0 {
		return nil
	}
	return positive(s.lm)
}

func (s sum) watts() *float64 {
	if s.noW || s.count == 0 {
		return nil
	}
	return positive(s.w)
}
