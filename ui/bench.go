package ui

import (
	"fmt"
	"math"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"ripplewright/internal/design"
	"ripplewright/internal/model"
	"ripplewright/internal/phase"
	"ripplewright/ui/kit"
)

// bench is the first page: custard, tub and foam side by side over the
// temperature rail.
type bench struct {
	w       *Window
	verdict *kit.Verdict
	dense   *column
	foam    *column
	tub     *tubColumn
	rail    *kit.Rail
	railOf  railData
	cold    *coldLine
	object  fyne.CanvasObject
}

func newBench(w *Window) *bench {
	b := &bench{w: w, verdict: kit.NewVerdict(), rail: kit.NewRail(), cold: newColdLine(w)}
	b.dense = newColumn(w, "Custard", design.DensePart)
	b.foam = newColumn(w, "Foam", design.FoamPart)
	b.tub = newTubColumn(w)
	b.rail.OnChanged = func(c float64) { w.Preview(serveAt(w.Design(), c)) }
	b.rail.OnChangeEnded = func(c float64) { w.Commit(serveAt(w.Design(), c), "serving temperature") }
	rail := w.hints.Wrap(b.rail, "Drag the handle, or press the arrow keys, to choose the serving temperature. Thick lines: hardness; thin lines: ice by volume.")
	b.object = container.NewBorder(nil, container.NewVBox(rail, b.cold.label), nil, nil,
		container.New(&thirds{}, b.dense.object, b.tub.object, b.foam.object))
	return b
}

func serveAt(d design.Design, c float64) design.Design {
	d.Serving.TemperatureC = c
	return d
}

// show brings the bench up to date with the session.
func (b *bench) show() {
	d := b.w.Design()
	r, err := b.w.Session.Result()
	b.dense.show(d, r)
	b.foam.show(d, r)
	b.tub.show(d, r)
	b.rail.ShowRail(b.railOf.view(d, r))
	b.cold.show(d, r)
	b.verdict.ShowVerdict(verdictView(r, err))
}

// verdictView puts the verdict, or what stands in its way, into the strip.
func verdictView(r *model.Result, err error) kit.VerdictView {
	if err != nil {
		first, more, _ := strings.Cut(err.Error(), "\n")
		v := kit.VerdictView{Severity: kit.Wrong, Word: "Not computed", Sentence: first}
		if more != "" {
			v.Suggestion = fmt.Sprintf("and %d more", 1+strings.Count(more, "\n"))
		}
		return v
	}
	v := kit.VerdictView{Severity: kit.Good, Word: "Ready", Sentence: r.Verdict.Sentence, Suggestion: r.Verdict.Advice}
	if !r.Verdict.Good {
		v.Severity, v.Word = kit.Caution, "Adjust"
	}
	for _, w := range r.Warnings {
		if w.Severity == model.Serious {
			v.Severity, v.Word = kit.Wrong, "Look again"
			if v.Suggestion == "" {
				v.Suggestion = w.Message
			}
		}
	}
	return v
}

// railPoints is how many temperatures the rail's curves have.
const railPoints = 121

// railData keeps the rail's slices from frame to frame.
type railData struct {
	ts     []float64
	states []phase.State
	words  []kit.Word
	curves [2]kit.RailPhase
}

func (x *railData) view(d design.Design, r *model.Result) kit.RailView {
	if x.ts == nil {
		x.ts = model.Rail(railPoints)
		above := 0.0
		for _, w := range phase.Words {
			x.words = append(x.words, kit.Word{Above: above, Name: w.Name})
			above = w.Below
		}
		for i := range x.curves {
			x.curves[i].Hardness, x.curves[i].Ice = make([]float64, railPoints), make([]float64, railPoints)
		}
	}
	for i, p := range [...]*model.Phase{&r.Dense, &r.Foam} {
		c := &x.curves[i]
		c.Name = [...]string{"Custard", "Foam"}[i]
		x.states = model.Curve(&p.Body, x.ts, x.states)
		for k, s := range x.states {
			c.Hardness[k], c.Ice[k] = s.YieldKPa, s.IceVolume
			if p.WrittenG == 0 {
				c.Hardness[k], c.Ice[k] = math.NaN(), math.NaN()
			}
		}
		c.Scoop, c.Note = spanOf(p.Scoop), ""
		if !p.Scoop.OK {
			c.Note = "never in its band here"
		}
		if p.WrittenG == 0 {
			c.Scoop, c.Note = kit.Span{}, "no lines yet"
		}
	}
	return kit.RailView{Temperatures: x.ts, Dense: x.curves[0], Foam: x.curves[1],
		Both: spanOf(r.Blend.Both), Words: x.words, Serving: d.Serving.TemperatureC}
}

func spanOf(s model.ScoopRange) kit.Span {
	if !s.OK {
		return kit.Span{}
	}
	return kit.Span{From: s.From, To: s.To}
}

// thirds lays three objects side by side: the middle one a little narrower.
type thirds struct{}

var thirdShares = [3]float32{0.345, 0.31, 0.345}

// Layout implements fyne.Layout.
func (thirds) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	const gap = 8
	x := float32(0)
	for i, o := range objects {
		width := (size.Width - 2*gap) * thirdShares[i]
		o.Move(fyne.NewPos(x, 0))
		o.Resize(fyne.NewSize(width, size.Height))
		x += width + gap
	}
}

