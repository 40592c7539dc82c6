package report

import (
	"io"
	"math"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/answer/model"
	"ripplewright/internal/matter/phase"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/say"
)

// Ripple is what the cut of the stirred tub comes to. Lengths are mm.
type Ripple struct {
	File string `json:"file"`
	Name string `json:"name"`
	View string `json:"view"`

	FoamAreaPercent Number `json:"foam_area_percent"`
	MeanRibbonMM    Number `json:"mean_ribbon_mm"` // of the foam: twice its area over the interface
	P90RibbonMM     Number `json:"p90_ribbon_mm"`  // of the foam's chords
	InterfaceMM     Number `json:"interface_mm"`
	Spoon           string `json:"spoon"` // how a foam ribbon of the mean thickness eats; "" where there is none

	MeasuredBy string `json:"measured_by"` // how the ribbons were measured, at every number of strokes
	Lines      int    `json:"measured_lines"`
	Crossings  int    `json:"measured_crossings"` // of the interface by these lines

	Foam     Ribbons  `json:"foam"`
	Dense    Ribbons  `json:"dense"`
	Spoonful Spoonful `json:"spoonful"`
	Advice   []string `json:"advice"`
	Basis    string   `json:"spoon_basis"` // how well the ranges of the words are known

	Hand *Hand `json:"as_you_stir"` // null where no cut was photographed

	spoonfuls string // in words
}

// Ribbons is one phase of the cut.
type Ribbons struct {
	MeanMM          Number `json:"mean_ribbon_mm"`
	MeanChordMM     Number `json:"mean_chord_mm"`
	P10MM           Number `json:"p10_chord_mm"`
	P50MM           Number `json:"p50_chord_mm"`
	P90MM           Number `json:"p90_chord_mm"`
	ThickestTenthMM Number `json:"thickest_tenth_chord_mm"`
	Spoon           string `json:"spoon"`
}

// Spoonful is how spoonfuls of the cut differ.
type Spoonful struct {
	VolumeML         Number `json:"volume_ml"`
	Samples          int    `json:"samples"`
	FoamPercent      Spread `json:"foam_volume_percent"`
	SweetnessPercent Spread `json:"sweetness_sucrose_percent"`
}

// Spread is a distribution in five numbers.
type Spread struct {
	Mean Number `json:"mean"`
	SD   Number `json:"sd"`
	P10  Number `json:"p10"`
	P50  Number `json:"p50"`
	P90  Number `json:"p90"`
}

// Hand is the foam's mean ribbon as the maker stirs, by photographs of cuts: 8 of 10 tubs
// lie from low to high.
type Hand struct {
	Cuts   int    `json:"cuts"`
	Factor Number `json:"factor"` // over the computed cut's
	MeanMM Number `json:"mean_ribbon_mm"`
	LowMM  Number `json:"low_mm"`
	HighMM Number `json:"high_mm"`
}

// Stirred returns the report with what a notebook teaches of the hand.
func (r Ripple) Stirred(p *learn.Posterior) Ripple {
	if mm := float64(r.MeanRibbonMM); p.Learnt(learn.Mixing) && !math.IsNaN(mm) {
		low, value, high := p.RibbonMM(mm)
		r.Hand = &Hand{p.Counts(learn.Mixing), Number(value / mm), Number(value), Number(low), Number(high)}
	}
	return r
}

