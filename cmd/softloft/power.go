package main

import (
	"errors"

	"softloft/answer"
	"softloft/sheet"
)

type powerCommand struct {
	planFlags
	CSV    bool `name:"csv" help:"Print the circuits as CSV."`
	Strict bool `help:"Count not known as over."`
}

// Help is printed below the flags.
func (powerCommand) Help() string {
	return exitHelp + " Only findings of the supply count. A licensed electrician ties in."
}

// Run puts the lamps on circuits.
func (c *powerCommand) Run(s *session) error {
	file, err := c.read(s)
	if err != nil {
		return err
	}
	answers := answer.Of(file)
	if answers.Power == nil {
		return c.complain(s, errNoPower.Error(), nil)
	}
	switch {
	case c.JSON:
		err = sheet.PowerJSON(s.out, answers)
	case c.CSV:
		err = sheet.PowerCSV(s.out, answers)
	default:
		err = sheet.Power(s.out, answers, sheet.Style{Color: s.color})
	}
	if err != nil {
		return err
	}
	if over(sheet.PowerFindings(answers), c.Strict) {
		return status(exitOver)
	}
	return nil
}

var errNoPower = errors.New("the plan says nothing of power; add power: {volts: 120 V, phases: 3, circuit: 20 A, tie_in: [x, y, z], cable: cable-12/3}")
