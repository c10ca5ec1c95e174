package finding

import (
	"encoding/json"

	"softloft/source"
)

// The wire types hold the keys of the answers in their order (docs: the plan
// file and the answers). Numbers that are not known are null, lists are never
// null, a subject without a place in the plan has null for its line and column,
// and a finding without a source has an empty id.
type (
	wireInput struct {
		Symbol  string `json:"symbol"`
		Name    string `json:"name"`
		Value   Number `json:"value"`
		Unit    string `json:"unit"`
		Origin  string `json:"origin"`
		Finding string `json:"finding,omitempty"`
	}
	wireStep struct {
		Formula     string `json:"formula"`
		Substituted string `json:"substituted"`
		Symbol      string `json:"symbol"`
		Name        string `json:"name"`
		Value       Number `json:"value"`
		Unit        string `json:"unit"`
	}
	wireSubject struct {
		Part string    `json:"part"`
		Plan wirePlace `json:"plan"`
	}
	wirePlace struct {
		Line   *int `json:"line"`
		Column *int `json:"column"`
	}
	wireSource struct {
		ID     source.ID `json:"id"`
		Clause string    `json:"clause"`
		Page   string    `json:"page"`
		Read   bool      `json:"read"`
	}
	wireFinding struct {
		ID          string     `json:"id"`
		Subject     Subject    `json:"subject"`
		Statement   string     `json:"statement"`
		Case        string     `json:"case"`
		Relation    Relation   `json:"relation"`
		Value       Number     `json:"value"`
		Limit       Number     `json:"limit"`
		Unit        string     `json:"unit"`
		Margin      Number     `json:"margin"`
		Slack       Number     `json:"slack"`
		Result      Result     `json:"result"`
		Formula     string     `json:"formula"`
		Inputs      []Input    `json:"inputs"`
		Steps       []Step     `json:"steps"`
		Assumptions []string   `json:"assumptions"`
		Causes      []string   `json:"causes"`
		Source      wireSource `json:"source"`
		Why         string     `json:"why,omitempty"`
	}
)

// MarshalJSON prints the keys symbol, name, value, unit, origin, and finding
// where the value comes from one.
func (in Input) MarshalJSON() ([]byte, error) {
	return json.Marshal(wireInput{in.Symbol, in.Name, Number(in.Value), in.Unit, in.Origin, in.Finding})
}

// UnmarshalJSON reads what MarshalJSON prints.
func (in *Input) UnmarshalJSON(data []byte) error {
	var w wireInput
	if err := json.Unmarshal(data, &w); err != nil {
		return err
	}
	*in = Input{w.Symbol, w.Name, float64(w.Value), w.Unit, w.Origin, w.Finding}
	return nil
}

// MarshalJSON prints the keys formula, substituted, symbol, name, value, unit.
func (s Step) MarshalJSON() ([]byte, error) {
	r := s.Result
	return json.Marshal(wireStep{s.Formula, s.Substituted, r.Symbol, r.Name, Number(r.Value), r.Unit})
}

// UnmarshalJSON reads what MarshalJSON prints.
func (s *Step) UnmarshalJSON(data []byte) error {
	var w wireStep
	if err := json.Unmarshal(data, &w); err != nil {
		return err
	}
	*s = Step{w.Formula, Input{Symbol: w.Symbol, Name: w.Name, Value: float64(w.Value), Unit: w.Unit}, w.Substituted}
	return nil
}

// MarshalJSON prints the keys part and plan; line and column are null without a place.
func (s Subject) MarshalJSON() ([]byte, error) {
	w := wireSubject{Part: s.Part}
	if s.Place != (Place{}) {
		w.Plan = wirePlace{&s.Place.Line, &s.Place.Column}
	}
	return json.Marshal(w)
}

// UnmarshalJSON reads what MarshalJSON prints.
func (s *Subject) UnmarshalJSON(data []byte) error {
	var w wireSubject
	if err := json.Unmarshal(data, &w); err != nil {
		return err
	}
	*s = Subject{Part: w.Part}
	if w.Plan.Line != nil && w.Plan.Column != nil {
		s.Place = Place{*w.Plan.Line, *w.Plan.Column}
	}
	return nil
}

// MarshalJSON prints a finding as the answers carry it.
func (f Finding) MarshalJSON() ([]byte, error) {
	w := wireFinding{
		ID: f.ID, Subject: f.Subject, Statement: f.Statement, Case: f.Case, Relation: f.Relation,
		Value: Number(f.Value), Limit: Number(f.Limit), Unit: f.Unit, Margin: Number(f.Margin), Slack: Number(f.Slack),
		Result: f.Result, Formula: f.Formula, Inputs: listed(f.Inputs), Steps: listed(f.Steps),
		Assumptions: listed(f.Assumptions), Causes: listed(f.Causes), Why: f.Why,
	}
	w.Source = wireSource{f.Source.Source, f.Source.Clause, f.Source.Page, f.Source.Read()}
	return json.Marshal(w)
}

// UnmarshalJSON reads what MarshalJSON prints.
func (f *Finding) UnmarshalJSON(data []byte) error {
	w := wireFinding{Value: Number(unknown()), Limit: Number(unknown()), Margin: Number(unknown()), Slack: Number(unknown())}
	if err := json.Unmarshal(data, &w); err != nil {
		return err
	}
	*f = Finding{
		ID: w.ID, Subject: w.Subject, Statement: w.Statement, Case: w.Case, Relation: w.Relation,
		Value: float64(w.Value), Limit: float64(w.Limit), Unit: w.Unit, Margin: float64(w.Margin), Slack: float64(w.Slack),
		Result: w.Result, Formula: w.Formula, Inputs: w.Inputs, Steps: w.Steps,
		Assumptions: w.Assumptions, Causes: w.Causes, Why: w.Why,
	}
	f.Source = w.Source.citation()
	return nil
}

// citation restores a citation; a value that was not read from a publication
// that was is from memory.
func (w wireSource) citation() source.Citation {
	c := source.Citation{Source: w.ID, Clause: w.Clause, Page: w.Page}
	c.FromMemory = c.Read() && !w.Read
	return c
}

// listed is a list that prints as [] where it is empty.
func listed[T any](list []T) []T {
	if list == nil {
		return []T{}
	}
	return list
}