// RippleOf returns the report of a sampled cut of r's tub.
func RippleOf(file, name string, r *model.Result, cut *ripple.Cut, raster *ripple.Raster) Ripple {
	m := raster.Measure()
	foam := raster.Spoon(ripple.SpoonML, ripple.FoamShare)
	sweet := raster.Spoon(ripple.SpoonML, SweetnessOf(r))
	out := Ripple{
		File: file, Name: name, View: cut.Settings().View.String(),
		FoamAreaPercent: percent(m.FoamFraction),
		MeanRibbonMM:    Number(m.Foam.MeanMM), P90RibbonMM: Number(m.Foam.P90MM),
		InterfaceMM: Number(m.InterfaceMM), Spoon: ripple.WordFor(m.Foam.MeanMM).String(),
		MeasuredBy: "straight lines through the stirred cut, not pixels", Lines: m.Lines, Crossings: m.Crossings,
		Foam: ribbons(m.Foam), Dense: ribbons(m.Dense),
		Spoonful: Spoonful{Number(ripple.SpoonML), foam.Samples, spread(foam, 100), spread(sweet, 1)},
		Advice:   []string{}, Basis: ripple.WordsBasis, spoonfuls: say.Spoonfuls(Reads, foam, sweet),
	}
	for _, a := range m.Advise(HardnessOf(r)) {
		kPa := r.Foam.YieldKPa.Value
		if a.Phase == "dense" {
			kPa = r.Dense.YieldKPa.Value
		}
		out.Advice = append(out.Advice, say.RibbonAdvice(Reads, a, kPa))
	}
	return out
}

// HardnessOf returns how hard the phases of r are when it is eaten. Firm begins
// where the custard no longer eats as it should, hard at twice that.
func HardnessOf(r *model.Result) ripple.Hardness {
	firm := phase.Dense.Band().FirmKPa
	return ripple.Hardness{FoamKPa: r.Foam.YieldKPa.Value, DenseKPa: r.Dense.YieldKPa.Value, FirmKPa: firm, HardKPa: 2 * firm}
}

// SweetnessOf returns the sweetness of r's phases, as percent of sucrose.
func SweetnessOf(r *model.Result) ripple.Pair {
	return ripple.Pair{
		Foam: r.Foam.SweetnessPercent, Dense: r.Dense.SweetnessPercent,
		FoamGPerML: r.Foam.Body.GPerML(), DenseGPerML: r.Dense.Body.GPerML(),
	}
}

func ribbons(r ripple.Ribbons) Ribbons {
	return Ribbons{
		MeanMM: Number(r.MeanMM), MeanChordMM: Number(r.MeanChordMM),
		P10MM: Number(r.P10MM), P50MM: Number(r.P50MM), P90MM: Number(r.P90MM),
		ThickestTenthMM: Number(r.ThickestTenthMM), Spoon: ripple.WordFor(r.MeanMM).String(),
	}
}

func spread(s ripple.Spoonful, unit float64) Spread {
	return Spread{Number(unit * s.Mean), Number(unit * s.SD), Number(unit * s.P10), Number(unit * s.P50), Number(unit * s.P90)}
}

// WriteText writes the report for a terminal.
func (r Ripple) WriteText(w io.Writer) error {
	p := &page{w: w}
	if one := say.OnePhase(float64(r.FoamAreaPercent)); one != "" {
		p.line("%s, %s cut: %s", r.Name, say.CutView(r.View), one)
		return p.err
	}
	p.line("%s, %s", r.Name, say.CutLine(Reads, say.CutView(r.View), float64(r.FoamAreaPercent), float64(r.InterfaceMM)))
	for _, x := range [...]struct {
		name string
		Ribbons
	}{{say.T("Foam"), r.Foam}, {say.T("Custard"), r.Dense}} {
		p.line("%s", say.RibbonLine(Reads, say.Ribbons{Name: x.name, MeanMM: float64(x.MeanMM), P90MM: float64(x.P90MM), ThickTenthMM: float64(x.ThickestTenthMM), Word: say.Of(x.Spoon)}))
	}
	if h := r.Hand; h != nil {
		p.line("%s", say.HandRibbon(Reads, h.Cuts, float64(h.LowMM), float64(h.MeanMM), float64(h.HighMM)))
	}
	p.line("Measured along %d straight lines through the stirred cut, not pixels, which cross from phase to phase %d times; ribbons thinner than a pixel of the picture count.", r.Lines, r.Crossings)
	p.line("A spoonful is %s. %s", Reads.Volume(float64(r.Spoonful.VolumeML)), r.spoonfuls)
	for _, a := range r.Advice {
		p.line("%s", a)
	}
	p.line("%s Air lost by mixing too long is not computed.", say.RibbonWords(Reads))
	return p.err
}
