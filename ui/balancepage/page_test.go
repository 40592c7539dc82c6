package balancepage_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/mending"
	"ripplewright/internal/show/say"
	"ripplewright/ui/balancepage"
	"ripplewright/ui/kit"
	"ripplewright/ui/page/pagetest"
)

func TestTheWeightsOfATubThatIsAskedForAreTakenInOneStep(t *testing.T) {
	test.NewTempApp(t)
	h := pagetest.NewHost(t, market.Demo(t))
	p := balancepage.New(h, mending.New(h.Post, func() {}))
	h.Win.SetContent(p.Object())
	texts := func() string { return pagetest.Texts(p.Object()) }
	selects := pagetest.All[*kit.Select](p.Object())
	require.Len(t, selects, 2)
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
