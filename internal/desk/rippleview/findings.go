package rippleview

import (
	"math"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/matter/ripple"
	"ripplewright/internal/show/say"
)

// Findings are the figures of one sharp cut.
type Findings struct {
	View    ripple.View
	measure ripple.Measure
	foam    ripple.Spoonful
	sweet   ripple.Spoonful
	advice  []ripple.Advice
	serving serving
}

// Study measures a cut. It may run away from the window's thread.
func (q Request) Study(r *ripple.Raster) Findings {
	m := r.Measure()
	return Findings{
		View: q.Job.Cuts[0].View, measure: m,
		foam:   r.Spoon(ripple.SpoonML, ripple.FoamShare),
		sweet:  r.Spoon(ripple.SpoonML, q.sweet),
		advice: m.Advise(q.serving.hardness), serving: q.serving,
	}
}

// cell is a number, "" where it is unknown.
func cell(s say.Style, v float64, places int) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return ""
	}
	return s.Number(v, places)
}

// Ribbons tabulates the ribbons of custard and foam.
func (f *Findings) Ribbons(s say.Style) []say.TableRow {
	d, o := &f.measure.Dense, &f.measure.Foam
	g := s.Gauge("mm")
	row := func(name string, of func(*ripple.Ribbons) float64) say.TableRow {
		mm := func(v float64) string { return cell(s, g.Shown(v), g.Places(1)) }
		return say.TableRow{Name: name, Unit: g.Unit, Cells: []string{mm(of(d)), mm(of(o))}}
	}
	return []say.TableRow{
		{Name: say.T("Share of the cut"), Unit: "%", Cells: []string{cell(s, 100*(1-f.measure.FoamFraction), 1), cell(s, 100*f.measure.FoamFraction, 1)}},
		row(say.T("Mean thickness"), func(r *ripple.Ribbons) float64 { return r.MeanMM }),
		{Name: say.Indent + say.EatsAs.String(), Cells: []string{say.Of(ripple.WordFor(d.MeanMM).String()), say.Of(ripple.WordFor(o.MeanMM).String())}},
		row(say.T("Nine chords in ten under"), func(r *ripple.Ribbons) float64 { return r.P90MM }),
		row(say.T("Thickest tenth of them, mean"), func(r *ripple.Ribbons) float64 { return r.ThickestTenthMM }),
	}
}

// Stirred says what the foam's mean ribbon comes to as this hand stirs, "" where no
// photographed cut tells.
func (f *Findings) Stirred(s say.Style, p *learn.Posterior) string {
	mm := f.measure.Foam.MeanMM
	if math.IsNaN(mm) || !p.Learnt(learn.Mixing) {
		return ""
	}
	low, value, high := p.RibbonMM(mm)
	return say.HandRibbon(s, p.Counts(learn.Mixing), low, value, high)
}

// Chords explains the ribbons' thickness and what is not in its plot.
func (f *Findings) Chords(s say.Style) string {
	return say.Chords(s, &f.measure, longest*ripple.ChordBinMM, f.measure.Dense.Counts[longest], f.measure.Foam.Counts[longest])
}

// Spoonfuls says how spoonfuls differ.
func (f *Findings) Spoonfuls(s say.Style) string { return say.Spoonfuls(s, f.foam, f.sweet) }

// Spoons tabulates the share of foam and the sweetness of spoonfuls.
func (f *Findings) Spoons(s say.Style) []say.TableRow {
	row := func(name string, of func(*ripple.Spoonful) float64) say.TableRow {
		return say.TableRow{Name: name, Unit: "%", Cells: []string{cell(s, 100*of(&f.foam), 0), cell(s, of(&f.sweet), 1)}}
	}
	return []say.TableRow{
		row(say.T("One spoonful in ten under"), func(s *ripple.Spoonful) float64 { return s.P10 }),
		row(say.T("Half of them under"), func(s *ripple.Spoonful) float64 { return s.P50 }),
		row(say.T("One in ten over"), func(s *ripple.Spoonful) float64 { return s.P90 }),
		row(say.T("Mean"), func(s *ripple.Spoonful) float64 { return s.Mean }),
		row(say.T("Standard deviation"), func(s *ripple.Spoonful) float64 { return s.SD }),
	}
}

// Counsel is a sentence, and whether there is something to do about it.
type Counsel struct {
	Text string
	Act  bool
}

// Counsels combine hardness with thickness, one for each phase.
func (f *Findings) Counsels(s say.Style) []Counsel {
	out := []Counsel{{Text: say.ServedAt(s, f.serving.celsius)}}
	for _, a := range f.advice {
		kPa := f.serving.hardness.FoamKPa
		if a.Phase == "dense" {
			kPa = f.serving.hardness.DenseKPa
		}
		out = append(out, Counsel{say.RibbonAdvice(s, a, kPa), a.Exceeded})
	}
	return out
}
