package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The keys are promises: each is there, with a number where the design has one.
func TestProcessTellsWhatItPromises(t *testing.T) {
	demos, err := filepath.Glob("../../assets/demos/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, demos)
	for _, demo := range demos {
		text, err := os.ReadFile(demo)
		require.NoError(t, err)
		code, out, stderr := newKitchen(t).run(string(text), "process", "-", "--json")
		require.Zero(t, code, stderr)
		var p map[string]any
		require.NoError(t, json.Unmarshal([]byte(out), &p))
		for group, keys := range map[string][]string{
			"syrup":    {"boiling_point_c", "solids_percent", "solids_low_percent", "solids_high_percent", "water_left_g", "water_boiled_off_g", "minutes"},
			"foam_mix": {"adiabatic_c", "with_bowl_c", "peak_c", "peak_low_c", "peak_high_c", "minutes_above_60_c", "log_reduction_low", "log_reduction_high"},
			"custard":  {"from_c", "to_c", "curdles_c", "cool_minutes"},
			"eggs":     {"crack", "yolks_used", "whites_used", "yolks_left", "whites_left"},
		} {
			of := p[group].(map[string]any)
			for _, k := range keys {
				assert.IsType(t, 0.0, of[k], "%s: %s.%s", demo, group, k)
			}
		}
		custard := p["custard"].(map[string]any)
		assert.Contains(t, custard, "starch_needs_c")
		assert.Nil(t, custard["starch_needs_c"], "no demo has starch")
		assert.Greater(t, p["dishes"], 0.0)
		assert.IsType(t, map[string]any{}, p["cost"])
		assert.NotEmpty(t, p["cautions"])
		for _, c := range p["cautions"].([]any) {
			for _, k := range []string{"code", "title", "text"} {
				assert.Contains(t, c, k)
			}
		}
		steps := p["steps"].([]any)
		require.NotEmpty(t, steps)
		grams := 0.0
		for _, x := range steps {
			s := x.(map[string]any)
			for k, like := range map[string]any{"title": "", "text": "", "minutes": 0.0, "hands_on_minutes": 0.0, "uses": []any{}, "ingredients": []any{}} {
				assert.IsType(t, like, s[k], "%s: %s", demo, k)
			}
			for _, i := range s["ingredients"].([]any) {
				in := i.(map[string]any)
				assert.NotEmpty(t, in["id"])
				grams += in["grams"].(float64)
			}
		}
		code, out, stderr = newKitchen(t).run(string(text), "evaluate", "-", "--json")
		require.Zero(t, code, stderr)
		var e struct{ Lines []struct{ Grams float64 } }
		require.NoError(t, json.Unmarshal([]byte(out), &e))
		for _, l := range e.Lines {
			grams -= l.Grams
		}
		assert.InDelta(t, 0, grams, 1e-6, "the ingredients over all steps are the lines")
	}
}

func TestPlanWritesEachOfItsForms(t *testing.T) {
	dir := t.TempDir()
	for _, form := range []string{"plan.ics", "plan.md", "plan.json"} {
		for _, ask := range []string{"--serve-at", "--start-at"} {
			file := filepath.Join(dir, form)
			code, _, stderr := newKitchen(t).run("", "plan", "quay.yaml", ask, "2026-11-29T15:00:00+01:00", "-o", file)
			require.Zero(t, code, stderr)
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			assert.Greater(t, len(text), 1000)
		}
	}
	code, _, stderr := newKitchen(t).run("", "plan", "quay.yaml", "--serve-at", "2026-11-29T15:00:00+01:00", "--hours", "9-17")
	assert.Equal(t, exitUsage, code)
	assert.Contains(t, stderr, "7:00-22:30")
}
