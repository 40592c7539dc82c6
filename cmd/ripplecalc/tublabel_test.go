package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/work/batch"
)

// ripplecalc runs the program on a copy of the demo, whose name stands for it.
func ripplecalc(t *testing.T, words ...string) (code int, out, errText string) {
	t.Helper()
	k := newKitchen(t)
	text, err := os.ReadFile("../../assets/demos/hazelnut.yaml")
	require.NoError(t, err)
	k.file("hazelnut.yaml", string(text))
	return k.run("", words...)
}

func TestTheLabelOfATub(t *testing.T) {
	file := "hazelnut.yaml"
	all := "name net_quantity ingredients allergens nutrition maker date storage lot origin warnings"
	for _, extra := range [][]string{nil, {"--place", "uk"}, {"--place", "us", "--sale", "scooped"}, {"--place", "de", "--lang", "de,en"}} {
		code, out, errText := ripplecalc(t, append([]string{"label", file, "--json"}, extra...)...)
		require.Zero(t, code, errText)
		var got struct {
			Elements []struct{ Key, State, Text, Section, Source_class string }
			Faces    []struct {
				Name                                 string
				Width_mm, Height_mm, Least_letter_mm float64
				Fits                                 *bool
			}
			Ingredients_text string
		}
		require.NoError(t, json.Unmarshal([]byte(out), &got))
		var keys []string
		for _, e := range got.Elements {
			keys = append(keys, e.Key)
			assert.Contains(t, []string{"filled", "add", "not_needed"}, e.State)
			assert.NotEmpty(t, e.Text, e.Key)
			assert.NotEmpty(t, e.Section, e.Key)
			assert.NotEmpty(t, e.Source_class, e.Key)
		}
		assert.Equal(t, all, strings.Join(keys, " "))
		assert.NotEmpty(t, got.Ingredients_text, "the panel's figures are there too")
		require.NotEmpty(t, got.Faces)
		for _, f := range got.Faces {
			assert.Positive(t, f.Width_mm)
			assert.Positive(t, f.Height_mm)
			assert.Positive(t, f.Least_letter_mm)
			assert.NotNil(t, f.Fits)
		}
	}
}

func TestALabelThatLacksWhatIsDueIsNotWritten(t *testing.T) {
	file := "hazelnut.yaml"
	to := filepath.Join(t.TempDir(), "label.pdf")
	code, _, errText := ripplecalc(t, "label", file, "--place", "ie", "-o", to)
	assert.Equal(t, 1, code)
	for _, want := range []string{"Maker:", "Date:"} {
		assert.Contains(t, errText, want)
	}
	assert.NotContains(t, errText, "storage:")
	assert.NoFileExists(t, to)

	full := []string{"label", file, "--place", "ie", "--maker", "Saltmarsh Quay, 1 Pier Road", "--made", "2026-07-14", "--keeps", "6m"}
	for ext, begins := range map[string]string{".pdf": "%PDF", ".png": "\x89PNG", ".svg": "<?xml"} {
		to := filepath.Join(t.TempDir(), "label"+ext)
		code, _, errText = ripplecalc(t, append(full, "-o", to)...)
		require.Zero(t, code, errText)
		data, err := os.ReadFile(to)
		require.NoError(t, err)
		assert.True(t, bytes.HasPrefix(data, []byte(begins)), ext)
	}
	code, _, errText = ripplecalc(t, append(full, "--tub-mm", "20,20,18", "-o", to)...)
	assert.Equal(t, 1, code)
	assert.Contains(t, errText, "does not fit")
	assert.NoFileExists(t, to)
}

func TestTheFlagsOfATubAreRead(t *testing.T) {
	file := "hazelnut.yaml"
	for _, bad := range [][]string{
		{"--place", "fr"}, {"--place", "uk", "--sale", "mail"}, {"--place", "uk", "--lang", "xx"}, {"--place", "uk", "--made", "14.7.2026"},
		{"--place", "uk", "--keeps", "long"}, {"--place", "uk", "--date", "week"}, {"--place", "uk", "--tub", "bucket"},
		{"--place", "uk", "--tub-mm", "1,2"}, {"--place", "uk", "--tub", "tub 1 L", "--tub-mm", "90,80,70"}, {"--place", "uk", "--net", "NaN"},
		{"--place", "uk", "--region", "us"}, {"--sale", "shop"}, {"--place", "uk", "--copies", "0"},
		{"--place", "uk", "--sale", "stall", "-o", "x.pdf", "--sheet", "a9"},
	} {
		code, _, errText := ripplecalc(t, append([]string{"label", file}, bad...)...)
		assert.Equal(t, 2, code, "%v: %s", bad, errText)
	}
}

