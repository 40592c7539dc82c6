package phase

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
)

func lawRange(role Role, t float64, of map[mix.Species]float64) LawRange {
	var m mix.Mix
	for s, g := range of {
		m.Grams[s] = g
	}
	b := Prepare(m, 0.2, role, solution.DefaultBound)
	s := b.At(t)
	return b.LawRange(&s)
}

func TestTheHardnessLawSaysWhereItEnds(t *testing.T) {
	custard := map[mix.Species]float64{mix.Water: 60, mix.Sucrose: 16, mix.Lactose: 4, mix.Fat: 15, mix.Protein: 5}
	for _, role := range []Role{Dense, Foam} {
		assert.Equal(t, LawRange{}, lawRange(role, -18, custard))
		assert.True(t, lawRange(role, -26, custard).TooCold)
		assert.True(t, lawRange(role, -10, map[mix.Species]float64{mix.Water: 20, mix.Sucrose: 80}).SyrupTooThick)
		assert.True(t, lawRange(role, -18, map[mix.Species]float64{mix.Water: 16, mix.Fat: 81, mix.Protein: 1}).FatTooHigh, "butter")
	}
}

// Why it must say so: three unlike recipes, one figure.
func TestBeyondItsRangeTheLawReadsAlike(t *testing.T) {
	read := func(sugar float64) float64 {
		var m mix.Mix
		m.Grams[mix.Water], m.Grams[mix.Sucrose] = 100-sugar, sugar
		b := Prepare(m, 0, Dense, solution.DefaultBound)
		return b.At(-18).YieldKPa
	}
	assert.Equal(t, read(80), read(90))
	assert.Less(t, read(60), read(70))
}

// No word and no range where the law ends, and both again within it.
func TestWhereTheLawEndsThereIsNoWord(t *testing.T) {
	of := func(fat float64) (Word, bool) {
		var m mix.Mix
		m.Grams[mix.Water], m.Grams[mix.Sucrose], m.Grams[mix.Protein], m.Grams[mix.Fat] = 60, 18, 5, fat
		b := Prepare(m.Times(100/m.TotalG()), 0.2, Dense, solution.DefaultBound)
		s := b.At(-12)
		_, _, ok := b.ScoopRangeC(-24, -4)
		return b.Word(&s), ok
	}
	word, ok := of(15)
	assert.NotEqual(t, NoWord, word)
	assert.True(t, ok)
	word, ok = of(30)
	assert.Equal(t, NoWord, word)
	assert.False(t, ok)
}

// The ends are those of the syrup's table: 75 % sugar, and its coldest row.
func TestTheLawIsLeftOnceAsAPhaseCools(t *testing.T) {
	for name, of := range map[string]map[mix.Species]float64{
		"custard":    {mix.Water: 60, mix.Sucrose: 16, mix.Lactose: 4, mix.Fat: 15, mix.Protein: 5},
		"thin syrup": {mix.Water: 40, mix.Sucrose: 60}, "syrup": {mix.Water: 27, mix.Sucrose: 73},
	} {
		var m mix.Mix
		for s, g := range of {
			m.Grams[s] = g
		}
		b := Prepare(m, 0.2, Foam, solution.DefaultBound)
		from, ok := b.LawFromC(-40, 0)
		assert.True(t, ok, name)
		assert.GreaterOrEqual(t, from, solution.ViscosityRange.MinC, name)
		for c := -40.0; c <= 0; c += 0.25 {
			s := b.At(c)
			assert.Equal(t, c < from, b.LawRange(&s).Ends(), "%s at %g", name, c)
		}
	}
	var butter mix.Mix
	butter.Grams[mix.Water], butter.Grams[mix.Fat] = 16, 84
	b := Prepare(butter, 0, Dense, solution.DefaultBound)
	_, ok := b.LawFromC(-40, 0)
	assert.False(t, ok)
}
