package main

import (
	"softloft/answer"
	"softloft/finding"
	"softloft/sheet"
)

// planFlags are shared by the commands that read a plan.
type planFlags struct {
	Plan string `arg:"" help:"Plan file; - reads standard input."`
	kitFlags
}

// kitFlags are shared by the commands that read the kit.
type kitFlags struct {
	KitFolder string `name:"kit-folder" help:"Folder with kit files of your own (*.yaml)." placeholder:"DIR" env:"SOFTLOFT_KIT"`
	JSON      bool   `name:"json" help:"Print JSON, errors too."`
}

type checkCommand struct {
	planFlags
	Strict  bool `help:"Count not known as over."`
	Verbose bool `short:"v" help:"Print every finding with its working, and the defaults."`
}

// Help is printed below the flags.
func (checkCommand) Help() string { return exitHelp + " With --strict, not known counts as over." }

// Run works out the plan.
func (c *checkCommand) Run(s *session) error {
	file, err := c.read(s)
	if err != nil {
		return err
	}
	answers := answer.Of(file)
	if c.JSON {
		err = sheet.JSON(s.out, answers)
	} else {
		err = sheet.Check(s.out, answers, sheet.Style{Color: s.color, Working: c.Verbose})
	}
	if err != nil {
		return err
	}
	if over(answers.Findings, c.Strict) {
		return status(exitOver)
	}
	return nil
}

// over reports whether any finding is over, or not known where that counts.
func over(findings []finding.Finding, strict bool) bool {
	for _, f := range findings {
		if f.Result == finding.Over || (strict && f.Result == finding.NotKnown) {
			return true
		}
	}
	return false
}
