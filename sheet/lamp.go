package sheet

import (
	"fmt"
	"io"
	"math"

	"softloft/finding"
	"softloft/photometry"
	"softloft/quantity"
)

// lampFile is a lamp file as JSON: SI, degrees; null where not known.
type lampFile struct {
	Format     string            `json:"format"`
	Version    string            `json:"version"`
	Photometry string            `json:"photometry"`
	Stated     finding.Number    `json:"lumens_stated"`
	Integrated finding.Number    `json:"lumens_integrated"`
	Peak       finding.Number    `json:"peak_cd"`
	PeakAt     *[2]degrees       `json:"peak_at_deg"`   // C, gamma
	Beam       [2]degrees        `json:"beam_deg"`      // across the length, along it
	Field      [2]degrees        `json:"field_deg"`     // the same
	Power      finding.Number    `json:"power_w"`       //
	Mass       finding.Number    `json:"mass_kg"`       //
	Opening    [3]finding.Number `json:"opening_m"`     // length, width, height
	Planes     int               `json:"planes"`        //
	Angles     int               `json:"angles"`        //
	Odd        []string          `json:"odd"`           //
	Name       string            `json:"name"`          // what the file calls the lamp
	Shape      string            `json:"opening_shape"` //
	Axis       string            `json:"length_along"`  // the plane in which the length lies
	Efficacy   finding.Number    `json:"lumens_per_watt"`
	Modeled    bool              `json:"peak_modeled"` // follows from flux and two angles
	Sets       []lampSet         `json:"lamp_sets"`
	Spread     bool              `json:"distribution"` // whether it can be a lamp's spread
	Downward   finding.Number    `json:"downward"`     // share of the flux before the opening
	Tilt       *tiltTable        `json:"tilt"`
}

type degrees = finding.Number

type lampSet struct {
	Count      int            `json:"count"`
	Type       string         `json:"type"`
	Stated     finding.Number `json:"lumens_stated"`
	Integrated finding.Number `json:"lumens_integrated"`
	Power      finding.Number `json:"power_w"`
}

type tiltTable struct {
	Geometry int              `json:"geometry"`
	Angles   []degrees        `json:"angles_deg"`
	Factors  []finding.Number `json:"factors"`
}

// LampFileJSON writes what a lamp file says as JSON, not rounded.
func LampFileJSON(to io.Writer, f *photometry.LampFile) error {
	told := lampFile{
		Format: string(f.Format), Version: f.Version, Photometry: string(f.Photometry),
		Stated: number(f.LumensStated), Integrated: number(f.LumensIntegrated), Peak: unknown,
		Beam: pairOf(f.Beam), Field: pairOf(f.Field), Power: number(f.Power), Mass: number(f.Mass),
		Opening: [3]finding.Number{unknown, unknown, unknown}, Planes: f.Planes, Angles: f.Angles, Odd: append([]string{}, f.Odd...),
		Name: f.Name, Shape: f.Opening.Shape, Axis: string(f.Axis), Efficacy: number(f.Efficacy()), Sets: []lampSet{}, Spread: f.Distribution != nil,
		Downward: number(f.Downward),
	}
	if f.Opening.Known() {
		told.Opening = [3]finding.Number{finding.Number(f.Opening.Length(f.Axis)), finding.Number(f.Opening.Width(f.Axis)), finding.Number(f.Opening.Height)}
	}
	if p := f.Peak; p != nil {
		told.Peak, told.Modeled = finding.Number(p.Candela), p.Modeled
		told.PeakAt = &[2]degrees{inDegrees(p.C), inDegrees(p.Gamma)}
	}
	for _, s := range f.Sets {
		told.Sets = append(told.Sets, lampSet{s.Count, s.Type, number(s.LumensStated), number(s.LumensIntegrated), number(s.Power)})
	}
	if t := f.Tilt; t != nil {
		told.Tilt = &tiltTable{Geometry: t.Geometry}
		for i := range t.Angles {
			told.Tilt.Angles = append(told.Tilt.Angles, inDegrees(t.Angles[i]))
			told.Tilt.Factors = append(told.Tilt.Factors, finding.Number(t.Factors[i]))
		}
	}
	return Encode(to, told)
}

var unknown = finding.Number(math.NaN())

func number(value *float64) finding.Number {
	if value == nil {
		return unknown
	}
	return finding.Number(*value)
}

func inDegrees(angle float64) degrees { return degrees(angle * 180 / math.Pi) }

func pairOf(w photometry.Widths) [2]degrees {
	pair := [2]degrees{unknown, unknown}
	for i, width := range []*float64{w.Across, w.Along} {
		if width != nil {
			pair[i] = inDegrees(*width)
		}
	}
	return pair
}

