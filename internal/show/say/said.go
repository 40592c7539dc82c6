package say

import (
	"fmt"
	"io"
	"strings"

	"ripplewright/internal/form/flaw"
)

// Said is a remark in the maker's language, with its decimal comma: in English its
// own text, "" of nil.
func Said(r *flaw.Remark) string {
	if r == nil {
		return ""
	}
	args := r.Args
	if WithComma() {
		args = make([]any, len(r.Args))
		for i, a := range r.Args {
			if v, ok := a.(float64); ok {
				a = decimal(v)
			}
			args[i] = a
		}
	}
	return told(r.Message, args)
}

// SaidAll is several.
func SaidAll(all flaw.Remarks) []string {
	out := make([]string, len(all))
	for i, r := range all {
		out[i] = Said(r)
	}
	return out
}

// worded is an argument that is made of words of the catalogue.
func worded(a any) string {
	switch a := a.(type) {
	case flaw.Word:
		return Of(string(a))
	case flaw.Opening:
		return Capital(Of(string(a)))
	case *flaw.Remark:
		return Said(a)
	case flaw.And:
		words := make([]string, len(a))
		for i, w := range a {
			words[i] = worded(w)
		}
		return List(words)
	}
	return fmt.Sprint(a)
}

// decimal is a figure that any verb of fmt writes with a decimal comma.
type decimal float64

// Format implements fmt.Formatter.
func (c decimal) Format(f fmt.State, verb rune) {
	io.WriteString(f, strings.Replace(fmt.Sprintf(fmt.FormatString(f, verb), float64(c)), ".", ",", 1))
}
