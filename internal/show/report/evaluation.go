package report

import (
	"math"

	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/mix"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/design"
)

// Evaluation is everything that model.Evaluate finds, in the form of its JSON.
// Masses are g and volumes mL in all tubs together, but for those of "batch"
// and of the lines, which are of the whole batch as made; temperatures are °C,
// hardness kPa; percent is by mass unless the key says volume.
type Evaluation struct {
	File    string  `json:"file"`
	Name    string  `json:"name"`
	Serving Number  `json:"serving_temperature_c"`
	Verdict Verdict `json:"verdict"`

	Dense Phase `json:"dense"`
	Foam  Foam  `json:"foam"`
	Blend Blend `json:"blend"`
	Batch Batch `json:"batch"`

	Nutrition   Nutrition `json:"nutrition"`
	Allergens   []string  `json:"allergens"` // as US law groups them
	AllergensEU []string  `json:"allergens_eu"`
	Unstated    []string  `json:"allergens_not_stated_for"` // ids of ingredients
	Lines       []Line    `json:"lines"`
	Eggs        *Eggs     `json:"eggs"`
	Cost        Cost      `json:"cost"`
	Warnings    []Warning `json:"warnings"`
}

// Verdict is the design in a sentence.
type Verdict struct {
	Good     bool   `json:"good"`
	Sentence string `json:"sentence"`
	Advice   string `json:"advice"`
}

// Phase is one phase. All but its mass and volume are null while it has no
// lines.
type Phase struct {
	MassG              Number  `json:"mass_g"`
	VolumeML           Number  `json:"volume_ml"`        // as filled, at 4 °C, with its air
	DensityGPerML      Number  `json:"density_g_per_ml"` // likewise
	OverrunPercent     Number  `json:"overrun_percent"`
	WaterPercent       Number  `json:"water_percent"`
	TotalSolidsPercent Number  `json:"total_solids_percent"` // all but water and alcohol
	FatPercent         Number  `json:"fat_percent"`
	MSNFPercent        Number  `json:"msnf_percent"`
	SugarsPercent      Number  `json:"sugars_percent"` // mono- and disaccharides
	FreezingPointC     Number  `json:"initial_freezing_point_c"`
	WaterFrozenPercent Number  `json:"water_frozen_percent"`
	IceMassPercent     Number  `json:"ice_mass_percent"`
	IceVolumePercent   Number  `json:"ice_volume_percent"` // of the volume without air
	Hardness           Number  `json:"hardness"`           // kPa
	Texture            *string `json:"texture"`
	SweetnessPercent   Number  `json:"sweetness_sucrose_percent"`

	SweetnessPerSpoon Number `json:"sweetness_sucrose_g_per_spoon"` // 15 mL
	Range
	Sugars       map[string]Number `json:"sugars_by_kind_percent"` // and sugar alcohols, those present
	WaterOffG    Number            `json:"water_driven_off_g"`
	LeftOverG    Number            `json:"left_over_g"`
	LeftOverML   Number            `json:"left_over_ml"`
	SwellPercent Number            `json:"swelling_percent"` // from as filled to serving temperature
	Bands        Bands             `json:"bands"`
}

// Bands are the figures' bands.
type Bands struct {
	FreezingPointC     Band `json:"initial_freezing_point_c"`
	WaterFrozenPercent Band `json:"water_frozen_percent"`
	Hardness           Band `json:"hardness"`
}

// Foam is the foam with its syrup, which is null where there is none.
type Foam struct {
	Phase
	Syrup *Syrup `json:"syrup"`
}

// Syrup is the boiled syrup.
type Syrup struct {
	SolidsPercent Number `json:"solids_percent"`
	MassG         Number `json:"mass_g"`
	WaterOffG     Number `json:"water_boiled_off_g"`
	BoilingPointC Number `json:"boiling_point_c"` // of the syrup as it is poured
	SolidsBand    Band   `json:"solids_percent_band"`
	Reached       bool   `json:"cook_temperature_reached"` // false: it was thicker from the start
}

