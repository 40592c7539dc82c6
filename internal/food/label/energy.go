package label

import (
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/form/flaw"
)

// Energy returns the energy of the whole food, kcal, by its one method, and
// the method's name.
func (f *Food) Energy() (kcal ingredient.Amount, method *flaw.Remark) {
	return totals(f).of[energyUS], usEnergyMethod(f)
}

// ReferenceML is the reference amount of a frozen dessert, mL: 2/3 cup,
// 21 CFR 101.12(b) (read in secondary pages), of a label's 240 mL.
const ReferenceML = 160
