package main

import (
	"fmt"
	"strings"

	"softloft/answer"
	"softloft/finding"
	"softloft/load"
	"softloft/quantity"
	"softloft/sheet"
)

type loadCommand struct {
	planFlags
	Case      string `help:"Only one case: lift, or lost=NAME for a line, drop or lamp." placeholder:"CASE"`
	Tilt      string `help:"Follow a tilt from level in 16 steps, such as x=15deg." placeholder:"AXIS=ANGLE"`
	Integrate bool   `help:"Follow each cut in time, besides the estimate of its peak."`
	Strict    bool   `help:"Count not known as over."`
	Verbose   bool   `short:"v" help:"Print every finding with its working."`
}

// Help is printed below the flags.
func (loadCommand) Help() string { return exitHelp + " Only findings of the load count." }

// Run works out the load.
func (c *loadCommand) Run(s *session) error {
	options := load.Options{Integrate: c.Integrate}
	if c.Tilt != "" {
		ask, err := tiltOf(c.Tilt)
		if err != nil {
			return c.complain(s, err.Error(), nil)
		}
		options.Tilt = &ask
	}
	file, err := c.read(s)
	if err != nil {
		return err
	}
	answers := answer.Of(file)
	var found []finding.Finding
	answers.Load, found = load.RunWith(answers.Model, options)
	answers.Findings = finding.Silence(found)
	answers.Result = finding.Overall(answers.Findings)
	which, err := caseOf(c.Case, answers.Load)
	if err != nil {
		return c.complain(s, err.Error(), nil)
	}
	if c.JSON {
		err = sheet.LoadJSON(s.out, answers)
	} else {
		err = sheet.Load(s.out, answers, which, sheet.Style{Color: s.color, Working: c.Verbose})
	}
	if err != nil {
		return err
	}
	if over(answers.Findings, c.Strict) {
		return status(exitOver)
	}
	return nil
}

// tiltOf reads an axis and an angle, such as x=15deg.
func tiltOf(text string) (load.TiltAsk, error) {
	about, by, ok := strings.Cut(text, "=")
	if !ok || about != "x" && about != "y" {
		return load.TiltAsk{}, fmt.Errorf("the tilt %q has no axis; x=15deg or y=-10deg is due", text)
	}
	angle, err := quantity.Parse(by, quantity.OfAngle)
	if err != nil {
		return load.TiltAsk{}, fmt.Errorf("the tilt %q: %v", text, err)
	}
	return load.TiltAsk{About: about, By: angle}, nil
}

// caseOf reads which case is asked for; a name that nothing has is refused.
func caseOf(text string, a load.Answer) (sheet.LoadCase, error) {
	name, lost := strings.CutPrefix(text, "lost=")
	switch {
	case text == "":
		return sheet.LoadCase{}, nil
	case text == "lift" && a.Lift == nil:
		return sheet.LoadCase{}, fmt.Errorf("the plan has no lift; it is the key lift")
	case text == "lift":
		return sheet.LoadCase{Lift: true}, nil
	case !lost:
		return sheet.LoadCase{}, fmt.Errorf("the case %q is none; lift or lost=NAME is due", text)
	}
	var names []string
	for _, l := range a.Lost {
		if l.Name == name {
			return sheet.LoadCase{Lost: name}, nil
		}
		names = append(names, l.Name)
	}
	return sheet.LoadCase{}, fmt.Errorf("nothing called %q can let go; there are %s", name, strings.Join(names, ", "))
}
