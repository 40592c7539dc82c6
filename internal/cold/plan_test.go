package cold

import (
	"context"
	"encoding/json"
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
	d.Dense.Lines = []design.Line{
		{Ingredient: "milk_whole", Grams: 420}, {Ingredient: "cream_heavy", Grams: 180},
		{Ingredient: "egg_yolk", Grams: 90}, {Ingredient: "sugar", Grams: 95}, {Ingredient: "honey", Grams: 40},
	}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 165}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 180}, {Ingredient: "water", Grams: 60}}
	return d
}

var bench = func() *model.Model {
	f, err := assets.Library.Open("library/ingredients.jsonl")
	if err != nil {
		panic(err)
	}
	defer f.Close()
	lib, err := ingredient.Read(f)
	if err != nil {
		panic(err)
	}
	return model.New(lib)
}()

func evaluated(t testing.TB, d design.Design) *model.Result {
	t.Helper()
	r, err := bench.Evaluate(d)
	require.NoError(t, err)
	return &r
}

func planned(t testing.TB, d design.Design, p Profile) Answer {
	t.Helper()
	a, err := Plan(context.Background(), d, evaluated(t, d), p, Options{NoPictures: true})
	require.NoError(t, err)
	return a
}

func TestShow(t *testing.T) {
	for _, p := range BuiltIn() {
		a := planned(t, market(), p)
		text, err := json.MarshalIndent(a, "", " ")
		require.NoError(t, err)
		if p.Name == "Home freezer" {
			t.Log(string(text))
		}
		t.Log(p.Name, a.StillFreeze.Dense.Ready, len(a.StillFreeze.Dense.Stirs), a.StillFreeze.Foam.Ready, a.Harden.Hours, a.Counter.Sentence, a.Fridge.Sentence, a.Counter.RingServing, a.Counter.MeanServing)
	}
}

func BenchmarkPlan(b *testing.B) {
	d := market()
	r := evaluated(b, d)
	for _, name := range []string{"Home freezer", "Fan freezer"} {
		p, err := Find(BuiltIn(), name)
		require.NoError(b, err)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for i := 0; i < b.N; i++ {
				_, err := Plan(context.Background(), d, r, p, Options{})
				require.NoError(b, err)
			}
		})
	}
}
