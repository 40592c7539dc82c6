package phase

import "ripplewright/internal/matter/mix"

// sweetness is relative to sucrose = 1, g for g, of cold dissolved sugars: the
// middle of the ranges in testdata/tables/relative_sweetness.csv, which names
// the source of each (fructose 120–173, glucose 50–80, lactose 15–40 …).
var sweetness = [mix.NumSpecies]float64{
	mix.Sucrose: 1, mix.Fructose: 1.40, mix.Glucose: 0.74, mix.Galactose: 0.32,
	mix.Lactose: 0.16, mix.Maltose: 0.33, mix.Sorbitol: 0.60, mix.Xylitol: 1.00,
	mix.Erythritol: 0.70, mix.Maltitol: 0.90, mix.Mannitol: 0.50, mix.Lactitol: 0.40,
	mix.Isomalt: 0.50, mix.Trehalose: 0.45, mix.Allulose: 0.70, mix.Glycerol: 0.60,
}

// SweetnessRatio returns that of species s, sucrose = 1.
func SweetnessRatio(s mix.Species) float64 { return sweetness[s] }

// SucroseEquivalentG returns the grams of sucrose as sweet as the sugars and
// polyols of m, Σ g·s with s of the table sweetness. Cold dulls all of it while it is cold on the tongue; no
// published number says by how much, so none is applied.
func SucroseEquivalentG(m mix.Mix) float64 {
	s := m.HigherSweetG
	for i, g := range m.Grams {
		s += g * sweetness[i]
	}
	return s
}

// TradeSweetness is the trade's target range of an ice cream, % sucrose
// equivalent by mass: Tharp & Young, On Ice Cream (questions and answers).
// Two mixes more than 0.5 apart taste different (same).
var TradeSweetness = [2]float64{13, 17}

// SweetnessPercent returns g sucrose equivalent per 100 g of m, 100 Σ g·s/M.
func SweetnessPercent(m mix.Mix) float64 {
	if t := m.TotalG(); t > 0 {
		return 100 * SucroseEquivalentG(m) / t
	}
	return 0
}

// meltedC is where a melt is compared with the frozen dessert, °C.
const meltedC = 20

// MeltedSweetnessPercent returns SweetnessPercent of m melted, at 20 °C. Only fructose
// has a published course with temperature; the others are as in the cold
// (glucose and sucrose change far less: McGee 2004, On Food and Cooking).
func MeltedSweetnessPercent(m mix.Mix) float64 {
	t := m.TotalG()
	if t == 0 {
		return 0
	}
	return SweetnessPercent(m) + 100*m.Grams[mix.Fructose]/t*(FructoseSweetnessRatio(meltedC)-sweetness[mix.Fructose])
}

// fructoseWarm is the relative sweetness of fructose against temperature, °C:
// testdata/tables/relative_sweetness.csv, rows "fructose 5 C" and following.
var fructoseWarm = [...]struct{ t, value float64 }{{5, 1.47}, {18, 1.285}, {40, 1.00}, {60, 0.795}}

// FructoseSweetnessRatio returns the relative sweetness of fructose at t °C,
// between 5 and 60, held at the ends outside. The cold value of the sweetness
// table, 1.40, is what a frozen dessert uses.
func FructoseSweetnessRatio(t float64) float64 {
	p := fructoseWarm[:]
	if t <= p[0].t {
		return p[0].value
	}
	for i := 1; i < len(p); i++ {
		if t <= p[i].t {
			f := (t - p[i-1].t) / (p[i].t - p[i-1].t)
			return p[i-1].value + f*(p[i].value-p[i-1].value)
		}
	}
	return p[len(p)-1].value
}
