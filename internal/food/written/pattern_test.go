package written_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A program that reads no recipe compiles no pattern: they are compiled in pattern.go
// alone, and there when they are first asked.
func TestNoPatternIsCompiledBeforeItIsAsked(t *testing.T) {
	files, err := filepath.Glob("*.go")
	require.NoError(t, err)
	for _, file := range files {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		count := strings.Count(string(data), "regexp."+"MustCompile(")
		if file == "pattern.go" {
			assert.Equal(t, 1, count)
			assert.Contains(t, string(data), "sync.OnceValue(func()")
			continue
		}
		assert.Zero(t, count, file)
	}
}