// LampFile writes what a lamp file says for people.
func LampFile(to io.Writer, f *photometry.LampFile, units quantity.System, style Style) error {
	p := &printer{to: to, style: style}
	title := string(f.Format)
	if f.Version != "" {
		title += " " + f.Version
	}
	if f.Name != "" {
		title = f.Name + ": " + title
	}
	p.line("%s", p.bold(clean(title+", "+string(f.Photometry))))
	p.tableLeft(lampRows(f, units))
	p.lampSets(f)
	if f.Distribution != nil {
		p.heading("Intensity: outer ring is the peak, inner ring half of it; the aim is down")
		for _, l := range polar(f) {
			p.line("  %s", l)
		}
	}
	if len(f.Odd) > 0 {
		p.heading("Odd in this file")
		for _, text := range f.Odd {
			p.wrapped("  ", "- "+clean(text))
		}
	}
	return p.err
}

func lampRows(f *photometry.LampFile, units quantity.System) [][]string {
	rows := [][]string{{"light", lightText(f)}}
	if f.Peak != nil {
		text := fmt.Sprintf("%.4g cd", f.Peak.Candela)
		if f.Peak.Modeled {
			text += ", modeled: no intensity is in the file"
		} else {
			text += fmt.Sprintf(" at C %.4g deg, gamma %.4g deg", float64(inDegrees(f.Peak.C)), float64(inDegrees(f.Peak.Gamma)))
		}
		rows = append(rows, []string{"peak", text})
	}
	rows = append(rows,
		[]string{"beam (50 %)", widthText(f.Beam, f.Axis)},
		[]string{"field (10 %)", widthText(f.Field, f.Axis)},
		[]string{"opening", openingText(f, units)},
		[]string{"power", orNotKnown(f.Power, func(w float64) string { return fmt.Sprintf("%.4g W", w) })},
		[]string{"mass", orNotKnown(f.Mass, func(kg float64) string { return units.Mass(quantity.Mass(kg)) })},
		[]string{"efficacy", orNotKnown(f.Efficacy(), func(x float64) string { return fmt.Sprintf("%.3g lm/W", x) })},
		[]string{"table", tableText(f)})
	return rows
}

func lightText(f *photometry.LampFile) string {
	stated := orNotKnown(f.LumensStated, func(lm float64) string { return fmt.Sprintf("%.4g lm", lm) })
	if f.LumensIntegrated == nil {
		return "stated " + stated + "; nothing to integrate"
	}
	text := fmt.Sprintf("integrated %.4g lm, stated %s", *f.LumensIntegrated, stated)
	if f.LumensStated != nil && f.Photometry == photometry.Relative {
		text += " of its lamps"
	}
	if share := f.Share(); share != nil {
		text += fmt.Sprintf(" (%.3g %%)", 100**share)
	}
	return text
}

func widthText(w photometry.Widths, axis photometry.LengthAxis) string {
	degrees := func(angle float64) string { return fmt.Sprintf("%.3g deg", float64(inDegrees(angle))) }
	if w.Across == nil && w.Along == nil {
		return "not known"
	}
	return "across " + orNotKnown(w.Across, degrees) + ", along " + orNotKnown(w.Along, degrees) + " (the length lies along " + string(axis) + ")"
}

func openingText(f *photometry.LampFile, units quantity.System) string {
	o := f.Opening
	if !o.Known() {
		return "not known (" + o.Shape + ")"
	}
	length := func(m float64) string { return units.Length(quantity.Length(m)) }
	text := fmt.Sprintf("%s, %s along %s x %s across", o.Shape, length(o.Length(f.Axis)), f.Axis, length(o.Width(f.Axis)))
	if o.Height > 0 {
		text += ", " + length(o.Height) + " high"
	}
	return text
}

func tableText(f *photometry.LampFile) string {
	if f.Planes == 0 {
		return "none: flux and angles only"
	}
	if f.Planes == 1 {
		return fmt.Sprintf("1 plane of %d angles, the same all around", f.Angles)
	}
	return fmt.Sprintf("%d planes of %d angles", f.Planes, f.Angles)
}

func orNotKnown(value *float64, text func(float64) string) string {
	if value == nil {
		return "not known"
	}
	return text(*value)
}

// lampSets lists the sets of which one is fitted.
func (p *printer) lampSets(f *photometry.LampFile) {
	if len(f.Sets) < 2 {
		return
	}
	p.heading("Lamp sets, of which one is fitted")
	rows := [][]string{{"lamps", "type", "stated lm", "integrated lm", "W"}}
	plain := func(x float64) string { return fmt.Sprintf("%.4g", x) }
	for _, s := range f.Sets {
		rows = append(rows, []string{fmt.Sprint(s.Count), clean(s.Type), orNotKnown(s.LumensStated, plain), orNotKnown(s.LumensIntegrated, plain), orNotKnown(s.Power, plain)})
	}
	p.table(rows)
}