// Blend is the tub.
type Blend struct {
	FoamVolumePercent Number `json:"foam_volume_percent"`
	FoamMassPercent   Number `json:"foam_mass_percent"`
	MassG             Number `json:"mass_g"`
	VolumeML          Number `json:"volume_ml"`
	DensityGPerML     Number `json:"density_g_per_ml"`
	TubsFilled        Number `json:"tubs_filled"`

	// Of both phases together.
	WaterPercent       Number `json:"water_percent"`
	TotalSolidsPercent Number `json:"total_solids_percent"`
	FatPercent         Number `json:"fat_percent"`
	MSNFPercent        Number `json:"msnf_percent"`
	SugarsPercent      Number `json:"sugars_percent"`
	WaterFrozenPercent Number `json:"water_frozen_percent"`
	IceMassPercent     Number `json:"ice_mass_percent"`
	IceVolumePercent   Number `json:"ice_volume_percent"`

	SweetnessPercent  Number `json:"sweetness_sucrose_percent"`
	SweetnessPerSpoon Number `json:"sweetness_sucrose_g_per_spoon"`
	HardnessContrast  Number `json:"hardness_contrast"`       // custard over foam
	SweetnessContrast Number `json:"sweetness_contrast"`      // foam minus custard, percentage points
	ScoopContrast     Number `json:"scoop_contrast_k"`        // start of scooping, custard minus foam
	ScoopAtLeast      bool   `json:"scoop_contrast_at_least"` // it is a lower bound: the foam is never too firm
	Hardness          Number `json:"hardness"`                // kPa, mean by volume of the logarithms
	Range                    // where both phases eat well
	DenseLeftML       Number `json:"dense_left_over_ml"`
	FoamLeftML        Number `json:"foam_left_over_ml"`
}

// Line is a line of the design and what a gram more of it, as written, does to
// its phase.
type Line struct {
	Part       string  `json:"part"`
	Index      int     `json:"index"`
	Ingredient string  `json:"ingredient"`
	Name       string  `json:"name"`
	WrittenG   Number  `json:"written_g"`
	Grams      Number  `json:"grams"` // in the batch as made
	PerGram    PerGram `json:"per_gram"`
}

// PerGram is the change of a phase's figures per g of a line.
type PerGram struct {
	FreezingPointC     Number `json:"initial_freezing_point_c"`
	WaterFrozenPercent Number `json:"water_frozen_percent"` // percentage points
	HardnessPercent    Number `json:"hardness_percent"`     // relative
	SweetnessPercent   Number `json:"sweetness_sucrose_percent"`
	TubSweetness       Number `json:"tub_sweetness_sucrose_percent"`
	DensityGPerML      Number `json:"density_g_per_ml"`
}

// Eggs counts the eggs whose yolks and whites the batch takes.
type Eggs struct {
	Yolks      Number `json:"yolks"`
	Whites     Number `json:"whites"`
	Crack      Number `json:"crack"`       // whole eggs that give as many of both
	YolksLeft  Number `json:"yolks_left"`  // over, once these are cracked
	WhitesLeft Number `json:"whites_left"` // likewise
}

// Cost is what the ingredients cost, in the maker's own money.
type Cost struct {
	Batch   Number   `json:"batch"` // the known part, null where no line has a price
	PerTub  Number   `json:"per_tub"`
	Missing []string `json:"missing"` // names of the ingredients without a price
}

func costReport(c *model.Cost) Cost {
	if !c.Priced {
		return Cost{unknown, unknown, list(c.Missing)}
	}
	return Cost{Number(c.Known), Number(c.PerTub), list(c.Missing)}
}

// Warning is something a maker should know.
type Warning struct {
	Code     string `json:"code"`
	Message  string `json:"message"`
	Where    string `json:"where"`
	Severity string `json:"severity"`
}

