package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestCardsAndLabelsAreWhatTheirEndingSays(t *testing.T) {
	begins := map[string]string{".pdf": "%PDF-", ".png": "\x89PNG", ".md": "# ", ".txt": ""}
	k := newKitchen(t)
	for command, endings := range map[string][]string{"card": {".pdf", ".png", ".md"}, "label": {".pdf", ".png", ".txt"}} {
		for _, ending := range endings {
			to := filepath.Join(k.dir, command+ending)
			code, out, err := k.run("", command, "quay.yaml", "-o", to, "--region", "eu")
			require.Equal(t, exitFine, code, "%s %s: %s", command, ending, err)
			assert.Empty(t, out)
			data, readErr := os.ReadFile(to)
			require.NoError(t, readErr)
			assert.True(t, bytes.HasPrefix(data, []byte(begins[ending])), "%s begins %.10q", to, data)
		}
	}
}
