package say

import (
	"math/rand"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/work/design"
)

// quay is the stall's plain design with few whites, in the grams as written.
func quay() design.Design {
	d := market.Plain().WithGrams(design.FoamPart, 0, 100)
	d.Batch.Basis = design.BasisAsWritten
	return d
}

func made(t *testing.T, m *model.Model, d design.Design, k process.Kitchen) ([]Titled, process.Process, model.Result) {
	t.Helper()
	r, err := m.Evaluate(d)
	require.NoError(t, err)
	p := process.Of(d, &r, k, -18, nil)
	return Steps(Style{}, Making{Design: d, Result: &r, Process: &p}), p, r
}

// Each design has one trap; the right step says the right thing, and no step
// the wrong one. Sources stand beside the process's figures.
func TestTheStepsFollowTheTraps(t *testing.T) {
	m := model.New(market.Library(t))
	add := func(p design.Part, id string, g float64) func(design.Design) design.Design {
		return func(d design.Design) design.Design {
			return d.WithLineAdded(p, design.Line{Ingredient: id, Grams: g})
		}
	}
	none := func(p design.Part) func(design.Design) design.Design {
		return func(d design.Design) design.Design { return d.WithLines(p, nil) }
	}
	for _, c := range []struct {
		name  string
		trap  func(design.Design) design.Design
		title string
		says  []string
		never []string // in no step
	}{
		{"plain", func(d design.Design) design.Design { return d }, "Cook", []string{"80 to 83 °C", "curdles from about 86 °C"}, []string{"boil for 2 minutes", "altitude", "gelatine", "alcohol"}},
		{"starch with yolk", add(design.DensePart, "cornstarch", 15), "Cook", []string{"full boil", "95 °C at least", "yolk thins the starch"}, []string{"80 to 83 °C"}},
		{"much starch", add(design.DensePart, "cornstarch", 30), "Cook", []string{"full boil"}, []string{"may curdle on the way"}},
		{"rum in the custard", add(design.DensePart, "rum_40", 40), "Stir in cold", []string{"40 g", "half of the alcohol"}, nil},
		{"rum in the syrup", add(design.SyrupPart, "rum_40", 40), "Boil the syrup", []string{"alcohol boils away"}, []string{"half of the alcohol"}},
		{"lemon with milk", add(design.DensePart, "lemon_juice", 30), "Stir in cold", []string{"30 g lemon juice", "curdle"}, nil},
		{"dried whites", func(d design.Design) design.Design {
			return d.WithLines(design.FoamPart, []design.Line{{Ingredient: "egg_white_dried", Grams: 14}, {Ingredient: "water", Grams: 90}})
		}, "In the mixing bowl", []string{"let it swell", "90 g water"}, []string{"Know before you start"}},
		{"carton whites", func(d design.Design) design.Design {
			return d.WithLines(design.FoamPart, []design.Line{{Ingredient: "egg_white_past", Grams: 100}})
		}, "In the mixing bowl", []string{"four times as long"}, []string{"Know before you start"}},
		{"fresh whites", func(d design.Design) design.Design { return d }, "Crack the eggs", []string{"Know before you start", "pasteurised whites", "74 °C for 2 minutes", "71 °C"}, nil},
		{"no syrup", func(d design.Design) design.Design {
			return none(design.SyrupPart)(d).WithLineAdded(design.FoamPart, design.Line{Ingredient: "sugar", Grams: 150})
		}, "Heat the whites", []string{"74 °C", "stay raw"}, []string{"boiling syrup", "while the syrup boils"}},
		{"no yolk", func(d design.Design) design.Design { return d.WithLineRemoved(design.DensePart, 2) }, "Heat", []string{"420 g whole milk", "95 g sugar"}, []string{"yolks in a thin stream", "curdles from"}},
		{"cocoa", add(design.DensePart, "cocoa_natural", 20), "Heat", []string{"Rub the cocoa smooth"}, nil},
		{"chocolate", add(design.DensePart, "chocolate_dark_70_85", 60), "Off the heat", []string{"Melt 60 g"}, []string{"Rub the cocoa"}},
		{"altitude", func(d design.Design) design.Design { d.Kitchen.AltitudeM = 2000; return d }, "Boil the syrup", []string{"2000 m", "at sea level"}, nil},
		{"honey", add(design.SyrupPart, "honey", 30), "Boil the syrup", []string{"Honey foams up and catches"}, nil},
		{"gelatine", add(design.DensePart, "gelatin", 4), "Gelatine", []string{"Soak 4.0 g gelatine", "cold water"}, nil},
		{"tiny", func(d design.Design) design.Design {
			return d.WithLines(design.SyrupPart, []design.Line{{Ingredient: "sugar", Grams: 40}, {Ingredient: "water", Grams: 15}}).WithGrams(design.FoamPart, 0, 25)
		}, "Boil the syrup", []string{"mm deep", "go by weight"}, nil},
		{"huge", func(d design.Design) design.Design {
			d.Tubs.Count, d.Tubs.VolumeML, d.Batch.Basis = 30, 500, design.BasisTubs
			return d
		}, "Freeze soft", []string{"dishes", "freeze in turns"}, nil},
		{"butter", add(design.DensePart, "butter_unsalted", 40), "Off the heat", []string{"Whisk 40 g unsalted butter into the hot custard"}, nil},
		{"no eggs at all", func(d design.Design) design.Design {
			return d.WithLineRemoved(design.DensePart, 2).WithLines(design.FoamPart, []design.Line{{Ingredient: "cream_heavy", Grams: 100}})
		}, "Pour and whip", []string{"Stir the hot syrup into the foam base"}, []string{"yolk", "egg", "whites"}},
		{"invert syrup", func(d design.Design) design.Design { d.Foam.Syrup.InvertedPercent = 30; return d }, "Boil the syrup", []string{"118 °C"}, nil},
		{"counted whole eggs", func(d design.Design) design.Design {
			return d.WithLine(design.DensePart, 2, design.Line{Ingredient: "egg_whole", Count: 2, CountOf: design.WholeEggs})
		}, "Egg and sugar", []string{"100 g", "(2)"}, nil},
		{"dairy-free", func(d design.Design) design.Design {
			d = d.WithLine(design.DensePart, 1, design.Line{Ingredient: "coconut_milk", Grams: 180})
			return d.WithLine(design.DensePart, 0, design.Line{Ingredient: "oat_drink", Grams: 420})
		}, "Cook", []string{"No milk protein"}, []string{"curdle it"}},
		{"the syrup weighed", func(d design.Design) design.Design { d.Foam.Syrup.WeighedG = 210; return d }, "Boil the syrup", []string{"until the syrup weighs 210 g"}, []string{"scale is surer"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			steps, _, _ := made(t, m, c.trap(quay()), process.Default())
			all, text := "", ""
			for _, s := range steps {
				assert.NotEmpty(t, s.Text, s.Title)
				all += s.Text + "\n"
				if s.Title == c.title {
					text = s.Text
				}
			}
			for _, s := range c.says {
				assert.Contains(t, text, s, "step %q", c.title)
			}
			for _, s := range c.never {
				assert.NotContains(t, all, s)
			}
			for _, s := range []string{"NaN", "Inf", "safe", "−0 ", "  "} {
				assert.NotContains(t, all, s)
			}
		})
	}
}