// Evaluate returns the report of r, which is what d, read from file, comes to.
func Evaluate(file string, d design.Design, r *model.Result) Evaluation {
	e := Evaluation{
		File: file, Name: d.Name, Serving: Number(d.Serving.TemperatureC),
		Verdict:     Verdict{r.Verdict.Good, say.Verdict(plain, r.Verdict), say.Advice(plain, r.Verdict)},
		Dense:       phaseReport(&r.Dense, d.Dense.OverrunPercent),
		Foam:        Foam{Phase: phaseReport(&r.Foam, d.Foam.OverrunPercent), Syrup: syrupReport(&r.Syrup)},
		Blend:       blendReport(r),
		Batch:       batchReport(r),
		Nutrition:   nutritionReport(r),
		Allergens:   list(r.Allergens.US),
		AllergensEU: list(r.Allergens.EU),
		Unstated:    list(r.Allergens.Unstated),
		Lines:       []Line{},
		Cost:        costReport(&r.Cost),
		Warnings:    warnings(r.Warnings),
	}
	for i := range r.Lines {
		e.Lines = append(e.Lines, lineReport(&r.Lines[i]))
	}
	if r.Eggs.Known {
		g := r.Eggs
		e.Eggs = &Eggs{Number(g.Yolks), Number(g.Whites), Number(g.Crack), Number(g.YolksLeft), Number(g.WhitesLeft)}
	}
	return e
}

// plain is how another program, and a terminal, reads quantities.
var plain = say.Style{}

func warnings(of []model.Warning) []Warning {
	out := make([]Warning, len(of))
	for i, w := range of {
		out[i] = Warning{w.Code, say.Warning(plain, w), w.Where, w.Severity.String()}
	}
	return out
}

// list returns s, never nil, so that JSON has a list.
func list(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}

func phaseReport(p *model.Phase, overrunPercent float64) Phase {
	if p.WrittenG == 0 {
		return emptyPhase()
	}
	m, s := p.Body.Mix, p.State
	out := Phase{
		MassG: Number(p.Portion.MassG), VolumeML: Number(p.Portion.VolumeML),
		DensityGPerML: Number(p.Body.Density()), OverrunPercent: Number(overrunPercent),
		WaterPercent:       Number(p.Percent(mix.Water)),
		TotalSolidsPercent: percent(m.Solids() / m.Total()),
		FatPercent:         partOf(p, fatColumn), MSNFPercent: partOf(p, msnfColumn),
		SugarsPercent:      percent(m.TotalSugars() / m.Total()),
		FreezingPointC:     Number(p.FreezingPoint.Value),
		WaterFrozenPercent: percent(s.WaterFrozen), IceMassPercent: percent(s.IceMass), IceVolumePercent: percent(s.IceVolume),
		Hardness: Number(p.Yield.Value), Texture: &p.Word.Name,
		SweetnessPercent: Number(p.SweetnessPercent), SweetnessPerSpoon: Number(p.SweetnessPerSpoon),
		Range:     scoop(p.Scoop),
		Sugars:    map[string]Number{},
		WaterOffG: Number(p.WaterOff * p.Portion.Factor),
		LeftOverG: Number(p.Portion.LeftG), LeftOverML: Number(p.Portion.LeftML),
		SwellPercent: percent(p.Swelling - 1),
		Bands: Bands{
			FreezingPointC:     band(p.FreezingPoint, 1),
			WaterFrozenPercent: band(p.WaterFrozen, 100),
			Hardness:           band(p.Yield, 1),
		},
	}
	for _, kinds := range [...][]mix.Species{mix.Sugars[:], mix.Polyols[:]} {
		for _, k := range kinds {
			if g := p.Percent(k); g > 0 {
				out.Sugars[k.String()] = Number(g)
			}
		}
	}
	return out
}

// emptyPhase knows nothing but that there is nothing.
func emptyPhase() Phase {
	none := Band{unknown, unknown}
	return Phase{
		DensityGPerML: unknown, OverrunPercent: unknown, WaterPercent: unknown, TotalSolidsPercent: unknown,
		FatPercent: unknown, MSNFPercent: unknown, SugarsPercent: unknown, FreezingPointC: unknown,
		WaterFrozenPercent: unknown, IceMassPercent: unknown, IceVolumePercent: unknown, Hardness: unknown,
		SweetnessPercent: unknown, SweetnessPerSpoon: unknown, Range: Range{unknown, unknown},
		Sugars: map[string]Number{}, SwellPercent: unknown, Bands: Bands{none, none, none},
	}
}

