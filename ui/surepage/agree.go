package surepage

import (
	"cmp"
	"math"
	"slices"

	"fyne.io/fyne/v2/theme"

	"ripplewright/internal/answer/validate"
	"ripplewright/internal/show/chart"
	"ripplewright/internal/show/draw"
	"ripplewright/internal/show/say"
	"ripplewright/ui/kit"
	"ripplewright/ui/page"
)

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

// agreement plots model and measurement of a check: both over the check's own x
// where its points lie along one, and the model against the measured where the
// points are things with names.
func agreement(r *validate.Row) chart.Plot {
	if !alongX(r) {
		return parity(r)
	}
	model := chart.Series{Name: "model", Line: draw.Stroke{Width: 2, Colour: page.Ink(kit.ColorNameFoam)}}
	if len(r.Pairs) == 1 {
		model.Marker, model.Every = draw.Square, 1
	}
	published := points("published", draw.Disc, page.Ink(kit.ColorNameDense))
	apart := points("published, not counted", draw.Diamond, page.Ink(theme.ColorNamePlaceHolder))
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
			Line: draw.Stroke{Width: 2, Dash: [...]draw.Dash{draw.Dashed, draw.DashDot}[i%2], Colour: page.Ink(kit.ColorNameBoth)}})
	}
	return chart.Plot{Style: chart.Look{Reads: page.Reads}, X: chart.Axis{Title: r.XLabel}, Y: chart.Axis{Title: r.YLabel}, Series: drop(series, published, apart)}
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
func parity(r *validate.Row) chart.Plot {
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
	counted := at(draw.Disc, "model against published", true, page.Ink(kit.ColorNameDense))
	apart := at(draw.Diamond, "not counted", false, page.Ink(theme.ColorNamePlaceHolder))
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
	axis := func(whose string) chart.Axis { return chart.Axis{Title: whose + r.YLabel, Min: lo, Max: hi, Log: log} }
	equal := chart.Series{Name: "equal", X: []float64{lo, hi}, Y: []float64{lo, hi}, Line: draw.Stroke{Width: 1.5, Colour: page.Ink(kit.ColorNameFoam)}}
	p := chart.Plot{Style: chart.Look{Reads: page.Reads}, X: axis("published: "), Y: axis("model: ")}
	p.Series = append([]chart.Series{equal}, barLines(r, lo, hi, log)...)
	p.Series = drop(p.Series, counted, apart)
	return p
}

// barLines are where the bar lies in a parity plot, if its unit is that of the
// axes or per cent of them.
func barLines(r *validate.Row, lo, hi float64, log bool) []chart.Series {
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
		s := chart.Series{Name: name, Line: draw.Stroke{Width: 1, Dash: draw.Dashed, Colour: page.Ink(theme.ColorNamePlaceHolder)}}
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
	return []chart.Series{line("the bar", 1), line("", -1)}
}

// errorPlot plots the errors of a check against its bar.
func errorPlot(r *validate.Row) chart.Plot {
	along := alongX(r)
	title := r.XLabel
	if !along {
		title = "point, in the order of the table"
	}
	counted := points("error", draw.Disc, page.Ink(kit.ColorNameDense))
	apart := points("not counted", draw.Diamond, page.Ink(theme.ColorNamePlaceHolder))
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
	p := chart.Plot{Style: chart.Look{Reads: page.Reads}, X: chart.Axis{Title: title}, Y: chart.Axis{Title: "error, " + r.Unit}}
	rule := func(at float64, label string, dash draw.Dash) {
		p.Rules = append(p.Rules, chart.Rule{At: at, Level: true, Label: label, Line: draw.Stroke{Width: 1.2, Dash: dash, Colour: page.Ink(theme.ColorNamePlaceHolder)}})
	}
	rule(0, "", draw.Solid)
	reach := most
	if !math.IsInf(r.Bar, 0) {
		rule(r.Bar, "bar", draw.Dashed)
		rule(-r.Bar, "bar", draw.Dashed)
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

// pairRows writes every point as text.
func pairRows(r *validate.Row) []say.TableRow {
	rows := make([]say.TableRow, 0, len(r.Pairs))
	for _, q := range r.Pairs {
		name := q.Label
		if name == "" {
			name = r.XLabel + " " + digits(q.X)
		}
		f := say.TableRow{Name: name, Cells: []string{figure(q.Measured), figure(q.Model), digits(q.Error)}}
		if !q.Counted {
			f.Unit = "not counted"
		}
		rows = append(rows, f)
	}
	return rows
}

// figure writes v to five digits, as tables print them.
func figure(v float64) string {
	a := math.Abs(v)
	if a != 0 && a < 1e-3 || math.IsNaN(v) {
		return digits(v)
	}
	places := 4
	if a >= 1 {
		places = max(0, 4-int(math.Floor(math.Log10(a))))
	}
	return trimZeros(page.Number(v, places))
}

// places are the decimals in which a plot of r is read, on each axis: four
// digits of the largest value.
func places(r *validate.Row) (x, y int) {
	most := func(of func(validate.Pair) float64) int {
		m := 0.0
		for _, q := range r.Pairs {
			if v := math.Abs(of(q)); v > m && !math.IsInf(v, 0) {
				m = v
			}
		}
		if m == 0 {
			return 1
		}
		return min(6, max(0, 3-int(math.Floor(math.Log10(m)))))
	}
	return most(func(q validate.Pair) float64 { return q.X }), most(func(q validate.Pair) float64 { return q.Measured })
}
