package main

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestPastedLinesBecomeOneObjectEach(t *testing.T) {
	var out, complaints bytes.Buffer
	s := &shell{in: strings.NewReader("Custard:\n250 g whole milk\n\n2-3 tbsp honey\n3 Eigelb\n"), out: &out, err: &complaints}
	require.Equal(t, exitFine, run(s, []string{"lines", "-"}), complaints.String())
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	require.Len(t, lines, 3)
	assert.Equal(t, `{"text":"250 g whole milk","ingredient":"milk_whole","grams":250,"how":"as weighed","doubt":null}`, lines[0])
	for i, want := range map[int]any{1: "honey", 2: nil} {
		var l map[string]any
		require.NoError(t, json.Unmarshal([]byte(lines[i]), &l))
		assert.Equal(t, want, l["ingredient"])
		assert.Nil(t, l["grams"])
		assert.NotNil(t, l["doubt"])
	}
	s.in = strings.NewReader(strings.Repeat("x", mostText+1))
	assert.Equal(t, exitInput, run(s, []string{"lines", "-"}))
	assert.Equal(t, exitUsage, run(s, []string{"lines", "-", "--system", "Moon"}))
}
