package label_test

import (
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
)

// invented returns a food of random rows of the library in two phases, with
// the phases as foods of their own. Every random recipe comes from a seed, so
// that a failure can be repeated.
func invented(r *rand.Rand, all []*ingredient.Ingredient) (whole, dense, foam label.Food) {
	phase := func(name string) label.Food {
		f := label.Food{DensityGPerML: 0.4 + 0.7*r.Float64(), TubML: 50 + 2000*r.Float64()}
		for n := 1 + r.Intn(8); n > 0; n-- {
			f.Lines = append(f.Lines, label.Used{Ingredient: all[r.Intn(len(all))], Grams: 500 * r.Float64(), Phase: name})
		}
		f.WaterOffG = 0.1 * r.Float64() * f.MassG()
		return f
	}
	dense, foam = phase(label.DensePhase), phase("foam")
	whole = dense
	whole.Lines = append(append([]label.Used(nil), dense.Lines...), foam.Lines...)
	whole.WaterOffG += foam.WaterOffG
	whole.Dense = &dense
	return whole, dense, foam
}

// inAll returns a figure's g, mg or kcal in the whole food from its label: US
// lines are per serving, EU lines per 100 g.
func inAll(l *label.Label, f label.Food, key string) (amount float64, ok bool) {
	per := 100.0
	if l.Region == label.US {
		per = l.ServingG
	}
	for _, x := range l.Lines {
		if x.Key == key {
			return x.Amount * f.MassG() / per, true
		}
	}
	return 0, false
}

var regions = [...]label.Region{label.US, label.EU}

func TestBlendIsTheSumOfItsPhases(t *testing.T) {
	r, all := rand.New(rand.NewSource(11)), market.Library(t).All()
	for trial := 0; trial < 150; trial++ {
		whole, dense, foam := invented(r, all)
		for _, method := range [...]string{label.Specific, label.General} {
			for _, region := range regions {
				whole.EnergyMethod, dense.EnergyMethod, foam.EnergyMethod = method, method, method
				a, b, both := labelOf(t, dense, region), labelOf(t, foam, region), labelOf(t, whole, region)
				if region == label.US && method == label.General && (a.EnergyMethod.String() != both.EnergyMethod.String() || b.EnergyMethod.String() != both.EnergyMethod.String()) {
					continue // sugar alcohols in one phase change the method of the whole
				}
				for _, line := range both.Lines {
					got, _ := inAll(both, whole, line.Key)
					x, _ := inAll(a, dense, line.Key) // a line that a phase lacks is none of it
					y, _ := inAll(b, foam, line.Key)
					require.InDelta(t, x+y, got, 1e-9*(1+got), "trial %d, %s %s", trial, region, line.Key)
				}
			}
		}
	}
}

func TestScalingABatchChangesNoFigurePer100Grams(t *testing.T) {
	r, all := rand.New(rand.NewSource(12)), market.Library(t).All()
	for trial := 0; trial < 60; trial++ {
		one, _, _ := invented(r, all)
		for _, k := range []float64{0.01, 1.0 / 3, 2, 17.3, 500} {
			big := one
			big.Lines = append([]label.Used(nil), one.Lines...)
			for i := range big.Lines {
				big.Lines[i].Grams *= k
			}
			big.WaterOffG *= k
			dense := *one.Dense
			dense.Lines = big.Lines[:len(dense.Lines)]
			dense.WaterOffG *= k
			big.Dense = &dense
			for _, region := range regions {
				a, b := labelOf(t, one, region), labelOf(t, big, region)
				for i := range a.Lines {
					require.InEpsilon(t, 1+a.Lines[i].Amount, 1+b.Lines[i].Amount, 1e-12, "trial %d, %s", trial, a.Lines[i].Key)
					require.Equal(t, a.Lines[i].Text, b.Lines[i].Text)
				}
				require.Equal(t, a.IngredientsText, b.IngredientsText)
				require.Equal(t, a.ProposedName, b.ProposedName)
			}
		}
	}
}

// The second column holds servings × one serving; that it is declared by the
// same rules from its own unrounded amounts, 21 CFR 101.9(b)(12), is the rest.
func TestServingsTimesServingIsTheContainer(t *testing.T) {
	r, all := rand.New(rand.NewSource(13)), market.Library(t).All()
	dual := 0
	for trial := 0; trial < 300; trial++ {
		food, _, _ := invented(r, all)
		food.TubML = 320 + 160*r.Float64()
		l := labelOf(t, food, label.US)
		require.Equal(t, "dual", l.Columns)
		n := food.TubML / 160
		assert.InDelta(t, n, l.ServingsPerContainer, 0.25+1e-9) // as declared, by 0.5
		for i := range l.Lines {
			dual++
			require.InDelta(t, l.Lines[i].Amount*n, l.Second[i].Amount, 1e-9*(1+l.Second[i].Amount), l.Lines[i].Key)
		}
	}
	assert.Greater(t, dual, 4000)
}

// Whatever is unknown, a figure is declared only where the least and the most
// it can be read the same; else it is marked, and a warning names who lacks it.
func TestNoUnknownFigureIsDeclaredSilently(t *testing.T) {
	r, all := rand.New(rand.NewSource(14)), market.Library(t).All()
	marked := 0
	for trial := 0; trial < 200; trial++ {
		food, _, _ := invented(r, all)
		for _, region := range regions {
			l := labelOf(t, food, region)
			for _, line := range l.Lines {
				if !line.Incomplete {
					require.Empty(t, line.MostText)
					continue
				}
				marked++
				require.NotEmpty(t, line.Missing, line.Key)
				require.NotEmpty(t, line.MostText, line.Key)
				name := strings.TrimPrefix(line.Name, "of which ")
				require.Contains(t, strings.ToLower(l.Warnings.String()), strings.ToLower(name))
			}
		}
	}
	assert.Greater(t, marked, 500)
}

func TestOrderOfLinesChangesNothingButTies(t *testing.T) {
	r, all := rand.New(rand.NewSource(15)), market.Library(t).All()
	for trial := 0; trial < 60; trial++ {
		a, _, _ := invented(r, all)
		b := a
		b.Lines = append([]label.Used(nil), a.Lines...)
		r.Shuffle(len(b.Lines), func(i, j int) { b.Lines[i], b.Lines[j] = b.Lines[j], b.Lines[i] })
		for _, region := range regions {
			x, y := labelOf(t, a, region), labelOf(t, b, region)
			require.Equal(t, x.IngredientsText, y.IngredientsText, "trial %d", trial)
			require.Equal(t, x.Contains, y.Contains)
			for i := range x.Lines {
				require.Equal(t, x.Lines[i].Text, y.Lines[i].Text)
			}
		}
	}
}
