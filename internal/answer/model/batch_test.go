package model_test

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/egg"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
	"ripplewright/internal/work/design"
)

// batches calls f for every design carried and for 500 random ones, some with a
// spirit in the syrup, some with dry sugar, some weighed in the pan.
func batches(t *testing.T, f func(name string, d design.Design, r *model.Result)) {
	t.Helper()
	m := model.New(market.Library(t))
	try := func(name string, d design.Design) {
		if r, err := m.Evaluate(d); err == nil {
			f(name, d, &r)
		}
	}
	for name, d := range carried(t) {
		try(name, d)
	}
	source := rand.New(rand.NewSource(41))
	for range 500 {
		d := random(source, m.Library())
		if source.Intn(2) == 0 {
			d.Batch.Basis = design.BasisAsWritten
		}
		syrup := &d.Foam.Syrup
		switch source.Intn(5) {
		case 0:
			d = d.WithLineAdded(design.SyrupPart, design.Line{Ingredient: "rum_40", Grams: 150 * source.Float64()})
		case 1:
			d = d.WithLines(design.SyrupPart, []design.Line{{Ingredient: "sugar", Grams: 100 + 200*source.Float64()}})
			d.Foam.Syrup.InvertedPercent = 60 * source.Float64()
		case 2:
			syrup.WeighedG = 700 * source.Float64()
		}
		try("random", d)
	}
}

// Of every species: what the lines bring is in the tubs, left over, or steam.
func TestEverySpeciesIsInTheTubsLeftOverOrSteam(t *testing.T) {
	batches(t, func(name string, d design.Design, r *model.Result) {
		if d.Foam.Syrup.InvertedPercent > 0 {
			return // sucrose and water become other sugars; see the masses below
		}
		for _, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
			if p.WrittenG == 0 {
				continue
			}
			var brought mix.Mix
			for _, l := range r.Lines {
				if (l.Part == design.DensePart) == (p == &r.Dense) {
					x := l.Ingredient.Resolve()
					brought = brought.PlusScaled(x.Nominal, l.Grams/100)
				}
			}
			steam := p.WaterOffG * p.Portion.Factor
			for s := mix.Species(0); s < mix.NumSpecies; s++ {
				want := brought.Grams[s]
				switch {
				case s == mix.Water:
					want -= steam
				case s == mix.Ethanol && p == &r.Foam:
					want -= r.Syrup.AlcoholOffG
				}
				got := p.Percent(s) / 100 * (p.Portion.MassG + p.Portion.LeftG)
				require.InDelta(t, want, got, 1e-9*(1+brought.TotalG()), "%s, %s: %s", name, p.Body.Role, s)
			}
		}
	})
}

func TestMassesClose(t *testing.T) {
	batches(t, func(name string, d design.Design, r *model.Result) {
		grams := 0.0
		for _, l := range r.Lines {
			grams += l.Grams
		}
		off := r.Dense.WaterOffG*r.Dense.Portion.Factor + r.Foam.WaterOffG*r.Foam.Portion.Factor + r.Syrup.AlcoholOffG
		made := r.Dense.Portion.MadeG + r.Foam.Portion.MadeG
		require.InDelta(t, grams-off, made, 1e-9*grams, name)
		require.InDelta(t, made, r.Blend.MassG+r.Dense.Portion.LeftG+r.Foam.Portion.LeftG, 1e-9*grams, name)
		if r.Blend.MassG > 0 {
			require.InEpsilon(t, r.Blend.MassG/r.Blend.VolumeML, r.Blend.DensityGPerML, 1e-12, name)
		}
		for _, p := range []*model.Phase{&r.Dense, &r.Foam} {
			if p.WrittenG > 0 {
				require.InDelta(t, 100, p.Body.Mix.TotalG(), 1e-9, name)
				require.InDelta(t, p.Body.Mix.Grams[mix.Water], p.State.IceG+p.State.LiquidG, 1e-9, name)
			}
		}
	})
}