// MinSize implements fyne.Layout.
func (thirds) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var s fyne.Size
	for i, o := range objects {
		m := o.MinSize()
		s.Width = max(s.Width, m.Width/thirdShares[i])
		s.Height = max(s.Height, m.Height)
	}
	return fyne.NewSize(s.Width+16, s.Height)
}

var _ fyne.Layout = thirds{}

// tubColumn is the middle: the tub cut open, the ratio slider under it, as wide
// as the tub, and what is filled.
type tubColumn struct {
	w      *Window
	view   *kit.TubView
	ratio  *kit.Slide
	count  *kit.Slide
	volume *kit.Slide
	fill   *kit.Slide
	basis  *widget.Select
	foot   *widget.Label
	cut    *cutter
	object fyne.CanvasObject
}

var bases = [...]struct {
	basis design.Basis
	name  string
}{
	{design.BasisTubs, "Scale to fill the tubs"},
	{design.BasisAsWritten, "Keep the grams as written"},
}

func newTubColumn(w *Window) *tubColumn {
	t := &tubColumn{w: w, view: kit.NewTubView(), foot: widget.NewLabel("")}
	t.foot.Wrapping = fyne.TextWrapWord
	t.foot.Alignment = fyne.TextAlignCenter
	t.cut = newCutter(w, t)
	t.ratio = w.slide("Foam", "%", 0, 100, 1, 0, "foam share",
		func(d *design.Design) *float64 { return &d.Blend.FoamVolumePercent })
	t.volume = w.slide("Tub", "mL", 50, 2500, 10, 0, "tub size",
		func(d *design.Design) *float64 { return &d.Tubs.VolumeML })
	t.fill = w.slide("Filled", "%", 50, 100, 1, 0, "fill",
		func(d *design.Design) *float64 { return &d.Tubs.FillPercent })
	t.count = kit.NewSlide("Tubs", "", 1, 40, 1, 0)
	setCount := func(v float64) design.Design {
		d := w.Design()
		d.Tubs.Count = int(math.Round(v))
		return d
	}
	t.count.OnChanged = func(v float64) { w.Preview(setCount(v)) }
	t.count.OnChangeEnded = func(v float64) { w.Commit(setCount(v), "tub count") }
	t.basis = widget.NewSelect([]string{bases[0].name, bases[1].name}, nil)
	t.basis.OnChanged = func(name string) {
		d := w.Design()
		for _, b := range bases {
			if b.name == name && d.Batch.Basis != b.basis {
				d.Batch.Basis = b.basis
				w.Commit(d, "batch basis")
			}
		}
	}
	for _, s := range [...]*kit.Slide{t.ratio, t.count, t.volume, t.fill} {
		s.NameWidth = 48
	}
	t.object = container.NewBorder(nil, container.NewVBox(
		w.hints.Wrap(t.ratio, "The foam's share of the tub by volume."),
		w.hints.Wrap(t.count, "How many tubs to fill."),
		w.hints.Wrap(t.volume, "What one tub holds to the brim."),
		w.hints.Wrap(t.fill, "How full a tub is filled; leave room for the swelling of ice."),
		t.basis, t.foot), nil, nil, t.view)
	return t
}

// slide returns a slider for one number of the design: dragging previews,
// resting commits.
func (w *Window) slide(name, unit string, lo, hi, step float64, decimals int, what string, of func(*design.Design) *float64) *kit.Slide {
	s := kit.NewSlide(name, unit, lo, hi, step, decimals)
	set := func(v float64) design.Design {
		d := w.Design()
		*of(&d) = v
		return d
	}
	s.OnChanged = func(v float64) { w.Preview(set(v)) }
	s.OnChangeEnded = func(v float64) { w.Commit(set(v), what) }
	return s
}

func (t *tubColumn) show(d design.Design, r *model.Result) {
	t.ratio.ShowValue(d.Blend.FoamVolumePercent)
	t.count.ShowValue(float64(d.Tubs.Count))
	t.volume.ShowValue(d.Tubs.VolumeML)
	t.fill.ShowValue(d.Tubs.FillPercent)
	for _, b := range bases {
		if b.basis == d.Batch.Basis && t.basis.Selected != b.name {
			t.basis.Selected = b.name
			t.basis.Refresh()
		}
	}
	b := &r.Blend
	text := fmt.Sprintf("%s tubs, %s g, sweetness %s %%", number(b.TubsFilled, 2), number(b.MassG, 0), number(b.SweetnessPercent, 1))
	switch {
	case b.Dense.LeftML > 1:
		text += fmt.Sprintf("; %s mL custard left over", number(b.Dense.LeftML, 0))
	case b.Foam.LeftML > 1:
		text += fmt.Sprintf("; %s mL foam left over", number(b.Foam.LeftML, 0))
	}
	if b.Both.OK {
		text += fmt.Sprintf("\nboth scoop from %s to %s °C", number(b.Both.From, 1), number(b.Both.To, 1))
	} else {
		text += "\nno temperature here suits both"
	}
	if t.foot.Text != text {
		t.foot.SetText(text)
	}
	t.cut.show(d, r)
}
