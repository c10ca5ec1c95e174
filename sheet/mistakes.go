package sheet

import (
	"encoding/json"
	"fmt"
	"io"

	"softloft/document"
)

// mistake is one mistake of a plan as JSON.
type mistake struct {
	File    string `json:"file"`
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Key     string `json:"key"`
	Problem string `json:"problem"`
	Hint    string `json:"hint"`
	Text    string `json:"text"`
}

// Encode writes any answer as JSON in the form of [JSON].
func Encode(to io.Writer, value any) error {
	encoder := json.NewEncoder(to)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", " ")
	return encoder.Encode(value)
}

// MistakesJSON writes what keeps a plan from being read: a text, or mistakes with
// their places.
func MistakesJSON(to io.Writer, text string, mistakes document.Mistakes) error {
	told := struct {
		Softloft int       `json:"softloft"`
		Error    string    `json:"error,omitempty"`
		Mistakes []mistake `json:"mistakes"`
	}{Softloft: 1, Error: text, Mistakes: []mistake{}}
	for _, m := range mistakes {
		told.Mistakes = append(told.Mistakes, mistake{m.Place.File, m.Place.Line, m.Place.Column, m.Path, m.Problem, m.Hint, m.Text})
	}
	return Encode(to, told)
}

// Mistakes writes the same for people: one line each, with the hint.
func Mistakes(to io.Writer, text string, mistakes document.Mistakes) {
	if text != "" {
		fmt.Fprintln(to, "softloft: "+clean(text))
	}
	for _, m := range mistakes {
		fmt.Fprintln(to, clean(m.Error()))
	}
	if n := len(mistakes); n > 1 {
		fmt.Fprintf(to, "%d mistakes; nothing was worked out\n", n)
	}
}