// What is over changes no tub: its shares are the maker's, and every figure
// per 100 g or per serving is that of the same lines scaled to fill the tubs.
func TestLeftoversNeverChangeATub(t *testing.T) {
	m := model.New(market.Library(t))
	left := 0
	batches(t, func(name string, d design.Design, r *model.Result) {
		if d.Batch.Basis != design.BasisAsWritten || r.Dense.WrittenG == 0 || r.Foam.WrittenG == 0 {
			return
		}
		if r.Dense.Portion.LeftML > 1 || r.Foam.Portion.LeftML > 1 {
			left++
		}
		require.InDelta(t, 0, math.Min(r.Dense.Portion.LeftML, r.Foam.Portion.LeftML), 1e-9, name)
		require.InDelta(t, d.Blend.FoamVolumePercent/100, r.Blend.FoamVolumeFraction, 1e-12, name)
		d.Batch.Basis = design.BasisTubs
		full, err := m.Evaluate(d)
		require.NoError(t, err)
		require.InEpsilon(t, float64(d.Tubs.Count), full.Blend.TubsFilled, 1e-9, name)
		require.InEpsilon(t, full.Blend.MassG/full.Blend.TubsFilled, r.Blend.MassG/r.Blend.TubsFilled, 1e-9, name)
		require.InDelta(t, full.Blend.SweetnessPercent, r.Blend.SweetnessPercent, 1e-9, name)
		require.InDelta(t, full.Blend.IceVolumeFraction, r.Blend.IceVolumeFraction, 1e-12, name)
		for c := range full.Nutrition.Per100G {
			a, b := full.Nutrition.Per100G[c], r.Nutrition.Per100G[c]
			require.InDelta(t, a.Known, b.Known, 1e-9*(1+math.Abs(a.Known)), "%s %v", name, ingredient.Column(c))
		}
		require.InDelta(t, r.Blend.MassG, food(r, d).MassG(), 1e-9*r.Blend.MassG, "%s: the label is of the tubs", name)
	})
	require.Greater(t, left, 100)
}

func food(r *model.Result, d design.Design) *label.Food {
	f := r.Food(d)
	return &f
}

// Egg masses: USDA SR28 NDB 01125 (a large yolk, 17 g) and 01124 (its white, 33 g).
func TestSixYolksAndFourWhitesLeaveTwoWhites(t *testing.T) {
	d := market.Honey()
	d.Batch.Basis = design.BasisAsWritten
	d.Dense.Lines[2].Grams = 6 * 17
	d.Foam.Lines[0].Grams = 4 * 33
	r, err := model.New(market.Library(t)).Evaluate(d)
	require.NoError(t, err)
	assert.InDelta(t, 6, r.Eggs.Crack, 1e-9)
	assert.InDelta(t, 2, r.Eggs.Left.Whites, 1e-9)
	assert.InDelta(t, 0, r.Eggs.Left.Yolks, 1e-9)
}

func TestTheEggLedgerConservesEggs(t *testing.T) {
	batches(t, func(name string, d design.Design, r *model.Result) {
		size, err := egg.Find(d.Eggs.System, d.Eggs.Size)
		require.NoError(t, err)
		e := r.Eggs
		require.Equal(t, math.Trunc(e.Crack), e.Crack, "%s: eggs are whole", name)
		most := math.Max(e.Yolks, e.Whites)
		require.True(t, e.Crack > most-0.051 && e.Crack < most+1, "%s: %v", name, e)
		require.InDelta(t, e.Crack, e.Yolks+e.Left.Yolks, 1e-12*(1+e.Crack), "%s: no yolk is lost", name)
		require.InDelta(t, e.Crack, e.Whites+e.Left.Whites, 1e-12*(1+e.Crack), "%s: no white is lost", name)
		require.InDelta(t, e.Yolks, e.Dense.Yolks+e.Foam.Yolks, 1e-12*(1+e.Crack), name)
		require.InDelta(t, e.Whites, e.Dense.Whites+e.Foam.Whites, 1e-12*(1+e.Crack), name)
		require.GreaterOrEqual(t, math.Min(e.Left.Yolks, e.Left.Whites), -0.0501, "%s: a larger egg makes up a little", name)
		grams := map[string]float64{}
		for _, l := range r.Lines {
			grams[l.Ingredient.ID] += l.Grams
		}
		whole := grams["egg_whole"] / size.EdibleG
		require.InDelta(t, grams["egg_yolk"], (e.Yolks-whole)*size.YolkG, 1e-9, name)
		require.InDelta(t, grams["egg_white"], (e.Whites-whole)*size.WhiteG, 1e-9, name)
	})
}

