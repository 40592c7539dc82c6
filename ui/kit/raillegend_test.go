package kit

import (
	"math"
	"testing"

	"fyne.io/fyne/v2/test"
	"github.com/stretchr/testify/assert"

	"ripplewright/internal/show/draw"
)

func TestTheRailSaysNowhereOnlyOfPhasesThatAreKnown(t *testing.T) {
	test.NewTempApp(t)
	r := NewRail()
	says := func(dense []float64) (nowhere bool) {
		r.view = RailView{Temperatures: []float64{-20, -10}, Serving: -12}
		r.view.Dense.Hardness, r.view.Foam.Hardness = dense, []float64{9, 3}
		d := draw.List{}
		d.Reset(1200, 200)
		r.layOut(&d, 1200, 200)
		for _, w := range d.Texts {
			nowhere = nowhere || w.S == "they never scoop together"
		}
		return nowhere
	}
	assert.True(t, says([]float64{90, 30}))
	assert.False(t, says([]float64{math.NaN(), math.NaN()}))
	assert.False(t, says(nil))
}
