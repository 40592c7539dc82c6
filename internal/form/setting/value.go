package setting

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"ripplewright/internal/form/echo"
	"ripplewright/internal/form/flaw"
)

// Maybe is a number that may be unknown.
type Maybe interface {
	Get() (number float64, known bool)
	Put(number float64, known bool)
}

// Word is a value that files know by a word, "" for none. PutWord is given only
// the words among a field's Choices.
type Word interface {
	Word() string
	PutWord(string)
}

// Switch is a yes or no that is kept otherwise than as a bool.
type Switch interface {
	On() bool
	Turn(on bool)
}

// Kind is how a value is written where a form has types.
type Kind uint8

// The kinds, and the values that have them.
const (
	KindText   Kind = iota // *string, Word
	KindNumber             // *float64, Maybe
	KindWhole              // *int, *int64
	KindFlag               // *bool, Switch
	KindList               // *[]string
)

// Kind returns how the field's value is written.
func (f Field[T]) Kind() Kind {
	switch x := f.Of(new(T)).(type) {
	case *string, Word:
		return KindText
	case *float64, Maybe:
		return KindNumber
	case *int, *int64:
		return KindWhole
	case *bool, Switch:
		return KindFlag
	case *[]string:
		return KindList
	default:
		panic(fmt.Sprintf("setting: %s is a %T, which no file can hold", f.Path, x))
	}
}

// Text returns the field in v as a file has it, a list with "; " between its
// items; "" for what a file leaves out.
func (f Field[T]) Text(v *T) string {
	switch x := f.Of(v).(type) {
	case *string:
		return *x
	case Word:
		return x.Word()
	case *float64:
		return f.number(*x)
	case Maybe:
		if number, known := x.Get(); known {
			return f.number(number)
		}
	case *int:
		return strconv.Itoa(*x)
	case *int64:
		return strconv.FormatInt(*x, 10)
	case *bool:
		return flag(*x)
	case Switch:
		return flag(x.On())
	case *[]string:
		return strings.Join(*x, "; ")
	}
	return ""
}

func (f Field[T]) number(x float64) string {
	if f.WithUnit {
		return Number(x) + " " + f.Unit
	}
	return Number(x)
}

func flag(on bool) string {
	if on {
		return "true"
	}
	return ""
}

// Set makes the field in v what a file says, as Text returns it, and says what
// is wrong with s, nil for nothing. Whether a number is in range and a word
// right, Check tells.
func (f Field[T]) Set(v *T, s string) error {
	switch x := f.Of(v).(type) {
	case *string:
		*x = s
	case Word:
		if err := f.checkWord(s); err != nil {
			return err
		}
		x.PutWord(s)
	case *float64:
		number, wrong := f.read(s)
		*x = number
		return wrong
	case Maybe:
		if s == "" {
			x.Put(0, false)
			return nil
		}
		number, wrong := f.read(s)
		x.Put(number, wrong == nil)
		return wrong
	case *int, *int64:
		return setWhole(x, s)
	case *bool, Switch:
		return setFlag(x, s)
	case *[]string:
		*x = nil
		for _, item := range strings.Split(s, ";") {
			if item = strings.TrimSpace(item); item != "" {
				*x = append(*x, item)
			}
		}
	}
	return nil
}

// read returns the number that s says.
func (f Field[T]) read(s string) (number float64, wrong error) {
	plain := s
	if f.WithUnit {
		plain = strings.TrimSpace(strings.TrimSuffix(s, f.Unit))
	}
	number, err := strconv.ParseFloat(plain, 64)
	if err != nil || math.IsNaN(number) || math.IsInf(number, 0) {
		return 0, flaw.New("%s is not a number", echo.Quoted(s))
	}
	return number + 0, nil // −0 becomes 0
}

func setWhole(at any, s string) error {
	n, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		return flaw.New("%s is not a whole number", echo.Quoted(s))
	}
	switch x := at.(type) {
	case *int:
		*x = int(n)
	case *int64:
		*x = n
	}
	return nil
}

func setFlag(at any, s string) error {
	on := s == "true" || s == "1"
	if !on && s != "" && s != "false" && s != "0" {
		return flaw.New("%s is neither true nor false", echo.Quoted(s))
	}
	switch x := at.(type) {
	case *bool:
		*x = on
	case Switch:
		x.Turn(on)
	}
	return nil
}
