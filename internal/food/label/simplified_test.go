package label

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 21 CFR 101.9(f), from memory: eight of the fifteen must be insignificant; calories,
// fat, sodium, carbohydrate and protein stay all the same.
func TestASimplifiedPanelNeedsEightInsignificantLines(t *testing.T) {
	zero := func(keys ...string) (out []PanelLine) {
		for _, k := range keys {
			out = append(out, PanelLine{Key: k, Name: k, Text: "0g"})
		}
		return out
	}
	lines := append([]PanelLine{{Key: "calories", Name: "Calories", Text: "90"}, {Key: "total_carbohydrate", Name: "Total Carbohydrate", Text: "22g"},
		{Key: "total_sugars", Name: "Total Sugars", Text: "22g"}, {Key: "added_sugars", Name: "Added Sugars", Text: "Includes 22g Added Sugars"},
		{Key: "iron", Name: "Iron", Text: "0.4mg"}},
		zero("total_fat", "saturated_fat", "trans_fat", "cholesterol", "sodium", "protein", "vitamin_d")...)
	require.Nil(t, simplified(lines, nil), "seven are not eight")

	fibre := PanelLine{Key: "dietary_fiber", Name: "Dietary Fiber", Text: "less than 1g"}
	s := simplified(append(lines, fibre), nil)
	require.NotNil(t, s)
	var kept []string
	for _, l := range s.lines {
		kept = append(kept, l.Key)
	}
	assert.Equal(t, []string{"calories", "total_carbohydrate", "total_sugars", "added_sugars", "iron", "total_fat", "sodium", "protein"}, kept)
	assert.Contains(t, s.notSignificant, "dietary fiber")

	fibre.Incomplete = true // a figure that nobody knows is not insignificant
	assert.Nil(t, simplified(append(lines, fibre), nil))
	second := append(append([]PanelLine{}, lines...), PanelLine{Key: "dietary_fiber", Text: "2g"})
	fibre.Incomplete = false
	assert.Nil(t, simplified(append(lines, fibre), second), "in both columns")
	assert.Nil(t, (&Label{}).Simple())
	assert.Equal(t, s.lines, (&Label{Lines: lines, simple: s}).Simple().Lines)
}
