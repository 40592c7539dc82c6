package ingredient

import "ripplewright/internal/matter/mix"

// minerals sets the dissolved particles, and returns what it had to assume.
func (in *Ingredient) minerals(m *mix.Mix) []Assumption {
	if in.PureSalt != 0 {
		m.Grams[in.PureSalt] = m.Grams[mix.Ash]
		m.Grams[mix.Ash] = 0
		return nil
	}
	na, k := in.Cells[SodiumMG], in.Cells[PotassiumMG]
	var assumed []Assumption
	m.IonMol = particles * (na.Or(0)/22.99 + k.Or(0)/39.10) / 1000
	switch msnf, ash := in.Cells[MSNF].Or(0), in.Cells[Ash]; {
	case na.Known && k.Known:
	case msnf > 0:
		m.IonMol = max(m.IonMol, ionsPerMSNF*msnf)
		assumed = append(assumed, Assumption{Code: MineralsByMilkSolids})
	case ash.Or(0) > 0.2:
		m.IonMol = max(m.IonMol, ionsPerAsh*ash.Value)
		assumed = append(assumed, Assumption{Code: MineralsByAsh})
	case !ash.Known:
		assumed = append(assumed, Assumption{Code: MineralsUnknown})
	}
	m.IonMol += ionsPerYolkSolids * in.Cells[EggYolkSolids].Or(0)
	return assumed
}