// Sour things and spirits are in no step before the custard is cold.
func TestNothingSourOrStrongIsHeatedWithTheMilk(t *testing.T) {
	d := quay().WithLineAdded(design.DensePart, design.Line{Ingredient: "lemon_juice", Grams: 20}).WithLineAdded(design.DensePart, design.Line{Ingredient: "rum_40", Grams: 20})
	steps, _, _ := made(t, model.New(market.Library(t)), d, process.Default())
	for _, s := range steps {
		if s.Title == "Heat" || s.Title == "Cook" || s.Title == "Egg and sugar" {
			assert.NotContains(t, s.Text, "lemon")
			assert.NotContains(t, s.Text, "rum")
		}
	}
}

// A probe that shows 99 °C in boiling water at sea level reads a degree low.
func TestAProbeThatReadsLowIsAllowedFor(t *testing.T) {
	k := process.Default()
	k.ProbeBoilsC = 99
	steps, _, _ := made(t, model.New(market.Library(t)), quay(), k)
	for _, s := range steps {
		if s.Title == "Boil the syrup" {
			assert.Contains(t, s.Text, "to 117.0 °C")
			assert.Contains(t, s.Text, "too little")
		}
	}
}

// Whatever the lines, what goes in over all steps is the lines.
func TestTheStepsUseUpTheLinesExactly(t *testing.T) {
	m := model.New(market.Library(t))
	source := rand.New(rand.NewSource(12))
	list := m.Library().All()
	for range 500 {
		d := quay()
		for range 1 + source.Intn(6) {
			part := design.Part(source.Intn(3))
			d = d.WithLineAdded(part, design.Line{Ingredient: list[source.Intn(len(list))].ID, Grams: 1 + 90*source.Float64()})
		}
		if source.Intn(2) == 0 {
			d.Batch.Basis = design.BasisTubs
		}
		steps, p, r := made(t, m, d, process.Default())
		sum := make([]float64, len(r.Lines))
		seen := map[process.StepCode]bool{}
		for i, s := range p.Steps {
			for _, u := range s.Lines {
				sum[u.Line] += u.Grams
			}
			for _, before := range s.After {
				require.True(t, seen[before], "%s waits for %s, which comes later", s.Code, before)
			}
			seen[s.Code] = true
			require.GreaterOrEqual(t, s.Minutes, s.HandsOnMinutes-1e-9, s.Code)
			require.NotEmpty(t, steps[i].Text, s.Code)
			require.False(t, strings.Contains(steps[i].Text, "NaN"), steps[i].Text)
		}
		for i, l := range r.Lines {
			require.InDelta(t, l.Grams, sum[i], 1e-12*(1+l.Grams), l.Ingredient.ID)
		}
	}
}
