package cold

import (
	"context"
	"errors"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"os"
	"ripplewright/internal/check"
	"ripplewright/internal/check/market"
	"ripplewright/internal/form/schemaline"
	"strings"
)

func TestBuiltInKitchensAreValidAndFound(t *testing.T) {
	for _, p := range BuiltIn() {
		assert.NoError(t, p.Validate(), p.Name)
		got, err := Find(BuiltIn(), p.Name)
		require.NoError(t, err)
		assert.Equal(t, p, got)
	}
	p, err := Find(BuiltIn(), "")
	require.NoError(t, err)
	assert.Equal(t, Default(), p)
	_, err = Find(BuiltIn(), "moon base")
	var unknown *UnknownProfileError
	require.ErrorAs(t, err, &unknown)
	assert.Len(t, unknown.Known, len(BuiltIn()))
}

func TestAnOwnKitchenReplacesABuiltIn(t *testing.T) {
	own := Default()
	own.Freezer.AirC = -21
	all := With([]Profile{own})
	assert.Len(t, all, len(BuiltIn()))
	assert.Equal(t, own, all[0])
}

func TestProfilesSurviveTheirFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "deep", "profiles.yaml")
	none, err := LoadProfiles(path)
	require.NoError(t, err)
	assert.Empty(t, none)
	list := BuiltIn()
	list[1].Counter.Factor, list[1].Counter.Measured = 1.23456789, "scooped well after 12 min"
	require.NoError(t, SaveProfiles(path, list, nil))
	got, err := LoadProfiles(path)
	require.NoError(t, err)
	assert.Equal(t, list, got)
}

func TestMistakesInAFileNameTheirLineAndKey(t *testing.T) {
	for name, c := range map[string]struct {
		text string
		want FieldError
	}{
		"unknown key":  {"version: 1\nprofiles:\n  - name: Quay\n    freezer: {airc: -18}\n", FieldError{Line: 4, Profile: "Quay", Path: "freezer.airc"}},
		"out of range": {"version: 1\nprofiles:\n  - name: Quay\n    counter:\n      air_c: 80\n", FieldError{Line: 5, Profile: "Quay", Path: "counter.air_c"}},
		"no number":    {"version: 1\nprofiles:\n  - name: Quay\n    freezer: {air_c: cold}\n", FieldError{Line: 4, Profile: "Quay", Path: "freezer.air_c"}},
		"no name":      {"version: 1\nprofiles:\n  - freezer: {air_c: -18}\n", FieldError{Line: 3, Path: "name"}},
		"twice":        {"version: 1\nprofiles:\n  - name: Quay\n  - name: quay\n", FieldError{Line: 4, Profile: "quay", Path: "name"}},
		"a list":       {"version: 1\nprofiles:\n  - name: Quay\n    freezer: [1]\n", FieldError{Line: 4, Profile: "Quay", Path: "freezer"}},
	} {
		_, err := DecodeProfiles([]byte(c.text))
		var got *FieldError
		require.ErrorAs(t, err, &got, name)
		c.want.Err = got.Err
		assert.Equal(t, c.want, *got, name)
	}
	_, err := DecodeProfiles([]byte("version: 9\n"))
	assert.ErrorContains(t, err, "version 9")
}

func TestSettingsLeftOutAreTheDefaults(t *testing.T) {
	got, err := DecodeProfiles([]byte("version: 1\nprofiles:\n  - name: Quay\n    counter: {air_c: 26}\n"))
	require.NoError(t, err)
	want := Default()
	want.Name, want.About, want.Counter.AirC = "Quay", "", 26
	assert.Equal(t, []Profile{want}, got)
}

