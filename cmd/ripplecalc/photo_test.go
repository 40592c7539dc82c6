package main

import (
	"context"
	"fmt"
	"image"
	_ "image/png"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/tub"
	checks "ripplewright/internal/check"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/designfile"
)

// readPhoto is the answer as a script reads it.
type readPhoto struct {
	Share struct{ Value, Low, High float64 }  `json:"foam_area_percent"`
	Mean  struct{ Value, Low, High *float64 } `json:"mean_ribbon_mm"`
	Tenth struct{ Value *float64 }            `json:"thickest_tenth_chord_mm"`
	Thin  *struct{ Code, Sentence string }    `json:"thickness_refused"`
	Least float64                             `json:"least_ribbon_mm"`

	Computed struct {
		Share float64 `json:"foam_area_percent"`
		Mean  float64 `json:"mean_ribbon_mm"`
		Tenth float64 `json:"thickest_tenth_chord_mm"`
	}
	Batch    *string
	Notebook *string
}

// pictured draws quay.yaml's own cut with its texture and returns what to mark in it.
func (k kitchen) pictured(name string) (marks []string) {
	code, _, err := k.run("", "ripple", "quay.yaml", "-o", k.path(name), "--size", "900")
	require.Equal(k.t, exitFine, code, err)
	f, e := os.Open(k.path(name))
	require.NoError(k.t, e)
	defer f.Close()
	size, _, e := image.DecodeConfig(f)
	require.NoError(k.t, e)
	marks = append(marks, "--outline", fmt.Sprintf("0,0 %d,0 %d,%d 0,%d", size.Width, size.Width, size.Height, size.Height))

	data, e := os.ReadFile(k.path("quay.yaml"))
	require.NoError(k.t, e)
	design, e := designfile.Decode("quay.yaml", data)
	require.NoError(k.t, e)
	cut, e := ripple.Stir(tub.Ripple(design.Design))
	require.NoError(k.t, e)
	r, e := cut.Raster(context.Background(), 200, nil)
	require.NoError(k.t, e)
	per := float64(max(size.Width, size.Height)) / 200
	for flag, want := range map[string]float32{"--foam": 1, "--custard": 0} {
		for at := range r.FoamFractions {
			i, j := at%r.Width, at/r.Width
			if i > 10 && j > 10 && i < r.Width-10 && j < r.Height-10 && around(r, i, j, 6, want) {
				marks = append(marks, flag, fmt.Sprintf("%.0f,%.0f", per*(float64(i)+0.5), per*(float64(j)+0.5)))
				break
			}
		}
	}
	require.Len(k.t, marks, 6, "a place of each phase")
	return marks
}

func around(r *ripple.Raster, i, j, reach int, want float32) bool {
	for y := j - reach; y <= j+reach; y++ {
		for x := i - reach; x <= i+reach; x++ {
			if r.FoamFractions[y*r.Width+x] != want {
				return false
			}
		}
	}
	return true
}

