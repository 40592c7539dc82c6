package notebook

import (
	"math"

	"ripplewright/internal/answer/learn"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/internal/work/batch"
)

// Inks are the colours of the plots, and how numbers read.
type Inks struct {
	Forecast, Measured, Slip draw.Colour
	Reads                    say.Style
}

// History plots one kind of measurement beside its forecast, batch by batch.
func (i Inks) History(p *learn.Posterior, n *batch.Notebook, path string) chart.Plot {
	forecast := chart.Series{Name: say.BatchPairHeads()[1], Line: draw.Stroke{Width: 2, Dash: draw.Dashed, Colour: i.Forecast}, Marker: draw.Square, Every: 1}
	measured := chart.Series{Name: say.BatchPairHeads()[2], Line: draw.Stroke{Colour: i.Measured}, Marker: draw.Disc, Every: 1}
	slips := chart.Series{Name: say.SlipName.String(), Line: draw.Stroke{Colour: i.Slip}, Marker: draw.Cross, Every: 1}
	plot := chart.Plot{Style: chart.Look{Reads: i.Reads}, X: chart.Axis{Title: say.BatchAxis.String(), Min: 0.5, NoGrid: true}, Y: chart.Axis{Title: say.BatchAxisOf(i.Reads, path)}}
	at := 0
	for k := range n.Batches {
		for _, q := range p.Pairs(k, &n.Batches[k]) {
			if q.Path != path {
				continue
			}
			at++
			plot.X.Ticks = append(plot.X.Ticks, chart.Tick{Value: float64(at), Label: i.Reads.Number(float64(k+1), 0)})
			s := &measured
			if q.Slip {
				s = &slips
			}
			shown := func(v float64) float64 { return say.BatchShown(i.Reads, path, v) }
			s.X, s.Y = append(s.X, float64(at)), append(s.Y, shown(q.Measured))
			forecast.X, forecast.Y = append(forecast.X, float64(at)), append(forecast.Y, shown(q.Expected))
			if q.High > q.Low {
				plot.Bands = append(plot.Bands, chart.Patch{X0: float64(at) - 0.2, X1: float64(at) + 0.2, Y0: shown(q.Low), Y1: shown(q.High),
					Fill: draw.Fade(i.Measured, .2), Hatch: draw.Rising, Line: draw.Stroke{Width: 1, Colour: draw.Fade(i.Measured, .5)}})
			}
		}
	}
	if at == 0 {
		return chart.Nothing()
	}
	plot.X.Max = float64(at) + 0.5
	plot.Series = kept(forecast, loose(measured), loose(slips))
	return plot
}

func kept(all ...chart.Series) (out []chart.Series) {
	for _, s := range all {
		if len(s.X) > 0 {
			out = append(out, s)
		}
	}
	return out
}

// densityPoints is how finely a density is drawn.
const densityPoints = 121

// says is what a reading says by itself of its factor, and its error: one standard
// deviation.
func says(o *learn.Observation) (mean, sd float64) {
	h := o.Along[o.Of]
	return o.Says / h, math.Abs(o.ErrorSD / h)
}

// Learnt plots what was known of a factor before any batch, what each measurement says
// by itself with its error as a bar, and what is known now.
func (i Inks) Learnt(p *learn.Posterior, f learn.Factor) chart.Plot {
	before := learn.Prior().Factors[f]
	now := p.Factors[f]
	most := 1 / now.SD
	low, high := before.Mean-3*before.SD, before.Mean+3*before.SD
	var data []learn.Observation
	for _, o := range p.Observations {
		if o.Of == f {
			data = append(data, o)
			says, sd := says(&o)
			low, high = math.Min(low, says-sd), math.Max(high, says+sd)
		}
	}
	own := func(x float64) float64 {
		if f.IsRatio() {
			return 100 * math.Exp(x)
		}
		return x
	}
	density := func(b learn.Belief) (x, y []float64) {
		for k := range densityPoints {
			at := low + (high-low)*float64(k)/(densityPoints-1)
			z := (at - b.Mean) / b.SD
			x, y = append(x, own(at)), append(y, math.Exp(-z*z/2)/b.SD/most)
		}
		return x, y
	}
	priorX, priorY := density(before)
	nowX, nowY := density(now)
	plot := chart.Plot{Style: chart.Look{Reads: i.Reads}, X: chart.Axis{Title: say.LearntAxis(i.Reads, f)}, Y: chart.Axis{Title: say.DensityAxis.String(), Min: 0, Max: 1.05, NoGrid: true, Ticks: []chart.Tick{{Value: 0, Label: "0"}}},
		Series: []chart.Series{
			{Name: say.BeforeBatches.String(), X: priorX, Y: priorY, Line: draw.Stroke{Width: 2, Dash: draw.Dashed, Colour: i.Forecast}},
			{Name: say.KnownNow.String(), X: nowX, Y: nowY, Line: draw.Stroke{Width: 2.4, Colour: i.Measured}},
		}}
	measured := chart.Series{Name: say.EachByItself.String(), Line: draw.Stroke{Colour: i.Measured}, Marker: draw.Disc, Every: 1}
	slips := chart.Series{Name: say.SlipName.String(), Line: draw.Stroke{Colour: i.Slip}, Marker: draw.Cross, Every: 1}
	bars := chart.Series{Line: draw.Stroke{Width: 1.4, Colour: i.Measured}}
	for k, o := range data {
		s := &measured
		if o.Slip() {
			s = &slips
		}
		at, sd := says(&o)
		y := 0.9 * float64(k+1) / float64(len(data)+1)
		s.X, s.Y = append(s.X, own(at)), append(s.Y, y)
		bars.X, bars.Y = append(bars.X, own(at-sd), own(at+sd), math.NaN()), append(bars.Y, y, y, math.NaN())
	}
	plot.Series = append(plot.Series, kept(bars, loose(measured), loose(slips))...)
	return plot
}

// loose parts the points of a series by gaps, so that no line joins them.
func loose(s chart.Series) chart.Series {
	out := s
	out.X, out.Y = nil, nil
	for k := range s.X {
		if k > 0 {
			out.X, out.Y = append(out.X, math.NaN()), append(out.Y, math.NaN())
		}
		out.X, out.Y = append(out.X, s.X[k]), append(out.Y, s.Y[k])
	}
	return out
}
