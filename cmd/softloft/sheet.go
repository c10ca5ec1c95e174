package main

import (
	"fmt"
	"io"

	"softloft/answer"
	"softloft/draw/pdf"
	"softloft/sheet"
)

type sheetCommand struct {
	planFlags
	Out   string `short:"o" name:"out" help:"File to write." default:"rig.pdf" placeholder:"FILE"`
	Paper string `help:"letter or a4; default the plan's." enum:"letter,a4," default:""`
}

// Help is printed below the flags.
func (sheetCommand) Help() string {
	return "Writes one page: plan and section, the result and what governs, loads on points, the pull list's head, cautions.\n\n" + exitHelp
}

// Run writes the page.
func (c *sheetCommand) Run(s *session) error {
	file, err := c.read(s)
	if err != nil {
		return err
	}
	paper := c.Paper
	if paper == "" {
		paper = string(file.Plan.Sheet.Paper)
	}
	answers := answer.Of(file)
	page := sheet.Page(answers, paper)
	if err := writeFile(c.Out, func(to io.Writer) error { return pdf.Write(to, file.Plan.Title, page) }); err != nil {
		return err
	}
	if c.JSON {
		err = sheet.Encode(s.out, wrote{Softloft: 1, Wrote: []string{c.Out}})
	} else {
		_, err = fmt.Fprintln(s.out, "wrote", c.Out)
	}
	if err != nil {
		return err
	}
	if over(answers.Findings, false) {
		return status(exitOver)
	}
	return nil
}
