package balancepage_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/kitchens"
	"ripplewright/internal/desk/mending"
	"ripplewright/internal/show/say"
	"ripplewright/ui/balancepage"
	"ripplewright/ui/kit"
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
	test.Tap(pagetest.Button(t, p.Object(), say.FindWeights))
	h.Until(func() bool { return strings.Contains(texts(), say.MetTitle) })
	assert.Contains(t, texts(), "as wished")
	test.Tap(pagetest.Button(t, p.Object(), say.Apply))
	assert.Equal(t, []string{say.RemedyStep}, h.Steps)
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
	require.Len(t, plots, 2)
	plot := plots[1]
	before := h.Design()
	h.Until(func() bool { return plot.Words(12) != "" })
	plot.FocusGained()
	plot.TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	plot.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	assert.Equal(t, []string{say.BlendStep}, h.Steps)
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
	assert.NotContains(t, pagetest.Texts(p.Object()), say.SureUnknown)
	fields := pagetest.All[*kit.NumberField](p.Object())
	pagetest.All[*kit.Select](p.Object())[0].SetSelected("pourable")
	fields[1].OnChanged(8)
	test.Tap(pagetest.Button(t, p.Object(), say.FindWeights))
	h.Until(func() bool { return strings.Contains(pagetest.Texts(p.Object()), say.NearestTitle) })
	require.Contains(t, pagetest.Texts(p.Object()), say.TradeAbout)
	curve := pagetest.All[*kit.Plot](p.Object())[1]
	before := strings.Count(pagetest.Texts(p.Object()), say.Apply)
	curve.OnPick(0, 0)
	assert.Equal(t, before+1, strings.Count(pagetest.Texts(p.Object()), say.Apply), "the point has no design to take")
	p.Leave()
}
