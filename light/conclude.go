package light

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"softloft/finding"
	"softloft/plan"
	"softloft/source"
)

// each reads many places at once, on all cores.
func (w *work) each(l lighting, points []r3.Vec, facing r3.Vec, receptor Receptor) []float64 {
	values := make([]float64, len(points))
	overCores(len(points), func(i int) { values[i] = w.lux(l, points[i], facing, receptor) })
	return values
}

// conclude holds the light to what is wanted.
func (w *work) conclude() {
	want := w.rig.Plan.Want
	if want == nil {
		return
	}
	if want.Exposure != nil {
		w.concludeStop(want)
	}
	if want.Even != nil {
		w.concludeEven(want)
	}
	for i, s := range want.Spill {
		w.concludeSpill(s, fmt.Sprintf("want.spill[%d]", i))
	}
}

// concludeStop asks for the stop and what is to be in hand over it.
func (w *work) concludeStop(want *plan.Want) {
	subject := w.subject("area", "want.exposure")
	statement := "Stops in hand over the asked stop, all lamps at full level"
	if w.answer.Area == nil {
		w.findings = append(w.findings, finding.Unknown("light.stop", subject, statement, "the plan names no area of the action"))
		return
	}
	c := source.FlatReceptor()
	x := want.Exposure
	full := luxFor(x, c) / float64(w.answer.Area.Level)
	w.findings = append(w.findings, finding.Check{
		ID: "light.stop", Subject: subject, Statement: statement, Relation: finding.AtLeast, Unit: "stop",
		Value: finding.Work{
			Formula: "R = log2(E_full / E_asked)", Name: "stops in hand",
			Steps: []finding.Step{
				{Formula: "t = φ / (360 * f)", Result: finding.Input{Symbol: "t", Name: "exposure time", Unit: "s"}},
				{Formula: "E_asked = C * T^2 / (t * S) * 2^F", Result: finding.Input{Symbol: "E_asked", Name: "illuminance that the asked stop needs", Unit: "lx"}},
			},
			Inputs: []finding.Input{
				{Symbol: "E_full", Name: "mean over the area, flat, facing up, all lamps at full level", Value: full, Unit: "lx", Origin: "light, docs/method.md#light"},
				{Symbol: "C", Name: c.Name, Value: c.Value, Unit: c.Unit, Origin: c.Citation.String()},
				{Symbol: "T", Name: "asked T-stop", Value: float64(x.Stop), Origin: w.origin("want.exposure.stop")},
				{Symbol: "S", Name: "ISO speed", Value: x.ISO, Origin: w.origin("want.exposure.iso")},
				{Symbol: "φ", Name: "shutter angle", Value: float64(x.Shutter) * 180 / math.Pi, Unit: "deg", Origin: w.origin("want.exposure.shutter")},
				{Symbol: "f", Name: "frames per second", Value: x.FPS, Unit: "1/s", Origin: w.origin("want.exposure.fps")},
				{Symbol: "F", Name: "filter", Value: float64(x.Filter), Unit: "stop", Origin: w.origin("want.exposure.filter")},
			},
		},
		Limit:  finding.Given(finding.Input{Symbol: "R_min", Name: "asked reserve", Value: float64(want.Reserve), Unit: "stop", Origin: w.origin("want.reserve")}),
		Source: c.Citation, Assumptions: w.assumptions(),
	}.Conclude())
}

// assumptions say what the levels rest on: a meter decides on the day.
func (w *work) assumptions() []string {
	told := append([]string{"cloth values are the kit's; meter before the roll"}, w.answer.Missing...)
	if w.indoors() {
		told = append(told, "the room's faces and set walls reflect evenly to all sides; the box's outside returns nothing")
	}
	for _, o := range w.rig.Optics.Lamps {
		if o.Demo {
			return append(told, "DEMO: the lamps' lumens are invented demo values")
		}
	}
	return told
}

// concludeEven asks for the difference over the area.
func (w *work) concludeEven(want *plan.Want) {
	subject := w.subject("area", "want.even")
	if w.answer.Area == nil {
		w.findings = append(w.findings, finding.Unknown("light.even", subject, "Difference over the area", "the plan names no area of the action"))
		return
	}
	w.findings = append(w.findings, finding.Check{
		ID: "light.even", Subject: subject, Statement: "Difference over the area, brightest to darkest", Relation: finding.AtMost, Unit: "stop",
		Value: finding.Work{Formula: "D = log2(E_max / E_min)", Name: "difference", Inputs: []finding.Input{
			{Symbol: "E_max", Name: "brightest node of the area", Value: float64(w.answer.Area.Max), Unit: "lx", Origin: "light, docs/method.md#light"},
			{Symbol: "E_min", Name: "darkest node of the area", Value: float64(w.answer.Area.Min), Unit: "lx", Origin: "light, docs/method.md#light"},
		}},
		Limit:  finding.Given(finding.Input{Symbol: "D_max", Name: "asked evenness", Value: float64(*want.Even), Unit: "stop", Origin: w.origin("want.even")}),
		Source: source.Cite("plan", "want.even"), Assumptions: w.assumptions(),
	}.Conclude())
}

// concludeSpill asks how far a surface stays under the key.
func (w *work) concludeSpill(limit plan.SpillLimit, key string) {
	id, subject := "light.spill."+limit.On, w.subject(limit.On, key)
	statement := "Spill on " + limit.On + " under the area's mean"
	var found *SpillAnswer
	for i := range w.answer.Spill {
		if w.answer.Spill[i].On == limit.On {
			found = &w.answer.Spill[i]
		}
	}
	if found == nil || w.answer.Area == nil {
		w.findings = append(w.findings, finding.Unknown(id, subject, statement, "there is no such wall or surface, or no area to compare with"))
		return
	}
	w.findings = append(w.findings, finding.Check{
		ID: id, Subject: subject, Statement: statement, Relation: finding.AtLeast, Unit: "stop",
		Value: finding.Work{Formula: "B = log2(E_area / E_max)", Name: "stops under the key", Inputs: []finding.Input{
			{Symbol: "E_area", Name: "mean over the area", Value: float64(w.answer.Area.Mean), Unit: "lx", Origin: "light, docs/method.md#light"},
			{Symbol: "E_max", Name: "brightest node of " + limit.On, Value: float64(found.Max), Unit: "lx", Origin: "light, docs/method.md#light"},
		}},
		Limit:  finding.Given(finding.Input{Symbol: "B_min", Name: "asked", Value: float64(limit.Under), Unit: "stop", Origin: w.origin(key + ".under")}),
		Source: source.Cite("plan", key), Assumptions: w.assumptions(),
	}.Conclude())
}

func (w *work) subject(part, key string) finding.Subject {
	line, column := w.rig.Place(key)
	return finding.On(part, line, column)
}

func (w *work) origin(key string) string { return w.rig.Origin(key) }
