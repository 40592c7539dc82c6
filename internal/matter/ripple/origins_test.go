package ripple

import (
	"context"
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A field is cut at any ratio as if the tub had been stirred anew with it.
func TestANewRatioIsTheTubStirredAnew(t *testing.T) {
	views, motions := []View{Side, Top}, everyMotion
	if testing.Short() {
		views, motions = views[:1], []string{Mixed}
	}
	for _, v := range views {
		for _, motion := range motions {
			s := settings(t, v, Dollops, motion, 6, 5)
			f, err := stir(t, s).Origins(context.Background(), 200, nil)
			require.NoError(t, err)
			for _, share := range []float64{0, 0.03, 0.2, 0.5, 0.9, 1} {
				got, err := f.Raster(share)
				require.NoError(t, err)
				assert.InDelta(t, share, got.FoamFraction(), 0.002, "%s %s", v, motion)
				s.FoamFraction = share
				anew := sample(t, stir(t, s), 200)
				assert.Equal(t, anew.FoamFractions, got.FoamFractions, "%s %s %g", v, motion, share)
				assert.InDelta(t, anew.Measure().Foam.MeanMM, got.Measure().Foam.MeanMM, 1e-9)
			}
		}
	}
}

func TestANewRatioOnlyAddsFoam(t *testing.T) {
	f, err := stir(t, settings(t, Side, Dollops, Mixed, 9, 2)).Origins(context.Background(), 150, nil)
	require.NoError(t, err)
	was, err := f.Raster(0)
	require.NoError(t, err)
	for share := 0.05; share <= 1; share += 0.05 {
		is, err := f.Raster(share)
		require.NoError(t, err)
		less := 0.0
		for i, v := range is.FoamFractions {
			less += math.Max(0, float64(was.FoamFractions[i]-v))
		}
		// Softened edges follow how steep the height is, and may give a hundredth back.
		assert.Less(t, less/float64(len(is.FoamFractions)), 1e-4, share)
		was = is
	}
}

// The short cuts for pixels that need no vote, or stand amid their like, change nothing.
func TestShortCutsAreNone(t *testing.T) {
	f, err := stir(t, settings(t, Side, Dollops, Mixed, 20, 1)).Origins(context.Background(), 120, nil)
	require.NoError(t, err)
	long := *f
	long.amid = make([]bool, len(f.uneven))
	long.low, long.high = make([]float32, len(f.low)), make([]float32, len(f.high))
	for i := range long.low {
		long.low[i], long.high[i] = -math.MaxFloat32, math.MaxFloat32 // all are looked at
	}
	some := 0
	for _, share := range []float64{0.1, 0.4, 0.7} {
		short, err := f.Raster(share)
		require.NoError(t, err)
		all, err := long.Raster(share)
		require.NoError(t, err)
		for i, want := range all.FoamFractions {
			if f.inside[i] == 0 {
				continue
			}
			if f.amid[i] {
				some++
			}
			require.InDelta(t, want, short.FoamFractions[i], 1e-6, "pixel %d", i)
		}
	}
	assert.Greater(t, some, 1000)
}

func TestAFieldRefusesARatioThatIsNone(t *testing.T) {
	f, err := stir(t, settings(t, Side, Dollops, Mixed, 1, 2)).Origins(context.Background(), 50, nil)
	require.NoError(t, err)
	for _, share := range []float64{-0.1, 1.1, math.NaN()} {
		_, err := f.Picture(share, Style{})
		var field *FieldError
		require.True(t, errors.As(err, &field), share)
		assert.Equal(t, "FoamShare", field.Field)
	}
}

// BenchmarkNewRatio is a picture for another ratio of a tub whose strokes stay, 300
// pixels wide.
func BenchmarkNewRatio(b *testing.B) {
	for _, n := range []int{4, 8, 20} {
		f, err := stir(b, settings(b, Side, Dollops, Mixed, n, 1)).Origins(context.Background(), 300, nil)
		require.NoError(b, err)
		b.Run(fmt.Sprint(n, " strokes"), func(b *testing.B) {
			for i := 0; i < b.N; i++ {
				if _, err := f.Picture(0.2+0.4*float64(i%100)/100, Style{Plain: true}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
