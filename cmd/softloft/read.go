package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"softloft/document"
	"softloft/kit"
	"softloft/plan"
	"softloft/sheet"
)

// largestPlan is how many bytes of a plan file are read at most: as in document.
const largestPlan = 4 << 20

// read reads the kit and the plan. Mistakes are printed here, all at once.
func (f *planFlags) read(s *session) (*plan.File, error) {
	base, err := f.kit(s)
	if err != nil {
		return nil, err
	}
	name, data, err := f.text(s)
	if err != nil {
		return nil, f.complain(s, err.Error(), nil)
	}
	file, mistakes := plan.Read(name, data, base)
	if len(mistakes) > 0 {
		return nil, f.complain(s, "", mistakes)
	}
	if mistakes := f.lampFiles(file); len(mistakes) > 0 {
		return nil, f.complain(s, "", mistakes)
	}
	return file, nil
}

// text reads the plan's bytes: one more than may be, so that too many show.
func (f *planFlags) text(s *session) (string, []byte, error) {
	if f.Plan == "-" {
		data, err := io.ReadAll(io.LimitReader(s.in, largestPlan+1))
		return "standard input", data, err
	}
	info, err := os.Stat(f.Plan)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", nil, fmt.Errorf("there is no file %s; softloft new %s writes a starter plan", f.Plan, f.Plan)
	case err != nil:
		return "", nil, fmt.Errorf("%s cannot be read: %w", f.Plan, errors.Unwrap(err))
	case info.IsDir():
		return "", nil, fmt.Errorf("%s is a folder; a plan file is due, such as %s/plan.yaml", f.Plan, strings.TrimSuffix(f.Plan, "/"))
	}
	opened, err := os.Open(f.Plan)
	if err != nil {
		return "", nil, fmt.Errorf("%s cannot be read: %w", f.Plan, errors.Unwrap(err))
	}
	defer opened.Close()
	data, err := io.ReadAll(io.LimitReader(opened, largestPlan+1))
	return f.Plan, data, err
}

// kit is the embedded kit with the user's folder over it.
func (f *kitFlags) kit(s *session) (kit.Kit, error) {
	base, mistakes := kit.Standard()
	if len(mistakes) == 0 && f.KitFolder != "" {
		if info, err := os.Stat(f.KitFolder); err != nil || !info.IsDir() {
			return base, f.complain(s, "there is no kit folder "+f.KitFolder, nil)
		}
		base, mistakes = kit.ReadFolder(os.DirFS(f.KitFolder), base)
		for i := range mistakes {
			mistakes[i].Place.File = filepath.Join(f.KitFolder, mistakes[i].Place.File)
		}
	}
	if len(mistakes) > 0 {
		return base, f.complain(s, "", mistakes)
	}
	return base, nil
}

// complain prints what is wrong, as JSON where that is asked for, and returns the
// exit status.
func (f *kitFlags) complain(s *session, text string, mistakes document.Mistakes) error {
	if f.JSON {
		if err := sheet.MistakesJSON(s.out, text, mistakes); err != nil {
			return err
		}
		return status(exitUnreadable)
	}
	sheet.Mistakes(s.err, text, mistakes)
	return status(exitUnreadable)
}
