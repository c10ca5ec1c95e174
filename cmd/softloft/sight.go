package main

import (
	"errors"

	"softloft/answer"
	"softloft/sheet"
)

type sightCommand struct {
	planFlags
	Strict  bool `help:"Count not known as over."`
	Verbose bool `short:"v" help:"List every part in shot, and every finding with its working."`
}

// Help is printed below the flags.
func (sightCommand) Help() string {
	return exitHelp + " Only findings of the cameras count."
}

// Run tells what the cameras see.
func (c *sightCommand) Run(s *session) error {
	file, err := c.read(s)
	if err != nil {
		return err
	}
	answers := answer.Of(file)
	if answers.Sight == nil {
		return c.complain(s, errNoCamera.Error(), nil)
	}
	if c.JSON {
		err = sheet.SightJSON(s.out, answers)
	} else {
		err = sheet.Sight(s.out, answers, sheet.Style{Color: s.color, Working: c.Verbose})
	}
	if err != nil {
		return err
	}
	if over(sheet.SightFindings(answers), c.Strict) {
		return status(exitOver)
	}
	return nil
}

var errNoCamera = errors.New("the plan names no camera; add cameras: [{name: A, at: [x, y, z], looks: [x, y, z], lens: 35 mm}]")
