// Command ripplecalc computes designs of rippled frozen desserts without a
// display: every figure, curve, label and picture of the window, from design
// files, as text or JSON.
//
// It keeps no state, so any batch engine may run it over thousands of designs.
// Exit codes: 0 fine; 1 the input is at fault, or the answer could not be
// written; 2 wrong usage; 3 our fault.
// Messages go to standard error.
package main

import (
	"cmp"
	"os"

	"ripplewright/internal/answer/schemafile"
)

func main() {
	os.Exit(run(&shell{in: os.Stdin, out: os.Stdout, err: os.Stderr, locale: locale(os.Getenv), schemas: schemafile.Here()}, os.Args[1:]))
}

// locale is the system's for messages, as POSIX has it: the first of these that says
// anything.
func locale(env func(string) string) string {
	return cmp.Or(env("LC_ALL"), env("LC_MESSAGES"), env("LANG"))
}
