package whole_test

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/whole"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/setting"
	"ripplewright/internal/work/design"
	"ripplewright/internal/work/designfile"
)

func newModel(t *testing.T) *model.Model { return model.New(market.Library(t)) }

// quay is invented: a custard of yolks and a foam of whites, which no egg pairs.
func quay() design.Design {
	d := design.New()
	d.Dense.Lines = []design.Line{{Ingredient: "milk_whole", Grams: 500}, {Ingredient: "cream_heavy", Grams: 150}, {Ingredient: "egg_yolk", Grams: 90}, {Ingredient: "sugar", Grams: 110}}
	d.Foam.Lines = []design.Line{{Ingredient: "egg_white", Grams: 170}}
	d.Foam.Syrup.Lines = []design.Line{{Ingredient: "sugar", Grams: 150}, {Ingredient: "glucose_liquid_bp", Grams: 60}, {Ingredient: "water", Grams: 60}}
	return d
}

func ways(t *testing.T, m *model.Model, d design.Design, n int) map[whole.Kind]whole.Way {
	t.Helper()
	w, err := whole.Of(m, d, n)
	require.NoError(t, err)
	by := map[whole.Kind]whole.Way{}
	for _, x := range w.List {
		by[x.Kind] = x
	}
	return by
}

func TestTheRatioMovesAndTheRecipesStay(t *testing.T) {
	m := newModel(t)
	d := quay()
	before, err := m.Evaluate(d)
	require.NoError(t, err)
	x, ok := ways(t, m, d, 0)[whole.ByRatio]
	require.True(t, ok)
	assert.Equal(t, design.Line{Ingredient: "egg_yolk", Count: float64(x.Eggs), CountOf: design.Yolks}, x.Design.Dense.Lines[2])
	assert.Equal(t, design.Line{Ingredient: "egg_white", Count: float64(x.Eggs), CountOf: design.Whites}, x.Design.Foam.Lines[0])
	assert.NotEqual(t, d.Blend.FoamVolumePercent, x.Design.Blend.FoamVolumePercent)
	assert.InEpsilon(t, before.Dense.YieldKPa.Value, x.After.Dense.YieldKPa.Value, 1e-3, "the recipe of the custard is as it was")
	assert.InEpsilon(t, before.Foam.SweetnessPercent, x.After.Foam.SweetnessPercent, 1e-3)
	assert.InDelta(t, float64(x.Design.Tubs.Count), x.After.Blend.TubsFilled, 1e-9, "the tubs are filled alike")
	assert.InDelta(t, 0, x.After.Dense.Portion.LeftML+x.After.Foam.Portion.LeftML, 1e-6, "nor is any phase over")
	twice, ok := ways(t, m, d, 2*x.Eggs)[whole.ByRatio]
	require.True(t, ok)
	assert.InEpsilon(t, 2*x.After.Blend.VolumeML, twice.After.Blend.VolumeML, 1e-4)
}

func TestTheRecipesMoveAndTubsAndRatioStay(t *testing.T) {
	m := newModel(t)
	d := quay()
	before, err := m.Evaluate(d)
	require.NoError(t, err)
	x, ok := ways(t, m, d, 0)[whole.ByRecipe]
	require.True(t, ok)
	assert.Equal(t, d.Tubs, x.Design.Tubs)
	assert.Equal(t, d.Blend, x.Design.Blend)
	assert.InEpsilon(t, before.Dense.Portion.VolumeML, x.After.Dense.Portion.MadeML, 1e-4)
	assert.InEpsilon(t, before.Foam.Portion.VolumeML, x.After.Foam.Portion.MadeML, 1e-4)
	assert.InEpsilon(t, before.Blend.TubsFilled, x.After.Blend.TubsFilled, 1e-4)
	// The other lines keep their proportion.
	l, was := x.Design.Dense.Lines, d.Dense.Lines
	assert.InEpsilon(t, l[0].Grams/was[0].Grams, l[3].Grams/was[3].Grams, 1e-4)
	assert.NotEqual(t, before.Dense.YieldKPa, x.After.Dense.YieldKPa, "with other eggs to the rest it is another custard")
	fewer, ok := ways(t, m, d, x.Eggs-1)[whole.ByRecipe]
	require.True(t, ok)
	assert.Greater(t, fewer.Design.Dense.Lines[0].Grams, l[0].Grams, "an egg less leaves room for more milk")
}