func FuzzDecodeProfiles(f *testing.F) {
	text, err := EncodeProfiles(BuiltIn())
	require.NoError(f, err)
	f.Add(text)
	f.Add([]byte("version: 1\nprofiles:\n  - name: Quay\n    freezer: {air_c: .nan}\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		list, err := DecodeProfiles(data)
		if err != nil {
			return
		}
		for _, p := range list {
			assert.NoError(t, p.Validate())
		}
		text, err := EncodeProfiles(list)
		require.NoError(t, err)
		again, err := DecodeProfiles(text)
		require.NoError(t, err)
		assert.Equal(t, list, again)
	})
}

func TestCalibrationUndoesTheFactor(t *testing.T) {
	check.Long(t)
	d := market.Honey()
	r := evaluated(t, d)
	for _, factor := range []float64{0.5, 1, 1.7} {
		p := Default()
		p.Freezer.Factor, p.Counter.Factor = factor, factor
		a := planned(t, d, p)

		got, err := Calibrate(context.Background(), d, r, Default(), Measurement{Kind: CoreAt, Minutes: 60 * a.Harden.Hours.Value, CoreC: a.Harden.CoreToC, StartC: a.Harden.StartC})
		require.NoError(t, err)
		assert.InEpsilon(t, factor, got.Freezer.Factor, 0.002)
		assert.Equal(t, 1.0, got.Counter.Factor)
		b := planned(t, d, got)
		assert.Less(t, b.Harden.Hours.High-b.Harden.Hours.Low, a.Harden.Hours.High-a.Harden.Hours.Low, "a measured kitchen has a narrower band")

		// The ring's middle of the band comes at some time between From and To.
		got, err = Calibrate(context.Background(), d, r, Default(), Measurement{Kind: ScoopedWell, Minutes: (a.Counter.FromMinutes.Value + a.Counter.ToMinutes.Value) / 2})
		require.NoError(t, err)
		assert.InEpsilon(t, factor, got.Counter.Factor, 0.35)
		assert.NotEmpty(t, got.Counter.Measured)
	}
}

func TestACalibrationOutOfReasonIsRefused(t *testing.T) {
	d := market.Honey()
	r := evaluated(t, d)
	_, err := Calibrate(context.Background(), d, r, Default(), Measurement{Kind: ScoopedWell, Minutes: 600})
	var refused *CalibrationError
	require.ErrorAs(t, err, &refused)
	assert.Less(t, refused.ShortestMinutes, refused.LongestMinutes)
	_, err = Calibrate(context.Background(), d, r, Default(), Measurement{Kind: CoreAt, Minutes: 60, CoreC: -25, StartC: -5})
	assert.Error(t, err)
	_, err = Calibrate(context.Background(), d, r, Default(), Measurement{Kind: ScoopedWell})
	assert.False(t, err == nil || errors.As(err, &refused))
}

// What a hand wrote around the kitchens stays, whatever is kept, renamed or forgotten.
func TestSavingKitchensKeepsAHandsWords(t *testing.T) {
	path := filepath.Join(t.TempDir(), "profiles.yaml")
	require.NoError(t, os.WriteFile(path, []byte("# my kitchens\nversion: 1\nprofiles:\n  # down by the sea\n  - name: Quay\n    freezer: {air_c: -21} # the old one\n  - name: Loft\n"), 0o644))
	list, err := LoadProfiles(path)
	require.NoError(t, err)
	attic := Default()
	attic.Name = "Attic"
	for _, change := range []func(){
		func() { list = append(list, attic) },
		func() { list[1].Counter.AirC = 25 },
		func() { list[1].Name = "Upper loft" },
		func() { list = list[:2] },
		func() { list = []Profile{list[0], attic} },
		func() { list = list[:1] },
	} {
		change()
		require.NoError(t, SaveProfiles(path, list, func(schemaline.Kind) string { return "file:///k.json" }))
		got, err := LoadProfiles(path)
		require.NoError(t, err)
		require.Equal(t, list, got)
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		for _, once := range []string{"# my kitchens", "# down by the sea", "# the old one", schemaline.Prefix + "file:///k.json\n"} {
			assert.Equal(t, 1, strings.Count(string(text), once), "%s: %s", once, text)
		}
	}
}
