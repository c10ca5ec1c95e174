package main

import (
	_ "embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
)

//go:embed starter.yaml
var starter []byte

type newCommand struct {
	File string `arg:"" optional:"" help:"File to write; standard output where none is named."`
}

// Run writes the starter plan. It never writes over a file.
func (c *newCommand) Run(s *session) error {
	if c.File == "" {
		_, err := s.out.Write(starter)
		return err
	}
	file, err := os.OpenFile(c.File, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s is there already; name another file", c.File)
	}
	if err != nil {
		return fmt.Errorf("%s cannot be written: %w", c.File, errors.Unwrap(err))
	}
	if _, err := file.Write(starter); err != nil {
		file.Close()
		return err
	}
	if err := file.Close(); err != nil {
		return err
	}
	fmt.Fprintf(s.out, "wrote %s; next: softloft check %s\n", c.File, c.File)
	return nil
}
