package main

import (
	"softloft/answer"
	"softloft/sheet"
)

type buildCommand struct {
	planFlags
	CSV     bool `name:"csv" help:"Print the steps as CSV."`
	Strict  bool `help:"Count not known as over."`
	Verbose bool `short:"v" help:"Print why each step stands where it stands, and every working."`
}

// Help is printed below the flags.
func (buildCommand) Help() string {
	return exitHelp + " Only findings of the build count. Rates of work are invented until the plan sets them."
}

// Run orders the work.
func (c *buildCommand) Run(s *session) error {
	file, err := c.read(s)
	if err != nil {
		return err
	}
	answers := answer.Of(file)
	switch {
	case c.JSON:
		err = sheet.BuildJSON(s.out, answers)
	case c.CSV:
		err = sheet.BuildCSV(s.out, answers)
	default:
		err = sheet.Build(s.out, answers, sheet.Style{Color: s.color, Working: c.Verbose})
	}
	if err != nil {
		return err
	}
	if over(sheet.BuildFindings(answers), c.Strict) {
		return status(exitOver)
	}
	return nil
}
