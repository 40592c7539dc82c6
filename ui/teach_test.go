package ui

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/batch"
)

// The bench computes as the batches beside its file have shown, from the moment that they
// are written down, and no more once another design is open.
func TestTheBenchComputesAsTheBatchesHaveShown(t *testing.T) {
	b := newBed(t)
	hard := func() float64 { b.frame(); b.frame(); return b.Result().Dense.YieldKPa.Value }
	before := hard()
	path := filepath.Join(t.TempDir(), "quay.yaml")
	require.NoError(t, b.Session.Save(path, false))
	kPa := b.Result().Dense.YieldKPa.Value
	for range 3 {
		require.NoError(t, batch.Append(batch.PathOf(path), batch.Batch{ID: "a", Ate: batch.Ate{Hardness: "very hard"}, Forecast: batch.Forecast{HardnessKPa: batch.Of(kPa)}}, nil))
	}
	b.notebook.Read()
	assert.Greater(t, hard(), 1.1*before)
	b.useLibrary(b.library())
	assert.Greater(t, hard(), 1.1*before, "also with another library")
	b.Session.Start(b.Design())
	assert.Equal(t, before, hard())
}
