package report

import (
	"bytes"
	"context"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// A phase that no tub holds stands in the file, and nowhere in what the tub
// comes to: it would be judged and compared though nobody eats it.
func TestAPhaseInNoTubIsNeitherJudgedNorCompared(t *testing.T) {
	m := model.New(market.Library(t))
	for _, basis := range []design.Basis{design.BasisTubs, design.BasisAsWritten} {
		for _, foam := range []float64{0, 100} {
			d := market.Plain()
			d.Blend.FoamVolumePercent, d.Batch.Basis = foam, basis
			r, err := m.Evaluate(d)
			require.NoError(t, err)

			text, err := json.Marshal(Evaluation{design: d, result: &r})
			require.NoError(t, err)
			var got map[string]any
			require.NoError(t, json.Unmarshal(text, &got))
			absent, there := "foam", "dense"
			if foam == 100 {
				absent, there = there, absent
			}
			gone, tub := got[absent].(map[string]any), got["blend"].(map[string]any)
			for _, k := range []string{"hardness", "texture", "initial_freezing_point_c", "water_frozen_percent", "sweetness_sucrose_percent", "scoop_from_c", "density_g_per_ml"} {
				assert.Nil(t, gone[k], "%s, %g %% foam, %s", basis, foam, k)
			}
			for _, k := range []string{"hardness_contrast", "sweetness_contrast", "scoop_contrast_k"} {
				assert.Nil(t, tub[k], "%s, %g %% foam, %s", basis, foam, k)
			}
			for _, k := range []string{"hardness", "scoop_from_c", "scoop_to_c", "sweetness_sucrose_percent"} {
				assert.Equal(t, got[there].(map[string]any)[k], tub[k], "%s, %g %% foam: the tub is that phase, %s", basis, foam, k)
			}
			assert.Equal(t, foam == 0, bytes.Contains(text, []byte(`"milk"`)), "milk is in the custard alone")
			if foam == 0 {
				assert.Nil(t, got["foam"].(map[string]any)["syrup"])
				for _, w := range r.Warnings {
					assert.NotContains(t, w.Where, "foam", "a warning of what nobody eats")
				}
			}
			c := CurveOf("x", "x", &r, []float64{-13})
			assert.Equal(t, foam == 0, c.Points[0].Foam == nil)
			assert.Equal(t, foam == 100, c.Points[0].Dense == nil)

			a, err := sure.Sample(context.Background(), m, d, sure.Options{Kitchens: 20})
			require.NoError(t, err)
			assert.NotContains(t, say.HowOften(&a), "both")
			var b bytes.Buffer
			require.NoError(t, Sure{File: "x", Answer: a}.WriteText(&b))
			assert.NotContains(t, b.String(), "ardness of the "+map[string]string{"foam": "foam", "dense": "custard"}[absent])
			filled, _ := say.TubLines(say.Usual, d, &r)
			assert.NotContains(t, filled, "both")
		}
	}
}

func TestAPhaseThatTheTubDoesNotWantNeedsNoLines(t *testing.T) {
	m := model.New(market.Library(t))
	d := market.Plain()
	d.Blend.FoamVolumePercent, d.Foam.Lines, d.Foam.Syrup.Lines = 0, nil, nil
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	assert.False(t, r.Verdict.Empty)
	for _, w := range r.Warnings {
		assert.NotEqual(t, "phase_empty", w.Code)
	}
	d.Blend.FoamVolumePercent = 40
	r, err = m.Evaluate(d)
	require.NoError(t, err)
	assert.True(t, r.Verdict.Empty)
}
