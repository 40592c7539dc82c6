package batch_test

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/batch"
)

func TestADraftIsKeptForEachDesign(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "not", "there", "yet")
	d := batch.DraftsAt(dir)
	assert.Zero(t, d.Of("/quay/a.yaml"))
	b := batch.Batch{FreezerC: batch.Of(-17.5), Words: "Windy\nand cold", Photographs: []string{"/quay/a.jpg"}}
	require.NoError(t, d.Keep("/quay/a.yaml", b))
	named := batch.Batch{ID: "2026-11-28", Ate: batch.Ate{Icy: "fine"}}
	require.NoError(t, d.Keep("/quay/b.yaml", named))
	again := batch.DraftsAt(dir)
	assert.Equal(t, b, again.Of("/quay/a.yaml"))
	assert.Equal(t, named, again.Of("/quay/b.yaml"))

	b.Weighed, b.Made = []string{"half a we"}, "2026-13-"
	require.NoError(t, d.Keep("/quay/a.yaml", b), "while somebody types")
	b.Weighed, b.Made = nil, ""
	assert.Equal(t, b, again.Of("/quay/a.yaml"))

	require.NoError(t, d.Keep("/quay/a.yaml", batch.Batch{}))
	require.NoError(t, d.Keep("/quay/a.yaml", batch.Batch{}))
	assert.Zero(t, again.Of("/quay/a.yaml"))
	assert.NoError(t, batch.DraftsAt("").Keep("/quay/a.yaml", b))
}
