package ingredient

import (
	"errors"
	"fmt"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/setting"
)

// FieldError says which figure of which record cannot be read.
type FieldError struct {
	Line  int    // in the file, from 1; 0 where there is no file
	ID    string // of the record, "" if it is not known yet
	Field string // the field's name in files, "" for the record as a whole
	Err   error
}

func (e *FieldError) Error() string {
	var b strings.Builder
	if e.Line > 0 {
		fmt.Fprintf(&b, "line %d: ", e.Line)
	}
	if e.ID != "" {
		fmt.Fprintf(&b, "ingredient %s: ", echo.Quoted(e.ID))
	}
	if e.Field != "" {
		fmt.Fprintf(&b, "%s: ", echo.Plain(e.Field))
	}
	b.WriteString(e.Err.Error())
	return b.String()
}

func (e *FieldError) Unwrap() error { return e.Err }

var errUnknownField = errors.New("is no field of an ingredient")

// fault turns what setting.Read found into the error of the record id.
// unknown is what a key is that the table lacks.
func fault(err error, id string, unknown error) error {
	var tree *setting.TreeError
	if !errors.As(err, &tree) {
		return err
	}
	e := &FieldError{tree.Line, id, tree.Path, errors.New(tree.Message)}
	if tree.Unknown {
		e.Err = unknown
	}
	return e
}
