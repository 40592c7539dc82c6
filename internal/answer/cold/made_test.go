package cold

import (
	"context"
	"math"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
)

// rangesIn finds every Range in v by what it is.
func rangesIn(v reflect.Value) (out []*Range) {
	if r, ok := v.Addr().Interface().(*Range); ok {
		return []*Range{r}
	}
	if v.Kind() == reflect.Struct {
		for i := range v.NumField() {
			out = append(out, rangesIn(v.Field(i))...)
		}
	}
	return out
}

func TestEveryTimeOfAnAnswerIsAmongItsRanges(t *testing.T) {
	var a Answer
	assert.ElementsMatch(t, rangesIn(reflect.ValueOf(&a).Elem()), a.ranges())
}

// A foam that comes out with less air than written takes longer to harden, if anything:
// the band holds the times of the tub as it comes out.
func TestTimesHoldTheTubAsItComesOut(t *testing.T) {
	published, d := model.New(market.Library(t)), market.Honey()
	lesson := model.Taught{}
	lesson.Recipe[model.FoamAir] = model.Lesson{Readings: 5, Mean: math.Log(0.6), Half: 0.1, Before: 0.2}
	taught := published.Taught(lesson)
	plain, err := published.Evaluate(d)
	require.NoError(t, err)
	r, err := taught.Evaluate(d)
	require.NoError(t, err)
	was, err := Plan(context.Background(), d, &plain, Default(), Options{NoPictures: true})
	require.NoError(t, err)
	came, err := Plan(context.Background(), d, r.Made(), Default(), Options{NoPictures: true})
	require.NoError(t, err)
	a, err := Plan(context.Background(), d, &r, Default(), Options{NoPictures: true})
	require.NoError(t, err)
	moved := 0
	for i, x := range a.ranges() {
		before, of := *was.ranges()[i], *came.ranges()[i]
		if !x.Known() {
			continue
		}
		assert.Equal(t, before.Value, x.Value, "the time is of the recipe as written")
		if of.Known() {
			assert.True(t, x.Low <= of.Value && !(x.High < of.Value), "%d: %+v does not hold %+v", i, *x, of)
		}
		if *x != before {
			moved++
		}
	}
	assert.Positive(t, moved)
}
