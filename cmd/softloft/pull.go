package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"softloft/answer"
	"softloft/pull"
	"softloft/sheet"
	"softloft/stock"
)

type pullCommand struct {
	planFlags
	Stock string `help:"Stock file of a shop: what is there, rented, short, and how to cut." placeholder:"FILE"`
	Days  int    `help:"Days of the rental, for the cost." default:"1"`
	CSV   bool   `name:"csv" help:"Print the list as CSV."`
}

// Help is printed below the flags.
func (pullCommand) Help() string { return exitHelp + " What is short is no finding: read the list." }

// mostDays is ten years.
const mostDays = 3660

// Run lists what to pull.
func (c *pullCommand) Run(s *session) error {
	if c.Days < 1 || c.Days > mostDays {
		return c.complain(s, fmt.Sprintf("--days %d; 1 to %d are due", c.Days, mostDays), nil)
	}
	file, err := c.read(s)
	if err != nil {
		return err
	}
	shop, err := c.shop(s)
	if err != nil {
		return err
	}
	answers := answer.Of(file)
	style := sheet.Style{Color: s.color}
	if shop == nil {
		switch {
		case c.JSON:
			return sheet.Encode(s.out, answers.Pull)
		case c.CSV:
			return sheet.PullCSV(s.out, answers)
		}
		return sheet.Pull(s.out, answers, style)
	}
	served := pull.Against(answers.Pull, shop, file.Kit, c.Days)
	switch {
	case c.JSON:
		return sheet.Encode(s.out, served)
	case c.CSV:
		return sheet.ServedCSV(s.out, served)
	}
	return sheet.Served(s.out, answers, served, style)
}

// shop reads the stock file, nil where none is named.
func (c *pullCommand) shop(s *session) (*stock.Shop, error) {
	if c.Stock == "" {
		return nil, nil
	}
	file, err := os.Open(c.Stock)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, c.complain(s, fmt.Sprintf("there is no stock file %s", c.Stock), nil)
	case err != nil:
		return nil, c.complain(s, fmt.Sprintf("%s cannot be read: %v", c.Stock, errors.Unwrap(err)), nil)
	}
	defer file.Close()
	data, err := io.ReadAll(io.LimitReader(file, largestPlan+1))
	if err != nil {
		return nil, c.complain(s, fmt.Sprintf("%s cannot be read: %v", c.Stock, errors.Unwrap(err)), nil)
	}
	shop, mistakes := stock.Read(c.Stock, data)
	if len(mistakes) > 0 {
		return nil, c.complain(s, "", mistakes)
	}
	return shop, nil
}