func scoop(r model.ScoopRange) Range {
	if !r.OK {
		return Range{unknown, unknown}
	}
	return Range{Number(r.From), Number(r.To)}
}

func band(s model.Span, unit float64) Band {
	return Band{Number(unit * math.Min(s.Low, s.High)), Number(unit * math.Max(s.Low, s.High))}
}

func syrupReport(s *model.Syrup) *Syrup {
	if !s.Present {
		return nil
	}
	return &Syrup{
		SolidsPercent: Number(s.SolidsPercent), MassG: Number(s.MassG), WaterOffG: Number(s.WaterOffG),
		BoilingPointC: Number(s.BoilingPointC), Reached: s.Reached,
		SolidsBand: Band{Number(s.SolidsBand[0]), Number(s.SolidsBand[1])},
	}
}

func blendReport(r *model.Result) Blend {
	b := &r.Blend
	out := Blend{
		FoamVolumePercent: percent(b.FoamVolume), FoamMassPercent: percent(b.FoamMass),
		MassG: Number(b.MassG), VolumeML: Number(b.VolumeML), DensityGPerML: Number(b.DensityGPerML),
		TubsFilled:         Number(b.TubsFilled),
		WaterPercent:       Number(r.TubMean(func(p *model.Phase) float64 { return p.Percent(mix.Water) })),
		TotalSolidsPercent: Number(r.TubMean(func(p *model.Phase) float64 { return p.Body.Mix.Solids() })),
		FatPercent:         knownPart(r.Nutrition.Per100G[fatColumn]),
		MSNFPercent:        knownPart(r.Nutrition.Per100G[msnfColumn]),
		SugarsPercent:      Number(r.TubMean(func(p *model.Phase) float64 { return p.Body.Mix.TotalSugars() })),
		WaterFrozenPercent: percent(b.WaterFrozen), IceMassPercent: percent(b.IceMass), IceVolumePercent: percent(b.IceVolume),
		SweetnessPercent: Number(b.SweetnessPercent), SweetnessPerSpoon: Number(b.SweetnessPerSpoon),
		HardnessContrast: Number(b.Contrast.Hardness), SweetnessContrast: Number(b.Contrast.Sweetness),
		ScoopContrast: Number(b.ScoopsK), ScoopAtLeast: b.ScoopsAtLeast, Hardness: Number(b.Yield), Range: scoop(b.Both),
		DenseLeftML: Number(b.Dense.LeftML), FoamLeftML: Number(b.Foam.LeftML),
	}
	if b.MassG <= 0 {
		out.FoamVolumePercent, out.FoamMassPercent, out.DensityGPerML = unknown, unknown, unknown
		out.SweetnessPercent, out.SweetnessPerSpoon = unknown, unknown
	}
	if r.Dense.WrittenG == 0 || r.Foam.WrittenG == 0 { // nothing to compare with
		out.HardnessContrast, out.SweetnessContrast, out.ScoopContrast, out.Hardness = unknown, unknown, unknown, unknown
		out.ScoopAtLeast = false
		out.Range = Range{unknown, unknown}
	}
	return out
}

func lineReport(l *model.Line) Line {
	s := l.Slopes
	return Line{
		Part: l.Part.String(), Index: l.Index, Ingredient: l.Ingredient.ID, Name: l.Ingredient.Name,
		WrittenG: Number(l.Written), Grams: Number(l.Grams),
		PerGram: PerGram{
			FreezingPointC: Number(s.FreezingPointC), WaterFrozenPercent: percent(s.WaterFrozen),
			HardnessPercent: percent(s.LnYield), SweetnessPercent: Number(s.Sweetness),
			TubSweetness: Number(l.TubSweet), DensityGPerML: Number(s.Density),
		},
	}
}
