package rescue

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestAReportIsWrittenWhereThereIsAFolder(t *testing.T) {
	noon := time.Date(2026, 11, 27, 12, 0, 0, 0, time.UTC)
	path, err := At(filepath.Join(t.TempDir(), "not", "there", "yet")).Report(noon, "what happened")
	require.NoError(t, err)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "what happened", string(text))
	_, err = At("").Report(noon, "x")
	require.Error(t, err)
}
