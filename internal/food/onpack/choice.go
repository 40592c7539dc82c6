package onpack

// A ChoiceError is a choice that cannot be read; Field is its name as a flag
// has it.
type ChoiceError struct {
	Field, Typed string
	Err          error
}

// Words are what is wrong.
func (e *ChoiceError) Words() error { return e.Err }

func (e *ChoiceError) Error() string { return e.Err.Error() }

func (e *ChoiceError) Unwrap() error { return e.Err }

// Unreadable says that what was typed for a field cannot be read.
func Unreadable(field, typed string, err error) error { return &ChoiceError{field, typed, err} }
