package say

import (
	"io/fs"
	"os"
	"slices"
	"strings"

	"ripplewright/internal/form/flaw"
)

// Flaw is an error in the maker's language: in English its own text. What is no
// error of ours, and none that a system gives for a file, stands as it is.
func Flaw(err error) string {
	if err == nil {
		return ""
	}
	switch e := err.(type) {
	case *flaw.Flaw:
		return told(e.Message, e.Args)
	case flaw.Worded:
		return Flaw(e.Words())
	case *fs.PathError:
		return ofFile(e.Op, e.Path, e.Err)
	case *os.LinkError:
		return ofFile(e.Op, e.Old+" "+e.New, e.Err)
	case interface{ Unwrap() []error }:
		return ofAll(err, e.Unwrap())
	case interface{ Unwrap() error }:
		if inner := e.Unwrap(); inner != nil && inner.Error() == err.Error() {
			return Flaw(inner)
		}
	}
	return systemWord(err)
}

// told is a message with its arguments, each told in its way.
func told(m flaw.Message, args []any) string {
	out := make([]any, len(args))
	for i, a := range args {
		switch a := a.(type) {
		case error:
			out[i] = Flaw(a)
		case flaw.Word, flaw.Opening, flaw.And, *flaw.Remark:
			out[i] = worded(a)
		default:
			out[i] = a
		}
	}
	return T(Message(m), out...)
}

// ofAll is errors that stand below each other.
func ofAll(err error, errs []error) string {
	texts, english := make([]string, len(errs)), make([]string, len(errs))
	for i, e := range errs {
		texts[i], english[i] = Flaw(e), e.Error()
	}
	if strings.Join(english, "\n") != err.Error() {
		return err.Error() // joined by words of its own
	}
	return strings.Join(texts, "\n")
}

// ops are what a system did with a file.
var ops = map[string]Message{"open": "open¦of a file", "read": "read¦of a file", "write": "write¦of a file", "stat": "stat¦of a file", "lstat": "lstat¦of a file",
	"mkdir": "mkdir¦of a file", "rename": "rename¦of a file", "remove": "remove¦of a file", "sync": "sync¦of a file"}

// whys are why it did not go, as package os words it.
var whys = []Message{"no such file or directory", "permission denied", "operation not permitted", "is a directory", "not a directory",
	"no space left on device", "read-only file system", "file exists", "input/output error", "file name too long", "file already closed"}

// ofFile is what a system could not do with a file.
func ofFile(op, path string, err error) string {
	if m, ok := ops[op]; ok {
		op = m.String()
	}
	return T("%s %s: %s", op, path, Flaw(err))
}

// systemWord is an error of the system, which is one of a few or stands as it is.
func systemWord(err error) string {
	text := err.Error()
	if m := Message(text); slices.Contains(whys, m) {
		return m.String()
	}
	return text
}
