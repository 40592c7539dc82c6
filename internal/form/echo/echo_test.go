package echo

import (
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
)

func TestWhatIsRepeatedIsShortAndHarmless(t *testing.T) {
	assert.Equal(t, `"520g"`, Quoted("520g"))
	assert.Equal(t, "Café Möwe", Plain("Café Möwe"))
	assert.Equal(t, `"a\u202eb\x1b[31m"`, Quoted("a\u202eb\x1b[31m"), "shown as escapes")
	assert.Equal(t, "a�b�[31m�", Plain("a\u202eb\x1b[31m\n"))
	assert.Equal(t, strings.Repeat("é", Most), Plain(strings.Repeat("é", Most)), "just short enough")
	assert.Equal(t, strings.Repeat("é", Most-1)+"…", Plain(strings.Repeat("é", 10000)))
}

func FuzzPlain(f *testing.F) {
	f.Add("a\x00\xff\u2028")
	f.Fuzz(func(t *testing.T, s string) {
		for _, got := range []string{Plain(s), Quoted(s)} {
			if strings.ContainsFunc(got, func(r rune) bool { return !unicode.IsPrint(r) }) {
				t.Errorf("%q holds a sign that is not printable", got)
			}
		}
		if n := utf8.RuneCountInString(Plain(s)); n > Most {
			t.Errorf("%d characters", n)
		}
	})
}
