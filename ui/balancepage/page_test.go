package balancepage_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/sure"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/mending"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
	"ripplewright/ui/balancepage"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
	"ripplewright/ui/page/pagetest"
)

func TestTheWeightsOfATubThatIsAskedForAreTakenInOneStep(t *testing.T) {
	test.NewTempApp(t)
	h := pagetest.NewHost(t, market.Demo(t))
	p := balancepage.New(h, mending.New(h.Post, kitchens.Open("").Made, func() {}), kitchens.Open(""))
	h.Win.SetContent(p.Object())
	texts := func() string { return pagetest.Texts(p.Object()) }
	selects := pagetest.All[*kit.Select](p.Object())
	require.Len(t, selects, 7)
	selects[0].SetSelected("soft")
	before := h.Design()
	test.Tap(pagetest.Button(t, p.Object(), say.FindWeights.String()))
	h.Until(func() bool { return strings.Contains(texts(), say.MetTitle.String()) })
	assert.Contains(t, texts(), "as wished")
	test.Tap(pagetest.Button(t, p.Object(), say.Apply.String()))
	assert.Equal(t, []string{say.RemedyStep.String()}, h.Steps)
	assert.False(t, before.Equal(h.Design()))
	assert.Equal(t, "soft", h.Result().Dense.Word.Name)

	p.Show()
	h.Until(func() bool { return strings.Contains(texts(), "eat well") })
	p.Leave()
}

func TestAPointOfTheMapIsTakenWhereItIsPressed(t *testing.T) {
	test.NewTempApp(t)
	h := pagetest.NewHost(t, market.Demo(t))
	p := balancepage.New(h, mending.New(h.Post, kitchens.Open("").Made, func() {}), kitchens.Open(""))
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1280, 720))
	p.Show()
	plots := pagetest.All[*kit.Plot](p.Object())
	require.Len(t, plots, 3, "the bars, and a map for each phase")
	plot := plots[1]
	before := h.Design()
	h.Until(func() bool { return plot.Words(12) != "" })
	plot.FocusGained()
	plot.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	plot.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	assert.Equal(t, []string{say.BlendStep.String()}, h.Steps)
	assert.False(t, before.Equal(h.Design()))
	assert.NotEmpty(t, h.Said)
	assert.Less(t, h.Result().Dense.SweetnessPercent, 12.0, "the least sweet is at the left")
	p.Leave()
}

func TestWhatPullsApartHasACurveToPickFrom(t *testing.T) {
	test.NewTempApp(t)
	d := market.Demo(t)
	h := pagetest.NewHost(t, d)
	p := balancepage.New(h, mending.New(h.Post, kitchens.Open("").Made, func() {}), kitchens.Open(""))
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1280, 720))
	p.Show()
	h.Until(func() bool { return strings.Contains(pagetest.Texts(p.Object()), "eat well") })
	assert.NotContains(t, pagetest.Texts(p.Object()), say.SureUnknown.String())
	fields := pagetest.All[*kit.NumberField](p.Object())
	pagetest.All[*kit.Select](p.Object())[0].SetSelected("pourable")
	fields[1].OnChanged(8)
	test.Tap(pagetest.Button(t, p.Object(), say.FindWeights.String()))
	h.Until(func() bool { return strings.Contains(pagetest.Texts(p.Object()), say.NearestTitle.String()) })
	require.Contains(t, pagetest.Texts(p.Object()), say.TradeAbout.String())
	curve := pagetest.All[*kit.Plot](p.Object())[1]
	before := strings.Count(pagetest.Texts(p.Object()), say.Apply.String())
	curve.OnPick(0, 0)
	assert.Equal(t, before+1, strings.Count(pagetest.Texts(p.Object()), say.Apply.String()), "the point has no design to take")
	p.Leave()
}

// What batches have taught of a kitchen moves the samples: of a kitchen that is already
// moved by it, it would count twice.
func TestWhatIsLearntCountsOnceInTheSamples(t *testing.T) {
	test.NewTempApp(t)
	learnt := &sure.Learnt{}
	for c := range learnt.Left {
		learnt.Left[c] = 1
	}
	learnt.Shift[sure.Freezer], learnt.Shift[sure.Thaw] = -4, 0.4
	said := func(taught func(d *design.Design, k cold.Profile) cold.Profile) string {
		h, book := pagetest.NewHost(t, market.Demo(t)), kitchens.Open("")
		book.Teach(taught)
		p := balancepage.New(h, mending.New(h.Post, book.Made, func() {}), book)
		p.Teach(func(design.Design) *sure.Learnt { return learnt })
		h.Win.SetContent(p.Object())
		p.Show()
		h.Until(func() bool { return strings.Contains(pagetest.Texts(p.Object()), "eat well") })
		defer p.Leave()
		bars := pagetest.All[*kit.Plot](p.Object())[0]
		return fmt.Sprint(pagetest.Texts(p.Object()), bars.Reading())
	}
	colder := func(_ *design.Design, k cold.Profile) cold.Profile {
		k.Freezer.AirC -= 4
		k.Counter.Factor *= 0.7
		return k
	}
	assert.Equal(t, said(func(_ *design.Design, k cold.Profile) cold.Profile { return k }), said(colder))
}

