package balance

import (
	"context"
	"fmt"
	"math/rand"
	"testing"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

func models(t testing.TB) *model.Model { return model.New(market.Library(t)) }

// sound returns a design of the Saltmarsh Quay stall out of ordinary
// proportions; most are good.
func sound(r *rand.Rand) design.Design {
	between := func(low, high float64) float64 { return low + (high-low)*r.Float64() }
	d := design.New()
	d.Name = fmt.Sprintf("Quay %d", r.Intn(1000))
	d.Serving.TemperatureC = between(-15, -11)
	d.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: between(380, 520)}, {Ingredient: "cream_heavy", Grams: between(120, 220)},
		{Ingredient: "egg_yolk", Grams: between(70, 110)}, {Ingredient: "sugar", Grams: between(80, 120)},
	}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: between(150, 190)}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: between(150, 190)}, {Ingredient: "water", Grams: between(45, 70)}}
	more := func(id string, low, high float64) {
		if r.Intn(2) == 0 {
			d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: id, Grams: between(low, high)})
		}
	}
	more("dextrose_monohydrate", 15, 45)
	more("honey", 10, 40)
	more("salt", 1, 3)
	more("vanilla_extract", 3, 8)
	more("hazelnut_roasted", 20, 60)
	d.Dense.OverrunPercent, d.Foam.OverrunPercent = between(10, 30), between(200, 350)
	d.Blend.FoamVolumePercent = between(25, 55)
	d.Tubs.Count = 1 + r.Intn(4)
	return d
}

// good returns the first of r's sound designs that is good.
func good(t testing.TB, m *model.Model, r *rand.Rand) design.Design {
	t.Helper()
	for range 200 {
		d := sound(r)
		if x, err := m.Evaluate(d); err == nil && x.Verdict.Good {
			return d
		}
	}
	t.Fatal("no good design in 200")
	return design.Design{}
}

var background = context.Background()