func TestASyrupIsNeverImpossible(t *testing.T) {
	dry := 0
	batches(t, func(name string, d design.Design, r *model.Result) {
		s := r.Syrup
		if !s.Present {
			return
		}
		for _, p := range []float64{s.SolidsPercent, s.SolidsBandPercent[0], s.SolidsBandPercent[1]} {
			require.GreaterOrEqual(t, p, 0.0, name)
			require.LessOrEqual(t, p, 100+1e-9, name)
		}
		in := 0.0
		for _, l := range r.Lines {
			if l.Part == design.SyrupPart {
				in += l.Grams
			}
		}
		require.LessOrEqual(t, s.MassG, in*(1+1e-12), "%s: the pan makes nothing", name)
		require.GreaterOrEqual(t, s.WaterOffG, 0.0, name)
		require.InDelta(t, in, s.MassG+s.WaterOffG+s.AlcoholOffG, 1e-9*in, name)
		if math.IsNaN(s.BoilingPointC) {
			dry++
			return
		}
		boils := solution.BoilingC(0, water.AirPa(d.Kitchen.AltitudeM))
		require.GreaterOrEqual(t, s.BoilingPointC, boils-1e-6, name)
		require.LessOrEqual(t, s.BoilingPointC, 150.0, "%s: the boiling model's end", name)
	})
	require.Greater(t, dry, 30)
}

// Rum boiled with the syrup softens no more than its water and solids do: the
// boil keeps (water left)^12 of the alcohol, which is nothing at 118 °C.
func TestNoAlcoholOutlastsTheBoil(t *testing.T) {
	with := 0
	batches(t, func(name string, d design.Design, r *model.Result) {
		var whipped, boiled float64
		for _, l := range r.Lines {
			g := l.Grams * l.Ingredient.Cell(ingredient.Alcohol).Or(0) / 100
			switch l.Part {
			case design.FoamPart:
				whipped += g
			case design.SyrupPart:
				boiled += g
			}
		}
		require.InDelta(t, boiled, r.Syrup.AlcoholOffG, 1e-9, name)
		if boiled == 0 {
			return
		}
		with++
		require.InDelta(t, whipped, r.Foam.Percent(mix.Ethanol)/100*r.Foam.Portion.MadeG, 1e-9, name)
	})
	require.Greater(t, with, 50)
}

func TestRumInTheSyrupFreezesLikeItsWater(t *testing.T) {
	m := model.New(market.Library(t))
	freezes := func(l design.Line) float64 {
		r, err := m.Evaluate(market.Honey().WithLineAdded(design.SyrupPart, l))
		require.NoError(t, err)
		return r.Foam.FreezingPointC.Value
	}
	rum := freezes(design.Line{Ingredient: "rum_40", Grams: 100})
	assert.InDelta(t, freezes(design.Line{Ingredient: "water", Grams: 66.6}), rum, 0.01)
}

func TestAPanHeavierThanWhatWentInIsNotTaken(t *testing.T) {
	m := model.New(market.Library(t))
	d := market.Honey()
	plain, err := m.Evaluate(d)
	require.NoError(t, err)
	d.Foam.Syrup.WeighedG = 1040 // 240 g went in: the pan's own weight is on the scale
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	assert.Equal(t, plain.Syrup, r.Syrup)
	assert.Equal(t, plain.Foam.FreezingPointC, r.Foam.FreezingPointC)
}

// The syrup's band is the foam's: 3 points of solids either way.
func TestTheFoamFreezesWithinWhatItsSyrupLeavesOpen(t *testing.T) {
	m := model.New(market.Library(t))
	d := market.Honey()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	at := func(solids float64) float64 {
		x := d
		dry := r.Syrup.MassG / r.Foam.Portion.Factor * r.Syrup.SolidsPercent / 100
		x.Foam.Syrup.WeighedG = dry / solids * 100
		y, err := m.Evaluate(x)
		require.NoError(t, err)
		require.InDelta(t, solids, y.Syrup.SolidsPercent, 1e-9)
		return y.Foam.FreezingPointC.Value
	}
	assert.LessOrEqual(t, r.Foam.FreezingPointC.Low, at(r.Syrup.SolidsBandPercent[1])+1e-9)
	assert.GreaterOrEqual(t, r.Foam.FreezingPointC.High, at(r.Syrup.SolidsBandPercent[0])-1e-9)
}
