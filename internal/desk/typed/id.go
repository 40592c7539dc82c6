package typed

import (
	"strings"

	"ripplewright/internal/form/fold"
)

// ID makes an id from a name: its letters without accents, its digits, and _ for
// what lies between. It may be empty.
func ID(name string) string {
	return strings.Join(strings.FieldsFunc(fold.Text(name), func(r rune) bool {
		return (r < 'a' || r > 'z') && (r < '0' || r > '9')
	}), "_")
}
