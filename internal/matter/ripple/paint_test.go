package ripple

import (
	"context"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden pictures anew")

var goldens = []struct {
	name     string
	settings Settings
}{
	{"ripple_side", Settings{Tub: saltmarsh, View: Side, FoamFraction: 0.4, Strokes: mixed(4), Seed: 1}},
	{"ripple_top", Settings{Tub: saltmarsh, View: Top, FoamFraction: 0.3, Strokes: mixed(5), Seed: 2}},
	{"ripple_box_layers", Settings{Tub: BoxTub(120, 80, 12, 60), View: Side, FoamFraction: 0.5, Layout: Layers, Strokes: mixed(2), Seed: 3}},
}

func mixed(n int) []Stroke {
	s, err := Sequence(Mixed, n, 0, 0)
	if err != nil {
		panic(err)
	}
	return s
}

// A pixel is the same if no channel differs by more than 4; one in a thousand may
// not be.
func TestPicturesAreTheGoldenOnes(t *testing.T) {
	for _, g := range goldens {
		got, err := stir(t, g.settings).Render(context.Background(), 160, Style{}, nil)
		require.NoError(t, err)
		path := filepath.Join("..", "..", "..", "testdata", "golden", g.name+".png")
		if *update {
			f, err := os.Create(path)
			require.NoError(t, err)
			require.NoError(t, png.Encode(f, got))
			require.NoError(t, f.Close())
			continue
		}
		f, err := os.Open(path)
		require.NoError(t, err)
		picture, err := png.Decode(f)
		f.Close()
		require.NoError(t, err)
		want := image.NewRGBA(picture.Bounds())
		draw.Draw(want, want.Bounds(), picture, picture.Bounds().Min, draw.Src)
		require.Equal(t, want.Bounds(), got.Bounds(), g.name)
		off := 0
		for i := 0; i < len(got.Pix); i += 4 {
			for c := i; c < i+4; c++ {
				if d := int(got.Pix[c]) - int(want.Pix[c]); d > 4 || d < -4 {
					off++
					break
				}
			}
		}
		assert.LessOrEqual(t, off, len(got.Pix)/4/1000, "%s: pixels that differ", g.name)
	}
}

func TestPhasesDifferWithoutColour(t *testing.T) {
	grey := color.NRGBA{150, 150, 150, 255}
	s := Settings{Tub: saltmarsh, FoamFraction: 0.5, Layout: Halves, Seed: 1}
	r := sample(t, stir(t, s), 300)
	im := r.Paint(Style{Foam: grey, Dense: grey})
	rough := map[bool]float64{}
	count := map[bool]float64{}
	for j := 30; j < 260; j++ {
		for i := 30; i < 270; i++ {
			foam := r.FoamFractions[j*r.Width+i]
			if foam != r.FoamFractions[j*r.Width+i+3] || foam != r.FoamFractions[j*r.Width+i-3] {
				continue
			}
			d := float64(im.RGBAAt(i, j).R) - float64(im.RGBAAt(i+1, j).R)
			rough[foam == 1] += d * d
			count[foam == 1]++
		}
	}
	assert.Greater(t, rough[true]/count[true], 8*rough[false]/count[false])
}

func TestOutsideTheTubIsTransparentAndTheWallUntorn(t *testing.T) {
	im, err := stir(t, settings(t, Top, Dollops, Mixed, 8, 1)).Render(context.Background(), 200, Style{}, nil)
	require.NoError(t, err)
	assert.Equal(t, color.RGBA{}, im.RGBAAt(0, 0))
	for j := 0; j < 200; j++ {
		steps := 0 // of alpha along a row: in once, out once
		was := false
		for i := 0; i < 200; i++ {
			if in := im.RGBAAt(i, j).A > 0; in != was {
				steps, was = steps+1, in
			}
		}
		assert.LessOrEqual(t, steps, 2)
	}
}

func TestProgressEndsAtOne(t *testing.T) {
	done := make(chan float64, 100)
	_, err := stir(t, settings(t, Side, Dollops, Mixed, 1, 1)).Render(context.Background(), 300, Style{Plain: true}, func(p float64) { done <- p })
	require.NoError(t, err)
	close(done)
	last := 0.0
	for p := range done {
		last = max(last, p)
	}
	assert.Equal(t, 1.0, last)
}

func BenchmarkPicture(b *testing.B) {
	for _, c := range []struct {
		name   string
		view   View
		motion string
		n, px  int
	}{
		{"closed form", Top, "plunge", 8, 300},
		{"integrated side", Side, Mixed, 8, 300},
		{"integrated top", Top, Mixed, 8, 300},
		{"coarse", Side, Mixed, 8, 150},
		{"large", Side, Mixed, 8, 900},
	} {
		for _, plain := range []bool{true, false} {
			s := settings(b, c.view, Dollops, c.motion, c.n, 1)
			b.Run(fmt.Sprintf("%s %d px plain=%t", c.name, c.px, plain), func(b *testing.B) {
				for i := 0; i < b.N; i++ {
					im, err := stir(b, s).Render(context.Background(), c.px, Style{Plain: plain}, nil)
					if err != nil || im == nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkMeasure(b *testing.B) {
	r := sample(b, stir(b, settings(b, Side, Dollops, Mixed, 8, 1)), 300)
	for i := 0; i < b.N; i++ {
		r.Measure()
		r.Spoon(SpoonML, FoamShare)
	}
}