func TestWholeEggsInALineStayWhole(t *testing.T) {
	m := newModel(t)
	d := quay().WithLineAdded(design.DensePart, design.Line{Ingredient: "egg_whole", Grams: 120})
	x, ok := ways(t, m, d, 0)[whole.ByRecipe]
	require.True(t, ok)
	last := x.Design.Dense.Lines[4]
	assert.Equal(t, design.WholeEggs, last.CountOf)
	assert.Equal(t, math.Trunc(last.Count), last.Count)
	assert.InDelta(t, float64(x.Eggs), last.Count+x.Design.Dense.Lines[2].Count, 1e-9)
}

func TestWhatCannotBeIsSaid(t *testing.T) {
	m := newModel(t)
	line := func(id string, g float64) design.Line { return design.Line{Ingredient: id, Grams: g} }
	none := quay().WithLineRemoved(design.DensePart, 2).WithLineRemoved(design.FoamPart, 0)
	fits := quay().WithLine(design.DensePart, 2, design.Line{Ingredient: "egg_yolk", Count: 5, CountOf: design.Yolks}).
		WithLine(design.FoamPart, 0, design.Line{Ingredient: "egg_white", Count: 5, CountOf: design.Whites})
	fits.Batch.Basis = design.BasisAsWritten
	noFoam := quay()
	noFoam.Blend.FoamVolumePercent = 0
	noFoam = noFoam.WithLineAdded(design.DensePart, line("egg_whole", 50))
	yolky := quay().WithLine(design.FoamPart, 0, line("egg_yolk", 60)).WithLineAdded(design.DensePart, line("egg_white", 10))
	for name, c := range map[string]struct {
		d    design.Design
		want map[whole.Kind]whole.Why
	}{
		"dried white only": {none.WithLineAdded(design.FoamPart, line("egg_white_dried_powder", 20)), map[whole.Kind]whole.Why{whole.ByRecipe: whole.NoEggs, whole.ByRatio: whole.NoEggs}},
		"yolks only":       {quay().WithLine(design.FoamPart, 0, line("egg_white_past", 170)), map[whole.Kind]whole.Why{whole.ByRecipe: whole.OneSided, whole.ByRatio: whole.OneSided}},
		"paired already":   {fits, map[whole.Kind]whole.Why{whole.ByRecipe: whole.AlreadyFits, whole.ByRatio: whole.AlreadyFits}},
		"no foam made":     {noFoam, map[whole.Kind]whole.Why{whole.ByRecipe: whole.HalfMade, whole.ByRatio: whole.HalfMade}},
		"yolks everywhere": {yolky, map[whole.Kind]whole.Why{whole.ByRatio: whole.NotPaired}},
	} {
		w, err := whole.Of(m, c.d, 0)
		require.NoError(t, err, name)
		got := map[whole.Kind]whole.Why{}
		for _, u := range w.Unable {
			got[u.Kind] = u.Why
		}
		assert.Equal(t, c.want, got, name)
	}
	w, err := whole.Of(m, quay(), 100000)
	require.NoError(t, err)
	assert.Empty(t, w.List, "no tubs for so many, and eggs alone overfill these")
	_, err = whole.Of(m, design.Design{}, 0)
	require.Error(t, err)
}

// random is a design of any lines with eggs, in any unit and basis.
func random(r *rand.Rand, lib *ingredient.Library) design.Design {
	d := quay()
	list := lib.All()
	for range r.Intn(4) {
		d.Dense.Lines = append(d.Dense.Lines, design.Line{Ingredient: list[r.Intn(len(list))].ID, Grams: 1 + 60*r.Float64()})
	}
	vary := func(p design.Part) {
		for i, l := range d.Lines(p) {
			d = d.WithGrams(p, i, l.Grams*math.Exp(1.4*(r.Float64()-0.5)))
		}
	}
	vary(design.DensePart)
	vary(design.FoamPart)
	vary(design.SyrupPart)
	switch r.Intn(5) {
	case 0:
		d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "egg_whole", Grams: 150 * r.Float64()})
	case 1:
		d = d.WithLineAdded(design.DensePart, design.Line{Ingredient: "egg_white", Count: float64(1 + r.Intn(2)), CountOf: design.Whites})
	case 2:
		d = d.WithLineAdded(design.FoamPart, design.Line{Ingredient: "egg_yolk", Grams: 10 * r.Float64(), Note: "for its colour"})
	}
	if r.Intn(2) == 0 {
		d.Batch.Basis = design.BasisAsWritten
	}
	systems := egg.Systems()
	sizes := egg.Sizes(systems[r.Intn(len(systems))])
	size := sizes[r.Intn(len(sizes))]
	d.Eggs = design.EggSize{System: size.System, Size: size.Name}
	d.Blend.FoamVolumePercent = 5 + 80*r.Float64()
	d.Tubs.Count = 1 + r.Intn(20)
	d.Tubs.FillPercent = 60 + 40*r.Float64()
	d.Dense.OverrunPercent, d.Foam.OverrunPercent = 60*r.Float64(), 500*r.Float64()
	return d
}

