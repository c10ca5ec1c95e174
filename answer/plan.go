package answer

import "softloft/plan"

// Default is a value that the user did not type.
type Default struct {
	Key    string `json:"key"`
	Value  string `json:"value"`
	Source string `json:"source"`
}

// NotUsed is a key that the user typed and that no analysis uses yet.
type NotUsed struct {
	Key    string `json:"key"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
	Why    string `json:"why"`
}

func defaultsOf(file *plan.File) []Default {
	told := []Default{}
	for _, d := range file.Defaults {
		told = append(told, Default{Key: d.Key, Value: d.Value, Source: d.Source})
	}
	return told
}

func notUsed(file *plan.File) []NotUsed {
	told := []NotUsed{}
	for _, u := range file.Unused {
		told = append(told, NotUsed{Key: u.Key, Line: u.Place.Line, Column: u.Place.Column, Why: "not used yet: " + u.Why})
	}
	return told
}
