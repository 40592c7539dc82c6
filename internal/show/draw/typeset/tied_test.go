package typeset

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestNoLineEndsBetweenANumberAndItsUnit(t *testing.T) {
	for s, want := range map[string]string{
		"about 2 to 5 min. It":   "about 2 to 5\u00a0min. It",
		"57 g sugar, 14 g honey": "57\u00a0g sugar, 14\u00a0g honey",
		"at 244 °F, or 4 h":      "at 244\u00a0°F, or 4\u00a0h",
		"2 hours, 3 minutes":     "2 hours, 3 minutes",
	} {
		assert.Equal(t, want, tied(s))
	}
}
