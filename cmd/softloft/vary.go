package main

import (
	"fmt"
	"io"
	"os"
	"runtime"

	"softloft/draw/svg"
	"softloft/sheet"
	"softloft/vary"
)

type varyCommand struct {
	planFlags
	Over string `help:"What to vary: trim=10ft..18ft, level=20%..100%/5, box.cloth=light,half." required:"" placeholder:"KEY=VALUES"`
	Keep string `help:"What stays when crate or skirt change: cloth (its height) or trim." enum:"cloth,trim" default:"cloth"`
	CSV  bool   `name:"csv" help:"Print the rows as CSV." xor:"form"`
	SVG  string `name:"svg" help:"Write charts of stop, evenness, spill and loads." placeholder:"FILE"`
}

// Help is printed below the flags.
func (varyCommand) Help() string {
	return "Every value is a whole plan, worked out anew. A range has 9 values, or as many as /N says, at most 200. " +
		"Keys of box need no box. before them; level and above change every lamp. Where a result changes between two values, the place is narrowed down to 1 %.\n\n" +
		"Exit status: 0 worked out, 2 the plan or the command line cannot be read, or the plan refuses every value. What is over is told in the rows."
}

// Run works out the plan at each value.
func (c *varyCommand) Run(s *session) error {
	file, err := c.read(s)
	if err != nil {
		return err
	}
	ask, err := vary.Parse(c.Over, file)
	if err != nil {
		return c.complain(s, "--over: "+err.Error(), nil)
	}
	progress, end := counter(s.err)
	told, err := vary.Of(file, ask, vary.Options{Keep: vary.Keep(c.Keep), Workers: runtime.GOMAXPROCS(0), Progress: progress})
	end()
	if err != nil {
		return c.complain(s, "--over: "+err.Error(), nil)
	}
	if c.SVG != "" {
		picture := sheet.VaryPicture(told)
		if err := writeFile(c.SVG, func(to io.Writer) error { return svg.Write(to, picture) }); err != nil {
			return c.complain(s, err.Error(), nil)
		}
	}
	switch {
	case c.JSON:
		return sheet.Encode(s.out, told)
	case c.CSV:
		return sheet.VaryCSV(s.out, told)
	}
	return sheet.Vary(s.out, told, sheet.Style{Color: s.color})
}

// counter counts plans on one line of a terminal, and clears the line at the end. Where
// nobody watches it says nothing.
func counter(to io.Writer) (progress func(done, due int), end func()) {
	file, ok := to.(*os.File)
	if !ok {
		return nil, func() {}
	}
	if info, err := file.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 || os.Getenv("TERM") == "dumb" {
		return nil, func() {}
	}
	return func(done, due int) { fmt.Fprintf(to, "\r%d of %d plans", done, due) }, func() { fmt.Fprint(to, "\r\x1b[K") }
}
