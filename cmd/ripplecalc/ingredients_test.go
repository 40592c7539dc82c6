package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheMostUnknownComeFirstWithWhatFollows(t *testing.T) {
	b, err := openBench()
	require.NoError(t, err)
	var text strings.Builder
	require.NoError(t, writeUnknown(&text, b.Library().All(), 10))
	last := 1000
	n := 0
	for _, block := range strings.Split(strings.TrimSpace(text.String()), "\n") {
		id, rest, ok := strings.Cut(block, " (")
		if !ok || strings.HasPrefix(block, " ") {
			continue
		}
		n++
		in, ok := b.Library().Find(id)
		require.True(t, ok, id)
		assert.Contains(t, rest, in.Source)
		assert.LessOrEqual(t, len(in.Unknown()), last)
		last = len(in.Unknown())
	}
	assert.Equal(t, 10, n)
	assert.Contains(t, text.String(), "assumed: only the total of its sugars is known")
	assert.Contains(t, text.String(), "marks as incomplete: Trans Fat")
}
