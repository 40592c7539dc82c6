package say

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/answer/process"
	"ripplewright/internal/check/market"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/work/design"
)

// Made up for the stall Saltmarsh Quay, each with traps of its own.
type trap struct {
	name  string
	of    func(design.Design) design.Design
	in    func(process.Kitchen) process.Kitchen // nil: the default one
	says  map[string][]string                   // by the step's title
	never []string                              // in no step
}

func with(lines ...any) func(design.Design) design.Design {
	return func(d design.Design) design.Design {
		for i := 0; i < len(lines); i += 3 {
			d = d.WithLineAdded(lines[i].(design.Part), design.Line{Ingredient: lines[i+1].(string), Grams: float64(lines[i+2].(int))})
		}
		return d
	}
}

func replaced(p design.Part, lines ...any) func(design.Design) design.Design {
	return func(d design.Design) design.Design {
		d = d.WithLines(p, nil)
		for i := 0; i < len(lines); i += 2 {
			d = d.WithLineAdded(p, design.Line{Ingredient: lines[i].(string), Grams: float64(lines[i+1].(int))})
		}
		return d
	}
}

func both(fs ...func(design.Design) design.Design) func(design.Design) design.Design {
	return func(d design.Design) design.Design {
		for _, f := range fs {
			d = f(d)
		}
		return d
	}
}

func high(m float64) func(design.Design) design.Design {
	return func(d design.Design) design.Design { d.Kitchen.AltitudeM = m; return d }
}

const (
	dense = design.DensePart
	foam  = design.FoamPart
	syrup = design.SyrupPart
)

