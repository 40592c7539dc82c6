package main

import (
	"errors"
	"io/fs"
	"os"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/designfile"
)

// mayWrite refuses an -o that would cost the maker a file: one that the command
// reads, or any design.
func (c *command) mayWrite(to string, inputs ...string) error {
	if to == "" {
		return nil
	}
	target, err := os.Stat(to)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return flaw.New("-o: %v", err)
	}
	for _, name := range inputs {
		if in, err := os.Stat(name); err == nil && os.SameFile(target, in) {
			return c.misused("-o %s is a file that this command reads; name another", echo.Plain(to))
		}
	}
	if designfile.IsDesign(to) {
		return flaw.New("-o %s holds a design, which nothing else may replace; name another file", echo.Plain(to))
	}
	return nil
}
