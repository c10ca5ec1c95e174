package vary

import (
	"encoding/json"
	"math"

	"softloft/answer"
	"softloft/finding"
	"softloft/light"
	"softloft/load"
)

// Number is a number of the answers: null where it is not known.
type Number = finding.Number

// Row is what one value gives, as in the answers JSON: SI. Spill is the surface that gets
// most light under the area's mean; Line, Point and Stand are those that carry most in
// any case.
type Row struct {
	Text    string         `json:"text"`  // as the plan gets it
	Value   Number         `json:"value"` // null for words
	Refused string         `json:"refused,omitempty"`
	Result  finding.Result `json:"result,omitempty"`
	Trim    Number         `json:"trim_m"`
	Stop    Number         `json:"stop"`
	Even    Number         `json:"even_stops"`
	Mark    *Mark          `json:"mark"`
	Spill   *Spill         `json:"spill"`
	Mass    Number         `json:"mass_kg"`
	Line    *Most          `json:"line"`
	Point   *Most          `json:"point"`
	Stand   *Most          `json:"stand"`
	Clear   []Clear        `json:"clear,omitempty"`
	Over    []string       `json:"over"`      // ids of findings, root causes
	Unknown int            `json:"not_known"` // how many findings are
}

// Mark is the first mark: its stop, and how wide the edge of the brow's shadow is.
type Mark struct {
	Name string `json:"name"`
	Stop Number `json:"stop"`
	Edge Number `json:"edge_brow_m"`
}

// Spill is the surface with the worst spill. None is true where no surface gets any.
type Spill struct {
	On         string `json:"on"`
	StopsBelow Number `json:"stops_below"`
	None       bool   `json:"none,omitempty"`
}

// Most is who carries most, and in which case.
type Most struct {
	Name  string `json:"name"`
	Case  string `json:"case"`
	Force Number `json:"n"`
}

// Clear is the trim at which the box is out of a camera's frame.
type Clear struct {
	Camera string `json:"camera"`
	Trim   Number `json:"clear_trim_m"`
}

var unknownNumber = Number(math.NaN())

// rowOf reads a row from answers.
func rowOf(step Step, a *answer.Answers) Row {
	row := emptyRow(step)
	row.Result, row.Mass = a.Result, a.Load.Mass
	row.Trim = Number(a.Model.ClothAt - a.Model.LowestBy)
	if area := a.Light.Area; area != nil {
		row.Stop, row.Even = area.Stop, area.Even
	}
	if len(a.Light.Marks) > 0 {
		m := a.Light.Marks[0]
		row.Mark = &Mark{m.Name, m.Stop, browOf(m)}
	}
	row.Spill = worstSpill(a.Light.Spill)
	row.Line, row.Point, row.Stand = mostOnLine(a.Load.Lines), mostOnPoint(a.Load.Points), mostOnStand(a.Load.Stands)
	if a.Sight != nil {
		for _, c := range a.Sight.Cameras {
			row.Clear = append(row.Clear, Clear{c.Name, c.ClearTrim})
		}
	}
	for _, f := range a.Findings {
		switch {
		case f.Result == finding.Over && len(f.Causes) == 0:
			row.Over = append(row.Over, f.ID)
		case f.Result == finding.NotKnown:
			row.Unknown++
		}
	}
	return row
}

func emptyRow(step Step) Row {
	n := unknownNumber
	return Row{Text: step.Text, Value: Number(step.Value), Trim: n, Stop: n, Even: n, Mass: n, Over: []string{}}
}

// browOf reads the width of the brow's edge where the light tells it.
func browOf(mark light.MarkAnswer) Number {
	told := struct {
		Edges *struct {
			Brow Number `json:"brow"`
		} `json:"edges_m"`
	}{}
	data, err := json.Marshal(mark)
	if err != nil || json.Unmarshal(data, &told) != nil || told.Edges == nil {
		return unknownNumber
	}
	return told.Edges.Brow
}

// worstSpill is the surface that lies least below the area; not known where one is not.
func worstSpill(all []light.SpillAnswer) *Spill {
	var worst *Spill
	for _, s := range all {
		told := Spill{On: s.On, StopsBelow: s.StopsBelow}
		if !finding.Known(float64(s.StopsBelow)) && float64(s.Max) == 0 {
			told.None, told.StopsBelow = true, unknownNumber
		}
		switch {
		case worst == nil, worst.None, !told.None && !finding.Known(float64(told.StopsBelow)):
			worst = &told
		case !told.None && told.StopsBelow < worst.StopsBelow:
			worst = &told
		}
	}
	return worst
}

// larger keeps the larger force; not known outweighs all.
func larger(most *Most, name, which string, n Number) *Most {
	switch {
	case most == nil, math.IsNaN(float64(n)) && !math.IsNaN(float64(most.Force)), n > most.Force:
		return &Most{name, which, n}
	}
	return most
}

// mostOnLine is the line that carries most in any case. A line whose load as built is not
// known makes that not known.
func mostOnLine(lines []load.Line) *Most {
	var most *Most
	for _, l := range lines {
		n := l.Cases.Built
		if !math.IsNaN(float64(n)) {
			for _, x := range []Number{l.Cases.Grown, l.Cases.Lift, l.Cases.TiltWorst, l.Cases.LostWorst, l.Cases.Diagonal} {
				if x > n {
					n = x
				}
			}
		}
		most = larger(most, l.Name, l.Governs, n)
	}
	return most
}

// mostOnPoint is the point that gets most, whichever way it is pulled.
func mostOnPoint(points []load.Point) *Most {
	var most *Most
	for _, p := range points {
		best := &Most{p.Name, "built", unknownNumber}
		for _, c := range []struct {
			name string
			at   *load.Vec
		}{{"built", p.Cases.Built}, {"grown", p.Cases.Grown}, {"lift", p.Cases.Lift}, {"tilt_worst", p.Cases.TiltWorst}, {"lost_worst", p.Cases.LostWorst}} {
			if c.at == nil {
				continue
			}
			n := Number(math.Sqrt(float64(c.at[0]*c.at[0] + c.at[1]*c.at[1] + c.at[2]*c.at[2])))
			if n > best.Force || math.IsNaN(float64(best.Force)) {
				best.Case, best.Force = c.name, n
			}
		}
		most = larger(most, best.Name, best.Case, best.Force)
	}
	return most
}

func mostOnStand(stands []load.Stand) *Most {
	var most *Most
	for _, s := range stands {
		which, n := "built", s.Load
		for _, c := range []struct {
			name string
			n    Number
		}{{"grown", s.Grown}, {"diagonal", s.Diagonal}} {
			if c.n > n {
				which, n = c.name, c.n
			}
		}
		most = larger(most, s.Name, which, n)
	}
	return most
}