var traps = []trap{
	{name: "tea and lime",
		says:  map[string][]string{"Heat": {"12 g black tea leaves"}, "Cook": {"full boil", "Potato starch swells from 59 to 68", "Boiled with acid it would thin"}, "Stir in cold": {"25 g lime juice", "3.4 g acid to a kilogram of milk", "0.5 to 2 g"}},
		never: []string{"80 to 83 °C"},
		of:    with(dense, "tea_leaves", 12, dense, "lime_juice", 25, dense, "potato_starch", 12)},
	{name: "rum, starch, altitude",
		says:  map[string][]string{"Cook": {"91.3 °C at least"}, "Stir in cold": {"30 g rum", "half of the alcohol"}, "Boil the syrup": {"2600 m", "hard ball", "128 °C at sea level", "cook to 109 °C here"}},
		never: []string{"curdle", "outlives"},
		of:    both(with(dense, "rum_40", 30, dense, "cornstarch", 14), high(2600))},
	{name: "cocoa without yolk",
		says:  map[string][]string{"Heat": {"Rub the cocoa smooth with the sugar", "Stir the starch smooth"}, "Cook": {"boil for 1 minute"}, "Crack the eggs": {"for their whites"}},
		never: []string{"yolk thins", "onto the egg", "curdles from", "custard"},
		of:    both(replaced(dense, "milk_whole", 500, "cream_heavy", 100, "sugar", 110, "cocoa_dutch", 30, "cornstarch", 18))},
	{name: "dry cocoa in the foam",
		says:  map[string][]string{"Fold in": {"Sift the cocoa in", "Fat makes the foam fall", "74 to 325 %"}},
		never: []string{"Rub the cocoa"},
		of:    with(foam, "cocoa_natural", 12)},
	{name: "whole eggs and yolks",
		says: map[string][]string{"Crack the eggs": {"keep 2 whole, part the others"}, "Egg and sugar": {"100 g whole eggs (2)"}},
		of: func(d design.Design) design.Design {
			return d.WithLineAdded(dense, design.Line{Ingredient: "egg_whole", Count: 2, CountOf: design.WholeEggs})
		}},
	{name: "sorbet of mango",
		says:  map[string][]string{"Heat": {"500 g mango, 120 g sugar and 20 g lemon juice"}, "Fill and swirl": {"into the base"}},
		never: []string{"custard", "curdle", "Stir in cold", "Egg dishes", "hot milk"},
		of:    replaced(dense, "mango", 500, "sugar", 120, "lemon_juice", 20)},
	{name: "strawberries cooked down",
		says:  map[string][]string{"Heat": {"Without the pan it weighs 629 g"}},
		never: []string{"curdle", "yolk thins", "cold base"},
		of:    both(replaced(dense, "strawberry", 600, "sugar", 140), func(d design.Design) design.Design { d.Dense.StoveLossPercent = 15; return d })},
	{name: "lemon curd without milk",
		says:  map[string][]string{"Stir in cold": {"150 g lemon juice", "egg sets early"}, "Off the heat": {"120 g unsalted butter", "blend it a minute"}},
		never: []string{"hot milk curdles", "of milk"},
		of:    replaced(dense, "egg_yolk", 120, "lemon_juice", 150, "sugar", 160, "butter_unsalted", 120, "water", 80)},
	{name: "coconut and coffee liqueur",
		says:  map[string][]string{"Cook": {"No milk protein"}, "Stir in cold": {"40 g coffee liqueur", "half of the alcohol"}},
		never: []string{"of milk", "acid"},
		of:    replaced(dense, "coconut_cream", 300, "soy_drink", 250, "egg_yolk", 60, "sugar", 70, "coffee_liqueur", 40)},
	{name: "yogurt and banana, cold",
		says:  map[string][]string{"Stir in cold": {"together until no sugar grates"}},
		never: []string{"cold base", "Heat until", "ice water (", "stove"},
		of:    both(replaced(dense, "yogurt_greek_whole", 400, "banana", 200, "honey", 60), func(d design.Design) design.Design { d.Dense.StoveLossPercent = 0; return d })},
	{name: "gelatine in the foam",
		says:  map[string][]string{"Gelatine": {"5.0 g gelatine"}, "Pour and whip": {"Melt the soaked gelatine"}},
		never: []string{"Dissolve the soaked gelatine"},
		of:    with(foam, "gelatin", 5)},
	{name: "gelatine and pineapple",
		says:  map[string][]string{"Gelatine": {"Raw pineapple"}, "Off the heat": {"Dissolve the soaked gelatine in the hot custard"}},
		never: []string{"Melt the soaked gelatine"},
		of:    with(dense, "gelatin", 5, dense, "pineapple", 120)},
	{name: "dried whites held cold",
		says:  map[string][]string{"In the mixing bowl": {"swell for 20 minutes", "60 g sugar by the spoonful"}},
		never: []string{"hold it there", "stay raw", "syrup", "Know before"},
		of:    both(replaced(foam, "egg_white_dried_powder", 12, "water", 84, "sugar", 60), replaced(syrup))},
	{name: "raw meringue",
		says:  map[string][]string{"In the mixing bowl": {"160 g sugar together"}, "Heat the whites": {"74 °C", "stay raw", "71 °C"}, "Fold in": {"4.0 g vanilla extract"}},
		never: []string{"boiling syrup", "foamy", "Know before"},
		of:    both(replaced(syrup), with(foam, "sugar", 160, foam, "vanilla_extract", 4))},
	{name: "cream foam, no syrup",
		says:  map[string][]string{"Whip": {"the foam base, cold,", "80 to 130 %"}},
		never: []string{"the whites", "syrup", "stay raw"},
		of:    both(replaced(foam, "cream_heavy", 220, "sugar", 30), replaced(syrup))},
	{name: "bombe of yolks",
		says:  map[string][]string{"In the mixing bowl": {"until pale and thick"}, "Crack the eggs": {"warms the yolks", "Take pasteurised yolks"}},
		never: []string{"soft peaks", "the whites"},
		of:    replaced(foam, "egg_yolk", 100)},
	{name: "sour syrup",
		says:  map[string][]string{"Boil the syrup": {"splits part of the sugar", "reckons with 0 %"}},
		never: []string{"acid to a kilogram"},
		of:    with(syrup, "lemon_juice", 10)},
	{name: "brown sugar and treacle",
		says: map[string][]string{"Boil the syrup": {"foam up"}},
		of:   replaced(syrup, "sugar_brown", 150, "treacle_black", 30, "water", 60)},
	{name: "starch over the clouds",
		says: map[string][]string{"Cook": {"85.3 °C", "Leave one of them out"}, "Boil the syrup": {"135 °C at sea level"}},
		of:   both(with(dense, "tapioca_starch", 20), high(4400))},
	{name: "much yolk",
		says:  map[string][]string{"Cook": {"So much yolk sets sooner"}},
		never: []string{"so little yolk"},
		of:    func(d design.Design) design.Design { return d.WithGrams(dense, 2, 190) }},
	{name: "hardly a yolk",
		says:  map[string][]string{"Cook": {"so little yolk it does not coat the spoon"}},
		never: []string{"So much yolk", "and it coats"},
		of:    func(d design.Design) design.Design { return d.WithGrams(dense, 2, 17) }},
	{name: "a churn",
		says:  map[string][]string{"Freeze the churn's bowl": {"2 bowls"}, "Freeze soft": {"in 2 runs, of 1000 mL at most"}},
		never: []string{"No machine", "beat it hard"},
		of:    func(d design.Design) design.Design { d.Tubs.Count, d.Batch.Basis = 8, design.BasisTubs; return d }, in: func(k process.Kitchen) process.Kitchen {
			k.ChurnBowlML, k.Churn, k.Tool = 1000, process.FrozenBowl, process.StandMixer
			return k
		}},
	{name: "market day",
		says: map[string][]string{"Crack the eggs": {"Crack 111"}, "In the mixing bowl": {"5 bowls"}, "Freeze soft": {"12 dishes", "in turns"}},
		of:   func(d design.Design) design.Design { d.Tubs.Count, d.Batch.Basis = 60, design.BasisTubs; return d }, in: func(k process.Kitchen) process.Kitchen { k.FridgeC = 9; return k }},
	{name: "own pack of skyr",
		says: map[string][]string{"Stir in cold": {"150 g Skyr of the quay"}},
		of: func(d design.Design) design.Design {
			skyr := &ingredient.Ingredient{ID: "skyr_quay", Name: "Skyr of the quay"}
			d.Own = []*ingredient.Ingredient{skyr}
			return d.WithLineAdded(dense, design.Line{Ingredient: "skyr_quay", Grams: 150})
		}},
	{name: "gum and glucose, no dry sugar",
		says:  map[string][]string{"Heat": {"Sprinkle the gum in"}},
		never: []string{"dry sugar", "onto the egg"},
		of:    replaced(dense, "milk_whole", 500, "glucose_syrup_de42", 120, "xanthan_gum", 1, "milk_skim", 100)},
	{name: "too much air, by hand",
		never: []string{"420 %,"},
		of:    func(d design.Design) design.Design { d.Foam.OverrunPercent = 420; return d }, in: func(k process.Kitchen) process.Kitchen { k.Tool = process.HandWhisk; return k }},
	{name: "chocolate, no yolk, no milk",
		says:  map[string][]string{"Off the heat": {"Melt 120 g dark chocolate", "in the hot base", "Whisk in 30 g coconut oil", "blend it a minute"}},
		never: []string{"custard", "onto the egg"},
		of:    replaced(dense, "oat_drink", 500, "chocolate_dark_70_85", 120, "sugar", 80, "oil_coconut", 30)},
	{name: "milk powder custard with butter",
		says:  map[string][]string{"Egg and sugar": {"80 g pasteurised egg yolks"}, "Off the heat": {"60 g unsalted butter"}},
		never: []string{"No milk protein"},
		of:    replaced(dense, "water", 500, "whole_milk_powder", 80, "butter_unsalted", 60, "egg_yolk_past", 80, "sugar", 90)},
	{name: "sherry and biscuits",
		says: map[string][]string{"Fill and swirl": {"Sprinkle in 60 g sponge fingers and 30 g wholemeal crackers"}, "Stir in cold": {"60 g dessert wine"}},
		of:   with(dense, "wine_dessert", 60, dense, "ladyfingers", 60, foam, "graham_crackers", 30)},
	{name: "yolk alone with honey",
		says:  map[string][]string{"Egg and sugar": {"Whisk 100 g egg yolks (5.9) smooth."}, "Heat": {"120 g honey"}},
		never: []string{"crusts", "foam up"},
		of:    replaced(dense, "milk_goat", 500, "egg_yolk", 100, "honey", 120)},
}

