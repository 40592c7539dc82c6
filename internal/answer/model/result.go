package model

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
	"ripplewright/internal/matter/blend"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/work/design"
)

// The temperature rail, °C: serving temperatures and scoop ranges live on it.
const (
	RailLow  = -24.0
	RailHigh = -4.0
)

// Span is a figure with its band, Low ≤ High. The band covers what the
// composition leaves unknown and the bound-water freedom; for hardness also
// the scatter between batches. Of a recipe that batches have shown, it
// covers what they came to and leaves open instead (Result.Spread).
type Span struct{ Value, Low, High float64 }

// Result is everything a design comes to.
type Result struct {
	Dense, Foam Phase
	Syrup       Syrup
	Blend       Blend
	Nutrition   Nutrition
	Allergens   Allergens
	Lines       []BatchLine
	Eggs        Eggs
	Cost        Cost
	Warnings    []Warning
	Verdict     Verdict
	Taught      Taught // by batches: in the custard's hardness, and in all bands

	made     *asMade   // nil: batches have shown nothing of stove, air and boil
	untaught *untaught // what kitchens make of it then

	strains []Strain // of a sketch
	sketch  bool
}

// Phase is one phase finished.
type Phase struct {
	Body phase.Body // for 100 g of the finished phase
	Soft phase.Body // the reading with the least ice that the unknowns allow
	Firm phase.Body // the one with the most

	Portion   blend.Portion
	Tally     ingredient.Tally // of the lines as written, water driven off not subtracted
	WaterOffG float64          // g driven off, as written
	WrittenG  float64          // finished mass as written

	State          phase.State // at the serving temperature
	FreezingPointC Span        // °C; NaN where nothing freezes
	FrozenFraction Span        // fraction
	YieldKPa       Span        // kPa; NaN where the hardness law ends
	Word           phase.Word

	OverrunPercent         float64    // as set
	SweetnessPercent       float64    // g sucrose equivalent per 100 g
	SweetnessMeltedPercent float64    // as SweetnessPercent, of the melt at 20 °C: fructose fades as it warms
	SweetnessGPerSpoon     float64    // g sucrose equivalent per 15 mL
	Scoop                  ScoopRange // on the rail
	SwellingRatio          float64    // volume at the serving temperature over that as filled

	scatter float64 // by which a batch may be harder or softer
}

// ScoopRange is the part of the rail on which a phase, or both, eats well.
type ScoopRange struct {
	FromC, ToC float64 // °C
	OK         bool
}

// phaseOf returns the phase that part p goes into.
func (r *Result) phaseOf(p design.Part) *Phase {
	if p == design.DensePart {
		return &r.Dense
	}
	return &r.Foam
}

// InTub reports whether some of the phase goes into the tubs.
func (p *Phase) InTub() bool { return p.Portion.MassG > 0 }

// Absent reports whether the tubs hold the other phase alone: the recipe of this
// one is no part of them, and nothing is judged or compared by it.
func (r *Result) Absent(p *Phase) bool { return r.Blend.MassG > 0 && !p.InTub() }

// Shown reports whether there are figures of the phase: it has lines, and goes
// into the tubs if anything does.
func (r *Result) Shown(p *Phase) bool { return p.WrittenG > 0 && !r.Absent(p) }

// Counts reports whether a line weighs something and its phase is not absent.
func (r *Result) Counts(l *BatchLine) bool { return l.Grams > 0 && !r.Absent(r.phaseOf(l.Part)) }

// Percent returns the share of species s in the finished phase, mass %.
func (p *Phase) Percent(s mix.Species) float64 { return p.Body.Mix.Grams[s] }

// PartPercent returns column c of the finished phase, per 100 g.
func (p *Phase) PartPercent(c ingredient.Column) ingredient.Amount {
	return scaled(p.Tally.Columns[c], 100/p.WrittenG)
}

// TubMean is the mean over the phases in the tub of a figure per mass, by
// their masses there; NaN of an empty tub.
func (r *Result) TubMean(of func(*Phase) float64) float64 {
	var sum float64
	for _, p := range [...]*Phase{&r.Dense, &r.Foam} {
		if p.Portion.MassG > 0 {
			sum += p.Portion.MassG * of(p)
		}
	}
	return sum / r.Blend.MassG
}

// Syrup is the boiled syrup, for the batch as made.
type Syrup struct {
	Present           bool
	SolidsPercent     float64
	SolidsBandPercent [2]float64 // what the published tables disagree by
	MassG             float64
	WaterOffG         float64
	AlcoholOffG       float64
	BoilingPointC     float64 // of the syrup as it goes into the whites; NaN where it has no water or lies beyond the boiling model
	Reached           bool    // false: it was thicker than that from the start
	Weighed           bool    // the weight of the pan decided, not the thermometer
}

// Blend is the tub.
type Blend struct {
	blend.Tub
	blend.Contrast
	TubsFilled         float64
	SweetnessPercent   float64
	SweetnessGPerSpoon float64
	Both               ScoopRange // where every phase in the tub eats well
	DensityGPerML      float64

	// At the serving temperature, of both phases together, fractions; NaN of an
	// empty tub.
	FrozenFraction    float64 // of all water
	IceMassFraction   float64
	IceVolumeFraction float64 // of the volume without air
}

// Nutrition is the finished food's. Amounts keep what is unknown.
type Nutrition struct {
	EnergyMethod  *flaw.Remark
	ServingG      float64
	ServingML     float64
	Per100G       Nutrients
	PerServing    Nutrients
	TotalMassG    float64
	ServingsTotal float64
	Incomplete    []Gap
}

// Nutrients holds amounts by column; Energy is by the chosen method.
type Nutrients [ingredient.NumColumns]ingredient.Amount

// Gap names a figure that some ingredient leaves unknown.
type Gap struct {
	Column      ingredient.Column
	Ingredients []string
}

// Allergens lists those of all lines, but for a phase that is in no tub, sorted,
// each once.
type Allergens struct {
	US, EU   []string
	Unstated []string // ids of the ingredients of which nobody said what they carry
}

// BatchLine is one line as it enters the batch.
type BatchLine struct {
	Part                design.Part
	Index               int
	Ingredient          *ingredient.Ingredient
	Finished            *ingredient.Ingredient // as it is once cooked: the syrup's alcohol is gone
	KeepsFraction       float64                // of its grams once cooked, 0 to 1, water aside
	WrittenG            float64                // g
	Grams               float64                // g in the batch as made
	InTubsG             float64                // of these, what goes into the tubs
	Slopes              phase.Slopes           // per g of the line as written, of its phase
	TubSweetPercentPerG float64                // points of the tub's % sucrose equivalent per g as written
	Assumed             []ingredient.Assumption
	PerGram             ingredient.Cell // what a gram of it costs
}

// Cost is what the ingredients of the batch as made cost, in the maker's own
// money. Ingredients without a price are named, not taken as free. Work, tubs
// and power are no part of it.
type Cost struct {
	Currency   string                   // of the maker's price list, "" if it names none
	Known      float64                  // of those with a price
	PerTub     float64                  // of a full tub; NaN where none is filled, likewise the next two
	Per100G    float64                  // of what is in the tubs
	PerServing float64                  // of Nutrition.ServingG
	Priced     bool                     // some ingredient has a price
	Tap        bool                     // water is in it, and counts as nothing
	Missing    []*ingredient.Ingredient // those without, in the order of the lines
	Unweighed  []*ingredient.Ingredient // of these, whose pack has a price but no weight that is known
}

func scaled(a ingredient.Amount, k float64) ingredient.Amount {
	return ingredient.Amount{}.Plus(a, k)
}
