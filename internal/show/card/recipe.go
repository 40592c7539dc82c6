package card

import (
	"fmt"
	"math"
	"strings"

	"ripplewright/internal/food/label"
	"ripplewright/internal/show/say"
)

// recipeData is a recipe as schema.org, an open standard, has it in JSON-LD: types
// and properties from memory.
type recipeData struct {
	Context      string         `json:"@context"`
	Type         string         `json:"@type"`
	Name         string         `json:"name"`
	Description  string         `json:"description,omitempty"`
	Language     string         `json:"inLanguage"`
	Category     string         `json:"recipeCategory"`
	Yield        string         `json:"recipeYield"`
	PrepTime     string         `json:"prepTime,omitempty"`  // of work
	TotalTime    string         `json:"totalTime,omitempty"` // from the first step to the spoon
	Ingredients  []string       `json:"recipeIngredient"`
	Instructions []stepData     `json:"recipeInstructions"`
	Nutrition    *nutritionData `json:"nutrition,omitempty"`
}

type stepData struct {
	Type     string `json:"@type"`
	Position int    `json:"position"`
	Name     string `json:"name"`
	Text     string `json:"text"`
}

type nutritionData struct {
	Type          string `json:"@type"`
	ServingSize   string `json:"servingSize"`
	Calories      string `json:"calories,omitempty"`
	Fat           string `json:"fatContent,omitempty"`
	SaturatedFat  string `json:"saturatedFatContent,omitempty"`
	TransFat      string `json:"transFatContent,omitempty"`
	Cholesterol   string `json:"cholesterolContent,omitempty"`
	Sodium        string `json:"sodiumContent,omitempty"`
	Carbohydrates string `json:"carbohydrateContent,omitempty"`
	Fibre         string `json:"fiberContent,omitempty"`
	Sugar         string `json:"sugarContent,omitempty"`
	Protein       string `json:"proteinContent,omitempty"`
}

// recipeOf is the recipe of a card's words.
func recipeOf(c content) recipeData {
	out := recipeData{Context: "https://schema.org", Type: "Recipe", Name: flat(c.name), Description: flat(c.strap), Language: "en",
		Category: "Frozen dessert", Yield: flat(c.tubs), PrepTime: lasting(c.byHands), TotalTime: lasting(c.spanMinutes),
		Ingredients: []string{}, Instructions: []stepData{}, Nutrition: nutritionOf(c.label)}
	for _, p := range c.parts {
		for _, r := range p.rows {
			line := r.weight() + " " + r.name
			if r.note != "" {
				line += ", " + r.note
			}
			out.Ingredients = append(out.Ingredients, flat(line))
		}
	}
	for i, s := range c.steps {
		out.Instructions = append(out.Instructions, stepData{"HowToStep", i + 1, flat(s.Title), flat(s.Text)})
	}
	return out
}

// flat is a text on one line that only says what it says.
func flat(s string) string { return strings.TrimSpace(say.Harmless(s, say.Terminal)) }

// lasting is a duration of ISO 8601, "" for none: "PT26H30M".
func lasting(minutes float64) string {
	if !(minutes > 0) || math.IsInf(minutes, 1) {
		return ""
	}
	n := int(math.Round(minutes))
	return fmt.Sprintf("PT%dH%dM", n/60, n%60)
}

// nutritionOf is a panel as schema.org has it; a figure that is a lower bound is left
// out. Salt has no property there.
func nutritionOf(l *label.Label) *nutritionData {
	if l == nil {
		return nil
	}
	out := &nutritionData{Type: "NutritionInformation", ServingSize: flat(l.ServingMeasure)}
	if l.Region == label.EU {
		out.ServingSize = strings.TrimPrefix(flat(l.PanelColumns()[0].Per), "per ")
	}
	to := map[string]*string{
		"calories": &out.Calories, "energy_kcal": &out.Calories, "total_fat": &out.Fat, "fat": &out.Fat, "saturated_fat": &out.SaturatedFat,
		"saturates": &out.SaturatedFat, "trans_fat": &out.TransFat, "cholesterol": &out.Cholesterol, "sodium": &out.Sodium,
		"total_carbohydrate": &out.Carbohydrates, "carbohydrate": &out.Carbohydrates, "dietary_fiber": &out.Fibre, "fibre": &out.Fibre,
		"total_sugars": &out.Sugar, "sugars": &out.Sugar, "protein": &out.Protein,
	}
	for _, n := range l.Lines {
		at, known := to[n.Key]
		if !known || n.Incomplete {
			continue
		}
		if *at = n.AmountText(); at == &out.Calories {
			*at = strings.TrimSuffix(*at, " kcal") + " calories"
		}
	}
	return out
}
