package model

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
)

// Severity of a warning.
type Severity uint8

// The severities.
const (
	Note    Severity = iota // worth knowing
	Caution                 // will be noticed by who eats it
	Serious                 // the figures do not hold, or the batch will not work
)

// String returns the severity's word.
func (s Severity) String() string { return [...]string{"note", "caution", "serious"}[s] }

// Warning is something a maker should know. Package say has its sentence.
type Warning struct {
	Code     string // stable, lower case with underscores
	Where    string // "dense", "foam.syrup.lines[0]", …
	Severity Severity
	Facts    any // the values in the sentence, of the code's own type below; nil if there are none
	// Handled tells that a step of the card deals with it, so that the verdict
	// stands.
	Handled bool
}

func (r *Result) warn(s Severity, code, where string, facts any) {
	r.Warnings = append(r.Warnings, Warning{Code: code, Where: where, Severity: s, Facts: facts})
}

// The facts of the warnings, each named after its code. Temperatures are °C,
// masses g, volumes mL, shares per cent.
type (
	// PhaseEmpty is of phase_empty: the phase without lines.
	PhaseEmpty struct{ Empty phase.Role }

	// SyrupNoBoilOff is of syrup_no_boil_off.
	SyrupNoBoilOff struct{ BoilsAtC, CookToC float64 }

	// SyrupBand is of syrup_band.
	SyrupBand struct{ Percent, CookToC float64 }

	// OutsideModelRange is of outside_model_range: the solutes beyond their
	// tables at a temperature.
	OutsideModelRange struct {
		AtC     float64
		Solutes []mix.Species
	}

	// SaltRuleUnsettled is of salt_rule_unsettled: added salt, g per 100 g water.
	SaltRuleUnsettled struct{ SaltG float64 }

	// EndOfFreezing is of end_of_freezing.
	EndOfFreezing struct{ BelowC float64 }

	// Brittle is of brittle: how far above its glass the liquid is.
	Brittle struct{ AtC, AboveGlassK float64 }

	// TubOverfull is of tub_overfull: how full the tub is frozen, and how full
	// it may be filled.
	TubOverfull struct{ FrozenPercent, FillPercent float64 }

	// EggsUnpaired is of eggs_unpaired: what cracking whole eggs leaves over.
	EggsUnpaired struct {
		Yolks, Whites float64
		System, Size  string
	}

	// LeftOver is of left_over: what a phase leaves, 0 of one that all goes in;
	// and the foam that would use up both, by volume.
	LeftOver struct{ FoamPercent, DenseML, FoamML, DenseG, FoamG, AllPercent float64 }

	// FoamDrawsWater is of foam_draws_water.
	FoamDrawsWater struct{ FreezesAtC, FreezerC float64 }

	// OwnFiguresDiffer is of own_figures_differ: whose record of the same id the
	// design's own stands before.
	OwnFiguresDiffer struct {
		Ingredient *ingredient.Ingredient
		Shelf      bool // the maker's own shelf; false: the library
	}

	// CompositionAssumed is of composition_assumed.
	CompositionAssumed struct {
		Ingredient *ingredient.Ingredient
		Assumed    ingredient.Assumption
	}

	// NutritionIncomplete is of nutrition_incomplete: the figures that no source gives.
	NutritionIncomplete struct {
		Ingredient *ingredient.Ingredient
		Lacks      []ingredient.Column
	}
)
