package main

import (
	"errors"
	"fmt"
	"io"
	"slices"

	"github.com/alecthomas/kong"

	"softloft/sheet"
)

// Exit statuses, as each command's help prints them.
const (
	exitNothingOver = 0
	exitOver        = 1
	exitUnreadable  = 2
)

const exitHelp = "Exit status: 0 nothing over, 1 something over, 2 the plan or the command line cannot be read."

// commands is the command line.
type commands struct {
	Check   checkCommand   `cmd:"" help:"Work out a plan and say what is over, tight, not known or within."`
	Load    loadCommand    `cmd:"" help:"Say what lines, points and tubes carry: built, grown, lifted, tilted, with one gone."`
	Pull    pullCommand    `cmd:"" help:"List all that must come off the shelf for a plan."`
	Build   buildCommand   `cmd:"" help:"Put the work in order: steps, people, holds, knots, cards, and the strike."`
	Power   powerCommand   `cmd:"" help:"Put the lamps on circuits: amps, cable, voltage drop, size of the supply."`
	Sight   sightCommand   `cmd:"" help:"Say what each camera sees of the rig, and which trim or lens clears it."`
	Vary    varyCommand    `cmd:"" help:"Answer a plan over a range of one of its values: what a foot of trim costs, and where a result changes."`
	Face    faceCommand    `cmd:"" help:"Light a plain head at every mark: in gray and in false stops."`
	Draw    drawCommand    `cmd:"" help:"Draw plan and sections to scale."`
	Sheet   sheetCommand   `cmd:"" help:"Write one page for print: drawing, result, loads, cautions."`
	New     newCommand     `cmd:"" help:"Write a commented starter plan."`
	Kit     kitCommand     `cmd:"" help:"List what the kit holds, or all values of one entry with their sources."`
	Lamp    lampCommand    `cmd:"" help:"Say what a lamp file holds: lumens, beam, opening, and what is odd in it."`
	Help    helpCommand    `cmd:"" help:"Say what softloft does and how to begin."`
	Version versionCommand `cmd:"" help:"Print the version."`
}

// session is what a command talks to.
type session struct {
	in       io.Reader
	out, err io.Writer
	color    bool
}

// status is an exit status on its way out.
type status int

func (s status) Error() string { return fmt.Sprintf("exit status %d", int(s)) }

// run parses the command line and runs one command. It returns the exit status.
func run(args []string, in io.Reader, out, errOut io.Writer) (code int) {
	if len(args) == 0 {
		args = []string{"help"}
	}
	s := &session{in: in, out: out, err: errOut, color: wantsColor(out)}
	var line commands
	ended := -1
	parser, err := kong.New(&line, kong.Name("softloft"), kong.Description("Plans a large soft light overhead: what it gives, what carries it, what it needs.\n\n"+exitHelp),
		kong.Writers(out, errOut), kong.Exit(func(code int) { ended = code }), kong.ConfigureHelp(kong.HelpOptions{Compact: true, NoExpandSubcommands: true}))
	if err != nil {
		fmt.Fprintln(errOut, "softloft:", err)
		return exitUnreadable
	}
	context, err := parser.Parse(args)
	if ended >= 0 {
		return ended
	}
	if err != nil {
		if slices.Contains(args, "--json") {
			_ = sheet.MistakesJSON(out, err.Error(), nil)
			return exitUnreadable
		}
		fmt.Fprintf(errOut, "softloft: %v\nhint: softloft --help lists the commands\n", err)
		return exitUnreadable
	}
	return statusOf(context.Run(s), s)
}

// statusOf turns a command's end into an exit status, and prints what is not yet
// printed.
func statusOf(err error, s *session) int {
	var code status
	switch {
	case err == nil:
		return exitNothingOver
	case errors.As(err, &code):
		return int(code)
	}
	fmt.Fprintln(s.err, "softloft:", err)
	return exitUnreadable
}
