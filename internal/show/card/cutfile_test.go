package card

import (
	"encoding/xml"
	"image"
	_ "image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/tub"
	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/ripple"
)

func TestCutsAreWrittenAtOneScale(t *testing.T) {
	d := market.Hazelnut()
	side := tub.Ripple(d)
	above := side
	above.View = ripple.Top
	cuts, err := RenderCuts([]ripple.Settings{side, above}, tub.Style(d), 240)
	require.NoError(t, err)
	require.Len(t, cuts, 2)
	size := tub.Size(d.Tubs)
	assert.InDelta(t, size.LengthMM, cuts[0].WidthMM, 0.01)
	assert.InDelta(t, float64(cuts[0].Bounds().Dx())/cuts[0].WidthMM, float64(cuts[1].Bounds().Dx())/cuts[1].WidthMM, 0.02, "pixels to the mm")

	dir := t.TempDir()
	require.NoError(t, WriteCuts(filepath.Join(dir, "cut.png"), cuts))
	f, err := os.Open(filepath.Join(dir, "cut.png"))
	require.NoError(t, err)
	defer f.Close()
	img, _, err := image.Decode(f)
	require.NoError(t, err)
	assert.Equal(t, cuts[0].Bounds().Dx()+240/24+cuts[1].Bounds().Dx(), img.Bounds().Dx())
	_, _, _, a := img.At(cuts[0].Bounds().Dx()+2, 0).RGBA()
	assert.Zero(t, a, "between the two there is nothing")

	require.NoError(t, WriteCuts(filepath.Join(dir, "cut.svg"), cuts))
	data, err := os.ReadFile(filepath.Join(dir, "cut.svg"))
	require.NoError(t, err)
	var drawn struct {
		Images []struct {
			X     float64 `xml:"x,attr"`
			Wide  float64 `xml:"width,attr"`
			Above float64 `xml:"y,attr"`
		} `xml:"g>image"`
	}
	require.NoError(t, xml.Unmarshal(data, &drawn))
	require.Len(t, drawn.Images, 2)
	for i, c := range cuts {
		assert.InDelta(t, c.WidthMM, drawn.Images[i].Wide, 0.001, "an SVG is at true size")
	}
	assert.Greater(t, drawn.Images[1].X, drawn.Images[0].Wide)

	require.ErrorIs(t, WriteCuts(filepath.Join(dir, "cut.gif"), cuts), ErrExtension)
}
