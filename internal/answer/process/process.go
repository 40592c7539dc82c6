package process

import (
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
}

// Of returns the making of d, which comes to r, in kitchen k. storeC is where
// the tubs are kept, °C; times are those of the cold, nil where nobody asked.
func Of(d design.Design, r *model.Result, k Kitchen, storeC float64, times *cold.Answer) Process {
	pressure := water.AirPressure(d.Kitchen.AltitudeM)
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
		p.Custard.WaterG = made * r.Dense.Body.Mix.Mass[mix.Water] / r.Dense.Body.Mix.Total()
	}
	return p
}

// phaseFacts is what the cook needs of one phase, of the batch as made.
type phaseFacts struct {
	g        map[kind.Kind]float64 // g by kind
	total    float64               // g, cooked
	milk     float64               // g of milk, cream by its part
	waterOff float64               // g
	heat     float64               // J/(g K) near 40 °C
	boilsC   float64               // plain water, here
	sugars   float64               // g, of bowl and syrup
	bowlG    float64               // g that the syrup meets
	bowlHeat float64               // J/(g K) of it
}

func factsOf(d design.Design, r *model.Result, part design.Part, pressure float64) phaseFacts {
	p := &r.Foam
	if part == design.DensePart {
		p = &r.Dense
	}
	f := phaseFacts{
		g: map[kind.Kind]float64{}, total: p.Portion.MadeG, waterOff: p.WaterOff * p.Portion.Factor,
		heat: p.Body.HeatCapacity(warmC), boilsC: waterBoils(pressure),
	}
	var bowl mix.Mix
	for _, l := range r.Lines {
		own := l.Part == part
		if own {
			f.g[kind.Of(l.Ingredient)] += l.Grams
			f.milk += l.Grams * kind.MilkPercent(l.Ingredient) / 100
		}
		if own || part == design.FoamPart && l.Part == design.SyrupPart {
			f.sugars += l.Grams * l.Ingredient.Cell(ingredient.TotalSugars).Or(0) / 100
		}
		if own && part == design.FoamPart {
			x := l.Ingredient.Resolve()
			bowl = bowl.PlusScaled(x.Nominal, l.Grams/100)
			f.bowlG += l.Grams
		}
	}
	if f.bowlG > 0 {
		b := phase.Prepare(bowl, 0, phase.Foam, solution.DefaultBound)
		f.bowlHeat = b.HeatCapacity(warmC)
		f.heat = f.bowlHeat
	}
	return f
}

// warmC is the temperature at which heats are taken, °C: between the whites and
// the hot mix, where they change by under 1 %.
const warmC = 30

// later is the g of the custard's lines that go in after it is weighed.
func (p *Process) later(r *model.Result) float64 {
	g, cold := 0.0, false
	for _, step := range p.Steps {
		for _, u := range step.Lines {
			if cold && r.Lines[u.Line].Part == design.DensePart {
				g += u.Grams
			}
		}
		cold = cold || step.Code == CoolDown
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
