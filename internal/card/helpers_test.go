package card

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"ripplewright/assets"
	"ripplewright/internal/design"
	"ripplewright/internal/ingredient"
	"ripplewright/internal/model"
)

// market is an invented design of the Saltmarsh Quay stall.
func market() design.Design {
	d := design.New()
	d.Name = "Hazelnut and burnt honey"
	d.Serving.TemperatureC = -11
	d.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: 420}, {Ingredient: "cream_heavy", Grams: 180},
		{Ingredient: "egg_yolk", Grams: 90}, {Ingredient: "sugar", Grams: 95},
		{Ingredient: "honey", Grams: 40, Note: "burnt to a dark amber"}, {Ingredient: "hazelnut", Grams: 60},
	}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 165}, {Ingredient: "cream_of_tartar", Grams: 1}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 180}, {Ingredient: "water", Grams: 60}}
	return d
}

// crowded is a design with a long name, long notes and many lines.
func crowded(t testing.TB) design.Design {
	d := market()
	d.Name = "Saltmarsh Quay harvest supper: toasted hazelnut, brown butter, burnt heather honey and smoked sea salt with a lemon-thyme ripple"
	d.Notes = strings.Repeat("Toast the nuts on the day and keep them dry until the last fold. ", 12)
	d.Tubs = design.Tubs{Count: 24, VolumeML: 5000, FillPercent: 95, Shape: design.ShapeRectangle}
	n := 0
	for _, in := range library(t).All() {
		switch in.Group {
		case "dairy", "cocoa_chocolate", "nut_seed":
			if n++; n%3 == 0 && n < 70 {
				d.Dense.Lines = append(d.Dense.Lines, design.Line{Ingredient: in.ID, Grams: 7, Note: "stirred in with the last of the cream"})
			}
		}
	}
	return d
}

func library(t testing.TB) *ingredient.Library {
	f, err := assets.Library.Open("library/ingredients.jsonl")
	require.NoError(t, err)
	defer f.Close()
	lib, err := ingredient.Read(f)
	require.NoError(t, err)
	return lib
}

func evaluated(t testing.TB, d design.Design) *model.Result {
	r, err := model.New(library(t)).Evaluate(d)
	require.NoError(t, err)
	return &r
}
