package report

import (
	"bytes"
	"context"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/show/say"
)

// Whatever is made, in whatever kitchen, is told in words and finite figures, what
// the model leaves out among them.
func TestTheIceOfAnythingIsToldWithoutANumberThatIsNone(t *testing.T) {
	if testing.Short() {
		t.Skip("a sweep over designs; one of them is reported in other tests")
	}
	m := model.New(market.Library(t))
	all := market.Demos(t)
	for name, d := range market.Hard(t) {
		all[name] = d
	}
	kitchens := map[string]func(*cold.Profile){
		"ordinary":   func(*cold.Profile) {},
		"left alone": func(p *cold.Profile) { p.Layer.Beating = cold.Never },
		"churned":    func(p *cold.Profile) { p.Churn.Kind = "batch_freezer" },
		"warm":       func(p *cold.Profile) { p.Freezer.AirC, p.SwingK = -6, 6 },
		"deep cold":  func(p *cold.Profile) { p.Freezer.AirC, p.SwingK, p.Openings = -38, 0, 0 },
		"no ice":     func(p *cold.Profile) { p.Freezer.AirC = -2 },
	}
	told := 0
	for name, d := range all {
		r, err := m.Evaluate(d)
		if err != nil {
			continue
		}
		for where, alter := range kitchens {
			k := cold.Default()
			alter(&k)
			a, err := cold.Plan(context.Background(), d, &r, k, cold.Options{NoPictures: true})
			if err != nil {
				continue // an empty tub
			}
			x, err := icy.Tell(&r, &a, icy.Options{})
			require.NoError(t, err)
			told++
			for _, p := range []*icy.Phase{&x.Custard, &x.Foam} {
				for _, w := range p.Weeks {
					s := w.Coarser()
					assert.True(t, 1 < s.LowUM && s.LowUM <= s.ValueUM && s.ValueUM <= s.HighUM && s.HighUM < 1e5, "%s, %s: %v", name, where, s)
				}
			}
			var text bytes.Buffer
			require.NoError(t, Ice{Answer: x, Kitchen: k.Name}.WriteText(&text))
			assert.NotRegexp(t, `NaN|Inf|%!`, text.String(), "%s, %s", name, where)
			if x.Custard.Frozen || x.Foam.Frozen {
				assert.Contains(t, text.String(), say.IceNotModelled(Reads, &x), "%s, %s", name, where)
			}
			var back map[string]any
			written, err := json.Marshal(Ice{Answer: x, Kitchen: k.Name})
			require.NoError(t, err)
			require.NoError(t, json.Unmarshal(written, &back))
		}
	}
	assert.Greater(t, told, 30)
}
