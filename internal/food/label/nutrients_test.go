package label

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The table of nutrients is what a US panel declares from the records, in its order:
// 21 CFR 101.9(c) and (d)(7) to (8), as usLines has them.
func TestTheNutrientsAreThoseOfThePanel(t *testing.T) {
	var declared []figure
	for _, u := range usLines {
		switch u.figure {
		case polyols:
		case fibreUS: // fibre, less gums outside the US list
			declared = append(declared, fibre)
		default:
			declared = append(declared, u.figure)
		}
	}
	require.Len(t, Nutrients, len(declared))
	for i, n := range Nutrients {
		assert.Equal(t, declared[i], n.line, n.Name)
	}
}

func TestColumnsOfAPanelSayWhatTheyArePer(t *testing.T) {
	lines := []PanelLine{{Key: "fat", DVText: "9%"}}
	for _, c := range []struct {
		label       Label
		per, shares []string
	}{
		{Label{Region: US, Lines: lines}, []string{"per serving"}, []string{"% DV"}},
		{Label{Region: US, Lines: lines, Second: lines, SecondColumn: PerContainer}, []string{"per serving", "per container"}, []string{"% DV", "% DV"}},
		{Label{Region: US, Lines: lines, Second: lines, SecondColumn: "2/3 cup"}, []string{"per 2/3 cup", "per container"}, []string{"% DV", "% DV"}},
		{Label{Region: EU, Lines: lines, Second: lines, SecondColumn: "portion"}, []string{"per 100 g", "per portion"}, []string{"", "% RI"}},
	} {
		columns := c.label.PanelColumns()
		require.Len(t, columns, len(c.per))
		for i, column := range columns {
			assert.Equal(t, c.per[i], column.Per)
			assert.Equal(t, c.shares[i], column.Share)
			assert.Equal(t, c.shares[i] != "", column.ShareText(0) != "")
		}
	}
}
