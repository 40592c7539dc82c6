package keeping

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/work/designfile"
	"ripplewright/internal/work/journal"
)

func TestDesignsThatAnOlderProgramRescuedAreOffered(t *testing.T) {
	old := t.TempDir()
	text, err := (&designfile.File{}).Encode(market.Honey())
	require.NoError(t, err)
	at := time.Date(2026, 11, 20, 18, 30, 0, 0, time.UTC)
	for name, data := range map[string][]byte{
		"rescued 2026-11-20 183000.yaml": text, "rescued 2026-11-21 183000.yaml": []byte("broken"), "report 2026-11-20 183000.txt": text,
	} {
		require.NoError(t, os.WriteFile(filepath.Join(old, name), data, 0o600))
		require.NoError(t, os.Chtimes(filepath.Join(old, name), at, at))
	}
	f := journal.At(filepath.Join(t.TempDir(), "journal"))
	Adopt(f, old)
	Adopt(f, old)
	Adopt(f, filepath.Join(old, "not there"))
	all := Waiting(f, market.Library(t))
	require.Len(t, all, 1)
	assert.Equal(t, "Burnt honey", all[0].Work.Name)
	assert.Equal(t, NoFile, all[0].File)
	assert.True(t, at.Equal(all[0].At))
	left, err := os.ReadDir(old)
	require.NoError(t, err)
	assert.Len(t, left, 2, "what is no design stays")
}
