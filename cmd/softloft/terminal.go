package main

import (
	"io"
	"os"
)

// wantsColor reports whether out is a terminal whose user did not ask for none
// (https://no-color.org).
func wantsColor(out io.Writer) bool {
	file, ok := out.(*os.File)
	if !ok || os.Getenv("NO_COLOR") != "" || os.Getenv("TERM") == "dumb" {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