func TestTheTrapsOfTheQuay(t *testing.T) { follow(t, traps) }

// follow asks of each design that the right step says the right thing, that no
// step says the wrong one, and that the steps use up the lines.
func follow(t *testing.T, traps []trap) {
	t.Helper()
	m := model.New(market.Library(t))
	for _, c := range traps {
		t.Run(c.name, func(t *testing.T) {
			k := process.Default()
			if c.in != nil {
				k = c.in(k)
			}
			steps, p, r := made(t, m, c.of(quay()), k)
			all := ""
			text := map[string]string{}
			for i, s := range steps {
				t.Logf("%d. %s: %s", i+1, s.Title, s.Text)
				assert.NotEmpty(t, s.Text, s.Title)
				all += s.Text + "\n"
				text[s.Title] = s.Text
			}
			sum := make([]float64, len(r.Lines))
			for _, s := range p.Steps {
				for _, u := range s.Lines {
					sum[u.Line] += u.Grams
				}
			}
			for i, l := range r.Lines {
				assert.InDelta(t, l.Grams, sum[i], 1e-12*(1+l.Grams), l.Ingredient.ID)
			}
			mk := Making{Design: c.of(quay()), Result: &r, Process: &p}
			for _, x := range MakingCautions(Style{}, mk, true) {
				t.Logf("! %s: %s", x.Title, x.Text)
			}
			for title, says := range c.says {
				for _, s := range says {
					assert.Contains(t, text[title], s, "step %q", title)
				}
			}
			for _, s := range append([]string{"NaN", "Inf", "safe", "−0 ", "  ", " .", " ,", "..", "pasteurised by"}, c.never...) {
				assert.NotContains(t, all, s)
			}
			assert.False(t, strings.Contains(all, "whisk  "))
		})
	}
}
