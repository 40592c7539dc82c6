package balance

import (
	"math"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/label"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
)

// Wish is a figure and the band in which it should lie.
type Wish struct {
	Of        *Quantity
	Low, High float64 // the band, both ends in it; ±Inf where an end is open
	Weight    float64 // beside other wishes; 1 is ordinary
	AtC       float64 // °C, of a quantity with a temperature; NaN: the serving temperature

	word bool            // a word ends where its band does, so a search keeps clear of the ends
	out  *cold.Softening // how a tub warms that is much like the one that is looked for; of TubMinutes alone
}

// Quantity is a figure that can be wished for.
type Quantity struct {
	Key   string // in a file of wishes, as in "custard.hardness_kpa"
	About string
	Unit  string
	Min   float64 // the range in which a wish makes sense
	Max   float64
	AtC   bool // it is of a temperature

	// step is the difference that a maker notices: of the figure, or where ratio
	// is set of its logarithm. Estimates; they weigh wishes that pull against
	// each other.
	step   float64
	ratio  bool
	kelvin bool // met to 0.1 K, not to half a per cent
	of     func(s *model.Sketch, w *Wish) float64

	// Of a name of food: the name, and of which phase, nil of the tub. The figure
	// is by how many per cent of their bounds its limits are missed.
	Standard label.Standard
	Named    *phase.Role

	eggs bool                   // of WholeEggs
	pack *ingredient.Ingredient // of WholePacks; nil: of no packs
}

func percentOf(r phase.Role, of func(p *model.Phase) float64) func(*model.Sketch, *Wish) float64 {
	return func(s *model.Sketch, _ *Wish) float64 { return of(s.Phase(r)) }
}

// meanOf is of the whole tub by weight.
func meanOf(of func(p *model.Phase) float64) func(*model.Sketch, *Wish) float64 {
	return func(s *model.Sketch, _ *Wish) float64 {
		return s.Tub().Mean(of(s.Phase(phase.Dense)), of(s.Phase(phase.Foam)))
	}
}

func solids(p *model.Phase) float64 { return p.Body.Mix.SolidsG() }
func fat(p *model.Phase) float64    { return p.Percent(mix.Fat) }
func sweet(p *model.Phase) float64  { return p.SweetnessPercent }
func frost(p *model.Phase) float64  { return p.Body.FreezingPointC }

func perServing(c ingredient.Column) func(*model.Sketch, *Wish) float64 {
	return func(s *model.Sketch, _ *Wish) float64 { n := s.Nutrition(); return n.PerServing[c].Known }
}

func hardness(r phase.Role) func(*model.Sketch, *Wish) float64 {
	return func(s *model.Sketch, w *Wish) float64 {
		if math.IsNaN(w.AtC) {
			return s.Phase(r).State.YieldKPa
		}
		return s.HardnessAtKPa(r, w.AtC)
	}
}

