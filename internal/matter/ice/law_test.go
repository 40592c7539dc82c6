package ice

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
)

// custard is the invented test phase of texture_model_reference.csv. Its rates are
// held against another program by package validate.
func custard() *phase.Body {
	m := mix.Mix{IonMol: 0.007456}
	m.Grams[mix.Water], m.Grams[mix.Fat], m.Grams[mix.Protein], m.Grams[mix.Ash] = 60, 15, 4.5, 0.8
	m.Grams[mix.Sucrose], m.Grams[mix.Lactose] = 16, 3.7
	b := phase.Prepare(m, 0.25, phase.Dense, solution.DefaultBound)
	return &b
}

// recipes are ordinary custards and foams of every kind.
func recipes(n int) []*phase.Body {
	r := rand.New(rand.NewSource(1))
	var list []*phase.Body
	for range n {
		m := mix.Mix{IonMol: 0.004 + 0.006*r.Float64()}
		m.Grams[mix.Water] = 50 + 20*r.Float64()
		m.Grams[mix.Fat] = 15 * r.Float64()
		m.Grams[mix.Protein] = 2 + 4*r.Float64()
		m.Grams[mix.Sucrose] = 8 + 12*r.Float64()
		m.Grams[mix.Glucose] = 5 * r.Float64()
		m.Grams[mix.Lactose] = 2 + 3*r.Float64()
		m.Grams[mix.Ethanol] = 2 * r.Float64()
		role, overrun := phase.Dense, r.Float64()
		if r.Intn(3) == 0 {
			role, overrun = phase.Foam, 4
			m.Grams[mix.Water], m.Grams[mix.Sucrose], m.Grams[mix.Fat] = 38, 40+20*r.Float64(), 0
		}
		b := phase.Prepare(m, overrun, role, solution.DefaultBound)
		list = append(list, &b)
	}
	return list
}

// Worked by hand from the equations: a 0.839251, d ln a/dT 9.74666e-3 a kelvin,
// w 0.65935, 8.7893 mol of water per mol, D_w 1.96594e-12 and D_s 3.2244e-14 m²/s,
// φ 0.68159, f 8.3368.
func TestTheRateOfTheTestCustardAtMinus18(t *testing.T) {
	s := Of(custard(), 1).State(-18)
	assert.InEpsilon(t, 0.65935, s.SolutesFraction, 1e-4)
	assert.InEpsilon(t, 8.7893, s.PerSolute, 1e-4)
	assert.InEpsilon(t, 1.96594e-12, s.WaterM2PerS, 1e-5)
	assert.InEpsilon(t, 3.2244e-14, s.SugarM2PerS, 2e-4)
	assert.InEpsilon(t, 0.68159, s.IceVolumeFraction, 1e-4)
	assert.InEpsilon(t, 8.3368, s.ShellFactor, 1e-4)
	assert.InEpsilon(t, 1127.5, s.UM3PerDay, 1e-3)
}

// Stokes and Einstein with the radius of the table give sucrose in water at 25 °C,
// 0.890 mPa s, its 5.2e-10 m²/s (both from memory).
func TestTheRadiusOfSucroseIsThatOfItsDiffusionInWater(t *testing.T) {
	d := boltzmann * 298.15 / (6 * math.Pi * 0.890e-3 * sugarRadius)
	assert.InEpsilon(t, 5.2e-10, d, 0.01)
}

// Water in water: 2.3e-9 m²/s at 25 °C (common figure, from memory); the formula
// is for syrups and 18 % low there.
func TestWaterInThinSyrupMovesAsInWater(t *testing.T) {
	assert.InEpsilon(t, 2.3e-9, waterDiffusion(0, 25), 0.2)
}

func TestColderNeverGrowsFaster(t *testing.T) {
	for i, b := range append(recipes(60), custard()) {
		l := Of(b, 1)
		require.True(t, l.Freezes())
		last := math.Inf(1)
		for at := math.Min(-3, l.FreezingPointC()-0.6); at > -40; at -= 0.25 {
			rate := l.UM3PerDay(at)
			assert.Positive(t, rate, "recipe %d at %g °C", i, at)
			assert.LessOrEqual(t, rate, last*(1+1e-9), "recipe %d at %g °C", i, at)
			last = rate
		}
	}
}

func TestTheTableIsTheLaw(t *testing.T) {
	for i, b := range recipes(20) {
		l := Of(b, 1)
		for at := l.FreezingPointC() - 0.37; at > -40; at -= 0.53 {
			p := l.at(at)
			// The floor's corner and the end of freezing lie inside a step.
			if math.Abs(at-FloorFromC) > 1 && math.Abs(at-b.EndOfFreezingC) > 0.2 {
				assert.InEpsilon(t, l.UM3PerDay(at), p.rate, 0.005, "recipe %d at %g °C", i, at)
			}
			assert.InDelta(t, l.State(at).IceFraction, p.ice, 0.001, "recipe %d at %g °C", i, at)
		}
		assert.Zero(t, l.at(l.FreezingPointC()+0.1))
	}
}