// uses checks that x uses whole eggs and nothing else of an egg.
func uses(t *testing.T, name string, x whole.Way) {
	t.Helper()
	e, n := x.After.Eggs, float64(x.Eggs)
	require.Positive(t, x.Eggs, name)
	require.Equal(t, n, e.Crack, name)
	require.InDelta(t, n, e.Yolks, 1e-9, name)
	require.InDelta(t, n, e.Whites, 1e-9, name)
	require.True(t, whole.Fit(e), name)
	// Mass: what is cracked is what the lines hold.
	size, err := egg.Find(x.Design.Eggs.System, x.Design.Eggs.Size)
	require.NoError(t, err)
	var yolk, white float64
	for _, l := range x.After.Lines {
		switch l.Ingredient.ID {
		case "egg_yolk":
			yolk += l.Grams
		case "egg_white":
			white += l.Grams
		case "egg_whole":
			yolk += l.Grams / size.EdibleG * size.YolkG
			white += l.Grams / size.EdibleG * size.WhiteG
		}
	}
	require.InDelta(t, n*size.YolkG, yolk, 1e-9*n*size.YolkG, name)
	require.InDelta(t, n*size.WhiteG, white, 1e-9*n*size.WhiteG, name)
}

func TestOfAnyDesignWholeEggsAreUsedUpAndNoneIsLost(t *testing.T) {
	m := newModel(t)
	found := map[whole.Kind]int{}
	check := func(name string, d design.Design) {
		w, err := whole.Of(m, d, 0)
		require.NoError(t, err, name)
		require.Len(t, w.Unable, 2-len(w.List), name)
		for _, x := range w.List {
			found[x.Kind]++
			uses(t, name, x)
			again, err := m.Evaluate(x.Design)
			require.NoError(t, err, name)
			require.True(t, whole.Fit(again.Eggs), name)
			require.Equal(t, len(d.Dense.Lines), len(x.Design.Dense.Lines), "%s: no line is lost", name)
		}
	}
	for name, d := range market.Demos(t) {
		check(name, d)
	}
	for name, d := range market.Hard(t) {
		if _, err := m.Evaluate(d); err == nil {
			check(name, d)
		}
	}
	r := rand.New(rand.NewSource(12))
	for range 300 {
		check("random", random(r, m.Library()))
	}
	assert.Greater(t, found[whole.ByRatio], 150)
	assert.Greater(t, found[whole.ByRecipe], 150)
}

// What a file keeps of the numbers must still be whole.
func TestAWaySurvivesItsFile(t *testing.T) {
	m := newModel(t)
	for _, x := range ways(t, m, quay(), 0) {
		path := t.TempDir() + "/whole.yaml"
		_, err := designfile.Save(path, nil, x.Design, designfile.SaveOptions{})
		require.NoError(t, err)
		f, err := designfile.Load(path)
		require.NoError(t, err)
		r, err := m.Evaluate(f.Design)
		require.NoError(t, err)
		assert.True(t, whole.Fit(r.Eggs))
	}
}

func why(t *testing.T, m *model.Model, d design.Design, n int, k whole.Kind) whole.Why {
	t.Helper()
	w, err := whole.Of(m, d, n)
	require.NoError(t, err)
	for _, u := range w.Unable {
		if u.Kind == k {
			return u.Why
		}
	}
	return whole.Fits
}

// eggy is a custard of whole eggs alone beside a foam without any.
func eggy(grams float64) design.Design {
	d := quay().WithLineRemoved(design.DensePart, 2).WithLineAdded(design.DensePart, market.Line("egg_whole", grams))
	return d.WithLine(design.FoamPart, 0, market.Line("egg_white_past", 170))
}

