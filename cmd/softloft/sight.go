package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"softloft/answer"
	"softloft/draw/svg"
	"softloft/sheet"
)

type sightCommand struct {
	planFlags
	Strict  bool   `help:"Count not known as over."`
	Verbose bool   `short:"v" help:"List every part in shot, and every finding with its working."`
	SVG     bool   `name:"svg" help:"Write a picture for each camera: what its lens sees, and where on its way."`
	Out     string `short:"o" name:"out" help:"Folder for the pictures; it is made where it isn't there." default:"." placeholder:"DIR"`
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
	if c.SVG {
		if err := c.pictures(s, answers); err != nil {
			return err
		}
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

// pictures writes the cameras' pictures.
func (c *sightCommand) pictures(s *session, answers *answer.Answers) error {
	if err := os.MkdirAll(c.Out, 0o755); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %w", c.Out, errors.Unwrap(err))
	}
	for _, p := range sheet.SightPictures(answers) {
		name := filepath.Join(c.Out, p.Name+".svg")
		if err := writeFile(name, func(to io.Writer) error { return svg.Write(to, p) }); err != nil {
			return err
		}
		if !c.JSON {
			fmt.Fprintln(s.out, "wrote", name)
		}
	}
	return nil
}

var errNoCamera = errors.New("the plan names no camera; add cameras: [{name: A, at: [x, y, z], looks: [x, y, z], lens: 35 mm}]")
