package phase

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
)

func recipe(w, sucrose, lactose, fat, protein, ash, salts float64) mix.Mix {
	m := mix.Mix{IonMol: salts}
	m.Grams[mix.Water], m.Grams[mix.Sucrose], m.Grams[mix.Lactose] = w, sucrose, lactose
	m.Grams[mix.Fat], m.Grams[mix.Protein], m.Grams[mix.Ash] = fat, protein, ash
	return m
}

// The classical mix of the dairy texts, 12 % fat, 11 % milk solids-not-fat, 15
// % sugar; a custard and a 2 : 1 meringue of our own.
var (
	classical = recipe(61.7, 15, 6, 12, 3.960, 0.880, 0.012061)
	custard   = recipe(60, 16, 3.7, 15, 4.5, 0.8, 0.007456)
	meringue  = func() mix.Mix {
		m := recipe(37.9, 58.3, 0, 0, 3.2, 0.2, 0.0061858)
		m.Grams[mix.Glucose] = 0.1
		return m
	}()
)

func body(m mix.Mix, overrun float64, r Role) Body {
	return Prepare(m, overrun, r, solution.DefaultBound)
}

// Dairy texts give −2.5 °C; the rest is worked by hand from the equations.
func TestClassicalMixIsTheWorkedExample(t *testing.T) {
	b := body(classical, 1, Dense)
	check.Printed(t, b.FreezingPointC, "-2.5")
	check.Printed(t, b.FreezingPointC, "-2.5174")
	s := b.At(-18)
	assert.InDelta(t, 12.944, s.LiquidG, 1e-3) // by hand, from five digits
	assert.InDelta(t, 48.756, s.IceG, 1e-3)
	check.Printed(t, s.FrozenFraction, "0.7902")
	check.Printed(t, s.IceVolumeFraction, "0.55685")
	check.Printed(t, s.SyrupSugarPercent, "61.868")
	check.Printed(t, s.YieldKPa, "6.4734")
	assert.Equal(t, "firm", WordFor(s.YieldKPa).Name)
}

func TestCustardAndMeringueAreTheWorkedExamples(t *testing.T) {
	c := body(custard, 0.25, Dense)
	check.Printed(t, c.FreezingPointC, "-2.2971")
	check.Printed(t, c.At(-18).FrozenFraction, "0.798")
	f := body(meringue, 2.57, Foam)
	check.Printed(t, f.FreezingPointC, "-13.7012")
	for at, want := range map[float64]float64{-15: 0.0700, -18: 0.2001, -20: 0.2693, -25: 0.4027} {
		assert.InDelta(t, want, f.At(at).FrozenFraction, 1e-4, "%g °C", at)
	}
	check.Printed(t, f.At(-18).YieldKPa, "0.18", "0.026 of syrup and ice, 0.15 of film")
}

// 21 CFR 135.110(a)(2), 4.5 lb/gal = 539.2 g/L: a mix of 1.09 g/mL may carry
// 102 % overrun. Foam 72 % air is 257 %.
func TestOverrunDensityAndAirAreOneThing(t *testing.T) {
	check.Printed(t, OverrunFraction(1.09, 0.5392), "1.0215")
	b := body(meringue, 2.5714, Foam)
	assert.InDelta(t, 0.72, b.AirFraction(), 5e-5)
	assert.InDelta(t, b.OverrunFraction, OverrunFraction(b.MixGPerML, b.GPerML()), 1e-12)
	for _, bad := range []float64{0, -1, math.NaN()} {
		assert.True(t, math.IsNaN(OverrunFraction(bad, 1)) && math.IsNaN(OverrunFraction(1, bad)))
	}
}

// random returns a plausible phase: a custard, a foam, or something odd.
func random(r *rand.Rand) Body {
	m := recipe(25+60*r.Float64(), 45*r.Float64(), 8*r.Float64(), 20*r.Float64(), 6*r.Float64(), r.Float64(), 0.02*r.Float64())
	for _, s := range []mix.Species{mix.Glucose, mix.Fructose, mix.Maltose, mix.Sorbitol, mix.Starch, mix.Fibre, mix.SodiumChloride, mix.Ethanol} {
		if r.Intn(3) == 0 {
			m.Grams[s] = 3 * r.Float64()
		}
	}
	if r.Intn(2) == 0 {
		m.Grams[mix.HigherSaccharides] = 9 * r.Float64()
		m.HigherMol = m.Grams[mix.HigherSaccharides] / 774
	}
	return body(m, 4*r.Float64(), Role(r.Intn(2)))
}