// More than the tubs hold is never declared.
func TestAQuantityAboveWhatTheTubHoldsMustBeChanged(t *testing.T) {
	code, out, _ := ripplecalc(t, "label", "hazelnut.yaml", "--place", "uk", "--net", "500")
	assert.Zero(t, code)
	assert.Contains(t, out, "Net quantity: you must add a quantity that the tubs hold")
	code, out, _ = ripplecalc(t, "label", "hazelnut.yaml", "--place", "uk", "--net", "450")
	assert.Zero(t, code)
	assert.Contains(t, out, "Net quantity: 450 ml")
}

// What the models know stands beside the date and the quantity, as no more than it is.
func TestTheModelStandsBesideDateAndQuantity(t *testing.T) {
	code, out, errText := ripplecalc(t, "label", "hazelnut.yaml", "--place", "uk", "--net", "450")
	require.Zero(t, code, errText)
	assert.Contains(t, out, "mL by the model, and 450 mL is declared. It may shrink by ")
	assert.Contains(t, out, "A few tubs may be 13.5 mL short, none more than 27.0 mL.") // 3 % of 450, and twice that
	assert.Contains(t, out, "Beside the date, of its ice alone, kept at ")
	assert.Contains(t, out, "how long it keeps")

	code, out, _ = ripplecalc(t, "label", "hazelnut.yaml", "--place", "uk", "--net", "450", "--json")
	require.Zero(t, code)
	var got struct {
		Fill struct {
			Holds_ml, Declared_ml, Spare_fraction, Tolerable_error_ml, Never_more_ml float64
		}
		Beside_date *struct {
			Freezer_c                    float64
			Text, Word                   string
			Weeks, Low_weeks, High_weeks *float64
		}
	}
	require.NoError(t, json.Unmarshal([]byte(out), &got))
	assert.Equal(t, 450.0, got.Fill.Declared_ml)
	assert.InDelta(t, 1-450/got.Fill.Holds_ml, got.Fill.Spare_fraction, 1e-9)
	assert.Equal(t, 13.5, got.Fill.Tolerable_error_ml)
	require.NotNil(t, got.Beside_date)
	assert.Less(t, got.Beside_date.Freezer_c, 0.0)
	assert.NotEmpty(t, got.Beside_date.Text)

	_, out, _ = ripplecalc(t, "label", "hazelnut.yaml", "--place", "uk", "--sale", "stall", "--json")
	assert.NotContains(t, out, "beside_date", "no date is asked for")
	_, out, _ = ripplecalc(t, "label", "hazelnut.yaml", "--place", "us")
	assert.NotContains(t, out, "A few tubs may be", "the tolerable errors are the EU's and the UK's")
}

// A batch of the notebook beside the design gives the day, the lot and until when.
func TestALabelTakesItsDayAndLotFromTheNotebook(t *testing.T) {
	k := newKitchen(t)
	text, err := os.ReadFile("../../assets/demos/hazelnut.yaml")
	require.NoError(t, err)
	k.file("hazelnut.yaml", string(text))
	code, _, problem := k.run("", "label", "hazelnut.yaml", "--place", "uk", "--batch", "last")
	assert.Equal(t, 2, code)
	assert.Contains(t, problem, "hazelnut.batches.yaml has no such batch")
	require.NoError(t, batch.Append(k.path("hazelnut.batches.yaml"), batch.Batch{ID: "quay-1", Made: "2026-07-14", BestBefore: "2027-01-14"}, nil))
	require.NoError(t, batch.Append(k.path("hazelnut.batches.yaml"), batch.Batch{ID: "quay-2", Made: "2026-08-31", Lot: "pier 9"}, nil))
	_, out, _ := k.run("", "label", "hazelnut.yaml", "--place", "uk", "--batch", "quay-1")
	assert.Contains(t, out, "Date: Best before 14.01.2027")
	assert.Contains(t, out, "Lot: quay-1")
	_, out, _ = k.run("", "label", "hazelnut.yaml", "--place", "uk", "--batch", "last", "--keeps", "6m")
	assert.Contains(t, out, "Date: Best before 28.02.2027")
	assert.Contains(t, out, "Lot: pier 9")
	_, out, _ = k.run("", "label", "hazelnut.yaml", "--place", "uk", "--batch", "last")
	assert.Contains(t, out, "Date: you must add for how long it keeps", "the notebook does not say")
}
