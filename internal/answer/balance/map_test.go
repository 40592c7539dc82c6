package balance

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

func TestASpotIsADesignOfAsMuchSugar(t *testing.T) {
	m, d := models(t), market.Demo(t)
	for _, role := range roles {
		part := design.DensePart
		if role == phase.Foam {
			part = design.SyrupPart
		}
		total := func(d design.Design) (g float64) {
			for _, l := range d.Lines(part) {
				if in, _ := m.Library().Find(l.Ingredient); in.Group == "sugar_syrup" {
					g += l.Grams
				}
			}
			return g
		}
		spots, err := Blends(background, m, d, role, Locks{})
		require.NoError(t, err)
		require.Greater(t, len(spots), 15, role)
		low, high := math.Inf(1), math.Inf(-1)
		for _, s := range spots {
			r, err := m.Evaluate(s.Design)
			require.NoError(t, err)
			p := &r.Dense
			if role == phase.Foam {
				p = &r.Foam
			}
			assert.InEpsilon(t, p.State.YieldKPa, s.KPa, 1e-9)
			assert.InEpsilon(t, p.SweetnessPercent, s.Sweetness, 1e-9)
			assert.InDelta(t, total(d), total(s.Design), 0.2)
			low, high = math.Min(low, s.KPa), math.Max(high, s.KPa)
		}
		assert.Greater(t, high, 1.05*low)
	}
}

func TestALockedSugarIsInEverySpot(t *testing.T) {
	m, d := models(t), market.Demo(t)
	locks := Locks{Lines: map[LineAt]bool{}}
	honey := lineOf(d.Dense.Lines, "honey")
	require.GreaterOrEqual(t, honey, 0)
	locks.Lines[LineAt{design.DensePart, honey}] = true
	spots, err := Blends(background, m, d, phase.Dense, locks)
	require.NoError(t, err)
	for _, s := range spots {
		assert.Equal(t, d.Dense.Lines[honey].Grams, s.Design.Dense.Lines[lineOf(s.Design.Dense.Lines, "honey")].Grams)
	}
	for i := range d.Dense.Lines {
		locks.Lines[LineAt{design.DensePart, i}] = true
	}
	none, err := Blends(background, m, d, phase.Dense, locks)
	require.NoError(t, err)
	assert.Empty(t, none)
}