func eachRandom(f func(b *Body)) {
	r := rand.New(rand.NewSource(11))
	for range 300 {
		b := random(r)
		f(&b)
	}
}

func TestMassesClose(t *testing.T) {
	eachRandom(func(b *Body) {
		for c := -40.0; c < 5; c += 1.3 {
			s := b.At(c)
			require.InDelta(t, b.Mix.Grams[mix.Water], s.IceG+s.LiquidG, 1e-12*b.Mix.Grams[mix.Water])
			require.True(t, s.IceG >= 0 && s.LiquidG >= 0)
		}
	})
}

// A syrup of glucose is thinner than the sucrose that the law takes it for, and
// the less it matters the more ice there is.
func TestThinFilmIsTheLowEnd(t *testing.T) {
	eachRandom(func(b *Body) {
		for c := -24.0; c < 0; c += 3.1 {
			require.LessOrEqual(t, b.YieldThinKPa(c), b.At(c).YieldKPa*(1+1e-12))
		}
	})
	syrup := body(meringue, 2.57, Foam)
	assert.InEpsilon(t, syrup.At(-18).YieldKPa, syrup.YieldThinKPa(-18), 0.001, "sucrose but for a trace")
	m := meringue
	m.Grams[mix.Glucose], m.Grams[mix.Sucrose] = m.Grams[mix.Sucrose], m.Grams[mix.Glucose]
	dextrose := body(m, 2.57, Foam)
	assert.Less(t, dextrose.YieldThinKPa(-24), 0.95*dextrose.At(-24).YieldKPa)
	dense := body(custard, 0.25, Dense)
	assert.InEpsilon(t, dense.At(-18).YieldKPa, dense.YieldThinKPa(-18), 1e-9)
}

// relative_sweetness.csv: 140 cold, 128.5 at 18 and 100 at 40 °C.
func TestFructoseFadesInTheMelt(t *testing.T) {
	var m mix.Mix
	m.Grams[mix.Water], m.Grams[mix.Fructose], m.Grams[mix.Sucrose] = 80, 10, 10
	assert.InDelta(t, 10+14, SweetnessPercent(m), 1e-9)
	assert.InDelta(t, 10+12.85-2*(1.285-1)/22*10, MeltedSweetnessPercent(m), 1e-9)
	m.Grams[mix.Fructose] = 0
	assert.Equal(t, SweetnessPercent(m), MeltedSweetnessPercent(m))
	assert.Zero(t, MeltedSweetnessPercent(mix.Mix{}))
}

// Water has one chemical potential in the ice and in the syrup around it.
func TestRemainingLiquidHasTheActivityOfIce(t *testing.T) {
	eachRandom(func(b *Body) {
		for c := b.EndOfFreezingC + 0.5; c < -1; c += 2.1 {
			s := b.At(c)
			if s.IceG == 0 {
				continue
			}
			a, err := solution.Activity(b.Mix.WithWater(s.LiquidG), solution.DefaultBound, c)
			require.NoError(t, err)
			require.InDelta(t, math.Exp(water.LnIceActivity(c)), a, 1e-9)
		}
	})
}

func TestIceAndHardnessFallAsItWarms(t *testing.T) {
	eachRandom(func(b *Body) {
		last := State{IceG: math.Inf(1), YieldKPa: math.Inf(1)}
		for c := -45.0; c <= 5; c += 0.25 {
			s := b.At(c)
			require.LessOrEqual(t, s.IceG, last.IceG+1e-12)
			require.LessOrEqual(t, s.YieldKPa, last.YieldKPa*(1+1e-12), "%g °C", c)
			last = s
		}
	})
}

func TestCurveAndItsInverseAgree(t *testing.T) {
	eachRandom(func(b *Body) {
		for c := b.EndOfFreezingC + 0.1; c < b.FreezingPointC; c += 1.7 {
			require.InDelta(t, c, b.FrozenAtC(b.At(c).FrozenFraction), 1e-9)
		}
		most := b.At(b.EndOfFreezingC).FrozenFraction
		require.True(t, math.IsNaN(b.FrozenAtC(most+1e-6)))
	})
}

