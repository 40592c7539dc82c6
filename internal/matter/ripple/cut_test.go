package ripple

import (
	"context"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
)

func TestStirringKeepsTheFoamsShare(t *testing.T) {
	check.Long(t)
	for _, v := range []View{Side, Top} {
		for _, motion := range []string{"plunge", "eight", "drag", Mixed} {
			for l := range layoutNames {
				for _, n := range []int{0, 4, 8} {
					c := stir(t, settings(t, v, Layout(l), motion, n, 1))
					got := sample(t, c, 300).FoamFraction()
					assert.InDelta(t, 0.35, got, 0.001, "%s, %s, %s, %d strokes", v, motion, Layout(l), n)
				}
			}
		}
	}
}

func TestEveryShareIsMetBeforeStirring(t *testing.T) {
	check.Long(t)
	for _, tub := range []Tub{saltmarsh, RoundTub(200, 60), BoxTub(300, 160, 20, 90), BoxTub(90, 60, 0, 50), RoundTub(120, 9)} {
		for _, v := range []View{Side, Top} {
			for l := range layoutNames {
				for _, share := range []float64{0, 0.02, 0.1, 0.5, 0.7, 0.98, 1} {
					s := Settings{Tub: tub, View: v, FoamFraction: share, Layout: Layout(l), Seed: 4}
					assert.InDelta(t, share, sample(t, stir(t, s), 300).FoamFraction(), 0.001, "%v %s %s", tub, v, Layout(l))
				}
			}
		}
	}
}

// A picture 300 pixels wide of so flat a cut has few pixels: a dozen rows at 5 mm.
func TestShallowDishesKeepTheFoamsShare(t *testing.T) {
	check.Long(t)
	for _, tub := range []Tub{RoundTub(120, MinFillMM), RoundTub(150, 14), BoxTub(200, 120, 10, 22)} {
		for _, motion := range everyMotion {
			for l := range layoutNames {
				s := settings(t, Side, Layout(l), motion, 6, 3)
				s.Tub = tub
				tolerance := 0.001
				if tub.HeightMM < 20 {
					tolerance = 0.003
				}
				assert.InDelta(t, 0.35, sample(t, stir(t, s), 300).FoamFraction(), tolerance, "%v, %s, %s", tub, motion, Layout(l))
			}
		}
	}
}

func TestFoamOnlyGrowsWithTheShare(t *testing.T) {
	s := settings(t, Side, Dollops, Mixed, 5, 2)
	var was []bool
	for _, share := range []float64{0.1, 0.2, 0.4, 0.7} {
		s.FoamFraction = share
		c := stir(t, s)
		var is []bool
		for x := 0.5; x < 85; x += 2 {
			for y := 0.5; y < 83; y += 2 {
				is = append(is, c.Foam(x, y))
			}
		}
		for i := range was {
			assert.True(t, is[i] || !was[i])
		}
		was = is
	}
}

func TestOneSeedIsOnePictureAndAnotherIsAnother(t *testing.T) {
	for _, v := range []View{Side, Top} {
		s := settings(t, v, Dollops, Mixed, 5, 11)
		a, b := sample(t, stir(t, s), 120), sample(t, stir(t, s), 120)
		assert.Equal(t, a.FoamFractions, b.FoamFractions)
		s.Seed++
		assert.NotEqual(t, a.FoamFractions, sample(t, stir(t, s), 120).FoamFractions)
	}
}

func TestAStrokeMoreKeepsTheStrokesBefore(t *testing.T) {
	long, err := Sequence(Mixed, 9, 40, 12)
	require.NoError(t, err)
	short, err := Sequence(Mixed, 5, 40, 12)
	require.NoError(t, err)
	assert.Equal(t, short, long[:5])
}

func TestShallowStrokesLeaveTheBottomAtRest(t *testing.T) {
	o := saltmarsh.outline(Side)
	for _, k := range []Kind{Plunge, Fold} {
		m := Stroke{Kind: k, DepthMM: 30}.place(o, Side, 1, 0)
		xs, ys := []float64{40, 40}, []float64{6, 75}
		stroked{m.flow}.pull(xs, ys)
		deep, high := math.Hypot(xs[0]-40, ys[0]-6), math.Hypot(xs[1]-40, ys[1]-75)
		assert.Less(t, deep, high/5, k)
	}
}

func TestSettingsNameTheFieldThatCannotBeDrawn(t *testing.T) {
	good := settings(t, Side, Dollops, Mixed, 3, 1)
	require.NoError(t, good.Validate())
	for field, spoil := range map[string]func(*Settings){
		"Tub.LengthMM":       func(s *Settings) { s.Tub.LengthMM = 10 },
		"Tub.BreadthMM":      func(s *Settings) { s.Tub.BreadthMM = 900 },
		"Tub.HeightMM":       func(s *Settings) { s.Tub.HeightMM = math.NaN() },
		"Tub.HeightMM ":      func(s *Settings) { s.Tub.HeightMM = 4.9 },
		"Tub.CornerMM":       func(s *Settings) { s.Tub.CornerMM = 60 },
		"View":               func(s *Settings) { s.View = 7 },
		"FoamShare":          func(s *Settings) { s.FoamFraction = math.NaN() },
		"Layout":             func(s *Settings) { s.Layout = 9 },
		"Strokes":            func(s *Settings) { s.Strokes = make([]Stroke, MaxStrokes+1) },
		"Strokes[1].Kind":    func(s *Settings) { s.Strokes[1].Kind = 9 },
		"Strokes[2].DepthMM": func(s *Settings) { s.Strokes[2].DepthMM = -1 },
		"Strokes[0].WidthMM": func(s *Settings) { s.Strokes[0].WidthMM = 1 },
	} {
		s := good.clone()
		spoil(&s)
		_, err := Stir(s)
		var f *FieldError
		require.True(t, errors.As(err, &f), field)
		assert.Equal(t, strings.TrimSpace(field), f.Field)
	}
}

func TestValidateKnowsEveryFieldOfSettings(t *testing.T) {
	// A new field needs a check, or a word here that it needs none.
	assert.Equal(t, 6, reflect.TypeOf(Settings{}).NumField())
	assert.Equal(t, 4, reflect.TypeOf(Tub{}).NumField())
	assert.Equal(t, 3, reflect.TypeOf(Stroke{}).NumField())
}

func TestACancelledPictureStops(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	c := stir(t, settings(t, Side, Dollops, Mixed, 8, 1))
	_, err := c.Render(ctx, 900, Style{}, func(float64) { cancel() })
	assert.ErrorIs(t, err, context.Canceled)
}

func FuzzParse(f *testing.F) {
	for _, s := range append(append([]string{"", "x"}, kindNames[:]...), layoutNames[:]...) {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if k, err := ParseKind(s); err == nil {
			assert.Equal(t, s, k.String())
		}
		if l, err := ParseLayout(s); err == nil {
			assert.Equal(t, s, l.String())
		}
		_, _ = Sequence(s, 3, 0, 0)
	})
}
