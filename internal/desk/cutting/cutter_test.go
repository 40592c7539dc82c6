package cutting_test

import (
	"image"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/cutting"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/work/design"
)

// stall is a design of the market, evaluated.
func stall(t *testing.T) (design.Design, *model.Result) {
	t.Helper()
	d := market.Plain()
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	return d, &r
}

func cut(t *testing.T, view ripple.View) ripple.Settings {
	t.Helper()
	d, r := stall(t)
	s, err := cutting.Of(d, r, view)
	require.NoError(t, err)
	return s
}

// desk is a cutter over a window's thread, which is the test's own.
type desk struct {
	*cutting.Cutter
	posted chan func()
	drawn  []cutting.Drawn
	done   []float64
}

func newDesk() *desk {
	d := &desk{posted: make(chan func(), 10000)}
	d.Cutter = cutting.NewCutter(func(f func()) { d.posted <- f }, func(x cutting.Drawn) { d.drawn = append(d.drawn, x) },
		func(done float64) { d.done = append(d.done, done) })
	return d
}

func (d *desk) settle(t *testing.T) {
	t.Helper()
	require.Eventually(t, func() bool { return !d.Busy() }, time.Minute, time.Millisecond)
	for len(d.posted) > 0 {
		(<-d.posted)()
	}
}

func TestACutIsShownCoarseThenSharp(t *testing.T) {
	d := newDesk()
	var studied *ripple.Raster
	d.Draw(cutting.Job{Cuts: []ripple.Settings{cut(t, ripple.Top), cut(t, ripple.Side)}, Coarse: 32, Sharp: 96,
		Study: func(r *ripple.Raster) func() { return func() { studied = r } }})
	assert.Empty(t, d.drawn, "nothing is shown away from the window's thread")
	d.settle(t)
	require.GreaterOrEqual(t, len(d.drawn), 2)
	assert.False(t, d.drawn[0].Sharp)
	last := d.drawn[len(d.drawn)-1]
	assert.True(t, last.Sharp)
	require.Len(t, last.Pictures, 2)
	for i, p := range last.Pictures {
		assert.NoError(t, last.Err)
		size := p.Bounds().Size()
		assert.Equal(t, 96, max(size.X, size.Y))
		small := d.drawn[0].Pictures[i].Bounds().Size()
		assert.Less(t, max(small.X, small.Y), 96)
	}
	require.NotNil(t, studied, "the first sharp raster is what is measured")
	assert.Equal(t, 96, max(studied.Width, studied.Height))
	for _, done := range d.done {
		assert.True(t, done >= 0 && done <= 1, done)
	}
}

func TestPicturesComeInTheSizeOfTheScreen(t *testing.T) {
	d := newDesk()
	fit := []image.Point{{X: 61, Y: 40}}
	d.Draw(cutting.Job{Cuts: []ripple.Settings{cut(t, ripple.Top)}, Coarse: 32, Sharp: 128, Fit: fit})
	d.settle(t)
	require.GreaterOrEqual(t, len(d.drawn), 3, "coarse, as the screen needs, sharp")
	for _, x := range d.drawn {
		assert.Equal(t, fit[0], x.Pictures[0].Bounds().Size())
	}
}

func TestOnlyWhatIsMeasuredIsSharperThanTheScreenNeeds(t *testing.T) {
	d := newDesk()
	fit := []image.Point{{X: 80, Y: 80}, {X: 80, Y: 80}}
	cuts := []ripple.Settings{cut(t, ripple.Top), cut(t, ripple.Top)}
	var studied *ripple.Raster
	d.Draw(cutting.Job{Cuts: cuts, Coarse: 32, Sharp: 400, Fit: fit, Study: func(r *ripple.Raster) func() { studied = r; return func() {} }})
	d.settle(t)
	require.NotNil(t, studied)
	assert.Equal(t, 400, max(studied.Width, studied.Height))
	last := d.drawn[len(d.drawn)-1]
	require.True(t, last.Sharp)
	own := newDesk()
	own.Draw(cutting.Job{Cuts: cuts[1:], Coarse: 32, Sharp: 200, Fit: fit[1:]})
	own.settle(t)
	assert.Equal(t, own.drawn[len(own.drawn)-1].Pictures[0].Pix, last.Pictures[1].Pix, "of 200, for 80 on the screen")
}

