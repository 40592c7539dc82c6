package coldpage

import (
	"testing"

	"fyne.io/fyne/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page/pagetest"
)

// Each note has a way to what causes it: the keyboard is on the lever, in sight, in the
// view that has it.
func TestEachNoteShowsWhatCausesIt(t *testing.T) {
	p, h := coldPage(t, market.Demo(t), daylight)
	of := *p.answer
	for _, x := range []struct {
		note model.Warning
		from coldview.Question
		to   coldview.Question
		path string
	}{
		{model.Warning{Where: "still_freeze", Code: "never_half_frozen", Facts: cold.NeverHalfFrozen{AirC: -2}}, coldview.Custard, coldview.Custard, "freezer.air_c"},
		{model.Warning{Where: "still_freeze", Code: "longer_than_practice", Facts: cold.LongBeating{DepthMM: 90, TakesMinutes: 400}}, coldview.Custard, coldview.Custard, "layer.depth_mm"},
		{model.Warning{Where: "harden", Code: "longer_than_practice", Facts: cold.LongHardening{TakesMinutes: 2000}}, coldview.Harden, coldview.Harden, "freezer.air_c"},
		{model.Warning{Where: "harden", Code: "never_hardens", Facts: cold.NeverHardens{CoreC: -15, WithinMinutes: 5760}}, coldview.Harden, coldview.Harden, "freezer.air_c"},
		{model.Warning{Where: "tubs", Code: "box_as_round", Facts: cold.BoxAsRound{}}, coldview.Fridge, coldview.Fridge, "tubs.shape"},
		{model.Warning{Where: "tubs", Code: "box_as_round", Facts: cold.BoxAsRound{Dish: true}}, coldview.Harden, coldview.Custard, "layer.form"},
		{model.Warning{Where: "serving_window", Code: "unlike_practice", Facts: cold.UnlikePractice{FromMinutes: 20, ToMinutes: 30, PracticeFromMinutes: 5, PracticeToMinutes: 15}}, coldview.Counter, coldview.Counter, "freezer.air_c"},
		{model.Warning{Where: "serving_window", Code: "wall_before_core", Facts: cold.WallBeforeCore{MeltsMinutes: 12}}, coldview.Counter, coldview.Counter, "counter.air_c"},
		{model.Warning{Where: "storage", Code: "swing_thaws_phase", Facts: cold.SwingThaws{SwingK: 6, KeepBelowC: -20}}, coldview.Storage, coldview.Storage, "freezer.swing_k"},
	} {
		a := of
		a.Notes = []model.Warning{x.note}
		p.answer = &a
		p.choose(x.from)
		var shows []*kit.Button
		for _, b := range pagetest.All[*kit.Button](p.views[x.from].notes) {
			if b.Text == say.ShowCause.String() {
				shows = append(shows, b)
			}
		}
		require.Len(t, shows, 1, x.note.Code)
		shows[0].Tapped(nil)
		assert.Equal(t, x.to, p.current, x.note.Code)
		var want fyne.Focusable
		switch o := p.views[x.to].at[x.path].(type) {
		case *kit.Slide:
			want = o.Focusable()
		case *kit.Select:
			want = o
		}
		require.NotNil(t, want, x.path)
		assert.Same(t, want, h.Win.Canvas().Focused(), x.note.Code)
	}
}

// Water that the foam draws comes of its recipe: the way to it is the bench's.
func TestWaterDrawnLeadsToTheRecipe(t *testing.T) {
	p, _ := coldPage(t, market.Demo(t), daylight)
	var led []model.Warning
	p.Lead(func(w model.Warning) { led = append(led, w) })
	shown := func() (all []*kit.Button) {
		for _, b := range pagetest.All[*kit.Button](p.views[coldview.Storage].box) {
			if b.Text == say.ShowCause.String() {
				all = append(all, b)
			}
		}
		return all
	}
	p.choose(coldview.Storage)
	require.False(t, p.answer.Storage.WaterDrawn)
	assert.Empty(t, shown())
	a := *p.answer
	a.Storage.WaterDrawn, a.Storage.Drawer = true, "foam"
	p.answer = &a
	p.showAnswer()
	require.Len(t, shown(), 1)
	shown()[0].Tapped(nil)
	assert.Equal(t, []model.Warning{{Code: "foam_draws_water", Where: "foam"}}, led)
}
