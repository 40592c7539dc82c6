package proofs

import (
	"cmp"
	"math"
	"slices"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
)

// Dress is how plots of checks look: their colours, and how numbers read.
type Dress struct {
	Model, Published, Beside draw.Colour
	Apart                    draw.Colour // of what does not count
	Reads                    say.Style
}

// points is a series of loose points.
func points(name string, m draw.Marker, colour draw.Colour) chart.Series {
	return chart.Series{Name: name, Marker: m, Every: 1, Line: draw.Stroke{Colour: colour}}
}

func put(s *chart.Series, x, y float64) { s.X, s.Y = append(s.X, x), append(s.Y, y) }

// drop appends the series that have points.
func drop(list []chart.Series, more ...chart.Series) []chart.Series {
	for _, s := range more {
		if len(s.X) > 0 {
			list = append(list, s)
		}
	}
	return list
}

// Agreement plots model and measurement of a check: both over the check's own x
// where its points lie along one, and the model against the measured where the
// points are things with names.
func (l Dress) Agreement(r *validate.Row) chart.Plot {
	if !alongX(r) {
		return l.parity(r)
	}
	model := chart.Series{Name: say.T("model"), Line: draw.Stroke{Width: 2, Colour: l.Model}}
	if len(r.Pairs) == 1 {
		model.Marker, model.Every = draw.Square, 1
	}
	published := points(say.T("published"), draw.Disc, l.Published)
	apart := points(say.T("published, not counted"), draw.Diamond, l.Apart)
	for _, q := range r.Pairs {
		put(&model, q.X, q.Model)
		if q.Counted {
			put(&published, q.X, q.Measured)
		} else {
			put(&apart, q.X, q.Measured)
		}
	}
	series := []chart.Series{model}
	for i, c := range r.Beside {
		series = append(series, chart.Series{Name: c.Name, X: c.X, Y: c.Y,
			Line: draw.Stroke{Width: 2, Dash: [...]draw.Dash{draw.Dashed, draw.DashDot}[i%2], Colour: l.Beside}})
	}
	return chart.Plot{Style: chart.Look{Reads: l.Reads}, X: chart.Axis{Title: say.Of(string(r.XLabel))}, Y: chart.Axis{Title: say.Of(string(r.YLabel))}, Series: drop(series, published, apart)}
}

// alongX reports whether the points lie along one x axis.
func alongX(r *validate.Row) bool {
	last := math.Inf(-1)
	for _, q := range r.Pairs {
		if q.Label != "" || !(q.X >= last) {
			return false
		}
		last = q.X
	}
	return true
}

// parity plots the model against the measured: on the line they agree.
func (l Dress) parity(r *validate.Row) chart.Plot {
	pairs := slices.Clone(r.Pairs)
	slices.SortFunc(pairs, func(a, b validate.Pair) int { return cmp.Compare(a.Measured, b.Measured) })
	at := func(m draw.Marker, name string, counted bool, colour draw.Colour) chart.Series {
		s := points(name, m, colour)
		for _, q := range pairs {
			if q.Counted == counted {
				put(&s, q.Measured, q.Model)
			}
		}
		return s
	}
	counted := at(draw.Disc, say.T("model against published"), true, l.Published)
	apart := at(draw.Diamond, say.T("not counted"), false, l.Apart)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range r.Pairs {
		lo, hi = min(lo, q.Measured, q.Model), max(hi, q.Measured, q.Model)
	}
	// A little air around the outermost points.
	log := lo > 0 && hi/lo > 50
	if log {
		air := math.Pow(hi/lo, 0.04)
		lo, hi = lo/air, hi*air
	} else {
		air := 0.04 * (hi - lo)
		if air == 0 {
			air = 0.1 * math.Max(1, math.Abs(hi))
		}
		lo, hi = lo-air, hi+air
	}
	axis := func(whose say.Message) chart.Axis {
		return chart.Axis{Title: say.T(whose, say.Of(string(r.YLabel))), Min: lo, Max: hi, Log: log}
	}
	equal := chart.Series{Name: say.T("equal"), X: []float64{lo, hi}, Y: []float64{lo, hi}, Line: draw.Stroke{Width: 1.5, Colour: l.Model}}
	p := chart.Plot{Style: chart.Look{Reads: l.Reads}, X: axis(say.PublishedAxis), Y: axis(say.ModelAxis)}
	p.Series = append([]chart.Series{equal}, l.barLines(r, lo, hi, log)...)
	p.Series = drop(p.Series, counted, apart)
	return p
}

// barLines are where the bar lies in a parity plot, if its unit is that of the
// axes or per cent of them.
func (l Dress) barLines(r *validate.Row, lo, hi float64, log bool) []chart.Series {
	if math.IsInf(r.Bar, 0) || r.Bar <= 0 {
		return nil
	}
	off := func(x, sign float64) float64 { return x + sign*r.Bar }
	if r.Unit == "%" {
		off = func(x, sign float64) float64 { return x * (1 + sign*r.Bar/100) }
	} else {
		for _, q := range r.Pairs {
			if math.Abs(q.Model-q.Measured-q.Error) > 1e-9 {
				return nil
			}
		}
	}
	line := func(name string, sign float64) chart.Series {
		s := chart.Series{Name: name, Line: draw.Stroke{Width: 1, Dash: draw.Dashed, Colour: l.Apart}}
		const steps = 60 // a straight line bends on logarithmic axes
		for i := 0; i <= steps; i++ {
			x := lo + (hi-lo)*float64(i)/steps
			if log {
				x = lo * math.Pow(hi/lo, float64(i)/steps)
			}
			put(&s, x, off(x, sign))
		}
		return s
	}
	return []chart.Series{line(say.T("the bar"), 1), line("", -1)}
}

// Errors plots the errors of a check against its bar.
func (l Dress) Errors(r *validate.Row) chart.Plot {
	along := alongX(r)
	title := say.Of(string(r.XLabel))
	if !along {
		title = say.TableOrder.String()
	}
	counted := points(say.T("error"), draw.Disc, l.Published)
	apart := points(say.T("not counted"), draw.Diamond, l.Apart)
	most := 0.0
	for i, q := range r.Pairs {
		x := float64(i + 1)
		if along {
			x = q.X
		}
		if q.Counted {
			put(&counted, x, q.Error)
			most = max(most, math.Abs(q.Error))
		} else {
			put(&apart, x, q.Error)
		}
	}
	p := chart.Plot{Style: chart.Look{Reads: l.Reads}, X: chart.Axis{Title: title}, Y: chart.Axis{Title: say.T(say.ErrorAxis, say.Of(string(r.Unit)))}}
	rule := func(at float64, label string, dash draw.Dash) {
		p.Rules = append(p.Rules, chart.Rule{At: at, Level: true, Label: label, Line: draw.Stroke{Width: 1.2, Dash: dash, Colour: l.Apart}})
	}
	rule(0, "", draw.Solid)
	reach := most
	if !math.IsInf(r.Bar, 0) {
		rule(r.Bar, say.T("bar"), draw.Dashed)
		rule(-r.Bar, say.T("bar"), draw.Dashed)
		reach = max(most, r.Bar)
	}
	// The bar is always in sight; points that do not count may lie beyond.
	if reach == 0 {
		reach = 1
	}
	p.Y.Min, p.Y.Max = -1.25*reach, 1.25*reach
	p.Series = drop(nil, counted, apart)
	return p
}
