package ingredient

// Amount is a sum some of whose terms may be unknown: Known adds the known
// ones, Most adds to them the most that the unknown ones can be (+Inf where
// nothing bounds one).
type Amount struct {
	Known, Most float64
}

// Complete reports whether every term was known, or too small to matter at
// one part in 10¹² of the sum.
func (a Amount) Complete() bool { return a.Most-a.Known <= 1e-12*a.Known }

// Nothing reports whether there is no known term at all beside unknown ones,
// so that printing Known would print a zero nobody measured.
func (a Amount) Nothing() bool { return a.Known == 0 && !a.Complete() }

// Plus returns a + k·b.
func (a Amount) Plus(b Amount, k float64) Amount {
	a.Known += k * b.Known
	if b.Most > 0 { // 0·Inf is not a number
		if k > 0 {
			a.Most += k * b.Most
		}
	}
	return a
}

// Tally is the sum of every column over weighed ingredients, for the whole
// mass (not per 100 g), with the gaps kept.
type Tally struct {
	MassG       float64 // g as weighed
	Columns     [NumColumns]Amount
	Protein625  Amount // g of protein as nitrogen × 6.25, the EU's definition
	AtwaterKcal Amount // kcal by the records' specific factors; Most is +Inf where a record has none
}

// Add returns t with g grams of in added.
func (t Tally) Add(in *Ingredient, g float64) Tally {
	if g == 0 {
		return t
	}
	k := g / 100
	t.MassG += g
	for c := Column(0); c < NumColumns; c++ {
		a := Amount{Known: in.Cells[c].Or(0), Most: in.Most(c)}
		t.Columns[c] = t.Columns[c].Plus(a, k)
	}
	p := in.Cells[Protein].Or(0) * 6.25 / in.NitrogenFactor.Or(6.25)
	t.Protein625 = t.Protein625.Plus(Amount{p, p}, k)
	t.AtwaterKcal = t.AtwaterKcal.Plus(in.atwater(), k)
	return t
}

// Plus returns t + k·o.
func (t Tally) Plus(o Tally, k float64) Tally {
	t.MassG += k * o.MassG
	for c := range t.Columns {
		t.Columns[c] = t.Columns[c].Plus(o.Columns[c], k)
	}
	t.Protein625 = t.Protein625.Plus(o.Protein625, k)
	t.AtwaterKcal = t.AtwaterKcal.Plus(o.AtwaterKcal, k)
	return t
}

// Less returns t with g grams of water driven off, which takes nothing else
// along.
func (t Tally) Less(g float64) Tally {
	t.MassG -= g
	t.Columns[Water].Known -= g
	t.Columns[Water].Most -= g
	return t
}

// Per100 returns t for 100 g of it.
func (t Tally) Per100() Tally { return Tally{}.Plus(t, 100/t.MassG) }
