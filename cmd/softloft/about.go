package main

import (
	"fmt"
	"runtime/debug"
)

type helpCommand struct{}

const about = `softloft plans a large soft light overhead: tube frame, cloth, sides, egg-crate
and lamps, hung by ropes from a building's points or on stands. One plan file goes in; what
light it gives, what carries it, and what must come off the shelf come out, each
number with its working and its source. It says what it does not know.

Begin:
  softloft new my-box.yaml       write a commented starter plan
  softloft check my-box.yaml     what is over, tight, not known or within
  softloft check -v my-box.yaml  the same with every working
  softloft load my-box.yaml      lines, points, tubes; a tilt, the lift, one line gone
  softloft pull my-box.yaml      the pull list; power, build, sight: circuits, steps, cameras
  softloft vary my-box.yaml --over trim=10ft..18ft
  softloft draw, sheet, face     drawings, a page for print, a lit head
  softloft kit, lamp             what the kit and a photometric file hold
  softloft COMMAND --help        the flags of a command

It is a planning aid, not a certificate: a competent person and the venue's
engineer decide, and local law and codes come first.
`

// Run says how to begin.
func (helpCommand) Run(s *session) error {
	_, err := fmt.Fprint(s.out, about+"\n"+exitHelp+"\n")
	return err
}

type versionCommand struct{}

// version is the release; the build's revision is added where Go knows it.
const version = "0.1.0"

// Run prints the version.
func (versionCommand) Run(s *session) error {
	text := "softloft " + version
	if info, ok := debug.ReadBuildInfo(); ok {
		for _, setting := range info.Settings {
			if setting.Key == "vcs.revision" && len(setting.Value) >= 12 {
				text += " (" + setting.Value[:12] + ")"
			}
		}
	}
	_, err := fmt.Fprintln(s.out, text)
	return err
}
