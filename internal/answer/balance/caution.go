package balance

import (
	"slices"

	"ripplewright/internal/answer/model"
)

// codes have a slot each among a problem's residuals, slotOf says which.
var (
	codes = [...]string{
		"air_beyond_process", "yolk_heavy", "too_sweet", "not_sweet_enough", "too_salty", "freezer_overloaded", "syrup_too_little",
		"yolk_in_whites", "alcohol_boils_off", "acid_with_milk", "carbohydrate_unnamed", "sugar_crystallises", "outside_hardness_law",
		"salt_rule_unsettled", "tub_overfull", "foam_draws_water", "altitude_syrup", "outside_model_range", "syrup_no_boil_off",
		"syrup_weighed_too_light", "stove_loss_exceeds_water", "weighed_too_heavy", "any other",
	}
	slotOf = func() map[string]int {
		m := map[string]int{}
		for i, c := range codes {
			m[c] = i
		}
		return m
	}()
)

// CautionCodes are the codes of the cautions that can be told apart in a wish.
func CautionCodes() []string { return slices.Clone(codes[:len(codes)-1]) }

func slot(code string) int {
	if i, ok := slotOf[code]; ok {
		return i
	}
	return len(codes) - 1
}

// spoils reports whether a warning stands against a good verdict.
func spoils(w *model.Warning) bool { return w.Severity > model.Note && !w.Handled }
