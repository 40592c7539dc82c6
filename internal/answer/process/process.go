package process

import (
	"slices"
	"strings"

	"ripplewright/internal/answer/cold"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/food/ingredient"
	"ripplewright/internal/food/kind"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/solution"
	"ripplewright/internal/matter/water"
	"ripplewright/internal/work/design"
)

// Process is the making of one batch.
type Process struct {
	Kitchen  Kitchen
	Syrup    Syrup
	Foam     Foam
	Custard  Custard
	Freezing Freezing
	Eggs     Eggs
	Steps    []Step
	Cautions []Caution

	StirMinutes []float64 // at which the tray in the freezer is beaten, from going in
}

// Of returns the making of d, which comes to r, in kitchen k. storeC is where
// the tubs are kept, °C; times are those of the cold, nil where nobody asked.
func Of(d design.Design, r *model.Result, k Kitchen, storeC float64, times *cold.Answer) Process {
	pressure := water.AirPa(d.Kitchen.AltitudeM)
	p := Process{Kitchen: k, Syrup: syrupOf(d, r, k), Eggs: EggsOf(d, r), Freezing: freeze(r, r.Blend.TubsFilled, storeC, k)}
	if r.Dense.Portion.MadeG > 0 {
		p.Custard = custardOf(factsOf(d, r, design.DensePart, pressure), k)
	}
	if r.Foam.Portion.MadeG > 0 {
		p.Foam = foamOf(r, &p.Syrup, factsOf(d, r, design.FoamPart, pressure), pressure, k)
	}
	p.Steps = p.steps(d, r, times)
	if made := r.Dense.Portion.MadeG; made > 0 {
		p.Custard.WeighedG = made - p.later(r)
		p.Custard.FatPercent = r.Dense.Percent(mix.Fat)
		p.Custard.WaterG = made * r.Dense.Body.Mix.Grams[mix.Water] / r.Dense.Body.Mix.TotalG()
	}
	p.Cautions = p.cautions(r)
	if times != nil && !k.Churns() {
		for _, s := range times.StillFreeze.Dense.Stirs {
			p.StirMinutes = append(p.StirMinutes, s.AtMinutes)
		}
	}
	return p
}

// phaseFacts is what the cook needs of one phase, of the batch as made.
type phaseFacts struct {
	g          map[kind.Kind]float64 // g by kind
	total      float64               // g, cooked
	milk       float64               // g of milk, cream by its part
	waterOff   float64               // g
	heat       float64               // J/(g K) near 40 °C
	boilsC     float64               // plain water, here
	sugars     float64               // g, of bowl and syrup
	bowlG      float64               // g that the syrup meets
	bowlHeat   float64               // J/(g K) of it
	acid       float64               // g citric acid equivalent
	starch     []*ingredient.Ingredient
	pureStarch float64 // g, a flour by what it holds

	bowlWaterG     float64 // g of water in it
	bowlFat        float64 // g to 100 g of what the syrup meets
	bowlFatPercent float64 // g of fat, that of the whites apart, to 100 g of them
}

func factsOf(d design.Design, r *model.Result, part design.Part, pressure float64) phaseFacts {
	p := &r.Foam
	if part == design.DensePart {
		p = &r.Dense
	}
	f := phaseFacts{
		g: map[kind.Kind]float64{}, total: p.Portion.MadeG, waterOff: p.WaterOffG * p.Portion.Factor,
		heat: p.Body.JPerGK(warmC), boilsC: waterBoils(pressure),
	}
	var bowl mix.Mix
	fat := 0.0
	for _, l := range r.Lines {
		own := l.Part == part
		if own {
			f.g[kind.Of(l.Ingredient)] += l.Grams
			f.milk += l.Grams * kind.MilkPercent(l.Ingredient) / 100
			f.acid += l.Grams * kind.AcidPercent(l.Ingredient, l.Ingredient.Resolve().Nominal.Grams[mix.CitricAcid]) / 100
			if kind.Of(l.Ingredient) == kind.Starch && l.Grams > 0 {
				if !slices.Contains(f.starch, l.Ingredient) {
					f.starch = append(f.starch, l.Ingredient)
				}
				if strings.Contains(l.Ingredient.ID, "flour") {
					f.pureStarch += flourHolds * l.Grams
				} else {
					f.pureStarch += l.Grams
				}
			}
		}
		if own || part == design.FoamPart && l.Part == design.SyrupPart {
			f.sugars += l.Grams * l.Ingredient.Cell(ingredient.TotalSugars).Or(0) / 100
		}
		if own && part == design.FoamPart {
			x := l.Ingredient.Resolve()
			bowl = bowl.PlusScaled(x.Nominal, l.Grams/100)
			f.bowlG += l.Grams
			if !isWhite(kind.Of(l.Ingredient)) && foamStep(kind.Of(l.Ingredient), l.Ingredient) == BowlWhites {
				fat += l.Grams * x.Nominal.Grams[mix.Fat] / 100
			}
		}
	}
	f.bowlWaterG = bowl.Grams[mix.Water]
	if f.bowlG > 0 {
		b := phase.Prepare(bowl, 0, phase.Foam, solution.DefaultBound)
		f.bowlHeat = b.JPerGK(warmC)
		f.heat = f.bowlHeat
		f.bowlFat = 100 * fat / f.bowlG
		if white := f.g[kind.White] + f.g[kind.WhitePast] + madeUp*f.g[kind.WhiteDry]; white > 0 {
			f.bowlFatPercent = 100 * fat / white
		}
	}
	return f
}

func isWhite(k kind.Kind) bool { return k == kind.White || k == kind.WhitePast || k == kind.WhiteDry }

// warmC is the temperature at which heats are taken, °C: between the whites and
// the hot mix, where they change by under 1 %.
const warmC = 30

// WeighAt is the step at whose end the custard is weighed, "" where nothing is
// heated.
func (p *Process) WeighAt() StepCode {
	switch {
	case p.Has(Cook):
		return Cook
	case p.Has(HeatMilk):
		return HeatMilk
	}
	return ""
}

// later is the g of the custard's lines that go in after it is weighed.
func (p *Process) later(r *model.Result) float64 {
	g, cold, at := 0.0, false, p.WeighAt()
	for _, step := range p.Steps {
		for _, u := range step.Lines {
			if cold && r.Lines[u.Line].Part == design.DensePart {
				g += u.Grams
			}
		}
		cold = cold || step.Code == at
	}
	return g
}

// Has reports whether the making has such a step.
func (p *Process) Has(code StepCode) bool {
	for _, s := range p.Steps {
		if s.Code == code {
			return true
		}
	}
	return false
}
