package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path/filepath"
	"runtime/debug"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/schemaline"
	"ripplewright/internal/show/report"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/designfile"
)

// The exit codes, from better to worse.
const (
	exitFine  = 0
	exitInput = 1
	exitUsage = 2
	exitFault = 3
)

// shell is what a command may touch of the world around it.
type shell struct {
	in  io.Reader
	out io.Writer
	err io.Writer

	locale   string // of the system, by which the language is chosen where no flag does
	language string // that was asked for, though what programs read is English

	schemas schemaline.Schemas // where editors of text find the schemas of files
}

// complain writes a message that is not an answer.
func (s *shell) complain(err error) {
	fmt.Fprintf(s.err, "ripplecalc: %s\n", say.HarmlessPage(say.Flaw(err)))
}

// answer writes v as JSON or, without, its text.
func (s *shell) answer(v interface{ WriteText(io.Writer) error }, asJSON bool) error {
	if asJSON {
		return fault(report.WriteJSON(s.out, v, true))
	}
	var page strings.Builder // whatever a file holds must not reach the terminal raw
	if err := v.WriteText(&page); err != nil {
		return fault(err)
	}
	_, err := io.WriteString(s.out, say.HarmlessPage(page.String()))
	return fault(err)
}

// usageError says that the command line itself is wrong.
type usageError struct {
	usage string // of the command, "" where none is known yet
	err   error
}

func (e *usageError) Error() string { return e.err.Error() }

// faultError is an error that no input may cause.
type faultError struct{ error }

func (e *faultError) Unwrap() error { return e.error }

// fault returns err as our fault, nil for none.
func fault(err error) error {
	if err == nil {
		return nil
	}
	return &faultError{err}
}

// errReported stands for errors that are on standard error already.
var errReported = flaw.New("reported")

// run does what args say and returns the exit code.
func run(s *shell, args []string) int {
	out := bufio.NewWriterSize(s.out, 1<<16)
	inner := *s
	inner.out = out
	err := guard(func() error { return dispatch(&inner, args) })
	if flushed := out.Flush(); flushed != nil {
		// A full disk, or a reader that has gone: nobody's fault, but no answer.
		err = flaw.New("writing the answer: %v", flushed)
	}
	return inner.report(err)
}

// report tells err and returns the exit code that stands for it.
func (s *shell) report(err error) int {
	var usage *usageError
	var fault *faultError
	var file *designfile.Error
	var coded *codeError
	if errors.As(err, &coded) {
		if s.report(coded.error) == exitFault {
			return exitFault
		}
		return coded.code
	}
	switch {
	case err == nil:
		return exitFine
	case errors.As(err, &usage):
		s.complain(usage.err)
		if usage.usage != "" {
			fmt.Fprintln(s.err, say.T("usage: ripplecalc %s", usage.usage))
		} else {
			fmt.Fprintln(s.err, say.T("See ripplecalc help."))
		}
		return exitUsage
	case errors.As(err, &fault):
		s.complain(flaw.New("our fault: %v", err))
		return exitFault
	case errors.Is(err, errReported), errors.Is(err, errDiffer):
		return exitInput
	case errors.As(err, &file): // its lines begin with the file, as editors like it
		fmt.Fprintln(s.err, say.HarmlessPage(say.Flaw(err)))
		return exitInput
	}
	var path *fs.PathError
	if errors.Is(err, fs.ErrNotExist) && errors.As(err, &path) {
		missing := flaw.New("there is no file %s", echo.Line(path.Path, 2*echo.Most-len("file ")))
		if dir := filepath.Dir(path.Path); path.Op == "open" && strings.HasSuffix(path.Path, ".tmp") { // a file about to be written
			missing = flaw.New("there is no folder %s", echo.Line(dir, 2*echo.Most-len("folder ")))
		}
		s.complain(missing)
		return exitInput
	}
	s.complain(err)
	return exitInput
}

// guard runs f and turns a panic into a *faultError.
func guard(f func() error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = &faultError{flaw.New("%v\n%s", p, debug.Stack())}
		}
	}()
	return f()
}
