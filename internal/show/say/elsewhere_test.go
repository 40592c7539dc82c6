package say

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/balance"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/label"
)

func TestWhatAProposalBringsIsSaidShort(t *testing.T) {
	nan := balance.Pair{Before: math.NaN(), After: math.NaN()}
	line := func(key, name, before, after string) balance.Declared {
		return balance.Declared{Key: key, Name: name, Before: label.PanelLine{Text: before}, After: label.PanelLine{Text: after}}
	}
	p := balance.Proposal{}
	p.Result.Blend.SweetnessPercent = 14
	was := model.Result{}
	was.Blend.SweetnessPercent = 16.1
	assert.Equal(t, []string{"the tub 2.1 points less sweet"}, Elsewhere(metric, &was, &p), "of the rest nothing is known yet")
	p.Beside = &balance.Beside{
		CautionsGained: []string{"too_salty"}, Contrast: balance.Pair{Before: 3.14, After: 2.1}, CostPerTub: balance.Pair{Before: 2, After: 2.35}, Minutes: balance.Pair{Before: 9.4, After: 5.6},
		Declared:        []balance.Declared{line("calories", "Calories", "230", "210"), line("total_sugars", "Total Sugars", "25g", "25g"), line("added_sugars", "Added Sugars", "Includes 20g Added Sugars", "Includes 17g Added Sugars")},
		DeclaredEU:      []balance.Declared{line("energy_kcal", "Energy", "220 kcal", "210 kcal"), line("sugars", "of which sugars", "20 g", "17 g")},
		NamesGained:     []label.Name{{Name: "frozen custard", Region: label.US, Of: "dense phase alone"}, {Name: "ice cream (EU trade)", Region: label.EU, Of: "dense phase alone"}},
		NamesLost:       []label.Name{{Name: "mellorine", Region: label.US, Of: "whole food"}},
		AllergensGained: []string{"milk", "tree_nut:hazelnut"}, AllergensLost: []string{"wheat"},
	}
	assert.Equal(t, []string{
		"the tub 2.1 points less sweet", "it brings too much salt", "the custard 2.1 times as hard as the foam, not 3.1", "6 min out of the freezer, not 9", "0.35 dearer a tub",
		"a US serving declares 210 kcal, not 230 kcal; 17g added sugars, not 20g", "an EU label declares of 100 g 210 kcal, not 220 kcal; 17 g sugars, not 20 g",
		"the custard alone is then within the limits of frozen custard (US) and ice cream (EU trade)", "the whole food is no longer within the limits of mellorine (US)",
		"the label then names milk and hazelnut as an allergen", "the label names wheat no more",
	}, Elsewhere(metric, &was, &p))
	p.Beside = &balance.Beside{Contrast: nan, CostPerTub: nan, Minutes: nan}
	assert.Len(t, Elsewhere(metric, &was, &p), 1)
}

func TestAnAlternativeSaysWhatGivesWay(t *testing.T) {
	hard, sweet := balance.Wish{Of: balance.CustardHardness}, balance.Wish{Of: balance.CustardSweetness}
	nearest := []balance.Outcome{{Wish: hard, Value: 5.8}, {Wish: sweet, Value: 13, Met: true}}
	for want, other := range map[string][]balance.Outcome{
		"By other means:": {{Wish: hard, Value: 5.9}, {Wish: sweet, Value: 13, Met: true}},
		"With the hardness of the custard as wished:":                                                                {{Wish: hard, Value: 2, Met: true}, {Wish: sweet, Value: 13, Met: true}},
		"With the hardness of the custard as wished, but not the sweetness of the custard, as sucrose, 19.9\u00a0%:": {{Wish: hard, Value: 2, Met: true}, {Wish: sweet, Value: 19.9}},
	} {
		assert.Equal(t, strings.ReplaceAll(want, "\u00a0", " "), strings.ReplaceAll(GivesWay(metric, nearest, other), "\u00a0", " "))
	}
}
