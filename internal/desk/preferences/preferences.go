// Package preferences looks at the file of a maker's preferences before the
// toolkit reads it: what it does not expect there stops its start.
package preferences

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"time"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/atomicfile"
)

// A Kind is what the value of a key is.
type Kind string

// The kinds of values.
const (
	Text  Kind = "text"
	YesNo Kind = "true or false"
	Count Kind = "a number"
	Texts Kind = "a list of texts"
)

// mostBytes bounds what is read: looks and recent files take some hundred.
const mostBytes = 1 << 20

// Path is where Fyne 2.7 keeps the preferences of the program id on this kind
// of system, by its internal/app/config_*.go; "" where that is not known.
func Path(id string) string {
	root, err := os.UserConfigDir()
	if runtime.GOOS == "darwin" {
		root, err = os.UserHomeDir()
		root = filepath.Join(root, "Library", "Preferences")
	}
	if err != nil {
		return ""
	}
	return filepath.Join(root, "fyne", id, "preferences.json")
}

// Check reads the file at path. A missing or empty one is fine, as are keys
// that kinds does not name.
func Check(path string, kinds map[string]Kind) error {
	data, _, err := atomicfile.Read(path, mostBytes)
	switch {
	case errors.Is(err, fs.ErrNotExist) || err == nil && len(data) == 0:
		return nil
	case err != nil:
		return err
	case len(data) > mostBytes:
		return flaw.New("it is longer than %d bytes", mostBytes)
	}
	var values map[string]any
	if err := json.Unmarshal(data, &values); err != nil {
		return err
	}
	if values == nil {
		return flaw.New("it holds no keys and values")
	}
	var keys []string
	for key := range values {
		keys = append(keys, key)
	}
	slices.Sort(keys)
	for _, key := range keys {
		if kind, ours := kinds[key]; ours && !kind.is(values[key]) {
			return flaw.New("%s is to be %s", key, kind)
		}
		if list, ok := values[key].([]any); ok && !uniform(list) {
			return flaw.New("the list %.80q holds values of different kinds", key)
		}
	}
	return nil
}

func (k Kind) is(v any) (ok bool) {
	switch k {
	case Text:
		_, ok = v.(string)
	case YesNo:
		_, ok = v.(bool)
	case Count:
		_, ok = v.(float64)
	case Texts:
		var list []any
		list, ok = v.([]any)
		ok = ok && !slices.ContainsFunc(list, func(v any) bool { return !Text.is(v) })
	}
	return ok
}

// uniform reports whether all values of a list are of the kind of the first,
// which is what the toolkit takes them for.
func uniform(list []any) bool {
	for _, kind := range []Kind{Text, YesNo, Count} {
		if len(list) > 0 && kind.is(list[0]) {
			return !slices.ContainsFunc(list, func(v any) bool { return !kind.is(v) })
		}
	}
	return true
}

// Aside is Check, after which the toolkit can read what is at path: a file
// that fails is renamed, with the word "broken" and the time in its name.
// It returns what is to be said of that, "" if all is well. An error says that
// the file could not be moved, and that the program had better not read it.
func Aside(path string, kinds map[string]Kind, now time.Time) (said string, err error) {
	if path == "" {
		return "", nil
	}
	fault := Check(path, kinds)
	if fault == nil {
		return "", nil
	}
	kept, err := atomicfile.Aside(path, now)
	if err != nil {
		return "", flaw.New("preferences in %s cannot be read (%v), nor put aside: %v", path, fault, err)
	}
	return fmt.Sprintf("Your preferences cannot be read (%v). The window starts with the usual look and no recent files. The old file is kept as %s.", fault, kept), nil
}
