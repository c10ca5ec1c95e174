package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"softloft/answer"
	"softloft/draw"
	"softloft/draw/pdf"
	"softloft/draw/png"
	"softloft/draw/svg"
	"softloft/sheet"
)

type drawCommand struct {
	planFlags
	Out string `short:"o" name:"out" help:"Folder to write to; it is made where it isn't there." default:"." placeholder:"DIR"`
	SVG bool   `name:"svg" help:"Write each view as SVG; what is written where no form is named."`
	PDF bool   `name:"pdf" help:"Write all views as one PDF, a page each."`
	PNG bool   `name:"png" help:"Write each view as PNG, about 200 dpi."`

	written []string
}

// Help is printed below the flags.
func (drawCommand) Help() string {
	return "Draws plan, both sections and, where the plan gives a room, the room: to a customary scale that fits the paper.\n\n" +
		"Exit status: 0 drawn, 2 the plan or the command line cannot be read. What is over is for check and sheet to say."
}

// Run draws a plan's views.
func (c *drawCommand) Run(s *session) error {
	file, err := c.read(s)
	if err != nil {
		return err
	}
	answers := answer.Of(file)
	pictures := append(draw.Drawings(answers, string(file.Plan.Sheet.Paper)), lightPictures(answers)...)
	if err := os.MkdirAll(c.Out, 0o755); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %w", c.Out, errors.Unwrap(err))
	}
	if !c.PDF && !c.PNG {
		c.SVG = true
	}
	for _, p := range pictures {
		if c.SVG {
			err = c.write(s, err, p.Name+".svg", func(to io.Writer) error { return svg.Write(to, p) })
		}
		if c.PNG {
			err = c.write(s, err, p.Name+".png", func(to io.Writer) error { return png.Write(to, p, 8) })
		}
	}
	if c.PDF {
		err = c.write(s, err, "drawings.pdf", func(to io.Writer) error { return pdf.Write(to, file.Plan.Title, pictures...) })
	}
	if err == nil && c.JSON {
		return sheet.Encode(s.out, wrote{Softloft: 1, Wrote: c.written})
	}
	return err
}

// wrote is what a command that writes files tells as JSON.
type wrote struct {
	Softloft int      `json:"softloft"`
	Wrote    []string `json:"wrote"`
}

// write writes one file, unless something went wrong before.
func (c *drawCommand) write(s *session, before error, name string, to func(io.Writer) error) error {
	if before != nil {
		return before
	}
	name = filepath.Join(c.Out, name)
	if err := writeFile(name, to); err != nil {
		return err
	}
	c.written = append(c.written, name)
	if !c.JSON {
		fmt.Fprintln(s.out, "wrote", name)
	}
	return nil
}

// writeFile writes a file at once, so that a failure leaves none behind that is half
// written.
func writeFile(name string, to func(io.Writer) error) error {
	var data bytes.Buffer
	if err := to(&data); err != nil {
		return err
	}
	if err := os.WriteFile(name, data.Bytes(), 0o644); err != nil {
		return fmt.Errorf("%s cannot be written: %w", name, errors.Unwrap(err))
	}
	return nil
}