// The window's own picture of a cut, with its bubbles and shadows, reads as the cut that it
// was drawn from; kept in the notebook it says that this hand stirs as the model does.
func TestAPictureOfTheCutReadsAsTheCut(t *testing.T) {
	checks.Long(t)
	k := newKitchen(t)
	marks := append([]string{"photo", "quay.yaml", k.path("cut.png")}, k.pictured("cut.png")...)
	got := ask[readPhoto](k, "", append(marks, "--json", "--keep", "quay-1", "-o", k.path("mask.png"))...)
	assert.InDelta(t, got.Computed.Share, got.Share.Value, 2)
	require.NotNil(t, got.Mean.Value)
	assert.InEpsilon(t, got.Computed.Mean, *got.Mean.Value, 0.12)
	assert.InEpsilon(t, got.Computed.Tenth, *got.Tenth.Value, 0.12)
	assert.LessOrEqual(t, *got.Mean.Low, *got.Mean.Value)
	assert.GreaterOrEqual(t, *got.Mean.High, *got.Mean.Value)
	require.NotNil(t, got.Batch)
	assert.Equal(t, "quay-1", *got.Batch)
	mask, err := os.Stat(k.path("mask.png"))
	require.NoError(t, err)
	assert.Positive(t, mask.Size())

	list := ask[struct {
		Batches []struct {
			Ribbon      float64 `json:"cut.ribbon_mm"`
			Expected    float64 `json:"forecast.cut_ribbon_mm"`
			Photographs []string
		}
	}](k, "", "batch", "list", "quay.yaml", "--json")
	require.Len(t, list.Batches, 1)
	assert.InDelta(t, *got.Mean.Value, list.Batches[0].Ribbon, 1e-4)
	assert.InDelta(t, got.Computed.Mean, list.Batches[0].Expected, 1e-4)
	assert.Equal(t, []string{k.path("cut.png")}, list.Batches[0].Photographs)

	stirred := ask[struct {
		Mean float64 `json:"mean_ribbon_mm"`
		Hand *struct {
			Cuts         int
			Factor, Mean float64
		} `json:"as_you_stir"`
	}](k, "", "ripple", "quay.yaml", "--json")
	require.NotNil(t, stirred.Hand)
	assert.Equal(t, 1, stirred.Hand.Cuts)
	assert.InDelta(t, 1, stirred.Hand.Factor, 0.12)
	code, text, _ := k.run("", "ripple", "quay.yaml")
	assert.Equal(t, exitFine, code)
	assert.Contains(t, text, "As you stir, by 1 photographed cut")
	code, _, _ = k.run("", "batch", "learn", "quay.yaml", "--off", "mixing")
	assert.Equal(t, exitFine, code)
	_, text, _ = k.run("", "ripple", "quay.yaml")
	assert.NotContains(t, text, "As you stir")
}

func TestWhatIsWrongWithAPhotographIsSaid(t *testing.T) {
	k := newKitchen(t)
	k.file("words.jpg", "no picture")
	marks := k.pictured("cut.png")
	place := func(change ...string) []string {
		args := append([]string{"photo", "quay.yaml", k.path("cut.png")}, marks...)
		return append(args, change...) // the last one of a flag counts
	}
	for _, x := range []struct {
		args []string
		code int
		want string
	}{
		{[]string{"photo", "quay.yaml"}, exitUsage, "2 are needed"},
		{[]string{"photo", "quay.yaml", k.path("cut.png")}, exitUsage, "no --outline given"},
		{[]string{"photo", "quay.yaml", k.path("cut.png"), "--outline", "1,1 9,1 9,9"}, exitUsage, "has 3 places"},
		{place("--outline", "1,1 9,1 9,9 1,x"), exitUsage, `"1,x" is not x,y in pixels`},
		{place("--custard", "8"), exitUsage, "--custard"},
		{place("--view", "under"), exitUsage, "not one of side, top"},
		{place("--width-mm", "9000"), exitUsage, "--width-mm 9000 is outside 5 to 600"},
		{place("--foam", "5000,5000"), exitInput, "lies outside the outline"},
		{place("--outline", "0,0 90000,0 90000,900 0,900"), exitUsage, "not x,y in pixels"},
		{place("--outline", "0,0 5000,0 5000,800 0,800"), exitInput, "lies outside the picture"},
		{append([]string{"photo", "quay.yaml", k.path("words.jpg")}, marks...), exitInput, "JPEG or a PNG"},
		{append([]string{"photo", "quay.yaml", k.path("none.jpg")}, marks...), exitInput, "none.jpg"},
		{place("-o", k.path("mask.tiff")), exitUsage, "written as .png"},
		{place("-o", k.path("cut.png")), exitUsage, "is a file that this command reads"},
	} {
		code, _, err := k.run("", x.args...)
		assert.Equal(t, x.code, code, "%v: %s", x.args, err)
		assert.Contains(t, err, x.want, strings.Join(x.args, " "))
	}
	_, err := os.Stat(k.path("quay.batches.yaml"))
	assert.ErrorIs(t, err, os.ErrNotExist)
}
