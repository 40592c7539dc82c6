package ingredient

import (
	"errors"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/form/setting"
)

// FieldError says which figure of which record cannot be read.
type FieldError struct {
	Line  int    // in the file, from 1; 0 where there is no file
	ID    string // of the record, "" if it is not known yet
	Field string // the field's name in files, "" for the record as a whole
	Err   error
}

// Words are the place and what is wrong there.
func (e *FieldError) Words() error {
	err := flaw.At(echo.Plain(e.Field), e.Err)
	if e.ID != "" {
		err = flaw.New("ingredient %s: %v", echo.Quoted(e.ID), err)
	}
	return flaw.InLine(e.Line, err)
}

func (e *FieldError) Error() string { return e.Words().Error() }

func (e *FieldError) Unwrap() error { return e.Err }

var errUnknownField = flaw.New("is no field of an ingredient")

// fault turns what setting.Read found into the error of the record id.
// unknown is what a key is that the table lacks.
func fault(err error, id string, unknown error) error {
	var tree *setting.TreeError
	if !errors.As(err, &tree) {
		return err
	}
	e := &FieldError{tree.Line, id, tree.Path, tree.Err}
	if tree.Unknown {
		e.Err = unknown
	}
	return e
}
