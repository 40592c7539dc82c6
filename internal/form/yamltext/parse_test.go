package yamltext

import (
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// bombs are texts of nearly the longest size that have held up readers.
func bombs() map[string]string {
	fill := func(head, unit string) string { return head + strings.Repeat(unit, (MaxSize-len(head))/len(unit)) }
	nest := strings.Repeat("[", 9000) + "1" + strings.Repeat("]", 9000)
	var stairs strings.Builder
	for i := 0; stairs.Len() < MaxSize-1100; i++ {
		stairs.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return map[string]string{
		"lists in lists": fill("x:\n", " - "+nest+"\n"), "brackets": fill("", "["), "dashes": fill("", "- "), "stairs": stairs.String(),
		"list": fill("", "-\n"), "flow list": fill("[", "a,") + "]", "flow groups": fill("{", "a,"), "empty lists": fill("[", "[],"),
		"comments": fill("", "#\n"), "items with comments": fill("", "- #\n"), "comments before items": fill("", "#a\n- b\n\n"),
		"keys": fill("", "a: 1\n"), "anchors": fill("[", "&a b,"), "aliases": fill("[&a x", ",*a ") + "]", "questions": fill("", "? "),
		"documents": fill("", "---\n"), "tags": fill("", "- !a b\n"), "block": fill("a: |\n", " x\n"), "one long word": fill("a: ", "x"),
		"folded": fill("a: ", "x\n "), "quoted": fill("a: \"", "\\n"), "blanks": fill("a:", " "), "line breaks": fill("", "\r"), "broken lines": fill("", "a: [\n"),
		"broken late": fill("", "{a,b,c,d,e,f,g,h,i,j,k,l,m,n,o,p,q,r,s,t}: x\n") + "\n]",
	}
}

// read parses text and returns how many bytes that allocated.
func read(text string) (uint64, error) {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	_, err := Parse([]byte(text))
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc, err
}

func TestNoTextTakesMuchToRead(t *testing.T) {
	for name, text := range bombs() {
		require.LessOrEqual(t, len(text), MaxSize, name)
		took, _ := read(text)
		assert.Less(t, took, uint64(128<<20), name)
	}
	_, err := read(strings.Repeat("[", MaxSize+1))
	assert.ErrorContains(t, err, "longer than", "not even looked at")
}

func TestWhatStandsTooDeepIsRefusedWithItsLine(t *testing.T) {
	in := func(n int) string { return "x:\n  " + strings.Repeat("[", n-1) + strings.Repeat("]", n-1) + "\n" }
	_, err := Parse([]byte(in(MaxDepth)))
	assert.NoError(t, err)
	_, err = Parse([]byte(in(MaxDepth + 2)))
	assert.EqualError(t, err, "line 2: lists and groups stand more than 32 deep here")
}

func TestListedReadsTheFormOfOwnFiles(t *testing.T) {
	list, err := Listed([]byte("version: 1\nthings: [a, b]\n"), 1, "things")
	require.NoError(t, err)
	assert.Len(t, list, 2)
	for text, want := range map[string]string{
		"version: 2\n": "line 1: version: the file has version 2, this program knows 1", "version: x\n": `line 1: version: "x" is not a whole number`,
		"things: []\nother: 1\n": "line 2: other: unknown key; known here are version, things", "things: []\nthings: []\n": "line 2: things: is given twice",
		"- a\n": "line 1: the file begins with version: 1 and a list under things:", "things: a\n": "line 1: things: must be a list",
		"things: [" + strings.Repeat("a,", MaxListed+1) + "]\n": "line 1: things: 1001 entries are more than the 1000 that a file may have",
	} {
		_, err := Listed([]byte(text), 1, "things")
		assert.EqualError(t, err, want)
	}
	for _, text := range []string{"", "# none\n", "version: 1\n", "things:\n"} {
		list, err := Listed([]byte(text), 1, "things")
		assert.NoError(t, err)
		assert.Empty(t, list)
	}
}

func BenchmarkParseBombs(b *testing.B) {
	for name, text := range bombs() {
		b.Run(strings.ReplaceAll(name, " ", "_"), func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				_, _ = Parse([]byte(text))
			}
		})
	}
}
