package say

import (
	"fmt"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
)

// TestMeasuresKeepTheWeight reads the measures back.
func TestMeasuresKeepTheWeight(t *testing.T) {
	for cups := 0.006; cups < mostCups; cups *= 1.013 {
		tsp := 0.0
		for _, m := range regexp.MustCompile(`(\d*)([⅛¼⅓½⅔¾]?) (cup|tbsp|tsp)`).FindAllStringSubmatch(metric.usMeasure(cups), -1) {
			n := 0.0
			fmt.Sscan(m[1], &n)
			n += map[string]float64{"⅛": 1. / 8, "¼": 1. / 4, "⅓": 1. / 3, "½": 1. / 2, "⅔": 2. / 3, "¾": 3. / 4}[m[2]]
			tsp += n * map[string]float64{"cup": 48, "tbsp": 3, "tsp": 1}[m[3]]
		}
		bar := 0.06
		if cups*tspPerCup < 1 {
			bar = 0.35 // eighths and quarters of a teaspoon
		} else if cups*tspPerCup < 4 {
			bar = 0.13
		}
		assert.InEpsilon(t, cups*tspPerCup, tsp, bar, metric.usMeasure(cups))
	}
	assert.Equal(t, "a pinch", metric.spoons(0.05, 3))
}

// TestMeasuresAgreeWithTheRecords: USDA SR28, NDB 01077, 1 cup = 244 g; NDB
// 19335, 1 cup = 200 g, 1 tsp = 4.2 g; NDB 19296, 1 tbsp = 21 g.
func TestMeasuresAgreeWithTheRecords(t *testing.T) {
	lib := model.New(market.Library(t)).Library()
	for _, c := range []struct {
		id   string
		g    float64
		want string
	}{
		{"milk_whole", 244, "1 cup"}, {"milk_whole", 488, "2 cups"}, {"sugar", 150, "¾ cup"}, {"sugar", 4.2, "1 tsp"}, {"honey", 21, "1 tbsp"},
	} {
		in, ok := lib.Find(c.id)
		require.True(t, ok)
		assert.Equal(t, c.want, Household(us, in, c.g), "%s %g g", c.id, c.g)
	}
	assert.Empty(t, Household(us, &ingredient.Ingredient{}, 100), "unknown is not zero")
}