// The quantities, in the order of a file of wishes.
var (
	CustardHardness  = &Quantity{Key: "custard.hardness_kpa", About: "hardness of the custard", Unit: "kPa", Min: 0.01, Max: 200, AtC: true, step: 0.2, ratio: true, of: hardness(phase.Dense)}
	CustardSweetness = &Quantity{Key: "custard.sweetness_percent", About: "sweetness of the custard, as sucrose", Unit: "%", Max: 60, step: 0.5, of: percentOf(phase.Dense, sweet)}
	CustardSolids    = &Quantity{Key: "custard.solids_percent", About: "solids of the custard", Unit: "%", Max: 100, step: 1, of: percentOf(phase.Dense, solids)}
	CustardFat       = &Quantity{Key: "custard.fat_percent", About: "fat of the custard", Unit: "%", Max: 60, step: 0.5, of: percentOf(phase.Dense, fat)}
	CustardFreezes   = &Quantity{Key: "custard.freezes_at_c", About: "where the custard begins to freeze", Unit: "°C", Min: -40, step: 0.2, kelvin: true, of: percentOf(phase.Dense, frost)}
	FoamHardness     = &Quantity{Key: "foam.hardness_kpa", About: "hardness of the foam", Unit: "kPa", Min: 0.01, Max: 200, AtC: true, step: 0.2, ratio: true, of: hardness(phase.Foam)}
	FoamSweetness    = &Quantity{Key: "foam.sweetness_percent", About: "sweetness of the foam, as sucrose", Unit: "%", Max: 80, step: 1, of: percentOf(phase.Foam, sweet)}
	FoamSolids       = &Quantity{Key: "foam.solids_percent", About: "solids of the foam", Unit: "%", Max: 100, step: 1, of: percentOf(phase.Foam, solids)}
	FoamFat          = &Quantity{Key: "foam.fat_percent", About: "fat of the foam", Unit: "%", Max: 60, step: 0.5, of: percentOf(phase.Foam, fat)}
	FoamFreezes      = &Quantity{Key: "foam.freezes_at_c", About: "where the foam begins to freeze", Unit: "°C", Min: -40, step: 0.3, kelvin: true, of: percentOf(phase.Foam, frost)}
	TubSweetness     = &Quantity{Key: "tub.sweetness_percent", About: "sweetness of the whole tub, as sucrose", Unit: "%", Max: 60, step: 0.5,
		of: func(s *model.Sketch, _ *Wish) float64 { return s.Tub().SweetnessPercent }}
	TubContrast = &Quantity{Key: "tub.hardness_ratio", About: "hardness of the custard over that of the foam", Min: 0.01, Max: 100, step: 0.2, ratio: true,
		of: func(s *model.Sketch, _ *Wish) float64 {
			return s.Phase(phase.Dense).State.YieldKPa / s.Phase(phase.Foam).State.YieldKPa
		}}
	TubSolids  = &Quantity{Key: "tub.solids_percent", About: "solids of the whole tub", Unit: "%", Max: 100, step: 1, of: meanOf(solids)}
	TubFat     = &Quantity{Key: "tub.fat_percent", About: "fat of the whole tub", Unit: "%", Max: 60, step: 0.5, of: meanOf(fat)}
	TubMinutes = &Quantity{Key: "tub.minutes", About: "minutes from the freezer to the spoon", Unit: "min", Max: 600, step: 1, of: minutesOut}
	TubEnergy  = &Quantity{Key: "tub.energy_kcal", About: "energy of a serving", Unit: "kcal", Max: 2000, step: 5, of: perServing(ingredient.Energy)}
	TubSugar   = &Quantity{Key: "tub.sugar_g", About: "sugars of a serving", Unit: "g", Max: 200, step: 1, of: perServing(ingredient.TotalSugars)}
	TubProtein = &Quantity{Key: "tub.protein_g", About: "protein of a serving", Unit: "g", Max: 100, step: 0.3, of: perServing(ingredient.Protein)}
	TubCost    = &Quantity{Key: "tub.cost", About: "cost of a full tub, in your own money; of the priced lines", Max: 1e6, step: 0.05, ratio: true,
		of: func(s *model.Sketch, _ *Wish) float64 { c := s.Cost(); return c.PerTub }}
	TubsFilled = &Quantity{Key: "tub.filled", About: "tubs filled", Max: 1e4, step: 0.02, ratio: true,
		of: func(s *model.Sketch, _ *Wish) float64 { return s.Tub().TubsFilled }}
	EggsCracked = &Quantity{Key: "eggs.crack", About: "eggs to crack, whole ones", Max: 1e4, step: 1, of: func(s *model.Sketch, _ *Wish) float64 {
		return math.Max(s.Eggs().Yolks, s.Eggs().Whites)
	}}
	EggsLeft = &Quantity{Key: "eggs.left", About: "yolks and whites left over", Max: 1e4, step: 1, of: func(s *model.Sketch, _ *Wish) float64 {
		return math.Abs(s.Eggs().Yolks - s.Eggs().Whites)
	}}
)

// Quantities lists them. The caller must not change it.
var Quantities = []*Quantity{
	CustardHardness, CustardSweetness, CustardSolids, CustardFat, CustardFreezes,
	FoamHardness, FoamSweetness, FoamSolids, FoamFat, FoamFreezes,
	TubSweetness, TubSolids, TubFat, TubContrast, TubMinutes, TubEnergy, TubSugar, TubProtein, TubCost, TubsFilled, EggsCracked, EggsLeft,
}

// Value returns the figure of s.
func (w *Wish) Value(s *model.Sketch) float64 { return w.Of.of(s, w) }

// unknown is the miss of a figure that nobody knows, in steps.
const unknown = 20

// miss returns how far v lies outside the band, in steps that a maker notices;
// below it is negative.
func (w *Wish) miss(v float64) float64 {
	low, high := w.Low, w.High
	if w.word {
		low, high = low*(1+clearance), high*(1-clearance)
	}
	switch {
	case math.IsNaN(v):
		return unknown
	case v < low:
		return -w.steps(v, low)
	case v > high:
		return w.steps(high, v)
	}
	return 0
}

func (w *Wish) steps(low, high float64) float64 {
	if w.Of.ratio && low > 0 {
		return math.Log(high/low) / w.Of.step
	}
	return (high - low) / w.Of.step
}

// Met reports whether v is in the band, to half a per cent or a tenth of a
// kelvin.
func (w *Wish) Met(v float64) bool {
	within := 0.005 * math.Abs(v)
	switch {
	case w.word:
		within = 0
	case w.Of.kelvin:
		within = 0.1
	case w.Of.eggs || w.Of.pack != nil:
		within = 0
	case w.Of == TubMinutes: // nobody tells half a minute
		within = math.Max(within, 0.5)
	case w.Of.Standard.ID != "":
		within = nameAim
	}
	return v >= w.Low-within && v <= w.High+within
}
