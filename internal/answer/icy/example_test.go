package icy_test

import (
	"context"
	"fmt"

	"ripplewright/assets"
	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/icy"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
)

func ExampleTell() {
	f, err := assets.Library.Open("library/ingredients.jsonl")
	if err != nil {
		panic(err)
	}
	defer f.Close()
	library, err := ingredient.Read(f)
	if err != nil {
		panic(err)
	}
	d := market.Honey()
	r, err := model.New(library).Evaluate(d)
	if err != nil {
		panic(err)
	}
	kitchen := cold.Default()
	kitchen.Churn.Kind = "frozen_bowl"
	plan, err := cold.Plan(context.Background(), d, &r, kitchen, cold.Options{NoPictures: true})
	if err != nil {
		panic(err)
	}
	told, err := icy.Tell(&r, &plan, icy.Options{Weeks: 12})
	if err != nil {
		panic(err)
	}
	fmt.Printf("%s when hardened, %s after %d weeks\n", told.Custard.Hardened.Name(), told.Custard.Word.Name(), told.Weeks)
	// Output:
	// smooth when hardened, slightly coarse after 12 weeks
}
