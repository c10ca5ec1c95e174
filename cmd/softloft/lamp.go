package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"softloft/document"
	"softloft/photometry"
	"softloft/plan"
	"softloft/quantity"
	"softloft/sheet"
)

type lampCommand struct {
	File  string `arg:"" help:"Lamp file: LM-63 (.ies), EULUMDAT (.ldt) or GDTF (.gdtf); - reads standard input."`
	JSON  bool   `name:"json" help:"Print JSON, errors too."`
	Units string `help:"feet or metres." enum:"feet,metres" default:"feet"`
}

// Help is printed below the flags.
func (lampCommand) Help() string {
	return "Lumens are the exact integral of an intensity that is linear in angle between the file's angles. " +
		"Beam and field are the full angles at 50 % and 10 % of the peak. Exit status: 0 read, 2 the file cannot be read."
}

// largestLampFile is how many bytes of a lamp file are read at most.
const largestLampFile = 64 << 20

// Run tells what a lamp file says.
func (c *lampCommand) Run(s *session) error {
	complain := kitFlags{JSON: c.JSON}
	name, data, err := c.read(s)
	if err != nil {
		return complain.complain(s, err.Error(), nil)
	}
	f, err := photometry.ReadFile(name, data)
	if err != nil {
		return complain.complain(s, err.Error(), nil)
	}
	if c.JSON {
		return sheet.LampFileJSON(s.out, f)
	}
	return sheet.LampFile(s.out, f, quantity.System(c.Units), sheet.Style{Color: s.color})
}

func (c *lampCommand) read(s *session) (string, []byte, error) {
	if c.File == "-" {
		data, err := allOf(s.in)
		return "standard input", data, err
	}
	data, err := readLampFile(c.File)
	return c.File, data, err
}

// readLampFile reads a lamp file's bytes.
func readLampFile(name string) ([]byte, error) {
	info, err := os.Stat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, fmt.Errorf("there is no file %s; a lamp file is due, such as lamp.ies", name)
	case err != nil:
		return nil, fmt.Errorf("%s cannot be read: %w", name, errors.Unwrap(err))
	case info.IsDir():
		return nil, fmt.Errorf("%s is a folder; a lamp file is due, such as lamp.ies", name)
	}
	opened, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", name, errors.Unwrap(err))
	}
	defer opened.Close()
	data, err := allOf(opened)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return data, nil
}

func allOf(from io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(from, largestLampFile+1))
	if err == nil && len(data) > largestLampFile {
		err = fmt.Errorf("more than %d megabytes; no lamp file is so large", largestLampFile>>20)
	}
	return data, err
}

// lampFiles reads the lamp files that a plan's lamps name, next to the plan, or where
// there is none in the kit folder, and hands them in.
func (f *planFlags) lampFiles(file *plan.File) document.Mistakes {
	var mistakes document.Mistakes
	files := map[string]*photometry.LampFile{}
	for _, name := range file.LampFiles() {
		read, err := f.lampFile(name)
		if err != nil {
			mistakes = append(mistakes, file.WrongLampFile(name, err))
			continue
		}
		files[name] = read
	}
	if len(files) > 0 {
		file.HandIn(files)
	}
	return mistakes.Sort()
}

func (f *planFlags) lampFile(name string) (*photometry.LampFile, error) {
	at := name
	if !filepath.IsAbs(name) && f.Plan != "-" {
		at = filepath.Join(filepath.Dir(f.Plan), name)
	}
	if inKit := filepath.Join(f.KitFolder, name); f.KitFolder != "" && !filepath.IsAbs(name) && !isThere(at) && isThere(inKit) {
		at = inKit
	}
	data, err := readLampFile(at)
	if err != nil {
		return nil, err
	}
	return photometry.ReadFile(at, data)
}

func isThere(name string) bool {
	_, err := os.Stat(name)
	return err == nil
}
