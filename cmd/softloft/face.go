package main

import (
	"errors"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"os"
	"strings"
	"unicode"

	"softloft/draw/face"
	"softloft/light"
	"softloft/rig"
	"softloft/sheet"
)

type faceCommand struct {
	planFlags
	Out   string  `short:"o" name:"out" help:"Folder to write to; it is made where it isn't there." default:"." placeholder:"DIR"`
	Looks bool    `name:"looks" help:"Also under the box, with it ahead of the face, and behind the head."`
	From  float64 `name:"from" help:"Look from so many degrees to the performer's left; 0 is from before." default:"0" placeholder:"DEG"`
}

// Help is printed below the flags.
func (faceCommand) Help() string {
	return "Lights a plain head of clay at every mark by the computed source, with its own shadows, and writes it in gray and in false stops as PNG.\n\n" +
		"Light that one part of the head throws on another is left out: shadows are a little darker than on skin.\n\n" +
		"Exit status: 0 written, 2 the plan or the command line cannot be read, or there is no light or no mark."
}

// Size of a head's picture, in picture elements.
const faceWide, faceHigh = 312, 400

// Run writes the faces.
func (c *faceCommand) Run(s *session) error {
	if math.IsNaN(c.From) || math.Abs(c.From) > 360 {
		return c.complain(s, fmt.Sprintf("--from %g: an angle from -360 to 360 degrees is due", c.From), nil)
	}
	file, err := c.read(s)
	if err != nil {
		return err
	}
	portraits, err := light.Portraits(rig.Derive(file.Plan, file.Doc, file.Kit), light.Ask{Looks: c.Looks, Turn: c.From * math.Pi / 180, Width: faceWide, Height: faceHigh})
	if err != nil {
		return c.complain(s, err.Error(), nil)
	}
	if err := os.MkdirAll(c.Out, 0o755); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %w", c.Out, errors.Unwrap(err))
	}
	files := drawCommand{planFlags: c.planFlags, Out: c.Out}
	used := map[string]int{}
	for i := range portraits {
		p := &portraits[i]
		name := faceName(p, used)
		err = files.write(s, err, name+"-grey.png", encoded(face.Gray(p)))
		err = files.write(s, err, name+"-stops.png", encoded(face.Stops(p)))
	}
	if err == nil && c.JSON {
		return sheet.Encode(s.out, wrote{Softloft: 1, Wrote: files.written})
	}
	return err
}

func encoded(picture image.Image) func(io.Writer) error {
	return func(to io.Writer) error { return png.Encode(to, picture) }
}

// faceName is a file name from the mark's and the look's; marks that would have the same
// are numbered.
func faceName(p *light.Portrait, used map[string]int) string {
	name := "face-" + strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return r
		}
		return '-'
	}, p.Mark)
	if p.Look != "" {
		name += "-" + p.Look
	}
	if used[name]++; used[name] > 1 {
		name = fmt.Sprintf("%s-%d", name, used[name])
	}
	return name
}
