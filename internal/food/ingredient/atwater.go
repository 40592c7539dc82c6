package ingredient

// atwater returns kcal per 100 g by the record's specific factors (USDA
// Handbook 74; alcohol 6.93 kcal/g, USDA SR28 documentation). Where a record
// lacks a factor, the energy may be nothing or that by the Handbook's largest
// factor for the substance (4.36, 9.02 and 4.16 kcal/g; from memory).
func (in *Ingredient) atwater() Amount {
	var a Amount
	for _, part := range [...]struct {
		col     Column
		factor  Cell
		largest float64
	}{
		{Protein, in.AtwaterProtein, 4.36}, {Fat, in.AtwaterFat, 9.02},
		{Carbohydrate, in.AtwaterCarbohydrate, 4.16}, {Alcohol, Known(6.93), 6.93},
	} {
		g := in.Most(part.col)
		if g == 0 {
			continue
		}
		a.Known += in.Cells[part.col].Or(0) * part.factor.Or(0)
		a.Most += g * part.factor.Or(part.largest)
	}
	return a
}
