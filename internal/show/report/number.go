// Package report puts results into words and numbers for other programs and
// for a terminal: one JSON object, or a page of plain text, for each question
// that a maker may ask.
//
// It computes nothing but changes of unit: shares become percent here, and
// only here. What is unknown is null in JSON and a dash in text, never zero.
package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"unicode"
	"unicode/utf16"
)

// Number is a figure in JSON: null where it is NaN or infinite, which stands
// for unknown or for nothing of the kind.
type Number float64

// unknown is the Number that becomes null.
var unknown = Number(math.NaN())

// MarshalJSON returns the shortest digits that read back as n, or null.
func (n Number) MarshalJSON() ([]byte, error) {
	if !n.known() {
		return []byte("null"), nil
	}
	// encoding/json has the ES6 form of floats, which all readers know.
	return json.Marshal(float64(n))
}

func (n Number) known() bool { return !math.IsNaN(float64(n)) && !math.IsInf(float64(n), 0) }

// text returns n with so many decimals, a dash where it is unknown.
func (n Number) text(decimals int) string { return Reads.Number(float64(n), decimals) }

// percent returns a share of 1 as percent.
func percent(share float64) Number { return Number(100 * share) }

// Ends is how low and how high a figure may be, for what the composition
// leaves unknown and the freedoms of the model.
type Ends struct {
	Low  Number `json:"low"`
	High Number `json:"high"`
}

// WriteJSON writes v on one line, or indented for people. Signs that do something
// on a terminal, such as turning the text around, are escaped.
func WriteJSON(w io.Writer, v any, indent bool) error {
	var text bytes.Buffer
	e := json.NewEncoder(&text)
	e.SetEscapeHTML(false)
	if indent {
		e.SetIndent("", "  ")
	}
	if err := e.Encode(v); err != nil {
		return err
	}
	_, err := w.Write(printable(text.Bytes()))
	return err
}

// printable is JSON with an escape for each sign that does not show; such signs
// are in its strings alone.
func printable(text []byte) []byte {
	steers := func(r rune) bool {
		return r > unicode.MaxASCII && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r)) || r == 0x7f
	}
	if bytes.IndexFunc(text, steers) < 0 {
		return text
	}
	var out bytes.Buffer
	for _, r := range string(text) {
		if !steers(r) {
			out.WriteRune(r)
			continue
		}
		for _, unit := range utf16.Encode([]rune{r}) {
			fmt.Fprintf(&out, `\u%04x`, unit)
		}
	}
	return out.Bytes()
}