func TestAnotherColourSamplesNothingAnew(t *testing.T) {
	d := newDesk()
	j := cutting.Job{Cuts: []ripple.Settings{cut(t, ripple.Top)}, Coarse: 32, Sharp: 64}
	d.Draw(j)
	d.settle(t)
	before := len(d.drawn)
	j.Style.Plain = true
	d.Draw(j)
	d.settle(t)
	require.Len(t, d.drawn, before+1, "only the sharp picture comes again")
	assert.True(t, d.drawn[before].Sharp)
	assert.NotEqual(t, d.drawn[before-1].Pictures[0].Pix, d.drawn[before].Pictures[0].Pix)
}

func TestAnotherRatioIsSharpAtOnce(t *testing.T) {
	d := newDesk()
	j := cutting.Job{Cuts: []ripple.Settings{cut(t, ripple.Side)}, Coarse: 32, Sharp: 96}
	assert.False(t, d.Follows(j), "nothing is drawn yet")
	d.Draw(j)
	d.settle(t)
	before := len(d.drawn)
	j.Cuts = []ripple.Settings{cut(t, ripple.Side)}
	j.Cuts[0].FoamFraction /= 2
	assert.True(t, d.Follows(j))
	d.Draw(j)
	d.settle(t)
	require.Len(t, d.drawn, before+2, "plain while the hand moves, then with its texture")
	for _, x := range d.drawn[before:] {
		size := x.Pictures[0].Bounds().Size()
		assert.Equal(t, 96, max(size.X, size.Y), "never coarse")
	}
	assert.True(t, d.drawn[before+1].Sharp)
	fresh := newDesk()
	fresh.Draw(j)
	fresh.settle(t)
	assert.Equal(t, fresh.drawn[len(fresh.drawn)-1].Pictures[0].Pix, d.drawn[before+1].Pictures[0].Pix, "as if stirred anew")

	j.Cuts = []ripple.Settings{j.Cuts[0]}
	j.Cuts[0].Seed++
	assert.False(t, d.Follows(j), "another hand is another tub")
}

func TestOnlyTheNewestCutIsShownInTheEnd(t *testing.T) {
	d := newDesk()
	for px := 64; px <= 96; px += 8 {
		d.Draw(cutting.Job{Cuts: []ripple.Settings{cut(t, ripple.Top)}, Coarse: 32, Sharp: px})
	}
	d.settle(t)
	var sharp []int
	for _, x := range d.drawn {
		if x.Sharp {
			sharp = append(sharp, x.Pictures[0].Bounds().Dx())
		}
	}
	assert.Equal(t, []int{96}, sharp)

	d.drawn = nil
	d.Draw(cutting.Job{Cuts: []ripple.Settings{cut(t, ripple.Side)}, Coarse: 32, Sharp: 64})
	d.Stop()
	d.settle(t)
	for _, x := range d.drawn {
		assert.False(t, x.Sharp, "at most the coarse picture, so that a drag shows something")
	}
}

func TestWhatCannotBeDrawnSaysWhy(t *testing.T) {
	d := newDesk()
	bad := cut(t, ripple.Top)
	bad.Tub.LengthMM = -1
	d.Draw(cutting.Job{Cuts: []ripple.Settings{bad}, Coarse: 32, Sharp: 64})
	d.settle(t)
	require.NotEmpty(t, d.drawn)
	assert.Error(t, d.drawn[len(d.drawn)-1].Err)

	design, r := stall(t)
	design.Tubs.VolumeML, design.Tubs.FillPercent = 30, 10
	_, err := cutting.Of(design, r, ripple.Top)
	var size *cutting.SizeError
	require.ErrorAs(t, err, &size)
	assert.Less(t, size.Tub.HeightMM, float64(ripple.MinFillMM))
	design.Tubs.VolumeML = -3
	_, err = cutting.Of(design, r, ripple.Top)
	assert.ErrorContains(t, err, "not valid")
}
