package report

import (
	"context"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

func planned(t *testing.T, d design.Design) cold.Answer {
	t.Helper()
	r := evaluated(t, d)
	a, err := cold.Plan(context.Background(), d, &r, cold.Default(), cold.Options{NoPictures: true})
	require.NoError(t, err)
	return a
}

func TestThePlansJSONHasItsKeys(t *testing.T) {
	text, err := json.Marshal(Cold{Answer: planned(t, market.Honey())})
	require.NoError(t, err)
	var got struct {
		Harden struct {
			CoreToC *float64 `json:"core_to_c"`
			Hours   *float64
		}
		Still struct {
			Stirs []map[string]*float64
		} `json:"still_freeze"`
		Window  map[string]any `json:"serving_window"`
		Storage map[string]any
	}
	require.NoError(t, json.Unmarshal(text, &got))
	require.NotNil(t, got.Harden.CoreToC)
	require.NotNil(t, got.Harden.Hours)
	require.NotEmpty(t, got.Still.Stirs)
	for _, key := range []string{"minute", "mean_c", "edge_c", "water_frozen_percent"} {
		assert.NotNil(t, got.Still.Stirs[0][key], key)
	}
	for _, key := range []string{"from_minutes", "to_minutes", "ring_c", "core_c"} {
		assert.IsType(t, 0.0, got.Window[key], key)
	}
	assert.NotEmpty(t, got.Storage)
}
