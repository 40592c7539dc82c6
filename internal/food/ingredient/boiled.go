package ingredient

// alcoholKcal is the energy of a gram of alcohol, as labels count it (see
// label.usAlcohol).
const alcoholKcal = 7

// Boiled returns in as it is once its alcohol has boiled away, per 100 g of
// what stays, and the share of its mass that stays; in itself and 1 where it is
// not known to hold any.
func (in *Ingredient) Boiled() (left *Ingredient, keepsFraction float64) {
	alcohol := in.Cells[Alcohol].Or(0)
	switch {
	case alcohol <= 0:
		return in, 1
	case alcohol >= 100:
		return in, 0
	}
	keepsFraction = 1 - alcohol/100
	out := *in
	out.Cells[Alcohol] = Known(0)
	if e := out.Cells[Energy]; e.Known {
		out.Cells[Energy] = Known(max(0, e.Value-alcoholKcal*alcohol))
	}
	for c := range out.Cells {
		if out.Cells[c].Known {
			out.Cells[c].Value /= keepsFraction
		}
	}
	return &out, keepsFraction
}
