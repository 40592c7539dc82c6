package ingredient

import "ripplewright/internal/matter/mix"

// AssumptionCode names what the physics assumes where a record is silent.
type AssumptionCode string

// The codes; package say has a sentence for each.
const (
	SugarsInTotal        AssumptionCode = "sugars_in_total"         // ReadAs, From, To: which sugars the total is read as
	SugarsUnknown        AssumptionCode = "sugars_unknown"          // half sucrose, half higher saccharides; from glucose to starch
	FruitAcid            AssumptionCode = "fruit_acid"              // carbohydrate of a fruit that nothing names
	CarbohydrateUnnamed  AssumptionCode = "carbohydrate_unnamed"    // inert, or a simple sugar
	MassUnnamed          AssumptionCode = "mass_unnamed"            // G of 100 g that no figure names: inert
	MassOver             AssumptionCode = "mass_over"               // G, more than 100, that the figures add up to
	MineralsByMilkSolids AssumptionCode = "minerals_by_milk_solids" // sodium or potassium unknown
	MineralsByAsh        AssumptionCode = "minerals_by_ash"         // likewise
	MineralsUnknown      AssumptionCode = "minerals_unknown"        // and the ash too
)

// AssumptionCodes are all of them.
var AssumptionCodes = [...]AssumptionCode{SugarsInTotal, SugarsUnknown, FruitAcid, CarbohydrateUnnamed, MassUnnamed, MassOver,
	MineralsByMilkSolids, MineralsByAsh, MineralsUnknown}

// An Assumption is one thing that the physics assumes of a record.
type Assumption struct {
	Code     AssumptionCode
	ReadAs   []mix.Species
	From, To mix.Species
	G        float64
}