func TestYieldAndItsTemperatureAgree(t *testing.T) {
	eachRandom(func(b *Body) {
		for _, kPa := range []float64{0.2, 1, 5, 20} {
			if c, ok := b.YieldAtC(kPa, -30, -1); ok && c < -1 {
				require.InEpsilon(t, kPa, b.At(c).YieldKPa, 1e-5)
			}
		}
	})
}

// At the freezing point the slope jumps; on both sides it is JPerGK.
func TestEnthalpyIsContinuousAndItsSlopeIsTheHeatCapacity(t *testing.T) {
	const h = 1e-5
	eachRandom(func(b *Body) {
		if f := b.FreezingPointC; f < 0 {
			require.InDelta(t, b.JPerG(f-1e-9), b.JPerG(f+1e-9), 1e-5)
			require.Greater(t, b.JPerGK(f-0.01), b.JPerGK(f+0.01))
		}
		for c := -39.9; c < 30; c += 1.37 {
			if math.Abs(c) < 2*h || math.Abs(c-b.FreezingPointC) < 2*h || math.Abs(c-b.EndOfFreezingC) < 2*h {
				continue
			}
			require.InEpsilon(t, (b.JPerG(c+h)-b.JPerG(c-h))/(2*h), b.JPerGK(c), 1e-5, "%g °C", c)
		}
	})
}

func TestALitreOfPhaseIsLighterByItsOverrun(t *testing.T) {
	eachRandom(func(b *Body) {
		unaerated := Prepare(b.Mix, 0, b.Role, solution.DefaultBound)
		require.InEpsilon(t, unaerated.GPerML(), b.GPerML()*(1+b.OverrunFraction), 1e-14)
		require.InEpsilon(t, unaerated.VolumeML()*(1+b.OverrunFraction), b.VolumeML(), 1e-13)
	})
}

func TestAddingNothingChangesNothing(t *testing.T) {
	eachRandom(func(b *Body) {
		same := Prepare(b.Mix.PlusScaled(classical, 0), b.OverrunFraction, b.Role, solution.DefaultBound)
		require.Equal(t, b.At(-15), same.At(-15))
	})
}

func TestSlopesAreDerivatives(t *testing.T) {
	r := rand.New(rand.NewSource(12))
	for range 200 {
		b := random(r)
		direction := random(r).Mix.Times(0.01)
		at := -5 - 20*r.Float64()
		const h = 1e-4
		up := Prepare(b.Mix.PlusScaled(direction, h), b.OverrunFraction, b.Role, solution.DefaultBound)
		down := Prepare(b.Mix.PlusScaled(direction, -h), b.OverrunFraction, b.Role, solution.DefaultBound)
		if (up.IceG(at) == 0) != (down.IceG(at) == 0) {
			continue // the first crystal: a kink
		}
		difference := func(f func(*Body) float64) float64 { return (f(&up) - f(&down)) / (2 * h) }
		got := b.Along(direction, at, solution.DefaultBound)
		near := func(want, got float64, what string) {
			require.InDelta(t, want, got, 1e-5*math.Abs(want)+1e-8, what)
		}
		near(difference(func(b *Body) float64 { return b.FreezingPointC }), got.FreezingPointC, "freezing point")
		near(difference(func(b *Body) float64 { return b.At(at).FrozenFraction }), got.FrozenFraction, "water frozen")
		near(difference(func(b *Body) float64 { return math.Log(b.At(at).YieldKPa) }), got.LnYield, "ln yield")
		near(difference(func(b *Body) float64 { return SweetnessPercent(b.Mix) }), got.SweetnessPercent, "sweetness")
		near(difference((*Body).GPerML), got.GPerML, "density")
	}
}

func TestAPhaseWithoutIceIsAStateLikeAnyOther(t *testing.T) {
	b := body(meringue, 2.57, Foam)
	s := b.At(-10)
	assert.Zero(t, s.IceG)
	assert.Zero(t, s.IceVolumeFraction)
	assert.Greater(t, s.YieldKPa, law.film)
	empty := body(mix.Mix{}, 0, Dense)
	assert.True(t, math.IsNaN(empty.FreezingPointC))
	assert.Zero(t, empty.At(-18).FrozenFraction)
}

