package load

import (
	"fmt"
	"math"

	"softloft/finding"
	"softloft/rig"
	"softloft/source"
)

// concludeFrame checks the tube that is used most.
func (w *work) concludeFrame() {
	var worst *Member
	for i := range w.answer.Frame.Members {
		m := &w.answer.Frame.Members[i]
		if worst == nil || float64(m.Stress) > float64(worst.Stress) {
			worst = m
		}
		if finding.Known(float64(m.Use)) && float64(m.Use) > float64(worst.Use) {
			worst = m
		}
	}
	if worst == nil {
		return
	}
	w.concludeTube("load.frame."+worst.Part, fmt.Sprintf("Bending of the tubes: %s is used most", worst.Part), worst)
	w.concludeOtherCases()
}

// concludeOtherCases checks the tube that is used most while the box is lifted, on the way
// to a tilt, and at rest after a loss: each case on its own, since the answer's tubes are
// those as built and grown.
func (w *work) concludeOtherCases() {
	words := map[string]string{"lift": "while the box is lifted", "tilt": "on the way to the tilt", "lost": "at rest after a loss"}
	for _, g := range w.groups() {
		where, ok := words[g.symbol]
		if !ok || len(g.states) == 0 {
			continue
		}
		var worst *Member
		for _, s := range g.states {
			m, ok := w.model.hardest(s.state, join(g.symbol, s.label))
			if ok && (worst == nil || m.Use > worst.Use) {
				worst = &m
			}
		}
		if g.missing != "" {
			w.add(finding.Unknown("load.frame_"+g.symbol, w.subject("box", "box"), "Bending of the tubes "+where, g.missing+" was not worked out"))
			continue
		}
		for _, n := range []*Number{&worst.N, &worst.V, &worst.M, &worst.T} {
			*n *= Number(g.factor)
		}
		w.concludeTube("load.frame_"+g.symbol, fmt.Sprintf("Bending of the tubes %s: %s is used most", where, worst.Part), worst)
	}
}

// concludeTube holds one tube's equivalent stress at its worst place to what its alloy
// allows.
func (w *work) concludeTube(id, statement string, worst *Member) {
	t, _ := w.rig.Tube(worst.Part)
	part, _ := w.rig.Part(worst.Part)
	section, _, _ := properties(t)
	yield := math.NaN()
	key := "yield"
	if t.Welded {
		key = "welded_yield"
	}
	if allowed := allowedStress(t); finding.Known(allowed) {
		yield = allowed * yieldFactor
	}
	stress := part.KitID
	alloy := w.rig.Kit.Tube[stress].Alloy
	in := func(symbol, name string, value float64, unit, origin string) finding.Input {
		return finding.Input{Symbol: symbol, Name: name, Value: value, Unit: unit, Origin: origin}
	}
	w.add(finding.Check{
		ID: id, Subject: w.subject(worst.Part, part.Path),
		Statement: statement, Case: worst.Case, Relation: finding.AtMost, Unit: "Pa",
		Value: finding.Work{
			Formula: "σ = sqrt(σ_n^2 + 3*τ^2)", Name: "equivalent stress",
			Steps: []finding.Step{
				{Formula: normalFormula(t), Result: in("σ_n", "normal stress", 0, "Pa", "")},
				{Formula: "τ = 2*V/A + abs(M_t)*q", Result: in("τ", "shear stress", 0, "Pa", "")},
			},
			Inputs: []finding.Input{
				in("N", "axial force", float64(worst.N), "N", elastic), in("M", "bending moment", float64(worst.M), "N m", elastic),
				in("V", "shear force", float64(worst.V), "N", elastic), in("M_t", "torque", float64(worst.T), "N m", elastic),
				in("A", "area of metal", section.Area, "m2", "section of "+part.KitID), in("W", "section modulus", section.ModulusZ, "m3", "section of "+part.KitID),
				in("q", "shear stress of a unit torque", torsionStress(section, t), "1/m3", "section of "+part.KitID),
			},
		},
		Limit: finding.Work{Formula: "f = F_y / s", Name: "allowed stress", Inputs: []finding.Input{
			in("F_y", "yield strength", yield, "Pa", kitOrigin("alloy", alloy, w.rig.Kit.Alloy[alloy].Source.For(key))),
			in("s", "safety factor on yield", yieldFactor, "", source.Cite(yieldSource, "").String()),
		}},
		Source:      source.Cite(yieldSource, ""),
		Assumptions: []string{"joints, welds, fittings and dents are not checked", "no buckling check of a tube in compression"},
	}.Conclude())
}

// yieldSource is the publication that states yieldFactor.
const yieldSource = "adm"

// normalFormula adds the bending about both axes: at the rim of a round tube as the
// root of squares; in a square tube the corner takes at most √2 of that.
func normalFormula(t *rig.Tube) string {
	if t.Section.Square {
		return "σ_n = abs(N)/A + sqrt(2)*M/W"
	}
	return "σ_n = abs(N)/A + M/W"
}