func TestTheCustardKeepsAFloorInTheDeepColdAndTheFoamDoesNot(t *testing.T) {
	for i, b := range append(recipes(40), custard()) {
		l := Of(b, 1)
		bare := l.State(-29).UM3PerDay
		if b.Role == phase.Foam {
			assert.Equal(t, bare, l.UM3PerDay(-29))
			continue
		}
		assert.Greater(t, l.UM3PerDay(-29), bare, "recipe %d", i)
		assert.LessOrEqual(t, l.UM3PerDay(-29), floorRate+1e-9)
		assert.InDelta(t, l.UM3PerDay(-29), l.UM3PerDay(-35), 1e-9, "and it stays")
	}
	assert.InDelta(t, floorRate, Of(custard(), 1).UM3PerDay(-28.9), 1e-9)
}

func TestAGumSlowsTheGrowthByItsFactorAlone(t *testing.T) {
	plain, gum := Of(custard(), 1), Of(custard(), GumSlows)
	for _, at := range []float64{-5, -12, -18} {
		assert.InEpsilon(t, 1.2, plain.UM3PerDay(at)/gum.UM3PerDay(at), 1e-12)
	}
}

func TestNothingGrowsWithoutIceOrWithoutSyrup(t *testing.T) {
	l := Of(custard(), 1)
	assert.Zero(t, l.UM3PerDay(-1))
	assert.Zero(t, l.UM3PerDay(5))
	pure := mix.Mix{}
	pure.Grams[mix.Water] = 100
	b := phase.Prepare(pure, 0, phase.Dense, solution.DefaultBound)
	assert.False(t, Of(&b, 1).Freezes())
	b = phase.Prepare(mix.Mix{}, 0, phase.Foam, solution.DefaultBound)
	l = Of(&b, 1)
	assert.False(t, l.Freezes())
	assert.Zero(t, l.UM3PerDay(-18))
	_, ok := l.Cool(60, -18)
	assert.False(t, ok)
}

func TestWordsReachFromFineToIcy(t *testing.T) {
	for um, want := range map[float64]string{0: "fine", 29.9: "fine", 30: "smooth", 49.9: "smooth", 50: "slightly coarse", 74.9: "slightly coarse", 75: "icy", 1e4: "icy"} {
		assert.Equal(t, want, Words[WordFor(um)].Name, "%g", um)
	}
	// The sources' own: 57 told from 75; above 100 icy; smooth below 50.
	assert.NotEqual(t, WordFor(57), WordFor(75))
	assert.Equal(t, "icy", Words[WordFor(100)].Name)
}

func TestABandHoldsItsSize(t *testing.T) {
	s := Banded(45*45*45, 14*1127.5, Unbroken)
	assert.InDelta(t, 47.461, s.ValueUM, 0.001)
	assert.InEpsilon(t, 45/1.35*45/1.35*45/1.35+14*1127.5/3, s.LowUM*s.LowUM*s.LowUM, 1e-12)
	assert.InEpsilon(t, math.Pow(45*1.35, 3)+3*14*1127.5, s.HighUM*s.HighUM*s.HighUM, 1e-12)
	assert.True(t, s.LowUM < s.ValueUM && s.ValueUM < s.HighUM)
}

func ExampleLaw_UM3PerDay() {
	m := mix.Mix{IonMol: 0.007456}
	m.Grams[mix.Water], m.Grams[mix.Fat], m.Grams[mix.Protein], m.Grams[mix.Ash] = 60, 15, 4.5, 0.8
	m.Grams[mix.Sucrose], m.Grams[mix.Lactose] = 16, 3.7
	body := phase.Prepare(m, 0.25, phase.Dense, solution.DefaultBound)
	law := Of(&body, 1)
	fmt.Printf("%.0f µm³ a day at −18 °C, %.0f times as fast at −10 °C\n", law.UM3PerDay(-18), law.IndexRatio(-10))
	month := Banded(35*35*35, 30*law.UM3PerDay(-18), Unbroken)
	fmt.Printf("35 µm grow to %.0f (%.0f to %.0f) in 30 days\n", month.ValueUM, month.LowUM, month.HighUM)
	// Output:
	// 1128 µm³ a day at −18 °C, 31 times as fast at −10 °C
	// 35 µm grow to 42 (31 to 59) in 30 days
}

func BenchmarkRate(b *testing.B) {
	l := Of(custard(), 1)
	sum := 0.0
	for i := 0; i < b.N; i++ {
		sum += l.UM3PerDay(-5 - float64(i%18))
	}
	_ = sum
}

func BenchmarkOf(b *testing.B) {
	body := custard()
	for i := 0; i < b.N; i++ {
		Of(body, 1)
	}
}