// Dairy Science & Technology 2010, table IV: 23 conditions of one formula.
func TestTheStatedFactorCoversFourFifthsOfMeasuredBatches(t *testing.T) {
	var ln []float64
	for _, r := range check.Table(t, "hardness_process_scatter") {
		if v := r.Num("hardness_fresh_N"); !math.IsNaN(v) {
			ln = append(ln, math.Log(v))
		}
	}
	require.Len(t, ln, 23)
	mean := 0.0
	for _, v := range ln {
		mean += v / 23
	}
	within, square := 0, 0.0
	for _, v := range ln {
		if math.Abs(v-mean) <= math.Log(Scatter) {
			within++
		}
		square += (v - mean) * (v - mean) / 22
	}
	assert.InDelta(t, 1.62, math.Exp(math.Sqrt(square)), 0.02)
	assert.GreaterOrEqual(t, within, 18)
}

// foam_conductivity.csv: Maxwell–Eucken and Bruggeman, at −18 °C.
func TestAirLowersTheConductivityAsTabulated(t *testing.T) {
	air := AirWPerMK(-18)
	for _, r := range check.Table(t, "foam_conductivity") {
		overrun := r.Num("overrun")
		phi := overrun / (1 + overrun)
		for column, got := range map[string]float64{"k_maxwell": MaxwellWPerMK(1.006, air, phi), "k_bruggeman": BruggemanWPerMK(1.006, air, phi)} {
			assert.InDelta(t, r.Num(column), got, 0.0006, column) // its 1.006 is rounded
		}
	}
}

// Kleinhans & Mazur 2007, Cryobiology 54:212 (from memory): the other rule for
// sugars with salts differs from ours by less than a point here.
func TestMixingRuleBracketIsAroundTheAdditiveRule(t *testing.T) {
	mixes := map[string]mix.Mix{"standard": classical, "custard": custard, "foam 2:1": meringue}
	for _, r := range check.Table(t, "mixing_rule_bracket") {
		b := body(mixes[r.Text("phase")], 0, Dense)
		got := b.At(r.Num("T_C")).FrozenFraction
		r.Printed(got, "frozen_additive")
		assert.InDelta(t, r.Num("frozen_sum"), got, 0.01, "%v", r)
	}
}

func TestFreezingSwellsAndCoolingAirShrinks(t *testing.T) {
	b := body(custard, 0.25, Dense)
	assert.InDelta(t, 1, b.SwellingRatio(ReferenceC, 1), 1e-12)
	assert.Greater(t, b.SwellingRatio(-18, 0), 1.02)
	assert.Less(t, b.SwellingRatio(-18, 1), b.SwellingRatio(-18, 0))
	air := 0.25 / 1.25 * (1 - (273.15-18)/(273.15+ReferenceC))
	assert.InDelta(t, air, b.SwellingRatio(-18, 0)-b.SwellingRatio(-18, 1), 1e-12)
}

func TestWordsCoverEveryHardnessInOrder(t *testing.T) {
	last := 0.0
	for _, w := range Words {
		assert.Greater(t, w.BelowKPa, last)
		last = w.BelowKPa
		assert.NotEmpty(t, w.Like)
	}
	assert.Equal(t, "pourable", WordFor(0).Name)
	assert.Equal(t, "very hard", WordFor(math.Inf(1)).Name)
}

func TestAPhaseAtATemperatureAllocatesNothing(t *testing.T) {
	assert.Zero(t, testing.AllocsPerRun(100, func() {
		b := body(custard, 0.25, Dense)
		b.At(-18)
		b.FrozenAtC(0.7)
	}))
}

func BenchmarkOnePhaseAtOneTemperature(b *testing.B) {
	x := body(custard, 0.25, Dense)
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		x.At(-18)
	}
}

func BenchmarkPrepareAndOneTemperature(b *testing.B) {
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		x := body(custard, 0.25, Dense)
		x.At(-18)
	}
}

func BenchmarkCurveOf200PointsOfBothPhases(b *testing.B) {
	x, y := body(custard, 0.25, Dense), body(meringue, 2.57, Foam)
	b.ReportAllocs()
	for i := 0; i < b.N; i++ {
		for k := 0; k < 200; k++ {
			c := -30 + 0.15*float64(k)
			x.At(c)
			y.At(c)
		}
	}
}
