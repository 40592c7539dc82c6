package designfile

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/form/flaw"
	"ripplewright/internal/work/design"
)

func TestFormatNamesEveryKey(t *testing.T) {
	text := Format((*flaw.Remark).String)
	for _, f := range design.Fields() {
		assert.Contains(t, text, "\n"+f.Path+" ")
		for _, c := range f.Choices {
			assert.Contains(t, text, c)
		}
	}
	for _, k := range []string{"dense.lines", "foam.lines", "foam.syrup.lines", "ingredients", "ripplewright"} {
		assert.Contains(t, text, "\n"+k+" ")
	}
	for _, k := range lineKeys {
		assert.Contains(t, text, k+":")
	}
	for _, line := range strings.Split(text, "\n") {
		assert.LessOrEqual(t, utf8.RuneCountInString(line), 101, line)
	}
}
