package headed

import (
	"bytes"
	"strings"
	"testing"
	"testing/quick"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestWhatIsPutIsTaken(t *testing.T) {
	require.NoError(t, quick.Check(func(note, when string, text []byte) bool {
		// A text that is not UTF-8 comes back as its quotes hold it.
		data := Put(text, Word{"kept", when}, Word{"note", note})
		values, rest, ok := Take(data, "kept", "note")
		return ok && values[0] == when && values[1] == note && bytes.Equal(rest, text)
	}, nil))
}

func TestEachWordStaysACommentOfOneLine(t *testing.T) {
	hostile := "a\nripplewright: 2\r\x1b[31m\u2028\u0085\x00b"
	head := string(Put(nil, Word{"note", hostile}))
	assert.Equal(t, 1, strings.Count(head, "\n"))
	assert.NotContains(t, head, "\r")
	assert.NotContains(t, head, "\x1b")
	assert.NotContains(t, head, "\u2028")
	assert.NotContains(t, head, "\u0085")
}

func TestOtherTextsHaveNoHead(t *testing.T) {
	for name, data := range map[string]string{
		"nothing":         "",
		"a text":          "ripplewright: 1\n",
		"another key":     "# node: \"a\"\n# kept: \"b\"\n",
		"another order":   "# note: \"a\"\n# kept: \"b\"\n",
		"one too few":     "# kept: \"b\"\n",
		"no quotes":       "# kept: b\n# note: a\n",
		"other quotes":    "# kept: `b`\n# note: 'a'\n",
		"an open quote":   "# kept: \"b\n# note: \"a\"\n",
		"a line cut off":  "# kept: \"b\"\n# note: \"a\"",
		"nothing to read": "# kept: \n# note: \n",
	} {
		_, text, ok := Take([]byte(data), "kept", "note")
		assert.False(t, ok, name)
		assert.Equal(t, data, string(text), name)
	}
	values, text, ok := Take([]byte("# kept: \"b\"\r\n# note: \"\"\r\nx"), "kept", "note")
	assert.True(t, ok, "line ends as another system writes them")
	assert.Equal(t, []string{"b", ""}, values)
	assert.Equal(t, "x", string(text))
}

func FuzzTake(f *testing.F) {
	f.Add([]byte("# kept: \"2026-07-04\"\n# note: \"a\\nb\"\nripplewright: 1\n"))
	f.Add([]byte("# kept: \"\n# note:"))
	f.Fuzz(func(t *testing.T, data []byte) {
		values, text, ok := Take(data, "kept", "note")
		if !ok {
			return
		}
		again, rest, ok := Take(Put(text, Word{"kept", values[0]}, Word{"note", values[1]}), "kept", "note")
		if !ok || again[0] != values[0] || again[1] != values[1] || !bytes.Equal(rest, text) {
			t.Fatalf("%q came back as %q, %q", data, again, rest)
		}
	})
}
