package svg

import (
	"bytes"
	"encoding/base64"
	"encoding/xml"
	"image"
	"image/color"
	"image/png"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/show/draw"
)

// picture is an SVG read back.
type picture struct {
	Width   string `xml:"width,attr"`
	Height  string `xml:"height,attr"`
	ViewBox string `xml:"viewBox,attr"`
	Title   string `xml:"title"`
	Pages   []struct {
		Transform string `xml:"transform,attr"`
		Paths     []struct {
			D       string `xml:"d,attr"`
			Fill    string `xml:"fill,attr"`
			Opacity string `xml:"fill-opacity,attr"`
			Stroke  string `xml:"stroke,attr"`
			Width   string `xml:"stroke-width,attr"`
			Dashes  string `xml:"stroke-dasharray,attr"`
		} `xml:"path"`
		Images []struct {
			X    string `xml:"x,attr"`
			Wide string `xml:"width,attr"`
			Clip string `xml:"clip-path,attr"`
			Href string `xml:"http://www.w3.org/1999/xlink href,attr"`
		} `xml:"image"`
		Clips []struct {
			ID   string `xml:"id,attr"`
			Path struct {
				D string `xml:"d,attr"`
			} `xml:"path"`
		} `xml:"clipPath"`
		Texts []struct {
			X      float64 `xml:"x,attr"`
			Y      float64 `xml:"y,attr"`
			Size   string  `xml:"font-size,attr"`
			Weight string  `xml:"font-weight,attr"`
			Length float64 `xml:"textLength,attr"`
			S      string  `xml:",chardata"`
		} `xml:"text"`
	} `xml:"g"`
}

func readBack(t *testing.T, title string, pages ...*draw.List) picture {
	t.Helper()
	data, err := Encode(pages, title)
	require.NoError(t, err)
	again, err := Encode(pages, title)
	require.NoError(t, err)
	assert.Equal(t, data, again, "the same lists, the same bytes")
	var p picture
	require.NoError(t, xml.Unmarshal(data, &p))
	require.Len(t, p.Pages, len(pages))
	return p
}

func TestPagesStandUnderEachOtherAtTrueSize(t *testing.T) {
	p := readBack(t, "Oats & <seaweed>", &draw.List{W: 210, H: 297}, &draw.List{W: 80, H: 40.5})
	assert.Equal(t, []string{"210mm", "337.5mm", "0 0 210 337.5"}, []string{p.Width, p.Height, p.ViewBox})
	assert.Equal(t, "Oats & <seaweed>", p.Title)
	assert.Equal(t, "translate(0 0)", p.Pages[0].Transform)
	assert.Equal(t, "translate(0 297)", p.Pages[1].Transform)
}

func TestMarksComeBackAsTheyWereDrawn(t *testing.T) {
	d := &draw.List{W: 100, H: 100}
	d.Segment(draw.Stroke{Width: 0.5, Dash: draw.Dashed, Colour: draw.RGB(0x0a3b4c)}, 1, 2, 30.25, 4)
	d.Box(draw.Rect{X0: 5, Y0: 6, X1: 7, Y1: 8}, draw.Fade(draw.RGB(0xff0000), 0.2))
	d.To(50, 50) // a dot
	d.EndStroke(draw.Stroke{Width: 2})
	d.To(0, 0)
	d.To(9, 0)
	d.To(9, 9)
	d.Lift()
	d.To(1, 1)
	d.To(2, 1)
	d.To(2, 2)
	d.EndFill(draw.RGB(0))
	d.Segment(draw.Stroke{Width: 1}, 0, 0, 9, 9) // solid
	paths := readBack(t, "", d).Pages[0].Paths
	require.Len(t, paths, 5)
	assert.Equal(t, "M1 2L30.25 4", paths[0].D)
	assert.Equal(t, []string{"none", "#0a3b4c", "0.5", "2 1.75"}, []string{paths[0].Fill, paths[0].Stroke, paths[0].Width, paths[0].Dashes})
	assert.Equal(t, "M5 6L7 6L7 8L5 8Z", paths[1].D)
	assert.Equal(t, []string{"#ff0000", "0.2", ""}, []string{paths[1].Fill, paths[1].Opacity, paths[1].Stroke})
	assert.Equal(t, "M50 50h0", paths[2].D)
	assert.Equal(t, "M0 0L9 0L9 9ZM1 1L2 1L2 2Z", paths[3].D)
	assert.Empty(t, paths[4].Dashes)
}

func TestTextsStandWhereTheyAreAnchored(t *testing.T) {
	const s = "−18 °C, \"salt\" & <malt>\x01"
	d := &draw.List{W: 100, H: 100}
	for _, a := range []draw.Align{draw.Left, draw.Centre, draw.Right} {
		d.Write(draw.Text{At: draw.Point{X: 50, Y: 20}, S: s, Size: 4, Align: a, Rise: draw.Baseline, Face: draw.SansBold, Colour: draw.RGB(0)})
	}
	texts := readBack(t, "", d).Pages[0].Texts
	require.Len(t, texts, 3)
	for i, share := range []float64{0, 0.5, 1} {
		x := texts[i]
		assert.InDelta(t, 50, x.X+share*x.Length, 0.002)
		assert.InDelta(t, 20, x.Y, 0.002)
		assert.Equal(t, []string{"4", "bold"}, []string{x.Size, x.Weight})
		assert.True(t, strings.HasPrefix(x.S, "−18 °C, \"salt\" & <malt>"), x.S)
	}
	assert.Positive(t, texts[0].Length)
}

func TestAPictureIsItsPixelsWithinItsOutline(t *testing.T) {
	img := image.NewRGBA(image.Rect(0, 0, 3, 2))
	img.Pix[5], img.Pix[7] = 200, 255
	d := &draw.List{W: 100, H: 100}
	d.RoundBox(draw.Rect{X0: 10, Y0: 10, X1: 40, Y1: 30}, 0)
	d.EndPicture(img, draw.Rect{X0: 10, Y0: 10, X1: 40, Y1: 30})
	p := readBack(t, "", d).Pages[0]
	require.Len(t, p.Images, 1)
	require.Len(t, p.Clips, 1)
	assert.Equal(t, "url(#"+p.Clips[0].ID+")", p.Images[0].Clip)
	assert.Contains(t, p.Clips[0].Path.D, "M10 10")
	w, err := strconv.ParseFloat(p.Images[0].Wide, 64)
	require.NoError(t, err)
	assert.Equal(t, 30.0, w)
	data, err := base64.StdEncoding.DecodeString(strings.TrimPrefix(p.Images[0].Href, "data:image/png;base64,"))
	require.NoError(t, err)
	back, err := png.Decode(bytes.NewReader(data))
	require.NoError(t, err)
	assert.Equal(t, img.Bounds(), back.Bounds())
	assert.Equal(t, img.At(1, 0), color.RGBAModel.Convert(back.At(1, 0)))
}
