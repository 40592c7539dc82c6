package schemaline

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func at(kind Kind) string { return "file:///quay/" + string(kind) + ".json" }

func TestTheLineStandsBeforeTheTextOnce(t *testing.T) {
	const line = "# yaml-language-server: $schema=file:///quay/prices.json"
	for text, want := range map[string]string{
		"":                                 line + "\n",
		"a: 1\n":                           line + "\na: 1\n",
		"# of the stall\na: 1\n":           line + "\n# of the stall\na: 1\n",
		"a: 1\r\nb: 2\r\n":                 line + "\r\na: 1\r\nb: 2\r\n",
		"\ufeffa: 1\n":                     "\ufeff" + line + "\na: 1\n",
		"a: |\n  $schema: x\n":             line + "\na: |\n  $schema: x\n",
		"{a: 1}\n":                         line + "\n{a: 1}\n",
		`{"a": 1}`:                         `{"a": 1}`,
		"# $schema: ours.json\na: 1\n":     "# $schema: ours.json\na: 1\n",
		"\ufeff#$schema=ours.json\na: 1\n": "\ufeff#$schema=ours.json\na: 1\n",
		"a: 1\n#yaml-language-server: $schema=x\n": "a: 1\n#yaml-language-server: $schema=x\n",
	} {
		got := string(Schemas(at).Head([]byte(text), Prices))
		assert.Equal(t, want, got, "%q", text)
		assert.Equal(t, got, string(Schemas(at).Head([]byte(got), Design)), "a second time")
		assert.True(t, Same([]byte(text), []byte(got)), "%q", text)
	}
	assert.False(t, Same([]byte("a: 1\n"), []byte("a: 2\n")))
}

func TestWhereNothingIsKnownNothingIsSaid(t *testing.T) {
	text := []byte("a: 1\n")
	assert.Equal(t, text, Schemas(nil).Head(text, Design))
	for _, bad := range []string{"", "file:///a b", "file:///a\nname: twice", "file:///a\u2028b: 1"} {
		assert.Equal(t, text, Schemas(func(Kind) string { return bad }).Head(text, Design), "%q", bad)
	}
}
