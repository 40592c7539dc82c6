package label

import "ripplewright/internal/ingredient"

// Energy returns the energy of the whole food, kcal, by its one method, and
// the method's name.
func (f *Food) Energy() (kcal ingredient.Amount, method string) {
	return totals(f).of[energyUS], usEnergyMethod(f)
}

// ReferenceML is the reference amount of a frozen dessert, 2/3 cup of 240 mL:
// 21 CFR 101.12(b).
const ReferenceML = 160
