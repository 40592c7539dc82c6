package label

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each boundary of each rule from both sides, worked by hand from the words of
// 21 CFR 101.9 and of the Commission's guidance of December 2012: the amounts
// just below and at a boundary, and the text on either side.
func TestEveryBoundaryFromBothSides(t *testing.T) {
	fat := []step{{0.5, "0g", "0.5g"}, {0.75, "0.5g", "1g"}, {4.75, "4.5g", "5g"}, {5, "5g", "5g"}, {5.5, "5g", "6g"}, {17.5, "17g", "18g"}}
	gram := []step{{0.5, "0g", "less than 1g"}, {1, "less than 1g", "1g"}, {1.5, "1g", "2g"}, {99.5, "99g", "100g"}}
	euGram := []step{{0.55, "0.5 g", "0.6 g"}, {9.95, "9.9 g", "10.0 g"}, {10, "10.0 g", "10 g"}, {10.5, "10 g", "11 g"}}
	for rule, steps := range map[string][]step{
		"calories":  {{5, "0", "5"}, {7.5, "5", "10"}, {47.5, "45", "50"}, {50, "50", "50"}, {55, "50", "60"}, {245, "240", "250"}, {995, "990", "1000"}},
		"total_fat": fat, "saturated_fat": fat, "trans_fat": fat, "polyunsaturated_fat": fat, "monounsaturated_fat": fat,
		"cholesterol":        {{2, "0mg", "less than 5mg"}, {5, "less than 5mg", "5mg"}, {7.5, "5mg", "10mg"}, {102.5, "100mg", "105mg"}},
		"sodium":             {{5, "0mg", "5mg"}, {7.5, "5mg", "10mg"}, {137.5, "135mg", "140mg"}, {140, "140mg", "140mg"}, {145, "140mg", "150mg"}, {1005, "1000mg", "1010mg"}},
		"total_carbohydrate": gram, "dietary_fiber": gram, "total_sugars": gram, "sugar_alcohol": gram, "protein": gram,
		"added_sugars": {{0.5, "Includes 0g Added Sugars", "Includes less than 1g Added Sugars"}, {1, "Includes less than 1g Added Sugars", "Includes 1g Added Sugars"}, {1.5, "Includes 1g Added Sugars", "Includes 2g Added Sugars"}},
		"vitamin_d":    {{0.4, "0mcg", "0.4mcg"}, {0.45, "0.4mcg", "0.5mcg"}, {2.25, "2.2mcg", "2.3mcg"}},
		"iron":         {{0.36, "0mg", "0.4mg"}, {1.25, "1.2mg", "1.3mg"}},
		"calcium":      {{0.5, "0mg", "1mg"}, {126.5, "126mg", "127mg"}}, "potassium": {{234.5, "234mg", "235mg"}},
		"percent_dv_vitamin_mineral": {{1, "0%", "2%"}, {3, "2%", "4%"}, {9, "8%", "10%"}, {10, "10%", "10%"}, {12.5, "10%", "15%"}, {47.5, "45%", "50%"}, {50, "50%", "50%"}, {55, "50%", "60%"}, {105, "100%", "110%"}},
		"percent_dv_total_fat":       {{0.5, "0%", "1%"}, {78 * 0.245, "24%", "25%"}}, "percent_dv_sodium": {{2300 * 0.065, "6%", "7%"}},
		"percent_dv_iron":         {{0.36, "0%", "2%"}, {18 * 0.03, "2%", "4%"}},
		"servings_per_container":  {{2, "about 2", "2"}, {2.25, "about 2", "about 2.5"}, {2.75, "about 2.5", "about 3"}, {4.75, "about 4.5", "about 5"}, {5, "about 5", "5"}, {5.5, "about 5", "about 6"}},
		"serving_metric_quantity": {{0.45, "0.4g", "0.5g"}, {1.95, "1.9g", "2g"}, {2, "2g", "2g"}, {2.25, "2g", "2.5g"}, {4.75, "4.5g", "5g"}, {5, "5g", "5g"}, {87.5, "87g", "88g"}},
		"eu_energy":               {{0.5, "0", "1"}, {866.5, "866", "867"}}, "eu_fat": euGram, "eu_carbohydrate_sugars_protein_fibre": euGram,
		"eu_saturates": {{0.15, "0.1 g", "0.2 g"}, {9.95, "9.9 g", "10.0 g"}, {10, "10.0 g", "10 g"}},
		"eu_salt":      {{0.015, "0.01 g", "0.02 g"}, {0.995, "0.99 g", "1.00 g"}, {1, "1.00 g", "1.0 g"}, {1.05, "1.0 g", "1.1 g"}},
	} {
		for _, s := range steps {
			for at, want := range map[float64]string{s.at - 1e-6: s.below, s.at: s.from, math.Nextafter(s.at, 0): s.from, math.Nextafter(s.at, 1e9): s.from} {
				got, err := Declare(rule, at)
				require.NoError(t, err)
				assert.Equal(t, want, got, "%s %v", rule, at)
			}
		}
	}
	// Amounts that count as none to and including a limit: the boundary itself is below.
	for rule, s := range map[string]step{"eu_fat": {0.5, "<0.5 g", "0.5 g"}, "eu_saturates": {0.1, "<0.1 g", "0.1 g"}, "eu_salt": {0.0125, "<0.01 g", "0.01 g"}} {
		for at, want := range map[float64]string{0: "0 g", 1e-6: s.below, s.at: s.below, s.at + 1e-6: s.from} {
			got, err := Declare(rule, at)
			require.NoError(t, err)
			assert.Equal(t, want, got, "%s %v", rule, at)
		}
	}
}

// step is a boundary: what is declared just below it and from it on.
type step struct {
	at          float64
	below, from string
}