// A batch that is written down while the page is open teaches it at once.
func TestTheSamplesFollowWhatIsLearnt(t *testing.T) {
	test.NewTempApp(t)
	h := pagetest.NewHost(t, market.Demo(t))
	p := balancepage.New(h, mending.New(h.Post, kitchens.Open("").Made, func() {}), kitchens.Open(""))
	var learnt *sure.Learnt
	p.Teach(func(design.Design) *sure.Learnt { return learnt })
	h.Win.SetContent(p.Object())
	p.Show()
	h.Until(func() bool { return strings.Contains(pagetest.Texts(p.Object()), "eat well") })
	before := pagetest.Texts(p.Object())
	learnt = &sure.Learnt{}
	learnt.Shift[sure.Law] = 1.2 // three times as hard, and no spread left
	p.Show()
	h.Until(func() bool { return pagetest.Texts(p.Object()) != before })
	p.Leave()
}

func TestPacksAndCautionsAreChosen(t *testing.T) {
	test.NewTempApp(t)
	h := pagetest.NewHost(t, market.Demo(t))
	p := balancepage.New(h, mending.New(h.Post, kitchens.Open("").Made, func() {}), kitchens.Open(""))
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1280, 720))
	texts := func() string { return pagetest.Texts(p.Object()) }
	require.Contains(t, texts(), say.WishNoPacks.String())
	require.Contains(t, texts(), say.WishAnyCaution.String())
	var chooses []*kit.Button
	for _, b := range pagetest.All[*kit.Button](p.Object()) {
		if b.Text == say.WishAdd.String() {
			chooses = append(chooses, b)
		}
	}
	require.Len(t, chooses, 3, "packs, cautions, what may come in")
	top := func() fyne.CanvasObject { return h.Win.Canvas().Overlays().Top() }
	typed := func(s string) {
		test.Type(h.Win.Canvas().Focused(), s)
		h.Win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}

	test.Tap(chooses[0])
	typed("cream")
	require.NotNil(t, top(), "it asks what a pack holds")
	typed("250")
	assert.Nil(t, top(), "Return answers")
	assert.Contains(t, texts(), "250 g a pack")

	test.Tap(chooses[1])
	typed("salt")
	assert.Nil(t, top())
	assert.NotContains(t, texts(), say.WishAnyCaution.String())
	assert.Contains(t, texts(), "salt")
}

// A wish for a temperature is typed and named in the maker's degrees, whichever comes
// first, and kept in °C.
func TestAWishForATemperatureIsInTheMakersDegrees(t *testing.T) {
	test.NewTempApp(t)
	page.Reads = say.Customary
	t.Cleanup(func() { page.Reads = say.Usual })
	h := pagetest.NewHost(t, market.Demo(t))
	p := balancepage.New(h, mending.New(h.Post, kitchens.Open("").Made, func() {}), kitchens.Open(""))
	h.Win.SetContent(p.Object())
	h.Win.Resize(fyne.NewSize(1280, 720))
	var which *kit.Select
	name := say.WishFigure(page.Reads, balance.CustardFreezes)
	assert.Contains(t, name, "°F")
	for _, s := range pagetest.All[*kit.Select](p.Object()) {
		if which == nil && slices.Contains(s.Options, name) {
			which = s
		}
	}
	require.NotNil(t, which)
	fields := pagetest.All[*kit.NumberField](p.Object())
	first := fields[slices.IndexFunc(fields, func(n *kit.NumberField) bool { return n.Max == 1e6 })]
	typed := func(text string) {
		h.Win.Canvas().Focus(first.Focusable())
		first.Focusable().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
		test.Type(first.Focusable(), text)
		first.Focusable().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	}
	typed("23")
	which.SetSelected(name)
	assert.InDelta(t, -5, first.Value(), 1e-6, "23 °F")
	typed("14")
	assert.InDelta(t, -10, first.Value(), 1e-6)
	which.SetSelected(say.WishFigure(page.Reads, balance.CustardFat))
	assert.InDelta(t, 14, first.Value(), 1e-6, "the number stays as it is")
}