func TestWholeEggsAloneComeInPairs(t *testing.T) {
	m := newModel(t)
	for k := range ways(t, m, eggy(120), 3) {
		x := ways(t, m, eggy(120), 3)[k]
		uses(t, k.String(), x)
		assert.Equal(t, design.Line{Ingredient: "egg_whole", Count: 3, CountOf: design.WholeEggs}, x.Design.Dense.Lines[3])
	}
	assert.Len(t, ways(t, m, eggy(120), 3), 2)
	before, err := m.Evaluate(eggy(120))
	require.NoError(t, err)
	x := ways(t, m, eggy(120), 0)[whole.ByRatio]
	assert.InDelta(t, before.Blend.FoamVolumeFraction, x.After.Blend.FoamVolumeFraction, 1e-4, "no ratio is better than another, so it stays")
}

// Less than half an egg in the batch is still made of one.
func TestALittleEggBecomesOne(t *testing.T) {
	m := newModel(t)
	d := quay()
	d.Tubs = design.Tubs{Count: 1, VolumeML: 60, FillPercent: 90, Shape: design.ShapeRound}
	e, err := m.Evaluate(d)
	require.NoError(t, err)
	require.Less(t, e.Eggs.Yolks, 0.5)
	x, ok := ways(t, m, d, 0)[whole.ByRatio]
	require.True(t, ok)
	assert.Equal(t, 1, x.Eggs)
	uses(t, "one", x)
	assert.Greater(t, x.Design.Tubs.Count, 1, "which fills more tubs")
	assert.Equal(t, whole.EggsAlone, why(t, m, d, 0, whole.ByRecipe), "or none of this size")
}

func TestAPairedDesignCanStillBeMadeOfOtherEggs(t *testing.T) {
	m := newModel(t)
	x, ok := ways(t, m, quay(), 4)[whole.ByRatio]
	require.True(t, ok)
	assert.Equal(t, whole.AlreadyFits, why(t, m, x.Design, 0, whole.ByRatio))
	assert.Equal(t, whole.AlreadyFits, why(t, m, x.Design, 4, whole.ByRatio))
	twice, ok := ways(t, m, x.Design, 8)[whole.ByRatio]
	require.True(t, ok)
	uses(t, "twice", twice)
}

func TestAPhaseThatIsNotMadeIsNotLost(t *testing.T) {
	m := newModel(t)
	d := quay().WithLineAdded(design.FoamPart, market.Line("egg_yolk", 20))
	d.Blend.FoamVolumePercent = 100
	assert.Equal(t, whole.HalfMade, why(t, m, d, 0, whole.ByRatio))
	assert.Equal(t, whole.HalfMade, why(t, m, d, 0, whole.ByRecipe))
	d.Dense.Lines = nil // then nothing is lost
	assert.NotEqual(t, whole.HalfMade, why(t, m, d, 0, whole.ByRatio))
}

func TestGramsHaveNoMoreFiguresThanAScale(t *testing.T) {
	m := newModel(t)
	for k, x := range ways(t, m, quay().WithGrams(design.DensePart, 0, 512.3456789), 0) {
		for _, part := range [...]design.Part{design.DensePart, design.FoamPart, design.SyrupPart} {
			for _, l := range x.Design.Lines(part) {
				if l.CountOf == "" {
					digits := strings.ReplaceAll(strings.TrimLeft(setting.Number(l.Grams), "0."), ".", "")
					assert.LessOrEqual(t, len(digits), 5, "%s %s: %v", k, l.Ingredient, l.Grams)
				}
			}
		}
	}
	d := quay().WithGrams(design.DensePart, 0, 400000)
	d.Tubs = design.Tubs{Count: 400, VolumeML: 2400, FillPercent: 90, Shape: design.ShapeRound}
	x, ok := ways(t, m, d, 0)[whole.ByRatio]
	require.True(t, ok)
	uses(t, "large", x)
	assert.Equal(t, math.Trunc(x.Design.Dense.Lines[0].Grams/10), x.Design.Dense.Lines[0].Grams/10, "hundreds of kilograms to ten grams")
}

func TestASyrupThatWasWeighedIsRescaledToo(t *testing.T) {
	m := newModel(t)
	d := quay()
	d.Foam.Syrup.WeighedG = 235
	before, err := m.Evaluate(d)
	require.NoError(t, err)
	for k, x := range ways(t, m, d, 0) {
		assert.InEpsilon(t, before.Syrup.SolidsPercent, x.After.Syrup.SolidsPercent, 1e-3, "%s: the syrup is as thick", k)
	}
}
