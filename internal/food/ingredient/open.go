package ingredient

import "ripplewright/internal/matter/mix"

// openSugars places the sugars of r that the record has only in total, or not
// even that.
func (in *Ingredient) openSugars(r *Resolved) {
	get := func(c Column) float64 { return in.Cells[c].Or(0) }
	named := 0.0
	for _, s := range sugarColumns {
		named += get(s.col)
	}
	if total := in.Cells[TotalSugars]; total.Known {
		if open := total.Value - named; open > 0.05 {
			in.sugarsInTotal(r, open)
		}
		return
	}
	open := get(Carbohydrate) - get(Fibre) - get(Starch) - get(HigherSaccharides) - get(Polyols) - named
	if open <= 0.5 {
		return
	}
	r.Soft.Grams[mix.Glucose] += open
	r.Firm.Grams[mix.Starch] += open
	r.Nominal.Grams[mix.Sucrose] += open / 2
	in.addHigher(&r.Nominal, open/2)
	r.assume(Assumption{Code: SugarsUnknown})
	if in.Own && in.Standing != Dairy {
		r.UnnamedG = open
	}
}

// sugarsInTotal places open g of sugars that have a total and no names.
func (in *Ingredient) sugarsInTotal(r *Resolved, open float64) {
	kinds := in.unknownSugars()
	if len(kinds) == 0 {
		// Species and total were determined apart; the gap is scatter, and sucrose its plainest reading.
		r.add(mix.Sucrose, mix.Sucrose, mix.Sucrose, open)
		return
	}
	lightest, heaviest := kinds[0], kinds[0] // of two molar masses
	for _, k := range kinds {
		if double(lightest) && !double(k) {
			lightest = k
		}
		if double(k) {
			heaviest = k
		}
	}
	if kinds[0] == mix.Sucrose {
		kinds = kinds[:1]
	}
	for _, k := range kinds {
		r.add(k, lightest, heaviest, open/float64(len(kinds)))
	}
	r.assume(Assumption{Code: SugarsInTotal, ReadAs: kinds, From: lightest, To: heaviest})
}

// openCarbohydrate places what is left of the carbohydrate.
func (in *Ingredient) openCarbohydrate(r *Resolved) {
	rest := r.rest(in.Cells[Carbohydrate].Or(0))
	if rest <= 0 {
		return
	}
	dissolved := mix.OtherSolids
	if in.Group == "fruit" && rest > 0.5 {
		dissolved = mix.CitricAcid
		r.assume(Assumption{Code: FruitAcid})
	}
	soft := dissolved
	if in.Own && rest > 0.5 {
		r.UnnamedG += rest
		soft = mix.Glucose
		r.assume(Assumption{Code: CarbohydrateUnnamed})
	}
	r.add(dissolved, soft, mix.OtherSolids, rest)
}

// rest returns the carbohydrate that the nominal reading has not placed yet.
func (r *Resolved) rest(carb float64) float64 {
	m := r.Nominal
	placed := m.SaccharidesG() + m.Grams[mix.Starch] + m.Grams[mix.Fibre]
	if carb-placed < 0.05 { // rounding of the record
		return 0
	}
	return carb - placed
}

// unknownSugars returns the sugars that the record leaves open, sucrose first.
func (in *Ingredient) unknownSugars() []mix.Species {
	var open []mix.Species
	for _, s := range sugarColumns {
		if !in.Cells[s.col].Known {
			open = append(open, s.species)
		}
	}
	return open
}

// double reports whether s is a disaccharide, of twice the mass of the others.
func double(s mix.Species) bool {
	return s == mix.Sucrose || s == mix.Lactose || s == mix.Maltose
}
