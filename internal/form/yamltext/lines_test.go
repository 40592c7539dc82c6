package yamltext

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gopkg.in/yaml.v3"
)

// breaks are those of YAML 1.1, chapter 5.4, and pairs of them.
var breaks = []string{"\n", "\r\n", "\r", "\u0085", "\u2028", "\u2029", "\r\r\n", "\n\r"}

func TestALineIsWhatTheParserCounts(t *testing.T) {
	for _, first := range breaks {
		for _, second := range breaks {
			for _, before := range []string{"", "\ufeff", "# é" + first} {
				text := before + "a: é" + first + "b: \"x" + second + "y\" # c" + second + "c: {d: 漢, e: 'f'}" + first
				n, err := Parse([]byte(text))
				require.NoError(t, err, "%q", text)
				for i := 0; i < len(n.Content); i += 2 {
					found(t, text, n.Content[i])
				}
				inner := n.Content[5].Content
				found(t, text, inner[1])
				at, ok := LinesOf([]byte(text)).Offset(inner[3].Line, inner[3].Column)
				require.True(t, ok, "%q", text)
				assert.Equal(t, "'f'", text[at:at+3], "%q", text)
				assert.True(t, EndsWithBreak([]byte(text)))
			}
		}
	}
	assert.False(t, EndsWithBreak([]byte("a")))
	assert.False(t, EndsWithBreak(nil))
}

// found asserts that the plain scalar n stands in text where the parser says.
func found(t *testing.T, text string, n *yaml.Node) {
	t.Helper()
	at, ok := LinesOf([]byte(text)).Offset(n.Line, n.Column)
	require.True(t, ok, "%q", text)
	assert.True(t, strings.HasPrefix(text[at:], n.Value), "%q in %q", n.Value, text)
}

func TestUnixLinesReadAlike(t *testing.T) {
	for _, b := range breaks {
		text := "a: \"x" + b + b + "y\"" + b + "b: |" + b + "  z" + b + "  w" + b
		var was, is any
		require.NoError(t, yaml.Unmarshal([]byte(text), &was))
		require.NoError(t, yaml.Unmarshal(Unix([]byte(text)), &is))
		assert.Equal(t, was, is, "%q", text)
	}
	assert.Equal(t, "a\n\nb\u2028", string(Unix([]byte("a\r\r\nb\u2028"))))
	assert.Equal(t, "x\r\ny\r\n", string(LikeIn([]byte("a\r\nb\r\nc\n"), []byte("x\ny\n"))), "as most lines end")
	assert.Equal(t, "x\ry\r", string(LikeIn([]byte("a\rb"), []byte("x\ny\n"))))
	assert.Equal(t, "x\ny\n", string(LikeIn(nil, []byte("x\ny\n"))))
}

// What a text says does not depend on how far from its beginning a mark stands.
func TestAMarkWithinATextIsASignLikeAnyOther(t *testing.T) {
	for n := range 1200 {
		text := "a: " + strings.Repeat("x", n) + "\nb: \"\ufeff\" # p\ufeffe\nc: \ufeffd\ne: f\ng:\n  h: i\n"
		root, err := Parse([]byte(text))
		require.NoError(t, err, n)
		var got []string
		for i := 2; i < 8; i++ {
			got = append(got, root.Content[i].Value)
		}
		require.Equal(t, []string{"b", "\ufeff", "c", "\ufeffd", "e", "f"}, got, n)
		require.Equal(t, "# p\ufeffe", root.Content[3].LineComment, n)
	}
}

func FuzzLines(f *testing.F) {
	for _, b := range breaks {
		f.Add([]byte("a: b" + b + "c: \"d" + b + "e\"" + b + "# f" + b))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		lines := LinesOf(data)
		for i := 1; i <= lines.Count(); i++ {
			start := lines.Start(i)
			if start > lines.Start(i+1) {
				t.Fatalf("line %d ends before it begins", i)
			}
			if at, ok := lines.Offset(i, 1); ok && (at != start || lines.Of(at) != i) {
				t.Fatalf("line %d begins at %d and at %d, of line %d", i, start, at, lines.Of(at))
			}
		}
		if utf8.Valid(data) && utf8.Valid(Unix(data)) != true {
			t.Fatal("the text is no UTF-8 any more")
		}
		if n, err := Parse(data); n == nil && err != nil && err.Error() == "" {
			t.Fatal("an error that says nothing")
		}
	})
}
