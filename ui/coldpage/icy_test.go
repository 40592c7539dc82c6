package coldpage

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/icy"
	"ripplewright/internal/check/market"
	"ripplewright/internal/desk/coldview"
	"ripplewright/internal/show/say"
	"ripplewright/ui/page"
)

func TestTheIceOnThePageIsThatOfThePlan(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	settle(h, p.planner)
	require.NotNil(t, p.ice)
	a := plan(t, h, p.kitchen)
	want, err := icy.Tell(&h.Found, &a, icy.Options{})
	require.NoError(t, err)
	assert.Equal(t, want, p.ice.Answer)
	remedies, err := icy.Remedies(context.Background(), h.Now, &h.Found, &a, &want)
	require.NoError(t, err)
	require.NotEmpty(t, remedies)
	assert.Equal(t, say.IceHelp(page.Reads, remedies), say.IceHelp(page.Reads, p.ice.Remedies))
	brief := say.IceBrief(page.Reads, &want)
	assert.Equal(t, brief.Answer, tile(p.views[coldview.Ice]).Value)
	assert.Equal(t, brief.More, tile(p.views[coldview.Ice]).Foot)
	p.choose(coldview.Ice)
	require.NotNil(t, p.stage.scene.Plot)
}

// The swing is a lever: more of it, and the curve ends higher.
func TestMoreSwingLiftsTheCurve(t *testing.T) {
	p, h := coldPage(t, market.Honey(), daylight)
	settle(h, p.planner)
	p.choose(coldview.Ice)
	end := func() float64 { w := p.ice.Custard.Weeks; return w[len(w)-1].Coarser().ValueUM }
	was, foot := end(), tile(p.views[coldview.Ice]).Foot
	swing := slides(p.views[coldview.Ice])[1]
	swing.OnChanged(8)
	settle(h, p.planner)
	assert.Equal(t, 8.0, p.kitchen.SwingK)
	assert.Greater(t, end(), was+1)
	assert.NotEqual(t, foot, tile(p.views[coldview.Ice]).Foot)
}
