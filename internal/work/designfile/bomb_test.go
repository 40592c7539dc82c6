package designfile

import (
	"fmt"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// bombs are files of nearly the longest size that have held up readers, with
// the beginning of what each is told.
func bombs() map[string]string {
	const head = "ripplewright: 1\ndense: {}\nfoam:\n"
	fill := func(head, unit string) string { return head + strings.Repeat(unit, (MaxSize-len(head)-9)/len(unit)) }
	nest := strings.Repeat("[", 9000) + "1" + strings.Repeat("]", 9000)
	return map[string]string{
		fill(head+"x:\n", " - "+nest+"\n"):                                                               "x:5: lists and groups stand more than 32 deep here",
		fill(head+"  lines:\n", "  - {yolks: 1}\n"):                                                      "x:505: foam.lines: ",
		fill(head+"  lines: [", "{a: 1},") + "]\n":                                                       "x:4: foam.lines: ",
		fill(head+"ingredients:\n", "- {id: a}\n"):                                                       "x:505: ingredients: ",
		fill(head, "a: 1\n"):                                                                             "x:5: a: duplicate key",
		fill(head+"  lines: [{"+strings.Repeat("a", 1000)+": ", "b") + "}]\n":                            "x:4: foam.lines[0].aaa",
		head + "x: {" + many(MaxSize/10, func(i int) string { return fmt.Sprintf("k%06d,", i) }) + "}\n": "x:4: x: unknown key",
		head + "  lines: [" + many(design.MaxLines, func(i int) string {
			return fmt.Sprintf("{ingredient: %s%d, grams: 1},", strings.Repeat("q", 700), i)
		}) + "]\n": "x:4: foam.lines[0].ingredient: no ingredient",
		fill(head+"name: \"", "a") + "\"\n":                    "x:4: ",
		strings.Repeat("\r", 1000) + fill(head+"notes: ", "&"): "x:",
	}
}

func many(n int, of func(int) string) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(of(i))
	}
	return b.String()
}

func TestNoFileTakesMuchToReadAndItsErrorsAreShort(t *testing.T) {
	lib := ingredient.NewLibrary([]*ingredient.Ingredient{{ID: "milk_whole"}, {ID: strings.Repeat("q", 70)}})
	for text, want := range bombs() {
		text = text[:min(len(text), MaxSize)]
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := DecodeWith("x", []byte(text), lib)
		runtime.ReadMemStats(&after)
		require.Error(t, err, want)
		assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(128<<20), want)
		said := err.Error()
		assert.Contains(t, said, strings.TrimPrefix(want, "x:"))
		for _, line := range strings.Split(said, "\n") {
			assert.Less(t, len(line), 400, want)
		}
	}
}

func TestAPhaseMayHaveManyLines(t *testing.T) {
	d := design.New()
	for range design.MaxLines {
		d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "sugar", Grams: 1})
	}
	text, err := (&File{}).Encode(d)
	require.NoError(t, err)
	_, err = Decode("x", text)
	require.NoError(t, err)
	_, err = (&File{}).Encode(d.WithLineAdded(design.DensePart, design.Line{Ingredient: "sugar", Grams: 1}))
	assert.ErrorContains(t, err, "501 lines are more than the 500 that a phase may have")
}

func BenchmarkDecodeBombs(b *testing.B) {
	for text, name := range bombs() {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				_, _ = Decode("x", []byte(text[:min(len(text), MaxSize)]))
			}
		})
	}
}
